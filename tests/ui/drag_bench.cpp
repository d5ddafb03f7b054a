// How long a move of the hand takes with 200 panels on a striped bolt: settling, figures and repainting together.
// Prints the median and the 99th percentile in milliseconds; measured by hand, never by a test.

#include "core/edit/job_edit.h"
#include "core/files/job_file.h"
#include "tests/ui/window_fixture.h"
#include "ui/canvas/canvas.h"
#include "ui/window/look.h"

#include <QApplication>
#include <QElapsedTimer>

#include <algorithm>
#include <cstdio>

using namespace Qt::StringLiterals;
using namespace boltwright;
using namespace boltwright::ui;
using namespace boltwright::literals;

namespace {

/// Forty rows of five panels, each centred on a stripe.
Job twoHundred() {
    Job job = newJob(Unit::Inch);
    Cloth &cloth = job.cloths.front();
    cloth.pattern = Pattern{.across = 3_in, .along = {}, .drop = {}, .motif = {2_in, Length{}}, .kept = {}};
    Panel panel = newPanel(job);
    panel.shape = Rectangle{8_in, 8_in};
    panel.motif = MotifWish{Centre::Across, {}, {}};
    panel.count = 200;
    job.panels = {panel};
    Layout layout;
    for (int copy = 1; copy <= 200; ++copy) {
        Cut cut;
        cut.panel = panel.id;
        cut.copy = copy;
        cut.x = 0.5_in + (copy - 1) % 4 * 12_in;
        cut.y = 1_in + (copy - 1) / 4 * 9.5_in;
        layout.cuts.push_back(cut);
    }
    job.layouts = {layout};
    return job;
}

double percentile(std::vector<double> times, double share) {
    std::sort(times.begin(), times.end());
    return times[std::size_t(share * double(times.size() - 1))];
}

} // namespace

int main(int argc, char **argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    WindowFixture fixture;
    applyLook(application, Preferences::Look::Light, 100);
    MainWindow &window = fixture.show({1440, 900});
    window.document().startWith(twoHundred());
    Canvas &canvas = window.canvas();
    canvas.zoomBy(3);
    window.document().select(nameOf(window.document().layout().cuts[100]));
    canvas.showSelection();
    QTest::qWait(100);
    const QPoint from = canvas.cutRect(100).center().toPoint();
    QTest::mousePress(canvas.viewport(), Qt::LeftButton, {}, from);
    std::vector<double> settling, all;
    for (int i = 1; i <= 600; ++i) {
        QElapsedTimer timer;
        timer.start();
        QMouseEvent move(QEvent::MouseMove, from + QPoint(i % 150, i % 60), canvas.viewport()->mapToGlobal(from),
                         Qt::NoButton, Qt::LeftButton, {});
        QApplication::sendEvent(canvas.viewport(), &move);
        settling.push_back(double(timer.nsecsElapsed()) / 1e6);
        canvas.viewport()->repaint();
        all.push_back(double(timer.nsecsElapsed()) / 1e6);
    }
    if (!window.document().preview()) {
        std::fputs("nothing was dragged\n", stderr);
        return 1;
    }
    QTest::keyClick(&canvas, Qt::Key_Escape);
    std::printf(
        "one move, 200 panels: settling and figures %.2f ms median, %.2f ms at 99 %%; with repainting %.2f, %.2f\n",
        percentile(settling, 0.5), percentile(settling, 0.99), percentile(all, 0.5), percentile(all, 0.99));
    fixture.leave();
    return 0;
}
