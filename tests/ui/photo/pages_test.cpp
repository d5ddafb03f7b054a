#include "core/edit/job_edit.h"
#include "core/files/job_file.h"
#include "core/geometry/shape_ops.h"
#include "core/job/pictures.h"
#include "core/rules/photo_scale.h"
#include "tests/core/support/jobs.h"
#include "tests/ui/synthetic_photo.h"
#include "tests/ui/window_fixture.h"
#include "ui/canvas/canvas.h"
#include "ui/drawing/cloth_pictures.h"
#include "ui/paper/cutting_sheet.h"
#include "ui/photo/corner_fit.h"
#include "ui/photo/remnant_page.h"
#include "ui/photo/swatch_page.h"
#include "ui/photo/tape_page.h"
#include "ui/widgets/length_edit.h"
#include "ui/window/notice_bar.h"
#include "ui/window/over_sheet.h"

#include <QComboBox>
#include <QFileInfo>
#include <QPainter>
#include <QPushButton>
#include <QRadioButton>

#include <catch2/catch.hpp>

#include <cmath>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

const QPolygonF cloth({{-760, -480}, {760, -480}, {760, 250}, {300, 480}, {-760, 480}});

Camera camera() {
    Camera camera;
    camera.tilt = 14;
    camera.spin = 4;
    return camera;
}

QString photoIn(const QString &folder) {
    const QString file = folder + u"/remnant.png"_s;
    photograph(camera(),
               {{cloth, QColor(0xD9, 0xCF, 0xB8)}, {rectangleAt({100, 0}, 215.9, 279.4), QColor(0xFB, 0xFB, 0xFA)}}, 0,
               76.2)
        .save(file);
    return file;
}

QPolygonF paper() { return camera().toPicture().map(rectangleAt({100, 0}, 215.9, 279.4)); }

template <class Page>
Page &pageOf(MainWindow &window) {
    auto *page = qobject_cast<Page *>(window.sheet().content());
    REQUIRE(page);
    return *page;
}

void click(MarkedPicture &picture, const QPointF &at) {
    QTest::mouseClick(&picture, Qt::LeftButton, {}, picture.toWidget(at).toPoint());
}

void press(QWidget &page, const char *name) {
    auto *button = page.findChild<QPushButton *>(QString::fromLatin1(name));
    REQUIRE(button);
    QTest::mouseClick(button, Qt::LeftButton);
}

QPushButton *buttonThatSays(QWidget &page, const QString &text) {
    for (QPushButton *button : page.findChildren<QPushButton *>())
        if (button->text() == text && button->isVisible()) return button;
    return nullptr;
}

/// Through both steps of the page, by clicks alone.
void traceRemnant(MainWindow &window, const QString &file) {
    window.actions()[ActionId::RemnantFromPhotograph]->trigger();
    auto &page = pageOf<RemnantPage>(window);
    REQUIRE(page.openPicture(file));
    // Clicked to the whole pixel of a picture that is shown at a third of its size; each comes to rest on its edges.
    for (const QPointF &corner : paper()) click(page.picture(), corner);
    REQUIRE(page.find().isStraight());
    CHECK(page.find().fitted);
    CHECK(page.said().contains(u"where the edges meet"_s));
    for (int i = 0; i < 4; ++i) CHECK(QLineF(page.find().corners[i], paper()[i]).length() < fittedMiss);
    QTest::mouseClick(buttonThatSays(page, u"Trace the outline"_s), Qt::LeftButton);
    // On the straightened picture, where the same places are found by the page's own corners.
    const QTransform onIt = straightened(page.find()).fromPhoto;
    const QPolygonF seen = onIt.map(camera().toPicture().map(cloth));
    for (const QPointF &corner : seen) click(page.picture(), corner);
    click(page.picture(), seen.first());
    QTest::mouseClick(buttonThatSays(page, u"Mark a flaw"_s), Qt::LeftButton);
    const QPolygonF flaw = onIt.map(camera().toPicture().map(rectangleAt({-500, 300}, 180, 180)));
    for (const QPointF &corner : flaw) click(page.picture(), corner);
    QTest::keyClick(&page.picture(), Qt::Key_Return, Qt::ControlModifier);
}

} // namespace

TEST_CASE("a remnant is traced in a photograph by clicks, taped, and only then printed", "[photo page]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1280, 860});
    const QString file = photoIn(fixture.folder());
    traceRemnant(window, file);
    auto &page = pageOf<RemnantPage>(window);
    INFO(page.said().toStdString());
    CHECK(page.said().startsWith(u"About "_s));
    QTest::mouseClick(buttonThatSays(page, u"Put it on the table"_s), Qt::LeftButton);
    const Job &job = window.document().job();
    REQUIRE(job.cloths.size() == 1); // in place of the bolt that nobody had used
    REQUIRE(job.cloths[0].remnants.size() == 1);
    const Remnant traced = job.cloths[0].remnants[0];
    REQUIRE(traced.photo);
    CHECK_FALSE(traced.photo->picture.data.isEmpty());
    CHECK(traced.flaws.size() == 1);
    const ClothBox box = boxOf(traced.outline);
    // The cloth's top is the picture's: 1520 mm across and 960 up the roll, within half a percent of the long side.
    CHECK(box.width().toMillimetres() == Approx(1520).margin(0.005 * 1520));
    CHECK(box.height().toMillimetres() == Approx(960).margin(0.005 * 1520));
    CHECK(job.cloths[0].edge > Length{});
    CHECK(faultsOfJob(job).empty());

    // Nothing is printed for cutting yet.
    Job laid = job;
    laid.panels = {rectangle("Seat", 10_in, 10_in)};
    Cut cut = cutAt("Seat", 20_in, 10_in);
    cut.on = "A";
    const std::filesystem::path sheet = (fixture.folder() + u"/sheet.pdf"_s).toStdString();
    const auto refused = writeCuttingSheet(laid, layoutOf({cut}), sheet, {});
    REQUIRE_FALSE(refused);
    CHECK(refused.error().text.find("remnant A was measured in a photograph only") != std::string::npos);
    CHECK_FALSE(writeChalkCsv(laid, layoutOf({cut}), sheet));
    CHECK_FALSE(std::filesystem::exists(sheet));

    // The next page asks for the tape. A length along the lower edge, and one along the left.
    QTest::qWait(20);
    auto &tape = pageOf<TapePage>(window);
    const auto corner = [&](double x, double y) {
        return tape.fromTable().map(QPointF((box.height().toMillimetres() - (y + 480)), x + 760));
    };
    for (const QPointF at : {corner(-760, -480), corner(760, -480), corner(-760, -480), corner(-760, 480)})
        click(tape.picture(), at);
    for (const auto &[name, words] : {std::pair(u"first length"_s, u"1520 mm"_s), {u"second length"_s, u"960 mm"_s}}) {
        auto *length = tape.findChild<LengthEdit *>(name);
        length->setFocus();
        QTest::keyClicks(length, words);
        QTest::keyClick(length, Qt::Key_Return);
    }
    CHECK(tape.picture().marks().size() == 4); // the corner that both begin at was marked twice
    press(tape, "mainButton");
    const Remnant &right = window.document().job().cloths[0].remnants[0];
    CHECK(isScaleTaped(right));
    // Half a percent of the long side is what is promised; how near whole pixels come within that depends on how large
    // the page shows the picture.
    CHECK(boxOf(right.outline).width().toMillimetres() == Approx(1520).margin(0.005 * 1520));
    CHECK(boxOf(right.outline).height().toMillimetres() == Approx(960).margin(0.005 * 1520));
    laid.cloths = window.document().job().cloths;
    CHECK(writeCuttingSheet(laid, layoutOf({cut}), sheet, {}));

    // Both are steps that can be taken back.
    window.document().history()->undo();
    CHECK_FALSE(isScaleTaped(window.document().job().cloths[0].remnants[0]));
    window.document().history()->undo();
    CHECK(window.document().job().cloths[0].bolt.has_value());
    window.document().history()->redo();
    CHECK(window.document().job().cloths[0].remnants.size() == 1);
}

TEST_CASE("an outline that is closed is put right by mouse and keys, as on the table", "[photo page]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1280, 860});
    traceRemnant(window, photoIn(fixture.folder()));
    auto &page = pageOf<RemnantPage>(window);
    MarkedPicture &picture = page.picture();
    QTest::qWait(20); // the page has found its shape
    const QPolygonF closed = picture.marks();
    const auto corners = closed.size();
    REQUIRE(corners >= 4);
    const auto drag = [&](QPointF from, QPointF by) {
        const QPoint at = picture.toWidget(from).toPoint();
        QTest::mousePress(&picture, Qt::LeftButton, {}, at);
        for (int i = 1; i <= 4; ++i) moveMouse(&picture, at + (by * i / 4).toPoint());
        QTest::mouseRelease(&picture, Qt::LeftButton, {}, at + by.toPoint());
    };
    const auto outline = [&] { return page.find().outline; };
    // A click beside it sets no corner any more, and one on the middle of a side pulls nothing out.
    click(picture, (closed[0] + closed[2]) / 2);
    click(picture, (closed[0] + closed[1]) / 2);
    CHECK(picture.marks() == closed);
    // A corner is dragged.
    const QPolygonF before = outline();
    drag(closed[1], {-12, 9});
    CHECK(picture.marks().size() == corners);
    CHECK(QLineF(picture.toWidget(picture.marks()[1]), picture.toWidget(closed[1]) + QPointF(-12, 9)).length() < 1.5);
    CHECK(outline() != before);
    CHECK(buttonThatSays(page, u"Put it on the table"_s)->isEnabled());
    // The middle of a side pulls out a corner, which Delete takes away again.
    const QPolygonF moved = picture.marks();
    drag((moved[0] + moved[1]) / 2, {4, 14});
    CHECK(picture.marks().size() == corners + 1);
    CHECK(outline().size() == corners + 1);
    QTest::keyClick(&picture, Qt::Key_Delete);
    CHECK(picture.marks() == moved);
    // By keys: Tab goes to a corner, Insert puts one half way on, the arrows move it, Delete takes it.
    picture.setFocus();
    QTest::keyClick(&picture, Qt::Key_Tab);
    QTest::keyClick(&picture, Qt::Key_Insert);
    REQUIRE(picture.marks().size() == corners + 1);
    CHECK(QLineF(picture.marks()[1], (moved[0] + moved[1]) / 2).length() < 0.01);
    QTest::keyClick(&picture, Qt::Key_Down);
    CHECK(picture.marks()[1].y() > ((moved[0] + moved[1]) / 2).y());
    QTest::keyClick(&picture, Qt::Key_Backspace);
    CHECK(picture.marks() == moved);
    // Crossed, it is said and cannot be put on the table; put back, it can.
    QTest::keyClick(&picture, Qt::Key_Tab); // the first corner, dragged beyond the opposite one
    const QPointF home = picture.toWidget(picture.marks()[0]);
    drag(picture.marks()[0], picture.toWidget((picture.marks()[1] + picture.marks()[2]) / 2) - home + QPointF(30, 0));
    const bool fits = buttonThatSays(page, u"Put it on the table"_s)->isEnabled();
    INFO(page.said().toStdString());
    CHECK_FALSE(fits);
    CHECK_FALSE(page.said().startsWith(u"About "_s));
    drag(picture.marks()[0], home - picture.toWidget(picture.marks()[0]));
    CHECK(buttonThatSays(page, u"Put it on the table"_s)->isEnabled());
    // Tab leaves the picture after its last corner.
    QTest::keyClick(&picture, Qt::Key_Escape);
    for (int i = 0; i < int(corners); ++i) {
        QTest::keyClick(&picture, Qt::Key_Tab);
        CHECK(picture.hasFocus());
    }
    QTest::keyClick(&picture, Qt::Key_Tab);
    CHECK_FALSE(picture.hasFocus());
    // No fewer than three corners are left.
    picture.setFocus();
    QTest::keyClick(&picture, Qt::Key_PageDown);
    for (int i = 0; i < 12; ++i) {
        QTest::keyClick(&picture, Qt::Key_Delete);
        QTest::keyClick(&picture, Qt::Key_PageDown);
    }
    CHECK(picture.marks().size() == 3);
    CHECK(page.said() == u"An outline has three corners at least."_s);
    fixture.leave();
}

TEST_CASE("wrong corners are refused where they are clicked, and put right by dragging", "[photo page]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1280, 860});
    window.actions()[ActionId::RemnantFromPhotograph]->trigger();
    auto &page = pageOf<RemnantPage>(window);
    CHECK_FALSE(page.openPicture(fixture.folder() + u"/nowhere.png"_s));
    CHECK(page.said() == u"nowhere.png: there is no such picture"_s);
    REQUIRE(page.openPicture(photoIn(fixture.folder())));
    const QPolygonF corners = paper();
    for (const int i : {0, 2, 1, 3}) click(page.picture(), corners[i]);
    CHECK(page.said().contains(u"the sides cross"_s));
    CHECK_FALSE(page.find().isStraight());
    CHECK_FALSE(buttonThatSays(page, u"Trace the outline"_s)->isEnabled());
    // The second is dragged to where the third is and a little on, then the third to where the second was.
    const auto drag = [&](QPointF from, QPointF to) {
        MarkedPicture &picture = page.picture();
        QTest::mousePress(&picture, Qt::LeftButton, {}, picture.toWidget(from).toPoint());
        moveMouse(&picture, picture.toWidget((from + to) / 2).toPoint());
        moveMouse(&picture, picture.toWidget(to).toPoint());
        QTest::mouseRelease(&picture, Qt::LeftButton, {}, picture.toWidget(to).toPoint());
    };
    const QPointF aside = corners[2] + QPointF(150, 150);
    drag(corners[2], aside);
    drag(corners[1], corners[2]);
    drag(aside, corners[1]);
    CHECK(page.find().isStraight());
    CHECK(page.said().startsWith(u"✓"_s));
    CHECK(page.find().fitted);
    // With Alt held a corner stays where it is put, and so does one that is moved by keys, a quarter of a pixel a step.
    MarkedPicture &picture = page.picture();
    const auto drop = [&](QPointF from, QPointF to, Qt::KeyboardModifiers with) {
        QTest::mousePress(&picture, Qt::LeftButton, with, picture.toWidget(from).toPoint());
        moveMouse(&picture, picture.toWidget(to).toPoint(), with);
        QTest::mouseRelease(&picture, Qt::LeftButton, with, picture.toWidget(to).toPoint());
    };
    const QPointF beside = corners[0] + QPointF(4, 4);
    drop(corners[0], beside, Qt::AltModifier);
    CHECK(QLineF(page.find().corners[0], corners[0]).length() > 3);
    CHECK_FALSE(page.find().fitted);
    drop(beside, beside + QPointF(-3, -1), {});
    CHECK(QLineF(page.find().corners[0], corners[0]).length() < fittedMiss);
    CHECK(page.find().fitted);
    const QPointF before = page.find().corners[0];
    QTest::keyClick(&picture, Qt::Key_PageDown);
    QTest::keyClick(&picture, Qt::Key_Right, Qt::AltModifier);
    CHECK(page.find().corners[0].x() == Approx(before.x() + 0.25));
    CHECK_FALSE(page.find().fitted);
}

TEST_CASE("places are marked, moved and taken away by keys alone", "[photo page]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1280, 860});
    QTest::keyClick(&window, Qt::Key_R, Qt::ControlModifier | Qt::ShiftModifier);
    auto &page = pageOf<RemnantPage>(window);
    REQUIRE(page.openPicture(photoIn(fixture.folder())));
    MarkedPicture &picture = page.picture();
    CHECK(picture.hasFocus());
    CHECK_FALSE(picture.accessibleName().isEmpty());
    const auto go = [&](int key, int times, Qt::KeyboardModifiers with = {}) {
        for (int i = 0; i < times; ++i) QTest::keyClick(&picture, Qt::Key(key), with);
    };
    const QPointF middle(picture.picture().width() / 2.0, picture.picture().height() / 2.0);
    go(Qt::Key_Return, 1);
    REQUIRE(picture.marks().size() == 1);
    CHECK(picture.marks()[0] == middle);
    go(Qt::Key_PageDown, 1); // takes hold of it
    go(Qt::Key_Right, 7, Qt::ShiftModifier);
    go(Qt::Key_Up, 3, Qt::ShiftModifier);
    CHECK(picture.marks()[0] == middle + QPointF(7, -3));
    go(Qt::Key_Return, 1); // lets go
    go(Qt::Key_Right, 10);
    go(Qt::Key_Space, 1);
    go(Qt::Key_Down, 10);
    go(Qt::Key_Space, 1);
    go(Qt::Key_Left, 10);
    go(Qt::Key_Space, 1);
    CHECK(picture.marks().size() == 4);
    CHECK(page.find().isStraight());
    CHECK(picture.accessibleDescription() == u"4 of 4 places are marked"_s);
    go(Qt::Key_Backspace, 1);
    CHECK(picture.marks().size() == 3);
    CHECK_FALSE(page.find().isStraight());
    const double shown = picture.toWidget({1, 0}).x() - picture.toWidget({0, 0}).x();
    go(Qt::Key_Plus, 2);
    CHECK(picture.toWidget({1, 0}).x() - picture.toWidget({0, 0}).x() > shown * 1.5);
    go(Qt::Key_0, 1);
    CHECK(picture.toWidget({1, 0}).x() - picture.toWidget({0, 0}).x() == Approx(shown));
    // Escape leaves the page, and nothing has become of the job.
    go(Qt::Key_Escape, 1);
    CHECK(window.sheet().isHidden());
    CHECK(window.document().history()->count() == 0);
}

TEST_CASE("a picture of one repeat becomes the cloth, and can be taken back", "[photo page]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1280, 860});
    const QString file = fixture.folder() + u"/repeat.png"_s;
    QImage image(300, 400, QImage::Format_RGB32);
    image.fill(QColor(200, 180, 150));
    QPainter(&image).fillRect(100, 100, 100, 200, QColor(60, 80, 120));
    image.save(file);
    window.showSwatchPage(0);
    auto &page = pageOf<SwatchPage>(window);
    REQUIRE(page.openPicture(file));
    CHECK(page.said().contains(u"from motif to motif"_s)); // no repeat is told yet
    auto *across = page.findChild<LengthEdit *>(u"horizontal repeat"_s);
    across->setFocus();
    QTest::keyClicks(across, u"9"_s);
    QTest::keyClick(across, Qt::Key_Return);
    auto *along = page.findChild<LengthEdit *>(u"vertical repeat"_s);
    along->setFocus();
    QTest::keyClicks(along, u"12"_s);
    QTest::keyClick(along, Qt::Key_Return);
    CHECK(page.said().startsWith(u"✓"_s));
    QTest::mouseClick(page.findChild<QRadioButton *>(u"beside"_s), Qt::LeftButton);
    press(page, "mainButton");
    const Cloth &own = window.document().job().cloths[0];
    REQUIRE(own.look);
    REQUIRE(own.look->swatch);
    CHECK(own.pattern->across == 9_in);
    CHECK(fileOf(own.look->swatch->picture) == file.toStdString());
    CHECK(swatchPicture(*own.look->swatch));
    window.document().history()->undo();
    CHECK_FALSE(window.document().job().cloths[0].look);

    // What is no picture is said and changes nothing.
    QTest::qWait(20);
    window.showSwatchPage(0);
    auto &again = pageOf<SwatchPage>(window);
    CHECK_FALSE(again.openPicture(fixture.folder()));
    CHECK(again.said().contains(u"no picture"_s));
}

TEST_CASE("a picture that is gone is a warning, and the job is whole", "[photo page]") {
    WindowFixture fixture;
    Job job = newJob(Unit::Inch);
    job.cloths[0].name = "Thistle linen";
    job.cloths[0].pattern = motifs(9_in, 12_in);
    job.cloths[0].look = ClothLook{};
    job.cloths[0].look->swatch = Swatch{};
    job.cloths[0].look->swatch->picture.file = "thistle.jpg";
    job.panels = {rectangle("Seat", 20_in, 20_in)};
    const std::string file = (fixture.folder() + u"/job.boltwright"_s).toStdString();
    REQUIRE(saveJob(job, file));
    MainWindow &window = fixture.show();
    REQUIRE(window.openFile(QString::fromStdString(file)));
    CHECK(window.notice().sentence() ==
          u"The picture of Thistle linen is not shown: thistle.jpg: there is no such picture."_s);
    CHECK(window.document().job() == job);
    CHECK_FALSE(window.canvas().grab().isNull());
    window.document().setLayoutIndex(0);
    REQUIRE(window.document().save());
    const auto again = loadJob(file);
    REQUIRE(again);
    CHECK(*again == job);
}
