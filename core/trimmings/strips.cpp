#include "core/trimmings/strips.h"

#include "core/geometry/shape_ops.h"
#include "core/rules/cut_shape.h"
#include "core/trimmings/strip_rows.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <tuple>

namespace boltwright {
namespace {

/// One bolt or remnant: where strips may lie, and what is in their way; all convex.
struct Sheet {
    std::optional<std::string> on;
    std::vector<ClothRing> rooms; ///< counter-clockwise, simple
    std::vector<ClothRing> taken;
};

/// A disc as 64 corners around it: at most an eighth of a hundredth too large, and exact to the sides and at 45°, where
/// most strips lie beside a cut.
ClothRing discAround(Length radius) {
    constexpr int corners = 64;
    const double step = std::numbers::pi / corners, reach = double(radius.ticks()) / std::cos(step);
    // A corner is rounded away from the middle, but not for the noise in the last places.
    const auto away = [](double a) {
        return Length::ticks(std::int64_t(a < 0 ? std::floor(a + 1e-4) : std::ceil(a - 1e-4)));
    };
    ClothRing ring;
    for (int i = 0; i < corners; ++i) {
        const double angle = (2 * i + 1) * step;
        ring.push_back({away(reach * std::cos(angle)), away(reach * std::sin(angle))});
    }
    return convexHull(ring);
}

/// What lies nearer than `around` to the ring is taken.
void take(Sheet &sheet, const ClothRing &ring, Length around) {
    for (const ClothRing &part : convexParts(counterClockwise(ring)))
        // A disc is its own mirror image, so that the no-fit polygon is the part with the disc moved along its outline.
        sheet.taken.push_back(around == Length{} ? part : noFit(part, discAround(around)));
}

/// The bolt up to its last cut; none where nothing is cut from it.
std::vector<ClothRing> roomsOf(const Job &job, const Layout &layout, const Cloth &cloth,
                               const std::optional<std::string> &on) {
    const ClothRing room = roomOf(cloth, on);
    if (room.empty()) return {};
    if (!cloth.bolt) return inset(room, cloth.edge);
    ClothBox box = boxOf(room);
    Length last;
    for (const LaidCut &laid : layAll(job, layout))
        if (laid.panel && &job.clothOf(*laid.cut) == &cloth) last = std::max(last, laid.box.high.y);
    box.high.y = std::min(box.high.y, last);
    if (box.width() <= Length{} || box.height() <= Length{}) return {};
    return {ringOf(box)};
}

Sheet sheetOf(const Job &job, const Layout &layout, const Cloth &cloth, const std::optional<std::string> &on) {
    Sheet sheet{on, roomsOf(job, layout, cloth, on), {}};
    for (const LaidCut &laid : layAll(job, layout))
        if (laid.panel && laid.cut->on == on && &job.clothOf(*laid.cut) == &cloth) take(sheet, laid.ring, job.gap);
    for (const Flaw &flaw : flawsOn(cloth, on)) take(sheet, flaw.outline, {});
    return sheet;
}

std::vector<StripDirection> directionsOf(StripRun run) {
    switch (run) {
    case StripRun::UpRoll:
        return {StripDirection::UpRoll};
    case StripRun::Across:
        return {StripDirection::Across};
    case StripRun::Bias:
        return {StripDirection::Rising, StripDirection::Falling};
    }
    return {};
}

Length totalOf(const std::vector<Strip> &strips) {
    Length total;
    for (const Strip &strip : strips) total += strip.length;
    return total;
}

/// Round after round the best rows of one direction; what was chosen is taken cloth for the next.
std::vector<Strip> stripsOn(Sheet sheet, const ClothRing &room, const StripWish &wish) {
    for (const ClothRing &pocket : pockets(room)) take(sheet, pocket, {});
    const ClothRing hull = convexHull(room);
    std::vector<Strip> chosen;
    while (true) {
        std::vector<Strip> best;
        for (StripDirection direction : directionsOf(wish.run)) {
            std::vector<Strip> rows = bestRows(hull, sheet.taken, direction, wish.width, wish.shortest);
            if (totalOf(rows) > totalOf(best)) best = std::move(rows);
        }
        if (best.empty()) return chosen;
        for (Strip &strip : best) {
            sheet.taken.push_back(strip.ring);
            strip.on = sheet.on;
            chosen.push_back(std::move(strip));
        }
    }
}

void addSheet(StripsLeft &left, Sheet sheet, const StripWish &wish, const std::vector<Strip> &taken) {
    for (const Strip &strip : taken)
        if (strip.on == sheet.on) sheet.taken.push_back(strip.ring);
    std::vector<Strip> all;
    for (const ClothRing &room : sheet.rooms) {
        auto strips = stripsOn(sheet, room, wish);
        all.insert(all.end(), std::make_move_iterator(strips.begin()), std::make_move_iterator(strips.end()));
    }
    std::sort(all.begin(), all.end(), [](const Strip &a, const Strip &b) {
        const ClothPoint p = boxOf(a.ring).low, q = boxOf(b.ring).low;
        return std::tie(p.y, p.x) < std::tie(q.y, q.x);
    });
    left.total += totalOf(all);
    left.strips.insert(left.strips.end(), std::make_move_iterator(all.begin()), std::make_move_iterator(all.end()));
}

} // namespace

StripsLeft stripsFromScraps(const Job &job, const Layout &layout, const StripWish &wish,
                            const std::vector<Strip> &taken) {
    StripsLeft left;
    const Cloth *cloth = job.cloth(wish.cloth);
    if (!cloth || wish.width <= Length{} || wish.shortest <= Length{}) return left;
    if (cloth->bolt) addSheet(left, sheetOf(job, layout, *cloth, std::nullopt), wish, taken);
    for (const Remnant &remnant : cloth->remnants)
        addSheet(left, sheetOf(job, layout, *cloth, remnant.id), wish, taken);
    return left;
}

Length joinedLength(const StripsLeft &strips, Length join) {
    if (strips.strips.empty()) return {};
    return strips.total - join * std::int64_t(strips.strips.size() - 1);
}

std::optional<StripsLeft> enoughFor(const StripsLeft &strips, Length need, Length join) {
    std::vector<Strip> longest = strips.strips;
    std::stable_sort(longest.begin(), longest.end(),
                     [](const Strip &a, const Strip &b) { return a.length > b.length; });
    StripsLeft enough;
    for (Strip &strip : longest) {
        if (joinedLength(enough, join) >= need) break;
        enough.total += strip.length;
        enough.strips.push_back(std::move(strip));
    }
    if (joinedLength(enough, join) < need) return std::nullopt;
    return enough;
}

} // namespace boltwright
