// How smoothly the table pans and zooms with 500 panels on a 30 m bolt drawn from a picture, how long the window takes
// from the start of the process to its first picture, and how much memory a 24-megapixel photograph takes. Prints
// medians and 99th percentiles in milliseconds, by the clock and in processor time, which other work on the machine
// changes little; measured by hand, never by a test. `ui_picture_bench [start|table|photo]`

#include "core/edit/job_edit.h"
#include "tests/ui/synthetic_photo.h"
#include "tests/ui/window_fixture.h"
#include "ui/canvas/canvas.h"
#include "ui/photo/read_picture.h"
#include "ui/photo/remnant_page.h"
#include "ui/window/look.h"
#include "ui/window/over_sheet.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QFile>
#include <QPainter>
#include <QPushButton>
#include <QScrollBar>

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <unistd.h>

using namespace Qt::StringLiterals;
using namespace boltwright;
using namespace boltwright::ui;
using namespace boltwright::literals;

namespace {

/// Sixteen sprays on a ground, so that a repeat has something to resample.
QImage repeatPicture() {
    QImage image(1200, 1500, QImage::Format_RGB32);
    image.fill(QColor(226, 214, 190));
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    for (int i = 0; i < 160; ++i) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(QColor(60 + i * 37 % 140, 90 + i * 23 % 90, 110 + i * 11 % 60));
        painter.save();
        painter.translate(i * 397 % 1200, i * 211 % 1500);
        painter.rotate(i * 37);
        painter.drawEllipse(QRectF(-60, -14, 120, 28));
        painter.restore();
    }
    return image;
}

Job fiveHundred() {
    Job job = newJob(Unit::Inch);
    Cloth &cloth = job.cloths.front();
    cloth.bolt->length = 30000_mm;
    cloth.pattern = Pattern{.across = 13.5_in, .along = 17_in, .drop = 8.5_in, .motif = {6.75_in, 4_in}, .kept = {}};
    cloth.look = ClothLook{};
    cloth.look->swatch = Swatch{};
    cloth.look->swatch->picture.data = bytesToKeep(repeatPicture());
    Panel panel = newPanel(job);
    panel.shape = Rectangle{8_in, 7_in};
    panel.count = 500;
    job.panels = {panel};
    Layout layout;
    for (int copy = 1; copy <= 500; ++copy) {
        Cut cut;
        cut.panel = panel.id;
        cut.copy = copy;
        cut.x = 0.5_in + (copy - 1) % 5 * 10.4_in;
        cut.y = 1_in + (copy - 1) / 5 * 11.6_in;
        layout.cuts.push_back(cut);
    }
    job.layouts = {layout};
    return job;
}

double percentile(std::vector<double> times, double share) {
    std::sort(times.begin(), times.end());
    return times[std::size_t(share * double(times.size() - 1))];
}

/// Milliseconds of frames, by the clock and of the processor, all threads together.
struct Frames {
    std::vector<double> clock, processor;

    template <class Draw>
    void take(const Draw &draw) {
        QElapsedTimer timer;
        timer.start();
        const std::clock_t began = std::clock();
        draw();
        processor.push_back(double(std::clock() - began) * 1000 / CLOCKS_PER_SEC);
        clock.push_back(double(timer.nsecsElapsed()) / 1e6);
    }
};

void say(const char *what, const Frames &frames) {
    const auto &c = frames.clock, &p = frames.processor;
    std::printf(
        "%s: %.2f ms median, %.2f ms at 99 %%, %.2f ms worst of %zu frames; of the processor %.2f, %.2f, %.2f\n", what,
        percentile(c, 0.5), percentile(c, 0.99), percentile(c, 1), c.size(), percentile(p, 0.5), percentile(p, 0.99),
        percentile(p, 1));
}

/// Milliseconds since the process began, as the kernel says (in steps of 10).
double sinceStart() {
    QFile stat(u"/proc/self/stat"_s), uptime(u"/proc/uptime"_s);
    if (!stat.open(QIODevice::ReadOnly) || !uptime.open(QIODevice::ReadOnly)) return 0;
    const QList<QByteArray> fields = stat.readAll().split(')').last().simplified().split(' ');
    const double began = fields[19].toDouble() / double(sysconf(_SC_CLK_TCK));
    return (uptime.readAll().split(' ').first().toDouble() - began) * 1000;
}

long peakKilobytes() {
    QFile status(u"/proc/self/status"_s);
    if (!status.open(QIODevice::ReadOnly)) return 0;
    for (const QByteArray &line : status.readAll().split('\n'))
        if (line.startsWith("VmHWM:")) return line.mid(6).simplified().split(' ').first().toLong();
    return 0;
}

void measureTable(WindowFixture &fixture) {
    MainWindow &window = fixture.show({1440, 900});
    window.document().startWith(fiveHundred());
    Canvas &canvas = window.canvas();
    QTest::qWait(200);
    for (const double zoom : {1.0, 3.0, 3.0, 3.0}) { // all of it, and nearer step by step
        canvas.zoomBy(zoom);
        canvas.viewport()->repaint();
        Frames pan;
        QScrollBar *bar = canvas.horizontalScrollBar();
        for (int i = 0; i < 300 && bar->maximum() > 0; ++i)
            pan.take([&] {
                bar->setValue((i * 37) % (bar->maximum() + 1));
                canvas.viewport()->repaint();
            });
        char title[64];
        std::snprintf(title, sizeof title, "pan at %.2f px/mm", canvas.zoom());
        if (!pan.clock.empty()) say(title, pan);
    }
    canvas.zoomToFit();
    Frames zooming;
    for (int i = 0; i < 300; ++i)
        zooming.take([&] {
            canvas.zoomBy(i / 30 % 2 ? 1 / 1.12 : 1.12, QPointF(400 + i % 90, 300));
            canvas.viewport()->repaint();
        });
    say("zoom", zooming);
}

void measurePhoto(WindowFixture &fixture) {
    MainWindow &window = fixture.show({1440, 900});
    std::printf("memory before: %ld MB\n", peakKilobytes() / 1024);
    if (qEnvironmentVariableIsSet("BENCH_PHOTO")) {
        window.showRemnantPage();
        auto *page = qobject_cast<RemnantPage *>(window.sheet().content());
        QElapsedTimer timer;
        timer.start();
        if (!page->openPicture(qEnvironmentVariable("BENCH_PHOTO"))) std::puts(qPrintable(page->said()));
        std::printf("opened in %lld ms, memory %ld MB at most\n", timer.elapsed(), peakKilobytes() / 1024);
        const QSizeF size = page->picture().picture().size();
        page->picture().setMarks({}, 4, MarkedPicture::Drawn::Outline);
        for (const QPointF p : {QPointF(0.4, 0.4), {0.6, 0.4}, {0.6, 0.6}, {0.4, 0.6}})
            QTest::mouseClick(&page->picture(), Qt::LeftButton, {},
                              page->picture().toWidget({p.x() * size.width(), p.y() * size.height()}).toPoint());
        for (QPushButton *button : page->findChildren<QPushButton *>())
            if (button->text() == u"Trace the outline"_s) QTest::mouseClick(button, Qt::LeftButton);
        const QSizeF straight = page->picture().picture().size();
        for (const QPointF p : {QPointF(0.1, 0.1), {0.9, 0.1}, {0.9, 0.9}, {0.1, 0.9}, {0.1, 0.1}})
            QTest::mouseClick(
                &page->picture(), Qt::LeftButton, {},
                page->picture().toWidget({p.x() * straight.width(), p.y() * straight.height()}).toPoint());
        for (QPushButton *button : page->findChildren<QPushButton *>())
            if (button->text() == u"Put it on the table"_s) QTest::mouseClick(button, Qt::LeftButton);
        QTest::qWait(100);
        window.sheet().close();
        window.canvas().zoomToFit();
        window.canvas().viewport()->repaint();
        std::printf("remnants %zu; on the table: memory %ld MB at most\n",
                    window.document().job().cloths[0].remnants.size(), peakKilobytes() / 1024);
    } else {
        std::puts("set BENCH_PHOTO to a photograph (ui_picture_bench paint FILE makes one of 24 megapixels)");
    }
}

} // namespace

int main(int argc, char **argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    const QString what = application.arguments().value(1, u"table"_s);
    if (what == u"paint"_s) {
        Camera camera;
        camera.pixels = {6000, 4000};
        camera.tilt = 10;
        photograph(camera,
                   {{rectangleAt({0, 0}, 1500, 950), QColor(0xD9, 0xCF, 0xB8)},
                    {rectangleAt({0, 0}, 297, 210), QColor(0xFB, 0xFB, 0xFA)}},
                   0, 76)
            .save(application.arguments().value(2), nullptr, 92);
        return 0;
    }
    WindowFixture fixture;
    applyLook(application, Preferences::Look::Light, 100);
    if (what == u"start"_s) {
        MainWindow &window = fixture.show({1440, 900});
        window.repaint();
        std::printf("from the start of the process to the first picture: %.0f ms\n", sinceStart());
    } else if (what == u"photo"_s) {
        measurePhoto(fixture);
    } else {
        measureTable(fixture);
    }
    fixture.leave();
    return 0;
}
