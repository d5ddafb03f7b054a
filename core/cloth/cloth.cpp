#include "core/cloth/cloth.h"

#include <algorithm>

namespace boltwright {

const Remnant *Cloth::remnant(const std::string &remnantId) const {
    const auto it = std::find_if(remnants.begin(), remnants.end(), [&](const Remnant &r) { return r.id == remnantId; });
    return it == remnants.end() ? nullptr : &*it;
}

std::optional<Lattice> Cloth::latticeOn(const std::optional<std::string> &on) const {
    if (!pattern) return std::nullopt;
    const Remnant *r = on ? remnant(*on) : nullptr;
    return Lattice(*pattern, r && r->motif ? *r->motif : pattern->motif);
}

} // namespace boltwright
