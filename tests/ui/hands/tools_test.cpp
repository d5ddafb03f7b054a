#include "tests/ui/hands/hand.h"
#include "ui/canvas/tools/chalk_tool.h"
#include "ui/canvas/tools/note_tool.h"
#include "ui/canvas/tools/tape_tool.h"
#include "ui/paper/cutting_sheet.h"

#include <QLineEdit>

#include <algorithm>
#include <cmath>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {
const SheetOf theBolt{"body", {}};
const Markings &marks(Hand &hand) { return markingsOf(hand.document().job(), theBolt); }
} // namespace

TEST_CASE("the tape reads from corner to corner and changes nothing", "[hands]") {
    Hand hand(fourSeats());
    hand.key(Qt::Key_T);
    REQUIRE(hand.isOn(ActionId::Tape));
    auto *tape = qobject_cast<TapeTool *>(&hand.canvas().tool());
    REQUIRE(tape);
    // From one seat's lower left corner to the next one's; both a few pixels off.
    hand.drag(hand.at(1_in, 2_in) + QPoint(3, -2), hand.at(14_in, 2_in) + QPoint(-2, 3));
    CHECK(tape->reading() == u"13 in"_s);
    CHECK(hand.window().ledge().sentence().contains(u"13 in"_s));
    hand.drag(hand.at(1_in, 2_in), hand.at(11_in, 14_in));
    CHECK(tape->parts() == u"10 across · 12 along"_s);
    CHECK(hand.steps() == 0);
    hand.key(Qt::Key_Escape);
    CHECK(tape->reading().isEmpty());
    hand.key(Qt::Key_Escape);
    CHECK(hand.isOn(ActionId::Hand));
}

TEST_CASE("by keys the tape goes from edge to edge", "[hands]") {
    Hand hand(fourSeats());
    hand.document().select(CutName{"seat", 1, 1});
    hand.key(Qt::Key_T);
    auto *tape = qobject_cast<TapeTool *>(&hand.canvas().tool());
    hand.key(Qt::Key_Return); // at the seat's corner
    hand.key(Qt::Key_Left, Qt::ShiftModifier);
    CHECK(tape->reading() == u"2 in"_s); // down to the cut end
    hand.key(Qt::Key_Right);
    CHECK(tape->reading() == u"1 ⅞ in"_s);
    hand.key(Qt::Key_Return);
    CHECK(hand.steps() == 0);
}

TEST_CASE("chalk lines are drawn, moved and rubbed out with the mouse", "[hands]") {
    Hand hand(fourSeats());
    hand.key(Qt::Key_K);
    REQUIRE(hand.isOn(ActionId::Chalk));
    hand.click(hand.at(5_in, 14_in) + QPoint(4, 0)); // near the seats' tops
    REQUIRE(marks(hand).lines.size() == 1);
    CHECK(marks(hand).lines[0].runs == ChalkLine::Runs::Across);
    CHECK(marks(hand).lines[0].at == 14_in);
    hand.drag(hand.at(30_in, 14_in), hand.at(30_in, 20_in));
    CHECK(abs(marks(hand).lines[0].at - 20_in) < hand.canvas().lengthOf(2));
    hand.click(hand.at(26_in, 30_in), Qt::ShiftModifier);
    REQUIRE(marks(hand).lines.size() == 2);
    CHECK(marks(hand).lines[1].runs == ChalkLine::Runs::Along);
    CHECK(hand.steps() == 3);
    const QPoint on = hand.at(30_in, marks(hand).lines[0].at);
    hand.drag(on, QPoint(on.x(), 4)); // off the cloth
    CHECK(marks(hand).lines.size() == 1);
    hand.undo();
    CHECK(marks(hand).lines.size() == 2);
}

TEST_CASE("chalk lines are drawn, moved and rubbed out by keys", "[hands]") {
    Hand hand(fourSeats());
    hand.document().select(CutName{"seat", 1, 1});
    hand.key(Qt::Key_K);
    hand.key(Qt::Key_Return);
    REQUIRE(marks(hand).lines.size() == 1);
    CHECK(marks(hand).lines[0].at == 2_in);
    hand.key(Qt::Key_Right);
    hand.key(Qt::Key_Right, Qt::ShiftModifier);
    CHECK(marks(hand).lines[0].at == 3.125_in);
    hand.key(Qt::Key_Return, Qt::ShiftModifier);
    REQUIRE(marks(hand).lines.size() == 2);
    CHECK(marks(hand).lines[1].runs == ChalkLine::Runs::Along);
    hand.key(Qt::Key_Escape); // lets go of the line
    hand.key(Qt::Key_Tab);
    hand.key(Qt::Key_Delete);
    REQUIRE(marks(hand).lines.size() == 1);
    CHECK(marks(hand).lines[0].runs == ChalkLine::Runs::Along);
    CHECK(hand.document().layout().cuts.size() == 4); // no panel was put aside by that key
}

TEST_CASE("a panel comes to rest at a chalk line", "[hands]") {
    Job job = fourSeats();
    job = withChalkLine(job, theBolt, {ChalkLine::Runs::Across, 30_in, {}});
    Hand hand(job);
    hand.press(hand.middleOf(0));
    hand.move(hand.middleOf(0) + hand.at(1_in, 30_in) - hand.at(1_in, 2_in) + QPoint(5, 0));
    const auto &guides = hand.document().preview()->settled.guides;
    CHECK(std::any_of(guides.begin(), guides.end(), [](const Guide &g) { return g.text == "at the chalk line"; }));
    hand.release();
    CHECK(hand.cornerOf(0).y == 30_in);
}

TEST_CASE("notes are pinned, moved, changed and taken off with the mouse", "[hands]") {
    Hand hand(fourSeats());
    hand.key(Qt::Key_N);
    auto *notes = qobject_cast<NoteTool *>(&hand.canvas().tool());
    REQUIRE(notes);
    hand.click(hand.at(30_in, 25_in));
    REQUIRE(notes->editor());
    QTest::keyClicks(notes->editor(), u"crease here, rule l and r"_s);
    QTest::keyClick(notes->editor(), Qt::Key_Return);
    REQUIRE(marks(hand).notes.size() == 1);
    CHECK(marks(hand).notes[0].text == "crease here, rule l and r");
    CHECK(hand.cut(0).turn == Turn::Deg0); // letters went into the note, not to the panels
    const QPoint pin = hand.at(marks(hand).notes[0].at.x, marks(hand).notes[0].at.y);
    hand.drag(pin, pin + QPoint(60, 20));
    CHECK(marks(hand).notes[0].at.y > 26_in);
    const QPoint there = hand.at(marks(hand).notes[0].at.x, marks(hand).notes[0].at.y);
    QTest::mouseDClick(hand.canvas().viewport(), Qt::LeftButton, {}, there);
    REQUIRE(notes->editor());
    QTest::keyClicks(notes->editor(), u"steamed"_s);
    QTest::keyClick(notes->editor(), Qt::Key_Return);
    CHECK(marks(hand).notes[0].text == "steamed");
    hand.drag(there, QPoint(there.x(), 4));
    CHECK(marks(hand).notes.empty());
    CHECK(hand.steps() == 4);
}

TEST_CASE("notes are pinned, moved, changed and taken off by keys", "[hands]") {
    Hand hand(fourSeats());
    hand.document().select(CutName{"seat", 2, 1});
    hand.key(Qt::Key_N);
    auto *notes = qobject_cast<NoteTool *>(&hand.canvas().tool());
    hand.key(Qt::Key_Return);
    REQUIRE(notes->editor());
    QTest::keyClicks(notes->editor(), u"match the tuft"_s);
    QTest::keyClick(notes->editor(), Qt::Key_Return);
    REQUIRE(marks(hand).notes.size() == 1);
    CHECK(abs(marks(hand).notes[0].at.x - 19_in) < 0.125_in); // the middle of the selected seat
    const Length y = marks(hand).notes[0].at.y;
    hand.key(Qt::Key_Right);
    CHECK(marks(hand).notes[0].at.y == y + 0.125_in);
    hand.key(Qt::Key_Return);
    REQUIRE(notes->editor());
    QTest::keyClick(notes->editor(), Qt::Key_Escape);
    CHECK(marks(hand).notes[0].text == "match the tuft");
    hand.key(Qt::Key_Escape);
    hand.key(Qt::Key_Tab);
    hand.key(Qt::Key_Delete);
    CHECK(marks(hand).notes.empty());
}

namespace {

/// Listens to what a page is painted with.
class Heard : public Surface {
public:
    Heard() : Surface(100) {}
    void area(const QPolygonF &outline, const QColor &, const Stroke &) override { areas << outline.boundingRect(); }
    void lines(const QList<QLineF> &lines, const Stroke &stroke) override {
        if (stroke.dashes == QList<qreal>{5, 2.5}) chalk << lines;
    }
    void words(const SetWords &words) override { said << words.text; }
    void picture(const QImage &, const QRectF &) override {}
    QStringList said;
    QList<QRectF> areas;
    QList<QLineF> chalk;
};

} // namespace

TEST_CASE("a note that is pinned and a line that is chalked stand on the cutting sheet too", "[hands]") {
    Hand hand(fourSeats());
    const auto sheet = [&] {
        auto made = CuttingSheet::make(hand.document().job(), hand.document().laidLayout());
        REQUIRE(made);
        return *made;
    };
    const auto heardOn = [&](int page) {
        Heard heard;
        sheet()->paint(heard, page);
        return heard;
    };
    const Heard before = heardOn(0);
    CHECK(before.chalk.isEmpty());
    hand.key(Qt::Key_N);
    auto *notes = qobject_cast<NoteTool *>(&hand.canvas().tool());
    hand.click(hand.at(30_in, 12_in));
    REQUIRE(notes->editor());
    QTest::keyClicks(notes->editor(), u"shade bar: face it down"_s);
    QTest::keyClick(notes->editor(), Qt::Key_Return);
    hand.key(Qt::Key_K);
    hand.click(hand.at(10_in, 8_in));
    REQUIRE(marks(hand).lines.size() == 1);
    REQUIRE(marks(hand).notes.size() == 1);

    // Drawn where it is pinned, in a line of its own pattern, and said in full on the list with its place.
    const Heard drawn = heardOn(0), list = heardOn(sheet()->count() - 1);
    CHECK(drawn.said.contains(u"a"_s));
    CHECK(drawn.said.join(u' ').contains(u"shade bar: face it down"_s));
    CHECK(drawn.said.contains(u"chalk line, not a cut"_s));
    CHECK_FALSE(before.said.contains(u"chalk line, not a cut"_s));
    REQUIRE(drawn.chalk.size() == 2); // on the cloth, and in the key
    const QString listed = list.said.join(u' ');
    CHECK(listed.contains(u"Notes pinned to this cloth"_s));
    CHECK(listed.contains(u"shade bar: face it down"_s));
    // The dot lies on the very place: found again from the chalk line, whose place is known, and the sheet's scale.
    const double perMillimetre = 100.0 / sheet()->plan().scale;
    const auto &line = marks(hand).lines[0];
    const auto &note = marks(hand).notes[0];
    REQUIRE(line.runs == ChalkLine::Runs::Across);
    const QLineF chalk = std::abs(drawn.chalk[0].dx()) < 1 ? drawn.chalk[0] : drawn.chalk[1];
    const QPointF pinned(chalk.x1() + (note.at.y - line.at).toMillimetres() * perMillimetre,
                         std::min(chalk.y1(), chalk.y2()) + note.at.x.toMillimetres() * perMillimetre);
    CHECK(std::any_of(drawn.areas.begin(), drawn.areas.end(), [&](const QRectF &area) {
        return area.width() < 200 && QLineF(area.center(), pinned).length() < 5; // within 0.05 mm of paper
    }));

    // Taken off the cloth, it is off the sheet.
    hand.undo();
    hand.undo();
    const Heard after = heardOn(0);
    CHECK(after.said == before.said);
    CHECK(after.chalk.isEmpty());
}

TEST_CASE("an empty note leaves nothing behind", "[hands]") {
    Hand hand(fourSeats());
    hand.key(Qt::Key_N);
    auto *notes = qobject_cast<NoteTool *>(&hand.canvas().tool());
    hand.click(hand.at(30_in, 25_in));
    REQUIRE(notes->editor());
    QTest::keyClick(notes->editor(), Qt::Key_Return);
    CHECK(marks(hand).notes.empty());
    CHECK(hand.steps() == 0);
}
