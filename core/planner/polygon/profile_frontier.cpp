#include "core/planner/polygon/profile_frontier.h"

#include "core/geometry/shape_ops.h"
#include "core/planner/polygon/ticks.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>
#include <utility>

namespace boltwright::planner {
namespace {

constexpr std::size_t firstWidth = 32, mostWidth = 8192;
constexpr std::size_t mostItems = 200;
/// Part layouts times items.
constexpr std::size_t mostPlaces = std::size_t(1) << 17;
/// Of what is offered, so many times the width are looked at closely, since some of them lead nowhere.
constexpr std::size_t kept = 3;
/// A notch may be left empty though something would fit, so often before the next item is laid.
constexpr int mostFilled = 2;

/// How much the waste to spare weighs against the area laid, by chance; and a little chance, so that no two runs are
/// alike.
constexpr std::array weights = {0.5, 1., 2., 4.};
constexpr double chance = 0.005;

/// How far from the best length an end may be, as a share of what that is above the bound.
constexpr double nearestEnd = -0.03, farthestEnd = 0.3;
/// With one end it is tried so often at most, each time wider, and so many layouts are enough.
constexpr int mostRuns = 6, enoughFound = 4;

/// The outline as it is seen when the cloth is filled from the bottom, the left, the top or the right.
Outline seenFrom(int side, const Outline &outline) {
    if (side == 0) return outline;
    ClothRing ring;
    for (ClothPoint p : outline.ring) {
        const Length x = p.x, y = p.y;
        if (side == 1) ring.push_back({y, x});
        if (side == 2) ring.push_back({x, outline.height - y});
        if (side == 3) ring.push_back({y, outline.width - x});
    }
    return makeOutline(counterClockwise(ring));
}

double areaOf(const std::vector<Profile::Piece> &pieces) {
    double sum = 0;
    for (const Profile::Piece &p : pieces) sum += (p.x1 - p.x0) * (p.y0 + p.y1) / 2;
    return sum;
}

double low(const Profile::Piece &p) { return std::min(p.y0, p.y1); }

} // namespace

ProfileFrontier::ProfileFrontier(const Model &model, std::uint64_t seed, int number)
    : m_model(model), m_instance(model.instance), m_random(seed), m_number(number),
      m_layout(model.instance.items.size()) {
    for (int i = 0; i < int(m_instance.items.size()); ++i) {
        const auto outlines = [&](int item) {
            std::vector<int> all;
            for (int o : m_model.choices[std::size_t(item)])
                all.push_back(m_instance.items[std::size_t(item)].options[std::size_t(o)].outline);
            return all;
        };
        const auto same = std::find_if(m_kinds.begin(), m_kinds.end(),
                                       [&](const Kind &k) { return outlines(k.items.front()) == outlines(i); });
        if (same != m_kinds.end())
            same->items.push_back(i);
        else
            m_kinds.push_back({{i}, 0, m_random.next()});
    }
    for (std::size_t side = 0; side < m_rims.size(); ++side) {
        for (const Outline &o : m_instance.outlines) m_rims[side].emplace_back(seenFrom(int(side), o), m_instance.gap);
        for (int k = 0; k < int(m_kinds.size()); ++k) {
            const int item = m_kinds[std::size_t(k)].items.front();
            for (int o : m_model.choices[std::size_t(item)]) {
                const int outline = m_instance.items[std::size_t(item)].options[std::size_t(o)].outline;
                m_shapes[side].push_back({k, o, &m_rims[side][std::size_t(outline)]});
                m_kinds[std::size_t(k)].area = double(m_instance.outlines[std::size_t(outline)].area);
            }
        }
    }
    for (const Kind &k : m_kinds) m_itemArea += k.area * double(k.items.size());
    m_widest = std::max(firstWidth, std::min(mostWidth, mostPlaces / m_instance.items.size()));
}

bool ProfileFrontier::applies(const Model &model) {
    const Instance &i = model.instance;
    if (!model.open || !i.groups.empty() || !i.fixed.empty() || !i.sheets[0].flaws.empty() ||
        !isUprightRectangle(i.sheets[0].room) || i.items.size() > mostItems)
        return false;
    return std::all_of(i.items.begin(), i.items.end(), [](const Item &item) {
        return std::all_of(item.options.begin(), item.options.end(),
                           [](const Option &o) { return o.places.freeX() && o.places.freeY(); });
    });
}

void ProfileFrontier::aim(double best, double bound) {
    m_end = std::floor(best + (best - bound) * (nearestEnd + (farthestEnd - nearestEnd) * m_random.share()));
    m_runsLeft = 1 + m_random.below(1 + m_random.below(mostRuns));
    m_found = 0;
    m_width = std::max(firstWidth, m_width / 4);
}

void ProfileFrontier::begin() {
    m_tries += triesAMove; // however little there is to try
    m_side = m_number++ % int(m_rims.size());
    const ClothBox room = boxOf(m_instance.sheets[0].room);
    m_across = toTicks(room.width());
    m_up = m_end - m_model.bottom;
    if (m_side % 2 == 1) std::swap(m_across, m_up);
    // Profiles reach a gap beyond what is laid.
    m_spare = m_across * (m_up + toTicks(m_instance.gap)) - m_itemArea;
    m_weight = m_spare > 0 ? weights[std::size_t(m_random.below(int(weights.size())))] / m_spare : 0;
    m_level.assign(1, Node{});
    m_level.front().pieces = 1;
    m_pool.assign(1, {0, m_across, 0, 0});
    m_left.clear();
    for (const Kind &kind : m_kinds) m_left.push_back(Left(kind.items.size()));
    m_places.assign(1, {Place{}});
    beginLevel();
}

void ProfileFrontier::beginLevel() {
    m_children.clear();
    m_worst = std::numeric_limits<float>::infinity();
    m_at = m_growing = 0;
    m_grows = false;
}

bool ProfileFrontier::step(double best, double bound) {
    if (m_level.empty()) {
        if (m_runsLeft <= 0 || m_found >= enoughFound) aim(best, bound);
        --m_runsLeft;
        begin();
    }
    if (!grows()) return false;
    ++m_found;
    return true;
}

bool ProfileFrontier::grows() {
    if (!m_grows) {
        if (m_at < m_level.size()) expand(m_at++);
        if (m_children.size() > m_width * 8) keepBest(m_width * kept);
        if (m_at < m_level.size()) return false;
        keepBest(m_width * kept);
        m_grows = true;
        m_nextLevel.clear();
        m_nextPool.clear();
        m_nextLeft.clear();
        m_known.clear(m_width);
        m_places.emplace_back();
        return false;
    }
    for (int k = 0; k < 16 && m_growing < m_children.size() && m_nextLevel.size() < m_width; ++k) {
        if (!grow(m_children[m_growing++]) || m_places.size() <= m_instance.items.size()) continue;
        read();
        if (m_found + 1 >= enoughFound) m_level.clear();
        return true;
    }
    if (m_growing == m_children.size() || m_nextLevel.size() >= m_width) endLevel();
    return false;
}

void ProfileFrontier::endLevel() {
    std::swap(m_level, m_nextLevel);
    std::swap(m_pool, m_nextPool);
    std::swap(m_left, m_nextLeft);
    if (m_places.size() > m_instance.items.size()) m_level.clear();
    if (m_level.empty())
        m_width = std::min(m_width * 2, m_widest);
    else
        beginLevel();
}

/// Fills a notch; returns the area that takes.
double ProfileFrontier::fill(std::size_t notch) {
    const double before = areaOf(m_profile.pieces());
    m_profile.fill(notch);
    return areaOf(m_profile.pieces()) - before;
}

/// All that a part layout could become by one item more in its lowest notch, or in the next where that is given up.
void ProfileFrontier::expand(std::size_t at) {
    const Node &node = m_level[at];
    m_profile.load(m_pool.data() + node.firstPiece, std::size_t(node.pieces));
    double waste = node.waste;
    for (int filled = 0, given = 0; waste <= m_spare; ++filled) {
        const std::size_t notch = m_profile.lowest();
        if (low(m_profile.pieces()[notch]) >= m_up) return;
        if (offer(at, notch, waste, filled) && ++given > mostFilled) return;
        if (m_profile.pieces().size() == 1) return;
        waste += fill(notch);
    }
}

bool ProfileFrontier::offer(std::size_t at, std::size_t notch, double waste, int filled) {
    const auto &pieces = m_profile.pieces();
    const Profile::Piece floor = pieces[notch];
    const double level = low(floor);
    const Left *left = &m_left[at * m_kinds.size()];
    double narrowest = 1e300;
    for (const Shape &s : m_shapes[std::size_t(m_side)])
        if (left[s.kind] > 0) narrowest = std::min(narrowest, s.rims->width);
    const double leftWall = notch > 0 ? pieces[notch - 1].y1 : 1e300,
                 rightWall = notch + 1 < pieces.size() ? pieces[notch + 1].y0 : 1e300;
    bool any = false;
    const auto &shapes = m_shapes[std::size_t(m_side)];
    for (std::size_t s = 0; s < shapes.size(); ++s) {
        if (left[shapes[s].kind] == 0) continue;
        const Rims &rims = *shapes[s].rims;
        if (rims.width > m_across || level + rims.height > m_up) continue;
        ++m_tries;
        m_xs.clear();
        m_profile.settlings(rims, floor.x0 - rims.width, floor.x1, m_xs);
        auto aim = [&](double x) { m_xs.push_back(std::clamp(x, 0., m_across - rims.width)); };
        m_profile.aimAtNotch(rims, notch, aim);
        for (double &x : m_xs) x = std::nearbyint(x);
        std::sort(m_xs.begin(), m_xs.end());
        m_xs.erase(std::unique(m_xs.begin(), m_xs.end()), m_xs.end());
        for (double x : m_xs) {
            if (x >= floor.x1 || x + rims.width <= floor.x0 || x < 0 || x + rims.width > m_across) continue;
            const Profile::Rest rest = m_profile.drop(rims, x);
            const double y = std::ceil(rest.y - 1e-6);
            if (y + rims.height > m_up) continue;
            double wasted = waste + rims.width * y + rims.underLower - rest.areaBelow;
            auto beside = [&](double room, double wall) {
                if (room > 0 && room < narrowest)
                    wasted += room * std::max(0., std::min(wall, y + rims.height) - level);
            };
            if (floor.y0 == floor.y1) {
                beside(x - floor.x0, leftWall);
                beside(floor.x1 - x - rims.width, rightWall);
            }
            if (wasted > m_spare) continue;
            any = true;
            const double placed = m_level[at].placed + m_kinds[std::size_t(shapes[s].kind)].area;
            const auto guide = float((m_weight * wasted + 1 + chance * m_random.share()) * m_itemArea / placed);
            if (guide > m_worst) continue;
            m_children.push_back({guide, {std::int32_t(at), std::int32_t(s), filled, x, y}});
        }
    }
    return any;
}

void ProfileFrontier::keepBest(std::size_t count) {
    const auto better = [](const Child &a, const Child &b) {
        return std::tie(a.guide, a.place.parent, a.place.shape, a.place.x, a.place.filled) <
               std::tie(b.guide, b.place.parent, b.place.shape, b.place.x, b.place.filled);
    };
    m_worst = keepBestOf(m_children, count, better, m_worst);
    if (m_at == m_level.size()) std::sort(m_children.begin(), m_children.end(), better);
}

bool ProfileFrontier::grow(const Child &child) {
    const Place &place = child.place;
    const std::size_t kinds = m_kinds.size();
    const Node &parent = m_level[std::size_t(place.parent)];
    const Shape &shape = m_shapes[std::size_t(m_side)][std::size_t(place.shape)];
    m_profile.load(m_pool.data() + parent.firstPiece, std::size_t(parent.pieces));
    for (int k = 0; k < place.filled; ++k) m_profile.fill(m_profile.lowest());
    m_profile.cover(*shape.rims, place.x, place.y);
    const Kind &kind = m_kinds[std::size_t(shape.kind)];
    Node node = parent;
    node.placed += kind.area;
    node.print += kind.print;
    node.waste = areaOf(m_profile.pieces()) - node.placed;
    if (node.waste > m_spare || isKnown(node.print)) return false;
    const auto from = m_left.begin() + std::ptrdiff_t(std::size_t(place.parent) * kinds);
    m_nextLeft.insert(m_nextLeft.end(), from, from + std::ptrdiff_t(kinds));
    Left *left = &m_nextLeft[m_nextLeft.size() - kinds];
    --left[shape.kind];
    if (node.waste + lookAhead(left) > m_spare) {
        m_nextLeft.resize(m_nextLeft.size() - kinds);
        return false;
    }
    node.firstPiece = std::int32_t(m_nextPool.size());
    node.pieces = std::int32_t(m_profile.pieces().size());
    m_nextPool.insert(m_nextPool.end(), m_profile.pieces().begin(), m_profile.pieces().end());
    m_nextLevel.push_back(node);
    m_places.back().push_back(place);
    return true;
}

/// What is wasted whatever comes: the room above the profile where nothing left is low enough.
double ProfileFrontier::lookAhead(const Left *left) const {
    double least = 1e300;
    for (const Shape &s : m_shapes[std::size_t(m_side)])
        if (left[s.kind] > 0) least = std::min(least, s.rims->height);
    double lost = 0;
    for (const Profile::Piece &p : m_profile.pieces())
        if (low(p) + least > m_up && low(p) < m_up) lost += (p.x1 - p.x0) * std::max(0., m_up - (p.y0 + p.y1) / 2);
    return least < 1e300 ? lost : 0;
}

/// Of the profile at hand with these items laid; from now on it is.
bool ProfileFrontier::isKnown(std::uint64_t print) {
    for (const Profile::Piece &p : m_profile.pieces()) {
        const auto x = std::uint32_t(std::int32_t(p.x1 / 4)), y0 = std::uint32_t(std::int32_t(p.y0 / 4)),
                   y1 = std::uint32_t(std::int32_t(p.y1 / 4));
        print = (print ^ (std::uint64_t(x) << 32 | y0)) * 0x9e3779b97f4a7c15u;
        print ^= print >> 29;
        print = (print ^ y1) * 0x9e3779b97f4a7c15u;
        print ^= print >> 31;
    }
    return !m_known.add(print);
}

/// The layout that the last node grown is.
void ProfileFrontier::read() {
    const ClothBox room = boxOf(m_instance.sheets[0].room);
    std::vector<std::size_t> used(m_kinds.size());
    std::size_t at = m_places.back().size() - 1;
    for (std::size_t level = m_places.size() - 1; level > 0; --level) {
        const Place &place = m_places[level][at];
        at = std::size_t(place.parent);
        const Shape &shape = m_shapes[std::size_t(m_side)][std::size_t(place.shape)];
        const int item = m_kinds[std::size_t(shape.kind)].items[used[std::size_t(shape.kind)]++];
        double x = place.x, y = place.y;
        if (m_side >= 2) y = m_up - y - shape.rims->height;
        if (m_side % 2 == 1) std::swap(x, y);
        m_layout[std::size_t(item)] = {shape.option, x + toTicks(room.low.x), y + m_model.bottom};
    }
    if (m_side != 2) return;
    // Filled from the end: what is left over lies at the beginning.
    double spare = 1e300;
    for (const Where &w : m_layout) spare = std::min(spare, w.y - m_model.bottom);
    for (Where &w : m_layout) w.y -= spare;
}

} // namespace boltwright::planner
