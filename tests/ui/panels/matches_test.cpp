#include "tests/ui/panels/desk.h"
#include "ui/forms/match_page.h"
#include "ui/forms/match_picture.h"
#include "ui/forms/panel_table.h"
#include "ui/widgets/sheet_table.h"

#include <QListView>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

/// A back, a seat, a border and two cushions on cloth with a repeat of 9 in both ways.
Job chair() {
    Cloth cloth = bolt(54_in);
    cloth.pattern = motifs(9_in, 9_in);
    Job job = jobOf(cloth, {rectangle("back", 24_in, 18_in), rectangle("seat", 24_in, 22_in),
                            rectangle("border", 24_in, 5_in), rectangle("cushion", 18_in, 18_in, 2)});
    const char *names[] = {"Inside back", "Seat", "Border", "Cushion"};
    for (std::size_t i = 0; i < 4; ++i) {
        job.panels[i].name = names[i];
        job.panels[i].mark = std::string(1, names[i][0]);
    }
    return job;
}

QString line(MatchPage &page, int row) { return page.list()->model()->index(row, 0).data(Qt::DisplayRole).toString(); }

} // namespace

TEST_CASE("a match is added, told in plain words, changed and removed, and each can be undone", "[matches]") {
    Desk desk(chair());
    auto *page = desk.open<MatchPage>(ActionId::Matches);
    CHECK(desk.job().flows.empty());
    QTest::keyClick(page, Qt::Key_A, Qt::AltModifier);
    waitFor([&] { return !desk.job().flows.empty(); }); // the button goes down and up again first
    REQUIRE(desk.job().flows.size() == 1);
    CHECK(line(*page, 0) == u"Inside back, bottom edge → Seat, top edge"_s);
    desk.type("Lost in the join", u"1 1/2"_s);
    CHECK(line(*page, 0) == u"Inside back, bottom edge → Seat, top edge; 1 ½ in lost in the join"_s);
    desk.choose("To panel", u"Border"_s);
    desk.choose("To edge", u"Left edge"_s);
    CHECK(line(*page, 0) == u"Inside back, bottom edge → Border, left edge; 1 ½ in lost in the join"_s);
    const Flow made = desk.read().flows.at(0);
    CHECK(made.to == FlowEnd{"border", Left, {}, {}});
    CHECK(made.lost == 1.5_in);
    desk.press(u"Remove"_s);
    CHECK(desk.job().flows.empty());
    desk.undo();
    REQUIRE(desk.job().flows.size() == 1);
    CHECK(desk.job().flows[0] == made);
    for (int steps = 0; steps < 10 && !desk.job().flows.empty(); ++steps) desk.undo();
    CHECK(desk.job() == desk.read());
    CHECK(desk.job().flows.empty());
    CHECK_FALSE(desk.window().document().isUnsaved());
}

TEST_CASE("all that a file says of a match is shown and can be set", "[matches]") {
    Job job = chair();
    job.flows = {{{"back", Bottom, PanelPoint{6_in, 0_in}, {}}, {"cushion", Top, {}, 1}, 2_in, {}}};
    Desk desk(job);
    auto *page = desk.open<MatchPage>(ActionId::Matches);
    CHECK(line(*page, 0) == u"Inside back, bottom edge, 6 in across and 0 in up → Cushion (1 of 2), top edge; "
                            "2 in lost in the join"_s);
    CHECK(desk.field<LengthEdit>("From point, across")->text() == u"6"_s);
    CHECK_FALSE(desk.field<LengthEdit>("To point, across")->isEnabled());
    // Going through the fields changes nothing.
    for (int i = 0; i < 40; ++i) QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    CHECK(desk.job().flows == job.flows);
    auto *copy = desk.field<QSpinBox>("To which of them");
    copy->setFocus();
    QTest::keyClick(copy, Qt::Key_Up);
    CHECK(desk.job().flows[0].to.copy == 2);
    QTest::keyClick(copy, Qt::Key_Down);
    QTest::keyClick(copy, Qt::Key_Down);
    CHECK(desk.job().flows[0].to.copy == std::nullopt);
    desk.choose("To where", u"at a point of the panel"_s);
    CHECK(desk.job().flows[0].to.at == PanelPoint{9_in, 18_in}); // where it was: the middle of the top edge
    desk.type("To point, across", u"4 1/2"_s);
    desk.type("To point, up", u"17"_s);
    CHECK(desk.job().flows[0].to.at == PanelPoint{4.5_in, 17_in});
    desk.choose("To edge", u"none"_s);
    CHECK(desk.job().flows[0].to.edge == std::nullopt);
    desk.choose("To where", u"in the middle of the edge"_s);
    CHECK(desk.job().flows[0].to == FlowEnd{"cushion", Bottom, {}, {}});
    desk.choose("From where", u"in the middle of the edge"_s);
    CHECK(desk.read().flows[0].from == FlowEnd{"back", Bottom, {}, {}});
}

TEST_CASE("what cannot be is refused in a line, and the fields show what holds", "[matches]") {
    Job job = chair();
    job.panels[3].run = Run::Railroad;
    job.flows = {{{"back", Bottom, {}, {}}, {"seat", Top, {}, {}}, 2_in, {}},
                 {{"seat", Bottom, {}, {}}, {"border", Top, {}, {}}, {}, {}}};
    Desk desk(job);
    auto *page = desk.open<MatchPage>(ActionId::Matches);
    desk.choose("To panel", u"Cushion"_s);
    CHECK(desk.job().flows == job.flows);
    CHECK(page->refusal().startsWith(u"Inside back and Cushion are not run the same way"_s));
    CHECK(desk.field<QComboBox>("To panel")->currentText() == u"Seat"_s);
    auto *panel = desk.field<QComboBox>("To panel");
    panel->setFocus();
    QTest::keyClick(panel, Qt::Key_Up); // the back itself: the two change places, and the join is told from below
    CHECK(page->refusal().isEmpty());
    CHECK(line(*page, 0) == u"Seat, top edge → Inside back, bottom edge; 2 in lost in the join"_s);
    desk.undo();
    // The border's top straight from the back: by way of the seat it comes 24 in further down, and 24 is no multiple.
    QTest::keyClick(page->list(), Qt::Key_Down);
    desk.choose("From panel", u"Inside back"_s);
    CHECK(page->refusal().isEmpty());
    CHECK(desk.job().flows[1].from.panel == "back"); // now it is no ring
    CHECK(desk.read().flows == desk.job().flows);
}

TEST_CASE("a click on an edge in the picture chooses it", "[matches]") {
    Job job = chair();
    job.panels[1].shape = PolygonShape{{{0_in, 0_in}, {24_in, 0_in}, {26_in, 10_in}, {12_in, 22_in}, {0_in, 20_in}}};
    job.panels[1].allow.clear();
    job.flows = {{{"back", Bottom, {}, {}}, {"seat", 3, {}, {}}, {}, {}}};
    Desk desk(job);
    auto *page = desk.open<MatchPage>(ActionId::Matches);
    MatchPicture &picture = *page->picture();
    QTest::mouseClick(&picture, Qt::LeftButton, {}, picture.middleOfEdge(MatchSide::From, Left).toPoint());
    CHECK(desk.job().flows[0].from.edge == int(Left));
    QTest::mouseClick(&picture, Qt::LeftButton, {}, picture.middleOfEdge(MatchSide::To, 2).toPoint());
    CHECK(desk.job().flows[0].to.edge == 2);
    CHECK(desk.field<QComboBox>("To edge")->currentText() == u"Edge 3"_s);
    QTest::mouseClick(&picture, Qt::LeftButton, {}, QPoint(2, 2)); // beside all edges
    CHECK(desk.job().flows[0].to.edge == 2);
}

TEST_CASE("a match that a change of a panel takes with it is told, and comes back with undo", "[matches]") {
    Job job = chair();
    job.panels[0].shape = PolygonShape{{{0_in, 0_in}, {24_in, 0_in}, {24_in, 16_in}, {12_in, 18_in}, {0_in, 16_in}}};
    job.panels[0].allow.clear();
    job.flows = {{{"back", 0, {}, {}}, {"seat", Top, {}, {}}, {}, {}},
                 {{"back", 2, {}, {}}, {"border", Top, {}, {}}, {}, {}}};
    Desk desk(job);
    auto *panels = desk.open<PanelTable>(ActionId::Panels);
    panels->table()->setCurrentIndex(panels->model()->index(0, PanelTableModel::Kind));
    panels->table()->setFocus();
    QTest::keyClick(panels->table(), Qt::Key_F2);
    REQUIRE(qobject_cast<QComboBox *>(QApplication::focusWidget()));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_R); // rectangle
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QTest::qWait(5); // the field gives it up a moment later
    REQUIRE(std::holds_alternative<Rectangle>(desk.job().panels[0].shape));
    REQUIRE(desk.job().flows.size() == 1);
    CHECK(desk.job().flows[0].from == FlowEnd{"back", Bottom, {}, {}});
    CHECK(desk.notice().contains(u"no longer runs on"_s));
    CHECK(desk.notice().contains(u"Inside back, edge 3 → Border, top edge"_s));
    CHECK(desk.notice().contains(u"Undo brings it back"_s));
    desk.undo();
    CHECK(desk.job().flows == job.flows);
    CHECK(desk.notice().isEmpty());
    // The same with a panel taken out, and from the page of panels one comes to the matches.
    panels->table()->setCurrentIndex(panels->model()->index(1, PanelTableModel::Mark));
    desk.press(u"Remove"_s);
    CHECK(desk.job().flows.size() == 1);
    CHECK(desk.notice().contains(u"Seat, top edge"_s));
    desk.press(u"Pattern match…"_s);
    QTest::qWait(20);
    CHECK(qobject_cast<MatchPage *>(desk.window().sheet().content()));
}
