#include "core/planner/exact/attempt.h"
#include "tests/core/planner/tiny.h"
#include "tests/core/support/rounds.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::planner;
using namespace tiny;
using State = Attempt::State;

namespace {

/// An item along one axis: as many ticks of it, so high across it, with its first end on one of these ticks.
struct Sliced {
    int length, height;
    std::vector<int> starts;
};

/// Whether the items can lie when the slices of each stay side by side but may lie anywhere across, by trying all.
bool slicesFit(const std::vector<Sliced> &items, int height, std::vector<int> &taken, std::size_t next = 0) {
    if (next == items.size()) return true;
    const Sliced &item = items[next];
    for (const int start : item.starts) {
        if (start + item.length > int(taken.size())) continue;
        bool room = true;
        for (int i = start; i < start + item.length; ++i) room = room && taken[std::size_t(i)] + item.height <= height;
        if (!room) continue;
        for (int i = start; i < start + item.length; ++i) taken[std::size_t(i)] += item.height;
        const bool fits = slicesFit(items, height, taken, next + 1);
        for (int i = start; i < start + item.length; ++i) taken[std::size_t(i)] -= item.height;
        if (fits) return true;
    }
    return false;
}

State answer(const BoxProblem &problem, bool alongX) {
    return sliceAttempt(problem, alongX)->run(1'000'000, [] { return false; });
}

} // namespace

TEST_CASE("slices are refused where trying every motif place of every panel finds nothing, and only there", "[exact]") {
    Dice dice(21);
    int fit = 0, cannot = 0, byPlaces = 0;
    for (int round = 0; round < test::rounds(4000); ++round) {
        const int across = dice(3, 6), along = dice(5, 11);
        std::vector<std::pair<int, int>> sizes;
        // About as many as there is room for, so that both answers occur.
        for (int area = across * along; area > 0 && sizes.size() < 7; area -= sizes.back().first * sizes.back().second)
            sizes.emplace_back(dice(1, across), dice(1, std::min(along, 6)));
        if (sizes.size() > 1) sizes.pop_back();
        const bool alongX = dice.oneIn(2);
        Instance instance = alongX ? remnant(along, across, sizes) : remnant(across, along, sizes);
        std::vector<Sliced> items, free;
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            auto [w, h] = sizes[i];
            if (alongX) {
                Outline &outline = instance.outlines[std::size_t(instance.items[i].options[0].outline)];
                std::tie(w, h) = std::pair{outline.height.ticks(), outline.width.ticks()};
            }
            Sliced item{int(h), int(w), {}};
            for (int start = 0; start <= along; ++start) item.starts.push_back(start);
            free.push_back(item);
            if (dice.oneIn(2)) {
                const int step = dice(2, 4), first = dice(0, step - 1);
                PlaceSet &places = instance.items[i].options[0].places;
                (alongX ? places.xStep : places.yStep) = Length::ticks(step);
                (alongX ? places.x0 : places.y0) = Length::ticks(first);
                std::erase_if(item.starts, [&](int start) { return start % step != first; });
            }
            items.push_back(item);
        }
        const auto problem = boxProblem(instance, {}, {});
        REQUIRE(problem);
        if (problem->impossible) continue;
        CAPTURE(round, alongX, across, along);
        std::vector<int> taken(std::size_t(along), 0);
        const bool fits = slicesFit(items, across, taken);
        REQUIRE(answer(*problem, alongX) == (fits ? State::GaveUp : State::Cannot));
        byPlaces += !fits && slicesFit(free, across, taken);
        ++(fits ? fit : cannot);
    }
    CHECK(fit > test::rounds(500));
    CHECK(cannot > test::rounds(500));
    CHECK(byPlaces > test::rounds(100));
}

TEST_CASE("three panels with motif places on stripes across take a repeat more than their slices would", "[exact]") {
    // Three of 2 by 3 and one free of 2 by 3 on 4 across, 6 along: exactly full. Each of the three must start on a
    // multiple of 4, so none can follow another in the 6.
    Instance instance = remnant(4, 6, {{2, 3}, {2, 3}, {2, 3}, {2, 3}});
    CHECK(answer(*boxProblem(instance, {}, {}), false) == State::GaveUp);
    for (std::size_t i = 0; i < 3; ++i) instance.items[i].options[0].places.yStep = Length::ticks(4);
    CHECK(answer(*boxProblem(instance, {}, {}), false) == State::Cannot);
}
