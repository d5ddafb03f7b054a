// From the empty window to a first layout, by hand and without a word of help: real mouse and key events only.

#include "core/check/check.h"
#include "core/planner/plan.h"
#include "tests/ui/window_fixture.h"
#include "ui/canvas/canvas.h"
#include "ui/document/standing.h"
#include "ui/forms/panel_table.h"
#include "ui/widgets/sheet_table.h"
#include "ui/window/over_sheet.h"

#include <QApplication>
#include <QLineEdit>
#include <QPushButton>

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

/// The button that says so, as an eye would find it.
QPushButton *button(QWidget &in, const QString &text) {
    for (QPushButton *b : in.findChildren<QPushButton *>())
        if (b->isVisible() && b->text() == text) return b;
    return nullptr;
}

void press(QWidget &in, const QString &text) {
    QPushButton *b = button(in, text);
    INFO(text.toStdString());
    REQUIRE(b);
    REQUIRE(b->isEnabled());
    QTest::mouseClick(b, Qt::LeftButton);
    QTest::qWait(20);
}

void type(PanelTable &form, int row, int column, const QString &text) {
    const QModelIndex field = form.model()->index(row, column);
    form.table()->scrollTo(field);
    QTest::mouseClick(form.table()->viewport(), Qt::LeftButton, {}, form.table()->visualRect(field).center());
    INFO(text.toStdString());
    // The first letter opens the field, the others go where it has taken the keyboard.
    for (const QChar letter : text) {
        REQUIRE(QApplication::focusWidget());
        QTest::keyClicks(QApplication::focusWidget(), QString(letter));
    }
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QTest::qWait(10);
    CHECK(form.refusal().isEmpty());
}

} // namespace

TEST_CASE("a short list of measurements, typed, becomes a first layout", "[first]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1400, 900});
    // The empty window names the steps.
    press(window, u"Panels…"_s);
    auto *form = qobject_cast<PanelTable *>(window.sheet().content());
    REQUIRE(form);
    struct Line {
        QString name, across, up, count;
        Length wide, high;
    };
    const QList<Line> list = {{u"Seat"_s, u"22 1/2"_s, u"24"_s, u"2"_s, 22.5_in, 24_in},
                              {u"Inside back"_s, u"22,5"_s, u"1' 8\""_s, u"2"_s, 22.5_in, 20_in},
                              {u"Front border"_s, u"46"_s, u"6 1/4"_s, u"1"_s, 46_in, 6.25_in}};
    for (int i = 0; i < list.size(); ++i) {
        while (form->model()->rowCount() <= i) {
            const int before = form->model()->rowCount();
            press(window.sheet(), u"Add a panel"_s);
            REQUIRE(form->model()->rowCount() > before);
        }
        type(*form, i, PanelTableModel::Name, list[i].name);
        type(*form, i, PanelTableModel::Across, list[i].across);
        type(*form, i, PanelTableModel::Up, list[i].up);
        type(*form, i, PanelTableModel::Count, list[i].count);
    }
    press(window.sheet(), u"Done"_s);
    const auto &panels = window.document().job().panels;
    REQUIRE(panels.size() == 3);
    for (int i = 0; i < 3; ++i) {
        const auto &shape = std::get<Rectangle>(panels[std::size_t(i)].shape);
        CHECK(shape.across == list[i].wide);
        CHECK(shape.up == list[i].high);
    }
    window.planOptions().seconds.reset();
    window.planOptions().steps = 500;
    press(window, u"Plan"_s);
    REQUIRE(waitFor([&] { return !window.planning().isRunning(); }, 30000));
    const Job &job = window.document().job();
    REQUIRE(job.layouts.size() == 1);
    CHECK(job.layouts.front().cuts.size() == 5);
    CHECK(check(job, job.layouts.front()).empty());
    // The cloth in the picture is the whole of it: two seats and two backs side by side, and the border.
    CHECK(window.standing().figuresOfCloth(job.cloths.front().id)->length > Length{});
    CHECK(window.canvas().isVisible());
    fixture.leave();
}

TEST_CASE("a sample opens from the empty window with one click", "[first]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1400, 900});
    press(window, u"Striped settee"_s);
    CHECK(window.canvas().isVisible());
    CHECK_FALSE(window.document().job().panels.empty());
    fixture.leave();
}

TEST_CASE("the empty window names three steps and can be done with the keyboard alone", "[first]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1400, 900});
    QPushButton *panels = button(window, u"Panels…"_s);
    REQUIRE(panels);
    for (int i = 0; i < 60 && !(QApplication::focusWidget() == panels); ++i)
        QTest::keyClick(QApplication::focusWidget() ? QApplication::focusWidget() : &window, Qt::Key_Tab);
    REQUIRE(QApplication::focusWidget() == panels);
    QTest::keyClick(panels, Qt::Key_Space);
    CHECK(window.sheet().isVisible());
    QTest::keyClick(window.sheet().content(), Qt::Key_Escape);
    CHECK_FALSE(window.sheet().isVisible());
    fixture.leave();
}
