#include "core/job/job.h"

#include "core/base/ensure.h"

#include <algorithm>

namespace boltwright {
namespace {

template <class Parts>
auto *withId(const Parts &parts, const std::string &id) {
    const auto it = std::find_if(parts.begin(), parts.end(), [&](const auto &part) { return part.id == id; });
    return it == parts.end() ? nullptr : &*it;
}

} // namespace

const Panel *Job::panel(const std::string &id) const { return withId(panels, id); }

const Cloth *Job::cloth(const std::string &id) const { return withId(cloths, id); }

const Cloth &Job::clothOf(const Panel &panel) const {
    const Cloth *found = panel.cloth ? cloth(*panel.cloth) : cloths.empty() ? nullptr : &cloths.front();
    ensure(found != nullptr, "a panel's cloth is in the job");
    return *found;
}

const Cloth &Job::clothOf(const Cut &cut) const {
    const Panel *cutPanel = panel(cut.panel);
    if (!cut.cloth && cutPanel) return clothOf(*cutPanel);
    const Cloth *found = cut.cloth ? cloth(*cut.cloth) : cloths.empty() ? nullptr : &cloths.front();
    ensure(found != nullptr, "a cut's cloth is in the job");
    return *found;
}

} // namespace boltwright
