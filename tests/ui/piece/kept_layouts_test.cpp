#include "tests/core/support/jobs.h"
#include "ui/kept/kept_layouts.h"
#include "ui/kept/layout_comparison.h"

#include <QAccessible>
#include <QApplication>
#include <QTest>

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

Layout named(std::string name, Layout layout) {
    layout.name = std::move(name);
    return layout;
}

/// Two seats and a border, laid three ways; in the second the border is turned by leave, in the third it is put aside.
Job bench() {
    Panel border = rectangle("Border", 40_in, 5_in);
    border.may.turn = true;
    Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 20_in, 2), border});
    const Cut one = cutAt("Seat", 0_in, 0_in), two = cutAt("Seat", 20_in, 0_in, Turn::Deg0, 2);
    Layout turned = named("Border up the roll", layoutOf({one, two, cutAt("Border", 40_in, 0_in, Turn::Deg90)}));
    turned.conceded.push_back({Concession::Kind::Turn, "Border", 1});
    job.layouts = {named("Border above", layoutOf({one, two, cutAt("Border", 0_in, 20_in)})), turned,
                   named("", layoutOf({one, two}))};
    return job;
}

struct Strip {
    JobDocument document;
    KeptLayouts kept{document};
    explicit Strip(Job job = bench()) {
        document.startWith(std::move(job));
        kept.resize(1000, kept.height());
        kept.show();
        (void)QTest::qWaitForWindowExposed(&kept);
        kept.activateWindow();
        QTest::qWait(10);
    }
    std::vector<std::string> names() const {
        std::vector<std::string> all;
        for (const Layout &layout : document.job().layouts) all.push_back(layout.name);
        return all;
    }
};

using Names = std::vector<std::string>;

} // namespace

TEST_CASE("a card says what its layout comes to and what was given up for it", "[kept]") {
    const Job job = bench();
    const LayoutWords above = wordsOf(job, job.layouts[0]), turned = wordsOf(job, job.layouts[1]),
                      aside = wordsOf(job, job.layouts[2]);
    CHECK(above.figure == u"25 in"_s);
    CHECK(above.beside == u"waste 26 %"_s); // 1000 of 1350 square inches
    CHECK(above.givenUp == u"nothing given up"_s);
    CHECK(above.wrong.isEmpty());
    CHECK(turned.figure == u"1 yd 4 in"_s);
    CHECK(turned.givenUp == u"1 turned"_s);
    CHECK(aside.givenUp == u"1 put aside"_s);
    Strip strip;
    REQUIRE(strip.kept.cards().size() == 3);
    CHECK(strip.kept.cards()[1]->accessibleName() == u"Border up the roll"_s);
    CHECK(strip.kept.cards()[1]->accessibleDescription() == u"1 yd 4 in, waste 54 %, 1 turned"_s); // 1000 of 2160
    CHECK(strip.kept.cards()[2]->accessibleName() == u"Layout 3"_s);
}

TEST_CASE("a card says that its layout is no longer possible once a piece is cut elsewhere", "[kept]") {
    Strip strip;
    REQUIRE(strip.kept.cards().size() == 3);
    Layout laid = strip.document.job().layouts[0];
    strip.document.setLayoutIndex(0);
    laid.cuts[2].state = CutState::Cut; // the border, which the second layout has up the roll
    strip.document.changeLayout(laid, u"Border cut"_s);
    CHECK(strip.kept.cards()[0]->accessibleDescription() == u"25 in, waste 26 %, nothing given up"_s);
    CHECK(strip.kept.cards()[1]->accessibleDescription() ==
          u"1 yd 4 in, waste 54 %, 1 turned, no longer possible: Border is already cut, and lay elsewhere"_s);
    CHECK(strip.kept.cards()[1]->toolTip().contains(u"no longer possible"_s));
    // The third has it put aside, and nothing on its cloth.
    CHECK_FALSE(strip.kept.cards()[2]->accessibleDescription().contains(u"no longer possible"_s));
    strip.document.history()->undo();
    CHECK(strip.kept.cards()[1]->accessibleDescription() == u"1 yd 4 in, waste 54 %, 1 turned"_s);
}

TEST_CASE("a card says what does not hold in its layout, and never that nothing was given up beside it", "[kept]") {
    Job job = bench();
    job.layouts[0].cuts[2].y = 10_in; // the border over both seats
    CHECK(wordsOf(job, job.layouts[0]).wrong == u"Seat lies over Border, and 3 more"_s);
    Strip strip(job);
    KeptCard *card = strip.kept.cards()[0];
    CHECK(card->accessibleDescription().contains(u"not right yet: Seat lies over Border"_s));
    CHECK(card->toolTip().contains(u"Not right yet: Seat lies over Border"_s));
    // The one on the table is said to change with it.
    for (const KeptCard *each : strip.kept.cards())
        CHECK(each->toolTip().contains(u"changes as panels are moved"_s) == each->isChecked());
}

TEST_CASE("a press on a card lays that layout; by key as by mouse", "[kept]") {
    Strip strip;
    const auto &cards = strip.kept.cards();
    CHECK(cards[2]->isChecked());
    QTest::mouseClick(cards[0], Qt::LeftButton);
    CHECK(strip.document.layoutIndex() == 0);
    CHECK(cards[0]->isChecked());
    CHECK_FALSE(cards[2]->isChecked());
    QTest::mouseClick(cards[0], Qt::LeftButton); // once more changes nothing
    CHECK(cards[0]->isChecked());
    cards[0]->setFocus();
    QTest::keyClick(cards[0], Qt::Key_Right);
    CHECK(cards[1]->hasFocus());
    CHECK(strip.document.layoutIndex() == 0);
    QTest::keyClick(cards[1], Qt::Key_Return);
    CHECK(strip.document.layoutIndex() == 1);
    CHECK_FALSE(strip.document.isUnsaved());
    QAccessibleInterface *access = QAccessible::queryAccessibleInterface(cards[1]);
    REQUIRE(access);
    CHECK(access->state().checked);
}

TEST_CASE("a copy is kept under a name that is typed at once", "[kept]") {
    Strip strip;
    QTest::mouseClick(strip.kept.keepButton(), Qt::LeftButton);
    CHECK(strip.names() == Names{"Border above", "Border up the roll", "Kept 1", ""});
    CHECK(strip.document.layoutIndex() == 3);
    KeptCard *copy = strip.kept.cards()[2];
    REQUIRE(copy->nameField()->isVisible());
    QTest::keyClicks(copy->nameField(), u"before lunch"_s);
    QTest::keyClick(copy->nameField(), Qt::Key_Return);
    CHECK_FALSE(copy->nameField()->isVisible());
    CHECK(strip.names()[2] == "before lunch");
    QTest::keyClick(copy, Qt::Key_F2);
    QTest::keyClicks(copy->nameField(), u"never mind"_s);
    QTest::keyClick(copy->nameField(), Qt::Key_Escape);
    CHECK(strip.names()[2] == "before lunch");
    strip.document.history()->undo();
    CHECK(strip.names()[2] == "Kept 1");
    strip.document.history()->undo();
    CHECK(strip.kept.cards().size() == 3);
}

TEST_CASE("a layout dropped is taken up again by undo", "[kept]") {
    Strip strip;
    KeptCard *card = strip.kept.cards()[0];
    card->setFocus();
    QTest::keyClick(card, Qt::Key_Delete);
    QCoreApplication::processEvents();
    CHECK(strip.names() == Names{"Border up the roll", ""});
    CHECK(strip.kept.cards().size() == 2);
    CHECK(strip.kept.cards()[1]->isChecked());
    strip.document.history()->undo();
    CHECK(strip.names() == Names{"Border above", "Border up the roll", ""});
    CHECK(strip.kept.cards()[2]->isChecked());
}

TEST_CASE("by key alone: kept, named, laid, compared and dropped", "[kept]") {
    Strip strip;
    int compared = -1;
    QObject::connect(&strip.kept, &KeptLayouts::comparisonWanted, &strip.kept, [&](int with) { compared = with; });
    strip.kept.keepButton()->setFocus();
    QTest::keyClick(strip.kept.keepButton(), Qt::Key_Space);
    KeptCard *copy = strip.kept.cards()[2];
    QTest::keyClicks(copy->nameField(), u"as it was"_s);
    QTest::keyClick(copy->nameField(), Qt::Key_Return);
    CHECK(strip.names() == Names{"Border above", "Border up the roll", "as it was", ""});
    QTest::keyClick(copy, Qt::Key_Left);
    QTest::keyClick(strip.kept.cards()[1], Qt::Key_C);
    CHECK(compared == 1);
    QTest::keyClick(strip.kept.cards()[1], Qt::Key_Space); // lays it
    CHECK(strip.document.layoutIndex() == 1);
    compared = -1;
    QTest::keyClick(strip.kept.cards()[1], Qt::Key_C); // with itself there is nothing to compare
    CHECK(compared == -1);
    QTest::keyClick(strip.kept.cards()[1], Qt::Key_Delete);
    QCoreApplication::processEvents();
    CHECK(strip.names() == Names{"Border above", "as it was", ""});
}

TEST_CASE("with no layout there is nothing to keep, and it is said what would be", "[kept]") {
    Job job = bench();
    job.layouts.clear();
    Strip strip(job);
    CHECK(strip.kept.cards().isEmpty());
    CHECK_FALSE(strip.kept.keepButton()->isEnabled());
    strip.kept.keep();
    CHECK(strip.document.job().layouts.empty());
}

TEST_CASE("two layouts compared: how they differ in words, the second dashed over the first", "[kept]") {
    const Job job = bench();
    LayoutComparison comparison(job, 0, 1);
    CHECK(comparison.difference() == u"15 in shorter than “Border up the roll”; moved: 1 of 3 panels"_s);
    CHECK(LayoutComparison(job, 1, 0).difference() == u"15 in longer than “Border above”; moved: 1 of 3 panels"_s);
    CHECK(LayoutComparison(job, 0, 0).difference() == u"as long as “Border above”; moved: 0 of 3 panels"_s);
    comparison.resize(760, 420);
    const QImage two = comparison.grab().toImage();
    LayoutComparison alone(job, 0, 0);
    alone.resize(760, 420);
    CHECK(two != alone.grab().toImage());
}
