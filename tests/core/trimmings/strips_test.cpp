#include "core/rules/cut_shape.h"
#include "core/trimmings/strips.h"
#include "tests/core/geometry/geos.h"
#include "tests/core/geometry/random_rings.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

#include <array>
#include <cmath>
#include <numbers>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

StripWish wish(StripRun run, Length width, Length shortest) { return {"body", width, shortest, run}; }

std::vector<ClothRing> cutRings(const Job &job, const Layout &layout) {
    std::vector<ClothRing> rings;
    for (const LaidCut &laid : layAll(job, layout)) rings.push_back(laid.ring);
    return rings;
}

/// Rows of panels as somebody in a hurry would lay them: rectangles, trapezoids and hollow shapes, some on the bias.
struct Scraps {
    Job job;
    Layout layout;
};
Scraps randomScraps(Length widest, Length longest) {
    const auto some = [](int least, int most) { return *rc::gen::inRange(least, most + 1); };
    const Length width = Length::ticks(some(int(widest.ticks() / 2), int(widest.ticks())));
    Scraps s;
    s.job = jobOf(bolt(width), {}, Length::ticks(some(0, 4) * 1016));
    Cloth &cloth = s.job.cloths[0];
    const bool remnant = some(0, 3) == 0;
    if (remnant) {
        const auto ring = random_rings::simple(int(longest.ticks() / 2), 9);
        cloth = remnantCloth(moved(ring, {longest, longest}));
        cloth.edge = Length::ticks(some(0, 3) * 1016);
    } else {
        cloth.selvage = Length::ticks(some(0, 2) * 2032);
        cloth.bolt->square = Length::ticks(some(0, 2) * 4064);
    }
    const auto small = [&] { return Length::ticks(some(4 * 8128, int(width.ticks() / 2))); };
    Length x, y = remnant ? 0_in : cloth.bolt->square, tallest;
    for (int i = some(1, 8); i > 0; --i) {
        Panel p = rectangle("P" + std::to_string(i), small(), small());
        const Length across = std::get<Rectangle>(p.shape).across, up = std::get<Rectangle>(p.shape).up;
        const int kind = some(0, 4);
        if (kind == 0) p.shape = Trapezoid{across, Length::ticks(across.ticks() * 2 / 3), up, {}};
        if (kind == 1) {
            const Length h = Length::ticks(across.ticks() / 2), v = Length::ticks(up.ticks() / 3);
            p.shape = PolygonShape{{{0_in, 0_in}, {across, 0_in}, {h, v}, {across, up}, {0_in, up}}};
        }
        Cut cut = cutAt(p.id, x, y, kind == 2 ? Turn::Deg45 : Turn::Deg0);
        const ClothBox box = lay(p, cut, s.layout).box;
        if (x + box.width() > width) {
            x = 0_in;
            y += tallest + s.job.gap;
            tallest = {};
        }
        if (y + box.height() > longest) break;
        cut.x = x + (remnant ? 0_in : cloth.selvage);
        cut.y = y;
        if (remnant) cut.on = "A";
        x += box.width() + s.job.gap;
        tallest = std::max(tallest, box.height());
        s.job.panels.push_back(std::move(p));
        s.layout.cuts.push_back(std::move(cut));
    }
    for (int i = some(0, 2); i > 0; --i) {
        const Vector to{Length::ticks(some(0, int(width.ticks()))), Length::ticks(some(0, int(longest.ticks())))};
        Flaw flaw{moved(random_rings::simple(2 * 8128, 6), to), {}, {}};
        (remnant ? cloth.remnants[0].flaws : cloth.bolt->flaws).push_back(std::move(flaw));
    }
    return s;
}

StripWish randomWish() {
    const Length width = *rc::gen::elementOf(std::vector<Length>{1_in, 1.5_in, 2_in, 4_cm});
    const Length shortest = *rc::gen::elementOf(std::vector<Length>{4_in, 8_in, 12_in, 15_in});
    return wish(*rc::gen::element(StripRun::UpRoll, StripRun::Across, StripRun::Bias), width, shortest);
}

Length lastCut(const Job &job, const Layout &layout) {
    Length last;
    for (const ClothRing &ring : cutRings(job, layout)) last = std::max(last, boxOf(ring).high.y);
    return last;
}

/// The cloth as far as it is used, whatever lies on it.
ClothRing usedRoom(const Scraps &s) {
    const Cloth &cloth = s.job.cloths[0];
    if (!cloth.bolt) return counterClockwise(cloth.remnants[0].outline);
    return ringOf(
        ClothBox{{cloth.selvage, cloth.bolt->square}, {cloth.bolt->width - cloth.selvage, lastCut(s.job, s.layout)}});
}

const std::vector<Flaw> &flawsOf(const Cloth &cloth) {
    return cloth.bolt ? cloth.bolt->flaws : cloth.remnants[0].flaws;
}

/// A rectangle of the wished width, its long sides at the wished angle, told from its corners alone.
void checkRectangle(const Strip &strip, const StripWish &wished) {
    RC_ASSERT(strip.ring.size() == 4u);
    RC_ASSERT(twiceArea(strip.ring) > 0);
    for (std::size_t i = 0; i < 4; ++i)
        RC_ASSERT(dot(strip.ring[(i + 1) % 4] - strip.ring[i], strip.ring[(i + 2) % 4] - strip.ring[(i + 1) % 4]) == 0);
    const auto longSide = [&](Vector v) {
        if (wished.run == StripRun::Across) return v.y == Length{};
        if (wished.run == StripRun::UpRoll) return v.x == Length{};
        return abs(v.x) == abs(v.y);
    };
    const auto size = [](Vector v) { return std::hypot(double(v.x.ticks()), double(v.y.ticks())); };
    bool found = false;
    for (std::size_t i = 0; i < 2; ++i) {
        const Vector a = strip.ring[i + 1] - strip.ring[i], b = strip.ring[(i + 2) % 4] - strip.ring[i + 1];
        found |= longSide(a) && std::abs(size(a) - double(strip.length.ticks())) < 1.01 &&
                 size(b) >= double(wished.width.ticks()) && size(b) < double(wished.width.ticks()) + 2.9;
    }
    RC_ASSERT(found);
    RC_ASSERT(strip.length >= wished.shortest - Length::ticks(1));
}

void checkClear(const Scraps &s, const StripsLeft &left) {
    const Cloth &cloth = s.job.cloths[0];
    const auto room = geos::shape(usedRoom(s));
    const auto kept = cloth.bolt ? geos::shape(usedRoom(s)) : geos::buffered(room, -double(cloth.edge.ticks()) + 8);
    // The cloth beyond its own outline is never reached, and the distance to it is kept to the rounding of its inset.
    for (const Strip &strip : left.strips) {
        const auto shape = geos::shape(strip.ring);
        RC_ASSERT(geos::covers(room, shape));
        RC_ASSERT(geos::area(geos::without(shape, kept)) <= 1);
        for (const ClothRing &cut : cutRings(s.job, s.layout)) {
            RC_ASSERT(geos::area(geos::both(shape, geos::shape(cut))) <= 1);
            RC_ASSERT(geos::distance(shape, geos::shape(cut)) >= double(s.job.gap.ticks()) - 1);
        }
        for (const Flaw &flaw : flawsOf(cloth))
            RC_ASSERT(geos::area(geos::both(shape, geos::shape(flaw.outline))) <= 1);
    }
    for (std::size_t i = 0; i < left.strips.size(); ++i)
        for (std::size_t k = 0; k < i; ++k)
            RC_ASSERT(geos::area(geos::both(geos::shape(left.strips[i].ring), geos::shape(left.strips[k].ring))) <=
                      0.01);
}

// The slow way. The free cloth is made by GEOS and turned so that strips lie level; every sixteenth of an inch a row is
// laid over each of its patches, GEOS says which stretches of that row are whole, and dynamic programming over the rows
// finds the greatest total in which no two overlap.

using Turned = std::vector<std::array<double, 2>>;

Turned turned(const ClothRing &ring, double degrees) {
    const double c = std::cos(degrees * std::numbers::pi / 180), s = std::sin(degrees * std::numbers::pi / 180);
    Turned out;
    for (ClothPoint p : ring) {
        const double x = double(p.x.ticks()), y = double(p.y.ticks());
        out.push_back({x * c + y * s, y * c - x * s});
    }
    return out;
}

geos::Shape shapeOf(const Turned &ring) {
    geos::start();
    GEOSCoordSequence *points = GEOSCoordSeq_create(unsigned(ring.size() + 1), 2);
    for (unsigned i = 0; i <= ring.size(); ++i) {
        GEOSCoordSeq_setX(points, i, ring[i % ring.size()][0]);
        GEOSCoordSeq_setY(points, i, ring[i % ring.size()][1]);
    }
    return geos::Shape(GEOSGeom_createPolygon(GEOSGeom_createLinearRing(points), nullptr, 0));
}

std::array<double, 4> boxOfShape(const GEOSGeometry *g) {
    std::array<double, 4> box{};
    GEOSGeom_getXMin(g, &box[0]);
    GEOSGeom_getYMin(g, &box[1]);
    GEOSGeom_getXMax(g, &box[2]);
    GEOSGeom_getYMax(g, &box[3]);
    return box;
}

geos::Shape freeCloth(const Scraps &s, double degrees) {
    const Cloth &cloth = s.job.cloths[0];
    geos::Shape free = shapeOf(turned(usedRoom(s), degrees));
    if (!cloth.bolt && cloth.edge > Length{}) free = geos::buffered(free, -double(cloth.edge.ticks()));
    for (const ClothRing &cut : cutRings(s.job, s.layout)) {
        const auto shape = shapeOf(turned(cut, degrees));
        free = geos::without(free, s.job.gap > Length{} ? geos::buffered(shape, double(s.job.gap.ticks()))
                                                        : geos::buffered(shape, 0));
    }
    for (const Flaw &flaw : flawsOf(cloth)) free = geos::without(free, shapeOf(turned(flaw.outline, degrees)));
    return free;
}

double stretchesOf(const GEOSGeometry *patch, double x0, double x1, double y0, double y1, double shortest) {
    const auto row = shapeOf({{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}});
    const geos::Shape missing(GEOSDifference(row.get(), patch));
    std::vector<std::array<double, 2>> gone;
    for (int i = 0; i < GEOSGetNumGeometries(missing.get()); ++i) {
        const GEOSGeometry *part = GEOSGetGeometryN(missing.get(), i);
        double area = 0;
        GEOSArea(part, &area);
        if (area < 1) continue; // dust of the overlay
        const auto box = boxOfShape(part);
        gone.push_back({box[0], box[2]});
    }
    std::sort(gone.begin(), gone.end());
    double total = 0, from = x0;
    for (const auto &[a, b] : gone) {
        if (a - from >= shortest) total += a - from;
        from = std::max(from, b);
    }
    if (x1 - from >= shortest) total += x1 - from;
    return total;
}

double slowOnPatch(const GEOSGeometry *patch, double width, double shortest) {
    constexpr double step = 508; // 1/16 in
    const auto [x0, y0, x1, y1] = boxOfShape(patch);
    std::vector<double> best; // best[k]: rows that end at or below the kth height
    for (int k = 0;; ++k) {
        const double top = y0 + k * step, bottom = top - width;
        if (top > y1 + step) break;
        double here = best.empty() ? 0 : best.back();
        if (bottom >= y0 - 1e-6 && top <= y1 + 1e-6) {
            const int below = k - int(std::ceil(width / step - 1e-9));
            here = std::max(here, stretchesOf(patch, x0, x1, bottom, top, shortest) +
                                      (below >= 0 ? best[std::size_t(below)] : 0));
        }
        best.push_back(here);
    }
    return best.back();
}

double slowTotal(const Scraps &s, const StripWish &wished, double degrees) {
    const auto free = freeCloth(s, degrees);
    double total = 0;
    for (int i = 0; i < GEOSGetNumGeometries(free.get()); ++i) {
        const GEOSGeometry *patch = GEOSGetGeometryN(free.get(), i);
        if (GEOSGeomTypeId(patch) == GEOS_POLYGON)
            total += slowOnPatch(patch, double(wished.width.ticks()), double(wished.shortest.ticks()));
    }
    return total;
}

double slowBest(const Scraps &s, const StripWish &wished) {
    if (wished.run == StripRun::Across) return slowTotal(s, wished, 0);
    if (wished.run == StripRun::UpRoll) return slowTotal(s, wished, 90);
    return std::max(slowTotal(s, wished, 45), slowTotal(s, wished, -45));
}

} // namespace

TEST_CASE("what lies beside a panel is cut into strips up the roll", "[strips]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Back", 48_in, 30_in)});
    const Layout layout = layoutOf({cutAt("Back", 0_in, 0_in)});
    const StripsLeft left = stripsFromScraps(job, layout, wish(StripRun::UpRoll, 1.5_in, 15_in));
    CHECK(left.strips.size() == 4);
    CHECK(left.total == 120_in);
    CHECK(boxOf(left.strips[0].ring).width() == 1.5_in);
    // Across, 6 in beside the panel is too short.
    CHECK(stripsFromScraps(job, layout, wish(StripRun::Across, 1.5_in, 15_in)).strips.empty());
    CHECK(stripsFromScraps(job, layout, wish(StripRun::Across, 1.5_in, 6_in)).total == 120_in);
}

TEST_CASE("the gap is kept from the panel and not from the selvage's edge", "[strips]") {
    Job job = jobOf(bolt(54_in), {rectangle("Back", 48_in, 30_in)}, 0.25_in);
    const Layout layout = layoutOf({cutAt("Back", 0_in, 0_in)});
    CHECK(stripsFromScraps(job, layout, wish(StripRun::UpRoll, 1.5_in, 15_in)).strips.size() == 3);
    job.cloths[0].selvage = 1.5_in;
    CHECK(stripsFromScraps(job, layout, wish(StripRun::UpRoll, 1.5_in, 15_in)).strips.size() == 2);
}

TEST_CASE("strips go round a flaw", "[strips]") {
    Job job = jobOf(bolt(54_in), {rectangle("Back", 48_in, 30_in)});
    job.cloths[0].bolt->flaws.push_back({ringOf(ClothBox{{49_in, 10_in}, {50_in, 11_in}}), {}, {}});
    const Layout layout = layoutOf({cutAt("Back", 0_in, 0_in)});
    const StripsLeft left = stripsFromScraps(job, layout, wish(StripRun::UpRoll, 1.5_in, 15_in));
    // Of four columns the two that the flaw touches begin above it; the 10 in below it are too short.
    CHECK(left.total == 2 * 30_in + 2 * 19_in);
}

TEST_CASE("a square on the bias yields no more than its area", "[strips]") {
    // T5.1: 12 in square, 2 in strip: 72 in by area; pieces with square ends yield less.
    const Job job = jobOf(remnantCloth({{0_in, 0_in}, {12_in, 0_in}, {12_in, 12_in}, {0_in, 12_in}}), {});
    const StripsLeft left = stripsFromScraps(job, {}, wish(StripRun::Bias, 2_in, 4_in));
    CHECK(left.total < 72_in);
    CHECK(left.total > 48_in);
    // The longest piece is the diagonal less the strip's width, were it in the middle; T5.12 by the same rule.
    for (const Strip &strip : left.strips) CHECK(strip.length <= 16.9706_in - 2_in);
}

TEST_CASE("nothing is left of cloth that is not used, not there, or asked for nothing", "[strips]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Back", 48_in, 30_in)});
    CHECK(stripsFromScraps(job, {}, wish(StripRun::UpRoll, 1.5_in, 15_in)).strips.empty());
    const Layout layout = layoutOf({cutAt("Back", 0_in, 0_in)});
    CHECK(stripsFromScraps(job, layout, {"lining", 1.5_in, 15_in, StripRun::UpRoll}).strips.empty());
    CHECK(stripsFromScraps(job, layout, wish(StripRun::UpRoll, 0_in, 15_in)).strips.empty());
    CHECK(stripsFromScraps(job, layout, wish(StripRun::UpRoll, 1.5_in, 0_in)).strips.empty());
    CHECK(stripsFromScraps(job, layout, wish(StripRun::UpRoll, 60_in, 15_in)).strips.empty());
}

TEST_CASE("whether it is enough, joins counted, the longest first", "[strips]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Back", 48_in, 30_in), rectangle("Arm", 51_in, 20_in)});
    const Layout layout = layoutOf({cutAt("Back", 0_in, 0_in), cutAt("Arm", 0_in, 30_in)});
    const StripsLeft left = stripsFromScraps(job, layout, wish(StripRun::UpRoll, 1.5_in, 15_in));
    CHECK(left.total == 2 * 30_in + 2 * 50_in);
    CHECK(joinedLength(left, 1_in) == 157_in);
    const auto some = enoughFor(left, 99_in, 1_in);
    REQUIRE(some);
    CHECK(some->strips.size() == 2);
    CHECK(some->total == 100_in);
    CHECK(enoughFor(left, 157_in, 1_in)->strips.size() == 4);
    CHECK_FALSE(enoughFor(left, 158_in, 1_in));
    CHECK(enoughFor(left, 0_in, 1_in)->strips.empty());
}

TEST_CASE("GEOS finds every strip inside the cloth, off everything, and no two that overlap", "[strips]") {
    rc::prop("on five layouts a run", [] {
        for (int i = 0; i < 5; ++i) {
            const Scraps s = randomScraps(54_in, 40_in);
            const StripWish wished = randomWish();
            const StripsLeft left = stripsFromScraps(s.job, s.layout, wished);
            Length total;
            for (const Strip &strip : left.strips) {
                checkRectangle(strip, wished);
                total += strip.length;
            }
            RC_ASSERT(total == left.total);
            checkClear(s, left);
        }
    });
}

TEST_CASE("what is found is at least 0.98 of what the slow way finds", "[strips]") {
    rc::prop("on small cloth", [] {
        const Scraps s = randomScraps(26_in, 20_in);
        StripWish wished = randomWish();
        wished.shortest = std::min(wished.shortest, 8_in);
        const double ours = double(stripsFromScraps(s.job, s.layout, wished).total.ticks());
        RC_ASSERT(ours >= 0.98 * slowBest(s, wished));
    });
}
