#include "core/paper/changes.h"
#include "tests/core/paper/planted.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

const PieceChange *changeOf(const LayoutChanges &changes, const std::string &mark, int copy) {
    for (const auto *list : {&changes.changed, &changes.stays})
        for (const PieceChange &change : *list) {
            const ChalkRow &row = change.now ? *change.now : *change.before;
            if (row.mark == mark && row.copy == copy) return &change;
        }
    return nullptr;
}

} // namespace

TEST_CASE("nothing has changed between a layout and itself", "[paper]") {
    const Job job = planted::footstools();
    const LayoutChanges changes = changesBetween(job, job.layouts[0], job, job.layouts[0]);
    CHECK(changes.isEmpty());
    CHECK(changes.stays.size() == job.layouts[0].cuts.size());
}

TEST_CASE("a fresh sheet tells what moved, what is new, what is gone, what is cut again and what stays", "[paper]") {
    const Job before = planted::footstools();
    Job now = before;
    Layout &layout = now.layouts[0];
    layout.cuts[0].state = CutState::Planned; // had been cut, went wrong
    layout.cuts[1].x += 1_cm;
    layout.cuts[2].x += Length::ticks(100); // less than chalk is wide
    layout.cuts.erase(layout.cuts.begin() + 3);
    now.cloths[0].remnants[0].flaws.push_back({ringOf(ClothBox{{10_cm, 10_cm}, {12_cm, 13_cm}}), "stain", {}});
    const LayoutChanges changes = changesBetween(before, before.layouts[0], now, layout);
    CHECK(changeOf(changes, "T", 1)->kind == PieceChange::Kind::CutAgain);
    const PieceChange *moved = changeOf(changes, "T", 2);
    REQUIRE(moved->kind == PieceChange::Kind::Moved);
    CHECK(moved->now->fromSelvage - moved->before->fromSelvage == 1_cm);
    CHECK(changeOf(changes, "T", 3)->kind == PieceChange::Kind::Stays);
    CHECK(changeOf(changes, "B", 1)->kind == PieceChange::Kind::Gone);
    REQUIRE(changes.flaws.size() == 1);
    CHECK(changes.flaws[0].across == 2_cm);
    CHECK(changes.flaws[0].along == 3_cm);
    const LayoutChanges back = changesBetween(now, layout, before, before.layouts[0]);
    CHECK(changeOf(back, "B", 1)->kind == PieceChange::Kind::New);
}
