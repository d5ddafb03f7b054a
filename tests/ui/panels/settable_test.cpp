// What a file can say is set in the window: the form in which cloth comes, names, orders, the main cloth, single cuts.

#include "core/edit/job_edit.h"
#include "tests/ui/panels/desk.h"
#include "ui/canvas/canvas.h"
#include "ui/forms/cloth_form.h"
#include "ui/forms/cut_form.h"
#include "ui/forms/match_page.h"
#include "ui/forms/panel_table.h"
#include "ui/models/panel_table_model.h"
#include "ui/widgets/sheet_table.h"

#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QScrollBar>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

Job bench() {
    Cloth cloth = bolt(54_in);
    cloth.name = "Bench stripe";
    cloth.selvage = 0.5_in;
    cloth.bolt->length = 90_in;
    cloth.pattern = motifs(9_in, 9_in);
    Job job = jobOf(
        cloth, {rectangle("top", 48_in, 18_in), rectangle("front", 48_in, 5_in), rectangle("behind", 48_in, 5_in)});
    const char *names[] = {"Seat top", "Front border", "Back border"};
    for (std::size_t i = 0; i < 3; ++i) {
        job.panels[i].name = names[i];
        job.panels[i].mark = std::string(1, names[i][0]);
        job.panels[i].allow.assign(4, 1_in);
        job.panels[i].allowMin.assign(4, 0.5_in);
    }
    Cloth lining = bolt(60_in, "lining");
    lining.name = "Lining";
    job.cloths.push_back(lining);
    job.layouts = {layoutOf({cutAt("top", 1_in, 1_in), cutAt("front", 1_in, 25_in)})};
    return job;
}

/// Chooses in a box that stands in a form built anew on each change, by its name.
void chooseIn(Desk &desk, const QString &name, int index) {
    auto *box = desk.window().sheet().findChild<QComboBox *>(name);
    REQUIRE(box);
    box->setFocus();
    QTest::keyClick(box, index > box->currentIndex() ? Qt::Key_Down : Qt::Key_Up);
    QTest::qWait(20);
}

std::vector<std::string> order(const Job &job) {
    std::vector<std::string> ids;
    for (const Panel &panel : job.panels) ids.push_back(panel.id);
    return ids;
}

using Ids = std::vector<std::string>;

} // namespace

TEST_CASE("a bolt that comes as a remnant keeps its width and length, and says what became of its selvage",
          "[settable]") {
    Desk desk(bench());
    auto *form = desk.open<ClothForm>(ActionId::Cloths);
    chooseIn(desk, u"field kind"_s, 1);
    const Cloth cloth = desk.read().cloths[0];
    REQUIRE(cloth.remnants.size() == 1);
    CHECK(boxOf(cloth.remnants[0].outline) == ClothBox{{}, {54_in, 90_in}});
    CHECK(form->told().contains(u"54 in wide and 90 in long"_s));
    CHECK(form->told().contains(u"selvages, ½ in wide, are marked as flaws"_s));
    CHECK(desk.job().layouts[0].cuts.size() == 2); // what lies on it lies there still
    chooseIn(desk, u"field kind"_s, 0);
    CHECK(desk.job().cloths[0] == bench().cloths[0]);
    desk.undo();
    desk.undo();
    CHECK_FALSE(desk.window().document().isUnsaved());
}

TEST_CASE("of a bolt without an end it is asked how long the remnant is, and nothing is made up", "[settable]") {
    Job job = bench();
    job.cloths[0].bolt->length.reset();
    Desk desk(job);
    auto *form = desk.open<ClothForm>(ActionId::Cloths);
    chooseIn(desk, u"field kind"_s, 1);
    CHECK(desk.job() == job); // not before it is told
    auto *length = form->findChild<LengthEdit *>(u"field remnant length"_s);
    REQUIRE(length);
    CHECK(length->hasFocus());
    QTest::keyClicks(length, u"62 1/2"_s);
    QTest::keyClick(length, Qt::Key_Return);
    QTest::qWait(20);
    REQUIRE(desk.job().cloths[0].remnants.size() == 1);
    CHECK(boxOf(desk.job().cloths[0].remnants[0].outline) == ClothBox{{}, {54_in, 62.5_in}});
    desk.undo();
    // Asked, and thought better of it.
    QTest::qWait(20);
    chooseIn(desk, u"field kind"_s, 1);
    chooseIn(desk, u"field kind"_s, 0);
    CHECK(desk.job() == job);
    CHECK_FALSE(form->findChild<LengthEdit *>(u"field remnant length"_s));
}

TEST_CASE("a remnant is named in its form, and what is cut from it follows", "[settable]") {
    Desk desk(bench());
    auto *form = desk.open<ClothForm>(ActionId::Cloths);
    chooseIn(desk, u"field kind"_s, 1);
    const auto type = [&](const QString &field, const QString &name) {
        auto *edit = form->findChild<QLineEdit *>(field);
        REQUIRE(edit);
        edit->setFocus();
        edit->selectAll();
        QTest::keyClicks(edit, name);
        QTest::keyClick(edit, Qt::Key_Return);
        QTest::qWait(20);
    };
    type(u"field name A"_s, u"window seat"_s);
    CHECK(desk.read().cloths[0].remnants[0].id == "window seat");
    const Job again = desk.read();
    for (const Cut &cut : again.layouts[0].cuts) CHECK(cut.on == "window seat");
    desk.press(u"Add a remnant"_s);
    QTest::qWait(20);
    type(u"field name A"_s, u"window seat"_s); // the second one is A; there is one of that name
    CHECK(form->refusal().contains(u"already"_s));
    CHECK(desk.job().cloths[0].remnants[1].id == "A");
    desk.undo();
    desk.undo();
    CHECK(desk.job().cloths[0].remnants[0].id == "A");
}

TEST_CASE("another cloth is made the main one by mouse and by key, and panels stay with theirs", "[settable]") {
    for (const bool byKey : {false, true}) {
        Desk desk(bench());
        desk.open<ClothForm>(ActionId::Cloths);
        auto *which = desk.field<QComboBox>("Which cloth");
        which->setFocus();
        QTest::keyClick(which, Qt::Key_Down);
        if (byKey) {
            QTest::keyClick(which, Qt::Key_Tab);
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
        } else {
            desk.press(u"Make it the main one"_s);
        }
        QTest::qWait(20);
        const Job now = desk.read();
        CHECK(now.cloths[0].id == "lining");
        for (const Panel &panel : now.panels) CHECK(now.clothOf(panel).id == "body");
        CHECK(desk.job().layouts[0].cuts.size() == 2);
        desk.undo();
        CHECK(desk.job() == bench());
    }
}

TEST_CASE("panels are put in another order by button and by key, each move one step", "[settable]") {
    Desk desk(bench());
    auto *table = desk.open<PanelTable>(ActionId::Panels);
    table->table()->setCurrentIndex(table->model()->index(0, PanelTableModel::Name));
    QTest::keyClick(table->table(), Qt::Key_Down, Qt::AltModifier);
    CHECK(order(desk.job()) == Ids{"front", "top", "behind"});
    CHECK(table->table()->currentIndex().row() == 1);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down, Qt::AltModifier);
    CHECK(order(desk.read()) == Ids{"front", "behind", "top"});
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down, Qt::AltModifier); // it is the last
    CHECK(order(desk.job()) == Ids{"front", "behind", "top"});
    desk.press(u"↑"_s);
    CHECK(order(desk.job()) == Ids{"front", "top", "behind"});
    CHECK(table->table()->hasFocus());
    desk.undo();
    CHECK(order(desk.job()) == Ids{"front", "behind", "top"});
    desk.undo();
    desk.undo();
    CHECK(desk.job() == bench());
    CHECK(desk.job().layouts[0].cuts.size() == 2);
}

TEST_CASE("once more, the keyboard is where the next measure is typed", "[settable]") {
    Desk desk(bench());
    auto *table = desk.open<PanelTable>(ActionId::Panels);
    table->table()->setCurrentIndex(table->model()->index(0, PanelTableModel::Mark));
    desk.press(u"Once more"_s);
    CHECK(table->table()->hasFocus());
    CHECK(table->table()->currentIndex().row() == 1);
    for (const char letter : {'Z', '2'}) QTest::keyClick(QApplication::focusWidget(), letter);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QTest::qWait(20); // Enter closes an editor a moment later
    CHECK(desk.job().panels[1].mark == "Z2");
    desk.press(u"Remove"_s);
    CHECK(table->table()->hasFocus());
}

TEST_CASE("a column is as wide as what is typed into it needs, at once", "[settable]") {
    Desk desk(bench());
    auto *table = desk.open<PanelTable>(ActionId::Panels);
    const auto shown = [&](int column) {
        const QModelIndex at = table->model()->index(1, column);
        return table->table()->columnWidth(column) >=
               table->table()->fontMetrics().horizontalAdvance(at.data(Qt::DisplayRole).toString()) + 4;
    };
    for (const auto &[column, text] :
         {std::pair(int(PanelTableModel::Name), u"Front border, from the left arm to the right arm"_s),
          std::pair(int(PanelTableModel::Mark), u"FBORDER-LONG"_s)}) {
        table->table()->setFocus();
        table->table()->setCurrentIndex(table->model()->index(1, column));
        QTest::keyClicks(table->table(), text.left(1));
        QTest::keyClicks(QApplication::focusWidget(), text.mid(1));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        QTest::qWait(20);
        INFO(text.toStdString());
        CHECK(shown(column));
    }
}

TEST_CASE("a match is begun and told in the order in which the piece is looked at", "[settable]") {
    Desk desk(bench());
    desk.window().document().selectPanel("behind"); // the last one typed
    auto *page = desk.open<MatchPage>(ActionId::Matches);
    const auto line = [&] { return page->list()->model()->index(0, 0).data(Qt::DisplayRole).toString(); };
    desk.press(u"Add a match"_s);
    CHECK(line() == u"Seat top, bottom edge → Front border, top edge"_s);
    // Told the other way round, panel by panel.
    desk.choose("From panel", u"Front border"_s);
    CHECK(page->refusal().isEmpty());
    CHECK(line() == u"Front border, top edge → Seat top, bottom edge"_s);
}

TEST_CASE("one cut is trimmed in the window, which is listed and undone", "[settable]") {
    Desk desk(bench());
    auto &actions = desk.window().actions();
    desk.window().document().select(std::nullopt);
    CHECK_FALSE(actions[ActionId::TrimCut]->isEnabled());
    desk.window().document().select(CutName{"front", 1, 1});
    desk.window().canvas().setFocus();
    QTest::keyClick(&desk.window().canvas(), Qt::Key_T, Qt::ShiftModifier);
    QTest::qWait(20);
    auto *form = qobject_cast<CutForm *>(desk.window().sheet().content());
    REQUIRE(form);
    desk.type("Top edge", u"3/4"_s);
    const Layout trimmed = desk.read().layouts[0];
    CHECK(trimmed.cuts[1].allow[Top] == 0.75_in);
    REQUIRE(trimmed.conceded.size() == 1);
    CHECK(trimmed.conceded[0].kind == Concession::Kind::Trim);
    QTest::qWait(20);
    desk.type("Top edge", u"4"_s);
    CHECK(form->refusal().contains(u"1 in that is added there"_s));
    CHECK(desk.job().layouts[0] == trimmed);
    desk.undo();
    CHECK(desk.job() == bench());
}

TEST_CASE("every page's title and its way back stand where they do on the others", "[settable]") {
    Desk desk(bench());
    std::optional<QPoint> title, done;
    for (const ActionId id : {ActionId::Cloths, ActionId::Panels, ActionId::JobCard, ActionId::Matches,
                              ActionId::Trimmings, ActionId::AskFor, ActionId::Print, ActionId::Keys}) {
        desk.window().actions()[id]->trigger();
        QTest::qWait(20);
        auto *sheet = &desk.window().sheet();
        const QPoint at = sheet->findChild<QLabel *>(u"bigTitle"_s)->mapTo(&desk.window(), QPoint());
        QPoint button;
        for (auto *b : sheet->findChildren<QPushButton *>())
            if (b->text() == u"Done"_s) button = b->mapTo(&desk.window(), QPoint());
        INFO(desk.window().actions()[id]->text().toStdString());
        CHECK(at == title.value_or(at));
        CHECK(button == done.value_or(button));
        title = at;
        done = button;
    }
}

TEST_CASE("with large letters a page has one scroll bar at most", "[settable]") {
    Job job = bench();
    for (Trimming::Kind kind : {Trimming::Kind::Welt, Trimming::Kind::DoubleWelt, Trimming::Kind::Gimp}) {
        Trimming t;
        t.kind = kind;
        t.edges = 120_in;
        t.strip = 1.5_in;
        t.shortest = 12_in;
        t.from = kind == Trimming::Kind::Gimp ? StripsFrom::Bought : StripsFrom::Scraps;
        job.trimmings.push_back(t);
    }
    Desk desk(job, {1280, 720});
    desk.window().setStyleSheet(u"* { font-size: 21px; }"_s); // one and a half of the usual
    desk.window().actions()[ActionId::Trimmings]->trigger();
    QTest::qWait(50);
    int bars = 0;
    for (QScrollBar *bar : desk.window().sheet().findChildren<QScrollBar *>())
        bars += bar->isVisible() && bar->maximum() > bar->minimum();
    CHECK(bars <= 1);
}
