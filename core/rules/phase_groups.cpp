#include "core/rules/phase_groups.h"

#include "core/geometry/laying.h"

#include <numeric>
#include <optional>

namespace boltwright {
namespace {

class Grouping {
public:
    Grouping(const Job &job, const Layout &layout, const std::vector<PhaseLink> &links)
        : m_job(job), m_layout(layout), m_links(links) {}

    std::vector<PhaseGroup> groups() const {
        std::vector<int> root(m_layout.cuts.size());
        std::iota(root.begin(), root.end(), 0);
        const auto find = [&](int i) {
            while (root[std::size_t(i)] != i) i = root[std::size_t(i)] = root[std::size_t(root[std::size_t(i)])];
            return i;
        };
        for (const PhaseLink &l : m_links) root[std::size_t(find(l.b))] = find(l.a);
        std::vector<PhaseGroup> groups;
        std::vector<std::vector<PhaseLink>> linksOf; // each group's own, so that many small groups are not many walks
        std::map<int, int> groupOfRoot;
        std::vector<bool> isIn(m_layout.cuts.size());
        for (const PhaseLink &l : m_links) {
            const auto [it, added] = groupOfRoot.try_emplace(find(l.a), int(groups.size()));
            const auto group = std::size_t(it->second);
            if (added) groups.emplace_back(), linksOf.emplace_back();
            linksOf[group].push_back(l);
            for (int i : {l.a, l.b}) {
                if (isIn[std::size_t(i)]) continue;
                isIn[std::size_t(i)] = true;
                groups[group].cuts.push_back(i);
            }
        }
        for (std::size_t i = 0; i < groups.size(); ++i)
            for (Turn turn : allTurns) anchorsOf(groups[i], linksOf[i], turn);
        return groups;
    }

private:
    const Cut &cut(int i) const { return m_layout.cuts[std::size_t(i)]; }

    Vector laidAt(int i, PanelPoint p, Turn turn) const {
        const PanelRing outline = outlineOf(*m_job.panel(cut(i).panel), cut(i), m_layout);
        return Laying(outline, turn, cut(i).mirrored, ClothPoint{}).at(p) - ClothPoint{};
    }

    /// Walks the links from the group's first cut. b's anchor is what makes both linked points one phase.
    void anchorsOf(PhaseGroup &group, const std::vector<PhaseLink> &links, Turn turn) const {
        std::map<int, Vector> anchor = {{group.cuts.front(), Vector{}}};
        const Cloth &cloth = m_job.clothOf(cut(group.cuts.front()));
        const auto lattice = cloth.pattern ? std::optional<Lattice>(Lattice(*cloth.pattern, {})) : std::nullopt;
        bool grew = true;
        while (grew) {
            grew = false;
            for (const PhaseLink &l : links) {
                const bool a = anchor.count(l.a), b = anchor.count(l.b);
                if (!a && !b) continue;
                const Vector onA = laidAt(l.a, l.atA, turn), onB = laidAt(l.b, l.atB, turn);
                if (a && b) {
                    const Vector off = anchor[l.b] - onB - (anchor[l.a] - onA);
                    if (lattice && !PlaceSet::inPhaseWith(*lattice, {}).holds(ClothPoint{} + off, Length::ticks(4)))
                        return;
                } else if (a) {
                    anchor[l.b] = onB - onA + anchor[l.a];
                    grew = true;
                } else {
                    anchor[l.a] = onA - onB + anchor[l.b];
                    grew = true;
                }
            }
        }
        std::vector<Vector> list;
        for (int i : group.cuts) list.push_back(anchor[i]);
        group.anchors[turn] = std::move(list);
    }

    const Job &m_job;
    const Layout &m_layout;
    const std::vector<PhaseLink> &m_links;
};

} // namespace

std::vector<PhaseGroup> phaseGroups(const Job &job, const Layout &layout, const std::vector<PhaseLink> &links) {
    return Grouping(job, layout, links).groups();
}

std::vector<PhaseGroup> phaseGroups(const Job &job, const Layout &layout) {
    return phaseGroups(job, layout, phaseLinks(job, layout));
}

} // namespace boltwright
