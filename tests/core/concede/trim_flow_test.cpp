#include "core/concede/trim_flow.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <algorithm>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

Length total(const std::vector<Length> &p, const std::vector<BoxSides> &boxes) {
    Length sum;
    for (const BoxSides &b : boxes) sum += p[std::size_t(b.high)] - p[std::size_t(b.low)];
    return sum;
}

bool keeps(const std::vector<Length> &p, const std::vector<SideLimit> &limits) {
    return std::all_of(limits.begin(), limits.end(),
                       [&](const SideLimit &l) { return p[std::size_t(l.to)] - p[std::size_t(l.from)] <= l.most; });
}

/// Tries every whole position of every side in [0, size]: slow and obvious.
Length bruteForce(const std::vector<SideLimit> &limits, const std::vector<BoxSides> &boxes, int sides, int size) {
    std::vector<Length> p(std::size_t(sides), Length{});
    Length best = Length::ticks(-1);
    while (true) {
        if (keeps(p, limits)) best = std::max(best, total(p, boxes));
        std::size_t i = 1;
        while (i < p.size() && p[i] == Length::ticks(size)) p[i++] = Length{};
        if (i == p.size()) return best;
        p[i] += Length::ticks(1);
    }
}

} // namespace

TEST_CASE("two panels side by side share what the cloth has", "[trim]") {
    // 20 in of cloth; each panel 8 to 12 in.
    const std::vector<BoxSides> boxes = {{1, 2}, {3, 4}};
    const std::vector<SideLimit> limits = {{1, 0, 0_in},  {0, 4, 20_in}, {3, 2, 0_in}, {1, 2, 12_in},
                                           {2, 1, -8_in}, {3, 4, 12_in}, {4, 3, -8_in}};
    const auto p = widest({0_in, 0_in, 8_in, 8_in, 16_in}, limits, boxes);
    CHECK(keeps(p, limits));
    CHECK(total(p, boxes) == 20_in);
}

TEST_CASE("the widest is the widest", "[trim][property]") {
    rc::check("against every possibility", [] {
        const int size = 5;
        const std::vector<BoxSides> boxes = {{1, 2}, {3, 4}};
        std::vector<Length> start = {Length{}};
        for (int i = 0; i < 2; ++i) {
            const int low = *rc::gen::inRange(0, size), high = *rc::gen::inRange(low, size + 1);
            start.push_back(Length::ticks(low));
            start.push_back(Length::ticks(high));
        }
        std::vector<SideLimit> limits;
        for (int v = 1; v <= 4; ++v) {
            limits.push_back({v, 0, Length{}});
            limits.push_back({0, v, Length::ticks(size)});
        }
        for (int i = 0; i < 4; ++i) {
            const int from = *rc::gen::inRange(0, 5), to = *rc::gen::inRange(0, 5);
            // Whatever the start keeps, with some room.
            limits.push_back(
                {from, to, start[std::size_t(to)] - start[std::size_t(from)] + Length::ticks(*rc::gen::inRange(0, 3))});
        }
        for (const BoxSides &b : boxes) limits.push_back({b.low, b.high, Length::ticks(size)});
        const auto p = widest(start, limits, boxes);
        RC_ASSERT(keeps(p, limits));
        RC_ASSERT(total(p, boxes) == bruteForce(limits, boxes, 5, size));
    });
}
