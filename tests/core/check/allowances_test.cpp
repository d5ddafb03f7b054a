#include "tests/core/check/workroom.h"

using namespace workroom;
using Given = Concession::Kind;

namespace {

/// A back 20 in by 15 in with 1 1/2 in all round, which may shrink to 3/4 in, and at the bottom to 1/2 in when a strip
/// is sewn on.
struct Back {
    Job job = emptyJob();
    Layout layout = layoutOf({cut("Back", 0_in, 0_in)}, 18_in);
    Back() {
        Panel back = rectangle("Back", 20_in, 15_in);
        back.allow = allRound(1.5_in);
        back.allowMin = allRound(0.75_in);
        back.may.stretcher[Bottom] = 0.5_in;
        job.panels = {back};
    }
    void leave(Length bottom, Length right, Length top, Length left) {
        layout.cuts[0].allow = {bottom, right, top, left};
        layout.cloths[0].length = 15_in + bottom + top;
    }
    Kinds found() const { return kinds(job, layout); }
};

} // namespace

TEST_CASE("a trimmed edge is listed from what to what", "[check]") {
    Back given;
    given.leave(1.5_in, 1.5_in, 1_in, 1.5_in);
    CHECK(texts(given.job, given.layout) ==
          std::vector<std::string>{"Back is short on the top edge, which what we give up does not say rightly."});
    given.layout.conceded = {shortened(Given::Trim, "Back", Top, 1.5_in, 1_in)};
    CHECK(given.found().empty());
    given.layout.conceded[0].to = 1_in + hair;
    CHECK(given.found() == Kinds{Kind::Conceded, Kind::Conceded});
    given.layout.conceded[0] = shortened(Given::Trim, "Back", Left, 1.5_in, 1_in);
    CHECK(given.found() == Kinds{Kind::Conceded, Kind::Conceded});
}

TEST_CASE("an edge is trimmed down to the least and never let out", "[check]") {
    Back given;
    const auto top = [&](Length left) {
        given.leave(1.5_in, 1.5_in, left, 1.5_in);
        given.layout.conceded = {shortened(Given::Trim, "Back", Top, 1.5_in, left)};
        return given.found();
    };
    CHECK(top(0.75_in).empty());
    CHECK(top(0.75_in - 4 * tick).empty());
    CHECK(top(0.75_in - hair).front() == Kind::Allowance);
    given.leave(1.5_in, 1.5_in, 1.5_in + hair, 1.5_in);
    given.layout.conceded.clear();
    CHECK(given.found() == Kinds{Kind::Allowance});
}

TEST_CASE("an edge without a least keeps its full allowance", "[check]") {
    Back given;
    given.job.panels[0].allowMin[Top].reset();
    given.leave(1.5_in, 1.5_in, 1_in, 1.5_in);
    given.layout.conceded = {shortened(Given::Trim, "Back", Top, 1.5_in, 1_in)};
    CHECK(given.found().front() == Kind::Allowance);
}

TEST_CASE("all edges trimmed alike are one entry", "[check]") {
    Back given;
    given.leave(1_in, 1_in, 1_in, 1_in);
    given.layout.conceded = {shortened(Given::Trim, "Back", {}, 1.5_in, 1_in)};
    CHECK(given.found().empty());
    SECTION("not when one differs") {
        given.leave(1_in, 1_in, 1_in, 1_in + hair);
        CHECK(!given.found().empty());
    }
    SECTION("and not beside an entry for one of them") {
        given.layout.conceded.push_back(shortened(Given::Trim, "Back", Top, 1.5_in, 1_in));
        CHECK(given.found() == Kinds{Kind::Conceded});
    }
}

TEST_CASE("below the least, a strip of other cloth is sewn on where that is allowed", "[check]") {
    Back given;
    given.leave(0.5_in, 1.5_in, 1.5_in, 1.5_in);
    given.layout.conceded = {shortened(Given::Stretcher, "Back", Bottom, 1.5_in, 0.5_in)};
    CHECK(given.found().empty());
    SECTION("a trim gives no leave for that") {
        given.layout.conceded[0].kind = Given::Trim;
        CHECK(given.found() == Kinds{Kind::Conceded, Kind::Conceded});
    }
    SECTION("on no other edge") {
        given.leave(1.5_in, 1.5_in, 0.5_in, 1.5_in);
        given.layout.conceded = {shortened(Given::Stretcher, "Back", Top, 1.5_in, 0.5_in)};
        CHECK(given.found().front() == Kind::Allowance);
    }
    SECTION("what must be left to sew it to is left") {
        given.leave(0.5_in - hair, 1.5_in, 1.5_in, 1.5_in);
        given.layout.conceded[0].to = 0.5_in - hair;
        CHECK(given.found().front() == Kind::Allowance);
    }
}

TEST_CASE("nothing is listed twice, and nothing that was not given up", "[check]") {
    Back given;
    given.leave(1.5_in, 1.5_in, 1_in, 1.5_in);
    const auto trim = shortened(Given::Trim, "Back", Top, 1.5_in, 1_in);
    given.layout.conceded = {trim, trim};
    CHECK(given.found() == Kinds{Kind::Conceded, Kind::Conceded}); // the line, and the edge it speaks of
    for (const Given kind : {Given::Seam, Given::Turn, Given::Uncentre, Given::OtherCloth}) {
        given.layout.conceded = {trim, gaveUp(kind, "Back")};
        CHECK(given.found() == Kinds{Kind::Conceded});
    }
    given.layout.conceded = {trim, gaveUp(Given::Turn, "Back", 2)};
    CHECK(given.found() == Kinds{Kind::Conceded});
    given.layout.conceded = {trim, gaveUp(Given::Turn, "Wing")};
    CHECK(given.found() == Kinds{Kind::Conceded});
}

TEST_CASE("off centre is listed only for a panel that asks for something", "[check]") {
    Back given;
    given.job.panels[0].may.uncentre = true;
    given.layout.conceded = {gaveUp(Given::Uncentre, "Back")};
    CHECK(given.found() == Kinds{Kind::Conceded});
    given.job.panels[0].alike = true;
    CHECK(given.found().empty());
}

TEST_CASE("allowances that make a hollow shape cross itself are wrong", "[check]") {
    // A slot 2 in wide, closed by an allowance of more than 1 in.
    Job job = emptyJob();
    Panel arch = rectangle("Arch", 1_in, 1_in);
    arch.shape = PolygonShape{{{0_in, 0_in},
                               {9_in, 0_in},
                               {9_in, 10_in},
                               {11_in, 10_in},
                               {11_in, 0_in},
                               {20_in, 0_in},
                               {20_in, 15_in},
                               {0_in, 15_in}}};
    job.panels = {arch};
    job.panels[0].allow = EdgeLengths(8, 0.75_in);
    CHECK(right(job, layoutOf({cut("Arch", 0_in, 0_in)}, 16.5_in)));
    job.panels[0].allow = EdgeLengths(8, 1.25_in);
    CHECK(kinds(job, layoutOf({cut("Arch", 0_in, 0_in)}, 17.5_in)).front() == Kind::Allowance);
}
