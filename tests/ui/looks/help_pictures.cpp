// Takes the pictures of the help pages of the program itself, at work on a sample: small, and in few colours, since
// they travel inside the program. `ui_help_pictures FOLDER`

#include "core/edit/markings.h"
#include "core/planner/plan.h"
#include "tests/ui/window_fixture.h"
#include "ui/canvas/canvas.h"
#include "ui/drawing/table_frame.h"
#include "ui/window/look.h"
#include "ui/window/over_sheet.h"

#include <QApplication>
#include <QTest>

#include <cstdio>

using namespace Qt::StringLiterals;
using namespace boltwright;
using namespace boltwright::ui;
using namespace boltwright::literals;

namespace {

QString folder;

void keep(const QPixmap &picture, const QString &name, int width) {
    const QImage small =
        picture.toImage().scaledToWidth(width, Qt::SmoothTransformation).convertToFormat(QImage::Format_RGB888);
    small.save(u"%1/%2.png"_s.arg(folder, name), "PNG", 0); // 0: packed as tightly as can be
}

QPoint at(Canvas &canvas, Length x, Length y) { return canvas.toViewport(0).map(onTable(ClothPoint{x, y})).toPoint(); }

void take(MainWindow &window) {
    window.files().openSample(u":/boltwright/samples/striped-settee.boltwright"_s);
    window.planOptions().seconds.reset();
    window.planOptions().steps = 3000;
    window.actions()[ActionId::Plan]->trigger();
    waitFor([&] { return !window.planning().isRunning(); }, 60000);
    QTest::qWait(3000); // the note that planning leaves goes away
    Canvas &canvas = window.canvas();
    canvas.zoomToFit();
    QTest::qWait(100);
    keep(window.grab(), u"first-layout"_s, 720);

    canvas.zoomBy(1.6, QPointF(100, 300));
    int last = 0;
    for (int i = 0; i < canvas.table().panels().size(); ++i)
        if (canvas.cutRect(i).right() > canvas.cutRect(last).right()) last = i;
    window.document().select(nameOf(window.document().layout().cuts[std::size_t(last)]));
    canvas.showSelection();
    const QPoint from = canvas.cutRect(last).center().toPoint();
    QTest::mousePress(canvas.viewport(), Qt::LeftButton, {}, from);
    for (int i = 1; i <= 6; ++i) moveMouse(canvas.viewport(), from + QPoint(11 * i, i));
    QTest::qWait(50);
    keep(canvas.grab(), u"moving"_s, 660);
    QTest::keyClick(&canvas, Qt::Key_Escape);
    QTest::mouseRelease(canvas.viewport(), Qt::LeftButton, {}, from);

    const SheetOf bolt{window.document().job().cloths.front().id, {}};
    Job job = withChalkLine(window.document().job(), bolt, {ChalkLine::Runs::Across, 72_in, {}});
    job = withNotePinned(job, bolt, {30_in, 90_in}, "Crease from the fold: steam before cutting");
    window.document().changeJob(job, u"Chalk and pin"_s);
    window.document().select(std::nullopt);
    canvas.zoomToFit();
    canvas.zoomBy(1.5, QPointF(100, 300));
    canvas.setFocus();
    window.actions()[ActionId::Tape]->trigger();
    const QPoint start = at(canvas, 0.5_in, 40_in), end = at(canvas, 40_in, 72_in);
    QTest::mousePress(canvas.viewport(), Qt::LeftButton, {}, start);
    moveMouse(canvas.viewport(), end);
    QTest::mouseRelease(canvas.viewport(), Qt::LeftButton, {}, end);
    QTest::qWait(50);
    keep(canvas.parentWidget()->grab(), u"tape-chalk-notes"_s, 660);
    window.actions()[ActionId::Hand]->trigger();

    window.showClothForm();
    QTest::qWait(80);
    keep(window.sheet().grab(), u"cloth"_s, 660);
    window.sheet().close();
    window.showPanelTable();
    QTest::qWait(80);
    keep(window.sheet().grab(), u"panels"_s, 660);
    window.showMatches();
    QTest::qWait(80);
    keep(window.sheet().grab(), u"matches"_s, 660);
}

} // namespace

int main(int argc, char **argv) {
    QApplication application(argc, argv);
    if (argc < 2) {
        std::fputs("usage: ui_help_pictures FOLDER\n", stderr);
        return 2;
    }
    folder = QString::fromLocal8Bit(argv[1]);
    applyLook(application, Preferences::Look::Light, 100);
    WindowFixture fixture;
    take(fixture.show({1180, 740}));
    fixture.leave();
    return 0;
}
