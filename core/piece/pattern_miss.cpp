#include "core/piece/pattern_miss.h"

#include <algorithm>

namespace boltwright {

std::optional<PatternMiss> missOf(const Job &job, const std::vector<LaidCut> &laid, const PhaseLink &link) {
    const LaidCut &a = laid[std::size_t(link.a)], &b = laid[std::size_t(link.b)];
    if (!a.panel || !b.panel) return std::nullopt;
    const Cloth &cloth = job.clothOf(*a.cut);
    if (&job.clothOf(*b.cut) != &cloth) return PatternMiss{PatternMiss::Why::OtherCloth, {}};
    if (a.cut->turn != b.cut->turn) return PatternMiss{PatternMiss::Why::Turned, {}};
    const auto here = cloth.latticeOn(a.cut->on), there = cloth.latticeOn(b.cut->on);
    if (!here || !there) return std::nullopt;
    const ClothPoint mine = a.at(link.atA);
    const ClothPoint theirs = b.at(link.atB) + (here->motif() - there->motif()); // as if on the same sheet
    const PlaceSet places = PlaceSet::inPhaseWith(*here, theirs);
    constexpr Length tolerance = Length::ticks(4); // that of a place or motif in the contract
    if (places.holds(mine, tolerance)) return std::nullopt;
    const Vector off = places.nearest(mine) - mine;
    return PatternMiss{PatternMiss::Why::OffPattern, std::max(abs(off.x), abs(off.y))};
}

std::vector<PhaseLink> linksAskedFor(const Job &job, Layout layout) {
    std::erase_if(layout.conceded, [](const Concession &c) { return c.kind == Concession::Kind::Uncentre; });
    return phaseLinks(job, layout);
}

} // namespace boltwright
