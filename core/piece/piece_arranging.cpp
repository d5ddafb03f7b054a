#include "core/piece/piece_arranging.h"

#include "core/geometry/convex_parts.h"
#include "core/geometry/exact.h"

#include <algorithm>
#include <utility>

namespace boltwright {
namespace {

using namespace literals;

constexpr Length spacing = 60_mm; // between what is not joined: enough to see that it is not

/// Geometry is written for the cloth; to look at a picture's shapes with it, they are lent that frame.
ClothRing lent(const PieceRing &ring) {
    ClothRing out;
    for (const PiecePoint &p : ring) out.push_back({p.x, p.y});
    return out;
}

/// Some edge of `a` has all of `b` on its outer side. For convex rings, the only way to lie apart is over an edge of
/// one of them (the theorem of the separating axis).
bool liesBeyondAnEdge(const ClothRing &a, const ClothRing &b) {
    for (std::size_t i = 0; i < a.size(); ++i) {
        const ClothPoint from = a[i], to = a[(i + 1) % a.size()];
        if (std::all_of(b.begin(), b.end(), [&](ClothPoint p) { return turning(from, to, p) <= 0; })) return true;
    }
    return false;
}

/// A copy's convex parts, to be asked many times.
struct Body {
    std::vector<ClothRing> parts;

    explicit Body(const PieceRing &outline) : parts(convexParts(withoutFlatCorners(lent(outline)))) {}
    Body movedBy(Vector by) const {
        Body body = *this;
        for (ClothRing &part : body.parts) part = moved(part, by);
        return body;
    }
    /// To touch is not to overlap.
    bool overlaps(const Body &other) const {
        for (const ClothRing &a : parts)
            for (const ClothRing &b : other.parts)
                if (!liesBeyondAnEdge(a, b) && !liesBeyondAnEdge(b, a)) return true;
        return false;
    }
};

/// Copies that are joined, each with its place in the group's own frame.
struct Group {
    struct Member {
        int copy;
        Vector at;
    };
    std::vector<Member> members;
    PieceBox box{};
};

class Grouping {
public:
    Grouping(const std::vector<StandingCopy> &copies, const std::vector<CopyJoin> &joins)
        : m_copies(copies), m_joins(joins), m_placed(copies.size(), false) {
        for (const StandingCopy &copy : copies) m_bodies.emplace_back(copy.outline);
    }

    std::vector<Group> groups() {
        std::vector<Group> all;
        for (int i = 0; i < int(m_copies.size()); ++i) {
            if (m_placed[std::size_t(i)]) continue;
            Group group = grownFrom(i);
            if (group.members.size() > 1 || m_copies[std::size_t(i)].wanted) all.push_back(std::move(group));
        }
        return all;
    }

private:
    Group grownFrom(int first) {
        Group group;
        add(group, first, {});
        for (std::size_t k = 0; k < group.members.size(); ++k) {
            const Group::Member member = group.members[k];
            for (const CopyJoin &join : m_joins) {
                const bool forwards = join.a == member.copy;
                if (!forwards && join.b != member.copy) continue;
                const int other = forwards ? join.b : join.a;
                if (m_placed[std::size_t(other)]) continue;
                const Vector step = forwards ? join.atA - join.atB : join.atB - join.atA;
                if (hasRoom(group, other, member.at + step)) add(group, other, member.at + step);
            }
        }
        return group;
    }

    bool hasRoom(const Group &group, int copy, Vector at) const {
        const Body body = m_bodies[std::size_t(copy)].movedBy(at);
        return std::none_of(group.members.begin(), group.members.end(), [&](const Group::Member &m) {
            return body.overlaps(m_bodies[std::size_t(m.copy)].movedBy(m.at));
        });
    }

    void add(Group &group, int copy, Vector at) {
        m_placed[std::size_t(copy)] = true;
        const PieceBox box = boxOf(moved(m_copies[std::size_t(copy)].outline, at));
        if (group.members.empty()) group.box = box;
        group.box.low = {std::min(group.box.low.x, box.low.x), std::min(group.box.low.y, box.low.y)};
        group.box.high = {std::max(group.box.high.x, box.high.x), std::max(group.box.high.y, box.high.y)};
        group.members.push_back({copy, at});
    }

    const std::vector<StandingCopy> &m_copies;
    const std::vector<CopyJoin> &m_joins;
    std::vector<bool> m_placed;
    std::vector<Body> m_bodies;
};

/// Rows from the top down, each in the middle; the whole a little wider than high, so that copies which belong side by
/// side mostly find room in one row.
class Rows {
public:
    Rows(const std::vector<Group> &groups, Arrangement &arrangement) : m_arrangement(arrangement) {
        Wide area = 0;
        for (const Group &g : groups) {
            area += Wide((g.box.width() + spacing).ticks()) * (g.box.height() + spacing).ticks();
            m_room = std::max(m_room, g.box.width());
        }
        m_room = std::max(m_room, Length::ticks(rootDown(area * 7 / 5)));
    }

    /// Side by side, in the row begun or, where that keeps them together, in one of their own.
    void stand(const std::vector<const Group *> &together) {
        if (!m_row.empty() && m_width + spacing + widthOf(together) > m_room) endRow();
        for (const Group *group : together) {
            if (!m_row.empty() && m_width + spacing + group->box.width() > m_room) endRow();
            m_width += (m_row.empty() ? Length{} : spacing) + group->box.width();
            m_row.push_back(group);
        }
    }

    void endRow() {
        Length x = Length::ticks(-m_width.ticks() / 2), height;
        for (const Group *group : m_row) {
            const Vector to = PiecePoint{x, m_top} - PiecePoint{group->box.low.x, group->box.high.y};
            for (const Group::Member &m : group->members) {
                m_arrangement.origins[std::size_t(m.copy)] = PiecePoint{} + m.at + to;
                m_arrangement.joined[std::size_t(m.copy)] = group->members.size() > 1;
            }
            x += group->box.width() + spacing;
            height = std::max(height, group->box.height());
        }
        if (!m_row.empty()) m_top -= height + spacing;
        m_row.clear();
        m_width = {};
    }

private:
    static Length widthOf(const std::vector<const Group *> &together) {
        Length width = spacing * (std::int64_t(together.size()) - 1);
        for (const Group *group : together) width += group->box.width();
        return width;
    }

    Arrangement &m_arrangement;
    std::vector<const Group *> m_row;
    Length m_room, m_width, m_top;
};

} // namespace

Arrangement arranged(const std::vector<StandingCopy> &copies, const std::vector<CopyJoin> &joins) {
    Arrangement arrangement{std::vector<std::optional<PiecePoint>>(copies.size()), std::vector<bool>(copies.size())};
    const std::vector<Group> groups = Grouping(copies, joins).groups();
    Rows rows(groups, arrangement);
    for (const bool joined : {true, false}) {
        std::vector<const Group *> together; // of the same panel
        const auto panelOf = [&](const Group *g) { return copies[std::size_t(g->members.front().copy)].panel; };
        for (const Group &g : groups) {
            if ((g.members.size() > 1) != joined) continue;
            if (!together.empty() && panelOf(together.front()) != panelOf(&g)) rows.stand(std::exchange(together, {}));
            together.push_back(&g);
        }
        rows.stand(together);
        rows.endRow();
    }
    return arrangement;
}

} // namespace boltwright
