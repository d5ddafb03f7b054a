// Layouts without waste, put together corner by corner: jigsaws of our own, and the published ones where they are
// there.

#include "core/geometry/laying.h"
#include "core/planner/polygon/exact_fit.h"
#include "core/planner/random.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

using namespace boltwright;
using namespace boltwright::planner;
using nlohmann::json;

namespace {

Length ticks(std::int64_t t) { return Length::ticks(t); }

Instance boltOf(Length width, const std::vector<ClothRing> &rings) {
    Instance instance;
    instance.sheets.push_back(
        {.room = ringOf(ClothBox{{}, {width, Length::limit()}}), .open = true, .flaws = {}, .lattice = {}});
    for (const ClothRing &ring : rings) {
        instance.outlines.push_back(makeOutline(ring));
        Option option;
        option.outline = int(instance.outlines.size()) - 1;
        instance.items.push_back({.options = {option}});
    }
    return instance;
}

/// A convex ring cut in two between points on two of its edges; the points are rounded to ticks, as a panel's are.
std::pair<ClothRing, ClothRing> cutInTwo(const ClothRing &ring, Random &dice) {
    const std::size_t n = ring.size();
    const auto on = [&](std::size_t edge) {
        const ClothPoint a = ring[edge], b = ring[(edge + 1) % n];
        const std::int64_t part = 30 + dice.below(41); // in hundredths: not too near a corner
        return ClothPoint{a.x + ticks((b.x - a.x).ticks() * part / 100), a.y + ticks((b.y - a.y).ticks() * part / 100)};
    };
    const auto first = std::size_t(dice.below(int(n))), second = (first + n / 2) % n;
    const ClothPoint p = on(first), q = on(second);
    ClothRing one{p}, other{q};
    for (std::size_t i = (first + 1) % n; i != (second + 1) % n; i = (i + 1) % n) one.push_back(ring[i]);
    for (std::size_t i = (second + 1) % n; i != (first + 1) % n; i = (i + 1) % n) other.push_back(ring[i]);
    one.push_back(q);
    other.push_back(p);
    return {one, other};
}

std::vector<ClothRing> jigsaw(int pieces, std::uint64_t seed) {
    Random dice(seed);
    std::vector<ClothRing> rings{ringOf(ClothBox{{}, {ticks(440'000), ticks(600'000)}})};
    while (int(rings.size()) < pieces) {
        const auto largest = std::max_element(rings.begin(), rings.end(), [](const ClothRing &a, const ClothRing &b) {
            return twiceArea(a) < twiceArea(b);
        });
        auto [one, other] = cutInTwo(*largest, dice);
        *largest = std::move(one);
        rings.push_back(std::move(other));
    }
    dice.shuffle(rings);
    return rings;
}

bool isPutTogether(const Instance &instance, Length length, std::int64_t most = 2'000'000) {
    REQUIRE(couldFillExactly(instance, length));
    const NoFitTable noFits(instance);
    const ExactFit fit = fitExactly(instance, noFits, length, most, nullptr);
    if (fit.placements.empty()) return false;
    CHECK(holds(instance, fit.placements));
    CHECK(abs(lengthUsed(instance, fit.placements, 0) - length) <= ticks(4));
    return true;
}

} // namespace

TEST_CASE("jigsaws of slanted pieces are put together without waste", "[exact-fit]") {
    for (int pieces : {2, 5, 8, 12, 16})
        for (std::uint64_t seed = 1; seed <= 6; ++seed) {
            INFO(pieces << " pieces, seed " << seed);
            CHECK(isPutTogether(boltOf(ticks(440'000), jigsaw(pieces, seed)), ticks(600'000)));
        }
}

TEST_CASE("pieces that fill the area and fit no way are given up", "[exact-fit]") {
    // Half and half by area, and neither lies beside or above the other without waste.
    const auto box = [](std::int64_t w, std::int64_t h) { return ringOf(ClothBox{{}, {ticks(w), ticks(h)}}); };
    const Instance instance = boltOf(ticks(100'000), {box(60'000, 50'000), box(50'000, 40'000)});
    REQUIRE(couldFillExactly(instance, ticks(50'000)));
    const NoFitTable noFits(instance);
    CHECK(fitExactly(instance, noFits, ticks(50'000), 100'000, nullptr).placements.empty());
}

TEST_CASE("what leaves waste, keeps a gap or has flaws is no jigsaw", "[exact-fit]") {
    Instance instance = boltOf(ticks(440'000), jigsaw(5, 1));
    CHECK_FALSE(couldFillExactly(instance, ticks(601'000)));
    instance.gap = ticks(100);
    CHECK_FALSE(couldFillExactly(instance, ticks(600'000)));
    instance.gap = {};
    instance.sheets[0].flaws.push_back(ringOf(ClothBox{{}, {ticks(10), ticks(10)}}));
    CHECK_FALSE(couldFillExactly(instance, ticks(600'000)));
}

TEST_CASE("the published convex jigsaws of up to twelve pieces fill their square", "[exact-fit]") {
    // Terashima-Marín, Ross, Farías-Zárate, López-Camacho & Valenzuela-Rendón 2010, Ann. Oper. Res. 179:369-392, as
    // kept by ESICUP: pieces that were cut from a square of 1000.
    const char *shared = std::getenv("BOLTWRIGHT_SHARED");
    const auto folder = std::filesystem::path(shared ? shared : BOLTWRIGHT_BESIDE) / "bench" / "poly";
    if (!std::filesystem::exists(folder)) {
        WARN("skipped: no test sets in " << folder);
        return;
    }
    int seen = 0;
    for (const auto &entry : std::filesystem::directory_iterator(folder)) {
        const std::string name = entry.path().filename().string();
        if (name.rfind("jigsaw_", 0) != 0) continue;
        std::ifstream in(entry.path());
        const json set = json::parse(in);
        std::vector<ClothRing> rings;
        constexpr std::int64_t unit = 1000;
        for (const json &item : set["items"])
            for (int k = 0; k < item["demand"].get<int>(); ++k) {
                ClothRing ring;
                for (const json &p : item["points"])
                    ring.push_back({ticks(std::llround(p[1].get<double>() * unit)),
                                    ticks(std::llround(p[0].get<double>() * unit))});
                rings.push_back(counterClockwise(ring));
            }
        if (rings.size() > 12) continue;
        ++seen;
        INFO(name);
        CHECK(isPutTogether(boltOf(ticks(1000 * unit), rings), ticks(1000 * unit)));
    }
    CHECK(seen >= 20);
}
