#include "core/forms/panel_doubts.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

Panel part(const char *id, const char *mark, Length across, Length up) {
    Panel panel = rectangle(id, across, up);
    panel.mark = mark;
    panel.allow.assign(4, 2_in);
    return panel;
}
std::vector<std::string> doubtsOf(const std::vector<Panel> &panels) {
    std::vector<std::string> texts;
    for (const PanelDoubt &doubt : doubtsOfPanels(jobOf(bolt(54_in), panels))) texts.push_back(doubt.text);
    return texts;
}

} // namespace

TEST_CASE("two arms that differ by more than 2 in are worth a second look", "[doubts]") {
    CHECK(doubtsOf({part("l", "IA", 24_in, 20_in), part("r", "IA", 24_in, 22_in)}).empty());
    CHECK(doubtsOf({part("l", "IA", 24_in, 20_in), part("r", "IA", 24_in, 22.5_in)}) ==
          std::vector<std::string>{"the two differ by 2 1/2 in in height"});
    // Cushions of one mark are no pair.
    CHECK(doubtsOf({part("a", "CUSH", 24_in, 20_in), part("b", "CUSH", 24_in, 26_in)}).empty());
}

TEST_CASE("an arm that is taller than the back is wide", "[doubts]") {
    CHECK(doubtsOf({part("b", "IB", 22_in, 30_in), part("a", "IA", 21_in, 16_in)}).empty());
    CHECK(doubtsOf({part("b", "IB", 22_in, 30_in), part("a", "IA", 16_in, 23_in)}) ==
          std::vector<std::string>{"taller than the back is wide (22 in); were its two measures exchanged?"});
}

TEST_CASE("a part without a motif though its twin has one", "[doubts]") {
    Panel left = part("l", "IA", 24_in, 20_in);
    left.motif = MotifWish{};
    CHECK(doubtsOf({left, part("r", "IA", 24_in, 20_in)}) ==
          std::vector<std::string>{"this part has no motif though its twin has"});
}

TEST_CASE("wider than the cloth, and nothing added", "[doubts]") {
    Panel wide = part("b", "IB", 60_in, 20_in);
    CHECK(doubtsOf({wide}).size() == 1);
    wide.pieces.most = 3;
    CHECK(doubtsOf({wide}).empty());
    wide.pieces.most = 1;
    wide.run = Run::Railroad;
    CHECK(doubtsOf({wide}).empty());
    CHECK(doubtsOf({rectangle("s", 20_in, 20_in)}) == std::vector<std::string>{"nothing is added at any edge"});
}
