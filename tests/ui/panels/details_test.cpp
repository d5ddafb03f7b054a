#include "core/edit/job_edit.h"
#include "tests/ui/panels/desk.h"
#include "ui/forms/edge_picture.h"
#include "ui/forms/panel_details.h"
#include "ui/forms/panel_table.h"
#include "ui/models/edge_table_model.h"
#include "ui/widgets/sheet_table.h"

#include <QPlainTextEdit>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

/// A back and a cushion with corners of its own, on patterned cloth; a lining beside it.
Job job() {
    Cloth cloth = bolt(54_in);
    cloth.pattern = motifs(9_in, 9_in);
    Job job = jobOf(cloth, {rectangle("back", 24_in, 18_in), rectangle("cushion", 20_in, 20_in)});
    Cloth lining = bolt(48_in, "lining");
    lining.name = "Lining";
    job.cloths.push_back(lining);
    job.panels[0].mark = "IB";
    job.panels[0].allow = {3_in, 1_in, 1_in, 1_in};
    job.panels[1].mark = "C";
    job.panels[1].shape =
        PolygonShape{{{0_in, 0_in}, {20_in, 0_in}, {20_in, 20_in}, {5_in, 20_in}, {5_in, 16_in}, {0_in, 16_in}}};
    job.panels[1].allow.assign(6, 0.5_in);
    return job;
}

PanelDetails *openFor(Desk &desk, int panel) {
    auto *table = desk.open<PanelTable>(ActionId::Panels);
    table->table()->setCurrentIndex(table->model()->index(panel, PanelTableModel::Mark));
    return table->findChild<PanelDetails *>();
}

/// Types into the table of edges, as into a spreadsheet.
void typeAt(PanelDetails &details, int edge, int column, const QString &text) {
    SheetTable &table = *details.edges();
    table.setFocus();
    table.setCurrentIndex(table.model()->index(edge, column));
    if (text.isEmpty()) {
        QTest::keyClick(&table, Qt::Key_F2);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Delete);
    }
    for (const QChar c : text) QTest::keyClick(QApplication::focusWidget(), c.toLatin1());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QTest::qWait(5); // the field goes away
}

} // namespace

TEST_CASE("allowance, least and strip are set edge by edge, and each can be undone", "[details]") {
    Desk desk(job());
    PanelDetails &details = *openFor(desk, 0);
    QAbstractItemModel &edges = *details.edges()->model();
    REQUIRE(edges.rowCount() == 4);
    CHECK(edges.headerData(0, Qt::Vertical, Qt::DisplayRole).toString() == u"Bottom edge"_s);
    CHECK(edges.index(0, EdgeTableModel::Added).data().toString() == u"3"_s);
    CHECK(edges.index(0, EdgeTableModel::Least).data().toString().isEmpty());
    typeAt(details, 0, EdgeTableModel::Least, u"2"_s);
    typeAt(details, 0, EdgeTableModel::Strip, u"1/2"_s);
    typeAt(details, 2, EdgeTableModel::Added, u"1 1/2"_s);
    const Panel back = desk.read().panels[0];
    CHECK(back.allow == EdgeLengths{3_in, 1_in, 1.5_in, 1_in});
    CHECK(back.allowMin == EdgeLengths{2_in, std::nullopt, std::nullopt, std::nullopt});
    CHECK(back.may.stretcher == std::map<int, Length>{{Bottom, 0.5_in}});
    typeAt(details, 0, EdgeTableModel::Strip, {});
    CHECK(desk.read().panels[0].may.stretcher.empty());
    desk.undo();
    CHECK(desk.job().panels[0].may.stretcher.size() == 1);
    CHECK(edges.index(0, EdgeTableModel::Strip).data().toString() == u"½"_s);
    // More left than there is: refused in the trade's words, and nothing changes.
    typeAt(details, 1, EdgeTableModel::Least, u"2"_s);
    auto *table = qobject_cast<PanelTable *>(desk.window().sheet().content());
    CHECK(table->refusal().contains(u"least allowance, right"_s));
    CHECK(desk.job().panels[0].allowMin[Right] == std::nullopt);
}

TEST_CASE("a panel with corners of its own has an allowance at every edge", "[details]") {
    Desk desk(job());
    PanelDetails &details = *openFor(desk, 1);
    QAbstractItemModel &edges = *details.edges()->model();
    REQUIRE(edges.rowCount() == 6);
    CHECK(edges.headerData(3, Qt::Vertical, Qt::DisplayRole).toString() == u"Edge 4"_s);
    typeAt(details, 3, EdgeTableModel::Added, u"2"_s);
    typeAt(details, 5, EdgeTableModel::Strip, u"1/4"_s);
    const Panel cushion = desk.read().panels[1];
    CHECK(cushion.allow == EdgeLengths{0.5_in, 0.5_in, 0.5_in, 2_in, 0.5_in, 0.5_in});
    CHECK(cushion.may.stretcher == std::map<int, Length>{{5, 0.25_in}});
    // Nobody has to count edges: the one in question is seen, and a click on another takes its line.
    EdgePicture &picture = *details.picture();
    CHECK(picture.edge() == 5);
    const QPolygonF corners = picture.corners();
    REQUIRE(corners.size() == 6);
    QTest::mouseClick(&picture, Qt::LeftButton, {}, ((corners[1] + corners[2]) / 2).toPoint());
    CHECK(details.edges()->currentIndex().row() == 1);
    CHECK(picture.edge() == 1);
    // The one field that the table above has for all of them does not pretend that they are alike.
    auto *table = qobject_cast<PanelTable *>(desk.window().sheet().content());
    const QModelIndex all = table->model()->index(1, PanelTableModel::AllowTop);
    CHECK(all.data().toString() == u"by edge"_s);
    table->table()->setFocus();
    table->table()->setCurrentIndex(all);
    QTest::keyClick(table->table(), Qt::Key_F2); // looked into and left as it is
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    CHECK(desk.job().panels[1].allow == cushion.allow);
    CHECK(table->refusal().isEmpty());
}

TEST_CASE("which point of the motif is centred is set, and is the middle where nobody says otherwise", "[details]") {
    Job begun = job();
    begun.panels[0].motif = MotifWish{Centre::Both, {}, {}};
    Desk desk(begun);
    openFor(desk, 1);
    CHECK_FALSE(desk.field<LengthEdit>("Motif, across")->isEnabled()); // nothing is centred on the cushion
    openFor(desk, 0);
    CHECK(desk.field<LengthEdit>("Motif, across")->text() == u"12"_s);
    auto *place = desk.window().sheet().findChild<QComboBox *>(u"motif place"_s);
    REQUIRE(place);
    place->setFocus();
    QTest::keyClick(place, Qt::Key_Down);
    CHECK(desk.job().panels[0].motif->at == PanelPoint{12_in, 9_in});
    desk.type("Motif, up", u"11 1/4"_s);
    CHECK(desk.read().panels[0].motif->at == PanelPoint{12_in, 11.25_in});
    desk.undo();
    CHECK(desk.field<LengthEdit>("Motif, up")->text() == u"9"_s);
    CHECK(desk.job().panels[0].motif->at == PanelPoint{12_in, 9_in});
    QTest::keyClick(place, Qt::Key_Up);
    CHECK(desk.read().panels[0].motif->at == std::nullopt);
}

TEST_CASE("where the joins of a wide part go, and which other cloth may do, are set", "[details]") {
    Job begun = job();
    begun.panels[0].pieces = {.most = 3, .seam = 0.5_in, .shortest = {}, .match = false, .where = {}, .kept = {}};
    Desk desk(begun);
    openFor(desk, 0);
    const auto box = [&](const QString &name) {
        auto *found = desk.window().sheet().findChild<QComboBox *>(name);
        REQUIRE(found);
        REQUIRE(found->isEnabled());
        found->setFocus();
        return found;
    };
    QTest::keyClick(box(u"joins lie"_s), Qt::Key_Down);
    CHECK(desk.read().panels[0].pieces.where == Pieces::Where::Balanced);
    auto *other = box(u"other cloth"_s);
    QTest::keyClick(other, Qt::Key_Down);
    CHECK(desk.read().panels[0].may.otherCloth == OtherCloth{true, {}});
    QTest::keyClick(other, Qt::Key_Down);
    CHECK(other->currentText() == u"Lining"_s);
    CHECK(desk.read().panels[0].may.otherCloth == OtherCloth{false, "lining"});
    desk.undo(); // going down a list is one step
    CHECK(desk.job().panels[0].may.otherCloth == OtherCloth{});
    CHECK(other->currentText() == u"no"_s);
    // A panel with corners is cut whole, and so has no joins.
    openFor(desk, 1);
    CHECK_FALSE(desk.window().sheet().findChild<QComboBox *>(u"joins lie"_s)->isEnabled());
}

TEST_CASE("corners that are taken keep what is added at the edges that stay", "[details]") {
    Desk desk(job());
    PanelDetails &details = *openFor(desk, 0);
    auto *corners = details.findChild<QPlainTextEdit *>();
    REQUIRE(corners);
    corners->setFocus();
    QTest::keyClick(corners, Qt::Key_A, Qt::ControlModifier);
    const QStringList lines{u"0; 0"_s, u"24; 0"_s, u"24; 18"_s, u"4; 18"_s, u"0; 14"_s};
    for (const QString &line : lines) {
        QTest::keyClicks(corners, line);
        QTest::keyClick(corners, Qt::Key_Return);
    }
    desk.press(u"Take these corners"_s);
    const Panel back = desk.read().panels[0];
    REQUIRE(edgeCount(back.shape) == 5);
    CHECK(back.allow == EdgeLengths{3_in, 1_in, 1_in, 3_in, 1_in}); // the cut corner is new
}
