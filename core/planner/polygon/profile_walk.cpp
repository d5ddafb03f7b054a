#include "core/planner/polygon/profile_walk.h"

#include "core/planner/polygon/ticks.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace boltwright::planner {
namespace {

/// The greatest y of a convex shape in the column of x, or nothing to clear.
double topAt(const ConvexNoFit &shape, double x) {
    double top = -1e300;
    for (std::size_t i = 0; i < shape.corners.size(); ++i) {
        const auto &a = shape.corners[i], &b = shape.corners[(i + 1) % shape.corners.size()];
        if ((a.x < x && b.x < x) || (a.x > x && b.x > x)) continue;
        if (a.x == b.x)
            top = std::max({top, a.y, b.y});
        else
            top = std::max(top, a.y + (b.y - a.y) * ((x - a.x) / (b.x - a.x)));
    }
    return top;
}

bool layAlike(const Item &a, const Item &b) {
    return a.group == b.group && a.hidden == b.hidden &&
           std::equal(a.options.begin(), a.options.end(), b.options.begin(), b.options.end(),
                      [](const Option &p, const Option &q) {
                          return p.sheet == q.sheet && p.outline == q.outline && p.turn == q.turn &&
                                 p.places == q.places && p.anchor == q.anchor;
                      });
}

constexpr std::size_t lateSteps = 300; // how far back a change is compared (late acceptance: Burke & Bykov 2017)

constexpr int openings = 4;

constexpr int bothSidesAndTop = 7; // of `flush`: there is hardly a better fit

double startRank(const Rims &r, int start) {
    switch (start) {
    case 0:
        return r.area;
    case 1:
        return r.width;
    case 2:
        return r.height;
    default:
        return r.width + r.height;
    }
}

} // namespace

ProfileWalk::ProfileWalk(const Model &model, std::uint64_t seed)
    : m_model(model), m_instance(model.instance), m_random(seed), m_sharing(model, m_random),
      m_at(model.instance.items.size()) {
    for (const Outline &o : m_instance.outlines) m_rims.emplace_back(o, m_instance.gap);
    const ClothBox room = boxOf(m_instance.sheets[0].room);
    m_left = toTicks(room.low.x);
    m_right = toTicks(room.high.x);
    double area = 0;
    for (const Item &item : m_instance.items) {
        double narrowest = m_right - m_left;
        for (const Option &o : item.options) narrowest = std::min(narrowest, m_rims[std::size_t(o.outline)].width);
        m_widths.push_back(narrowest);
        area += m_rims[std::size_t(item.options[0].outline)].area;
        m_byWidth.push_back(int(m_byWidth.size()));
    }
    std::stable_sort(m_byWidth.begin(), m_byWidth.end(),
                     [&](int a, int b) { return m_widths[std::size_t(a)] < m_widths[std::size_t(b)]; });
    m_smallLoss = area / double(m_instance.items.size()) / 32;
    m_late.assign(lateSteps, 0);
    m_order.resize(m_instance.items.size());
    for (std::size_t i = 0; i < m_instance.items.size(); ++i) {
        std::size_t first = 0;
        while (!layAlike(m_instance.items[first], m_instance.items[i])) ++first;
        m_alike.push_back(int(first));
    }
    m_seen.assign(m_instance.items.size(), 0);
    std::iota(m_order.begin(), m_order.end(), 0);
    m_limit = m_end = m_model.ceiling + 1;
    // A phase is looked for near the lower end: further up the pattern only repeats.
    double height = 0, step = 0;
    for (const Rims &r : m_rims) height = std::max(height, r.height);
    if (const auto &lattice = m_instance.sheets[0].lattice) step = toTicks(lattice->along());
    m_sharing.setTop(std::min(m_model.ceiling, m_model.bottom + height + 3 * step));
    for (int g = 0; g < int(m_instance.groups.size()); ++g) m_sharing.regroup(g);
}

/// The first y from `y` upwards, among the places allowed, where the sheet itself has nothing in the way.
double ProfileWalk::clearOfSheet(int item, const Option &option, const PlaceSet &places, double x, double y) const {
    const NoFit &inTheWay =
        m_model.noFits.onSheet(option.sheet, option.outline, m_instance.items[std::size_t(item)].hidden);
    for (bool moved = true; moved;) {
        if (!places.freeY()) y = toTicks(places.nextY(toLength(x), toLength(y)));
        moved = false;
        for (const ConvexNoFit &part : inTheWay.parts)
            if (part.depth(x, y) > 0) {
                y = std::max(y + 1, std::ceil(topAt(part, x) - 1e-6));
                moved = true;
            }
    }
    return y;
}

void ProfileWalk::tryItem(int item, std::size_t notch, double end, Fit &best) {
    // Items are tried in order, and an equal fit does not replace an earlier one.
    const auto &pieces = m_profile.pieces();
    const Profile::Piece &floor = pieces[notch];
    const double level = std::min(floor.y0, floor.y1);
    for (int o : m_model.choices[std::size_t(item)]) {
        const Option &option = m_instance.items[std::size_t(item)].options[std::size_t(o)];
        const auto &places = m_sharing.placesOf(item, o);
        if (!places) continue;
        const Rims &rims = m_rims[std::size_t(option.outline)];
        m_tries.clear();
        auto aim = [&](double x) {
            x = std::clamp(x, m_left, m_right - rims.width);
            if (places->freeX())
                m_tries.push_back(x);
            else
                for (Length allowed : {places->previousX(toLength(x)), places->nextX(toLength(x))})
                    if (toTicks(allowed) >= m_left && toTicks(allowed) + rims.width <= m_right)
                        m_tries.push_back(toTicks(allowed));
        };
        if (rims.width > m_right - m_left || level + rims.height > end) continue;
        m_profile.aimAtNotch(rims, notch, aim);
        std::sort(m_tries.begin(), m_tries.end());
        m_tries.erase(std::unique(m_tries.begin(), m_tries.end()), m_tries.end());
        for (double x : m_tries) {
            if (x >= floor.x1 || x + rims.width <= floor.x0) continue;
            // A level item on a level floor needs no looking; beyond the floor it would hang in the air.
            const bool within = x >= floor.x0 && x + rims.width <= floor.x1;
            const bool plain = rims.levelBelow && floor.y0 == floor.y1;
            if (plain && !within) continue;
            const Profile::Rest rest =
                plain && within ? Profile::Rest{level, level * rims.width} : m_profile.drop(rims, x);
            double y = std::ceil(rest.y - 1e-6);
            if (y + rims.height > end) continue;
            y = clearOfSheet(item, option, *places, x, y);
            if (y + rims.height > end) continue;
            // What is lost: below the item, and beside it where nothing is narrow enough for the rest of the notch.
            double lost = rims.width * y + rims.underLower - rest.areaBelow;
            int flush = 0;
            auto beside = [&](double room, double wall) {
                if (room > 0 && room < m_narrowestLeft) lost += room * (std::min(wall, y + rims.height) - level);
                if (room == 0) flush += 2;
                if (room == 0 && wall == y + rims.height) flush += 3;
            };
            const double leftWall = notch > 0 ? pieces[notch - 1].y1 : 1e300,
                         rightWall = notch + 1 < pieces.size() ? pieces[notch + 1].y0 : 1e300;
            beside(std::max(0., x - floor.x0), leftWall);
            beside(std::max(0., floor.x1 - x - rims.width), rightWall);
            // Losses alike are equal, so that fit and order decide; a tick of rounding below it is none.
            lost = lost < rims.width ? 0 : 1 + std::max(0, std::ilogb(lost / m_smallLoss));
            if (best.item < 0 || lost < best.lost || (lost == best.lost && flush > best.flush))
                best = {item, o, x, y, lost, flush};
        }
    }
}

/// Lays the items of the order between the room's lower edge and `end`; returns the area laid, everything or not.
double ProfileWalk::layBelow(double end) {
    m_profile.reset(m_left, m_right, m_model.bottom);
    std::vector<int> left = m_order;
    double laid = 0;
    std::fill(m_at.begin(), m_at.end(), Where{});
    m_narrow = 0;
    while (!left.empty()) {
        const std::size_t notch = m_profile.lowest();
        const Profile::Piece &piece = m_profile.pieces()[notch];
        if (std::min(piece.y0, piece.y1) >= end) break;
        Fit best;
        ++m_notch;
        while (m_narrow < m_byWidth.size() && m_at[std::size_t(m_byWidth[m_narrow])].option >= 0) ++m_narrow;
        m_narrowestLeft = m_narrow < m_byWidth.size() ? m_widths[std::size_t(m_byWidth[m_narrow])] : 0;
        for (int item : left) {
            int &seen = m_seen[std::size_t(m_alike[std::size_t(item)])];
            if (seen == m_notch) continue; // one that lies exactly alike was tried
            seen = m_notch;
            tryItem(item, notch, end, best);
            if (best.item >= 0 && best.lost == 0 && best.flush >= bothSidesAndTop) break;
        }
        if (best.item < 0) {
            if (m_profile.pieces().size() == 1) break;
            m_profile.fill(notch);
            continue;
        }
        const Option &option = m_instance.items[std::size_t(best.item)].options[std::size_t(best.option)];
        const Rims &rims = m_rims[std::size_t(option.outline)];
        m_profile.cover(rims, best.x, best.y);
        m_at[std::size_t(best.item)] = {best.option, best.x, best.y};
        laid += rims.area;
        left.erase(std::find(left.begin(), left.end(), best.item));
    }
    ++m_moves;
    return left.empty() ? 1e300 : laid;
}

void ProfileWalk::keep() {
    double length = m_model.bottom;
    for (std::size_t i = 0; i < m_at.size(); ++i) {
        const Option &o = m_instance.items[i].options[std::size_t(m_at[i].option)];
        length = std::max(length, m_at[i].y + m_rims[std::size_t(o.outline)].height);
    }
    if (m_found && length >= m_length) return;
    m_found = true;
    m_length = length;
    m_best = m_at;
    mustBeat(length);
}

void ProfileWalk::mustBeat(double length) {
    if (length > m_limit) return;
    m_limit = length;
    m_end = std::min(m_end, std::max(m_bound, std::floor(m_model.bottom + (length - m_model.bottom) * 0.997)));
    m_end = std::min(m_end, m_limit - 1);
    m_laid = -1;
}

void ProfileWalk::mutate() {
    const int n = int(m_order.size());
    if (n < 2) return;
    for (int k = m_random.oneIn(4) ? 2 : 1; k > 0; --k) {
        const int a = m_random.below(n), b = m_random.below(n);
        if (m_random.oneIn(2))
            std::swap(m_order[std::size_t(a)], m_order[std::size_t(b)]);
        else if (a < b)
            std::rotate(m_order.begin() + a, m_order.begin() + a + 1, m_order.begin() + b + 1);
        else
            std::rotate(m_order.begin() + b, m_order.begin() + a, m_order.begin() + a + 1);
    }
    if (!m_instance.groups.empty() && m_random.oneIn(8))
        m_sharing.regroup(m_random.below(int(m_instance.groups.size())));
}

void ProfileWalk::lay(int opening) {
    std::iota(m_order.begin(), m_order.end(), 0);
    std::stable_sort(m_order.begin(), m_order.end(), [&](int a, int b) {
        auto rank = [&](int i) {
            return startRank(m_rims[std::size_t(m_instance.items[std::size_t(i)].options[0].outline)],
                             opening % openings);
        };
        return rank(a) > rank(b);
    });
    const double before = m_limit;
    if (layBelow(m_limit - 1) >= 1e300) keep();
    if (m_limit < before || m_kept.empty()) m_kept = m_order;
}

void ProfileWalk::run(std::int64_t moves, const std::function<bool()> &stop) {
    const std::int64_t end = m_moves + moves;
    while (m_moves < end && !stop() && !done()) {
        if (m_starts < openings) {
            lay(m_starts++);
            continue;
        }
        m_order = m_kept;
        const bool fresh = m_laid < 0;
        if (!fresh) mutate();
        const double laid = layBelow(m_end);
        if (fresh) std::fill(m_late.begin(), m_late.end(), laid);
        double &late = m_late[m_now];
        m_now = (m_now + 1) % m_late.size();
        if (laid >= m_laid || laid >= late) {
            m_laid = laid;
            m_kept = m_order;
        }
        late = m_laid;
        if (laid >= 1e300) keep();
    }
}

} // namespace boltwright::planner
