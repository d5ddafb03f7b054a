#include "tests/core/support/jobs.h"
#include "tests/ui/file_dialog.h"
#include "tests/ui/seen_cloth.h"
#include "ui/piece/covered_piece_view.h"
#include "ui/piece/piece_page.h"
#include "ui/piece/piece_words.h"

#include <QAction>
#include <QApplication>
#include <QDialogButtonBox>
#include <QDir>
#include <QFileDialog>
#include <QImage>
#include <QLineEdit>
#include <QPainter>
#include <QPdfWriter>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QProcess>
#include <QPushButton>
#include <QSignalSpy>
#include <QSvgRenderer>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <QToolButton>

#include <catch2/catch.hpp>

#include <cmath>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

Flow join(std::string from, int edge, std::string to, int edgeTo) {
    Flow flow;
    flow.from = {std::move(from), edge, {}, {}};
    flow.to = {std::move(to), edgeTo, {}, {}};
    return flow;
}

Panel allowed(Panel p, Length all) {
    p.allow = EdgeLengths(edgeCount(p.shape), all);
    p.mark = p.id.substr(0, 1);
    return p;
}

/// Back above seat above band on a 6 in stripe; the band an inch and a half off.
Job bench() {
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(6_in, 3_in);
    Job job =
        jobOf(cloth, {allowed(rectangle("Back", 24_in, 12_in), 1_in), allowed(rectangle("Seat", 24_in, 18_in), 1_in),
                      allowed(rectangle("Front band", 24_in, 6_in), 1_in),
                      allowed(rectangle("Stool", 14_in, 14_in, 2), 1_in)});
    job.flows = {join("Back", Bottom, "Seat", Top), join("Seat", Bottom, "Front band", Top)};
    Layout layout = layoutOf({cutAt("Back", 1_in, 0_in), cutAt("Seat", 1_in, 20_in), cutAt("Front band", 2.5_in, 45_in),
                              cutAt("Stool", 28_in, 0_in)});
    job.layouts = {layout};
    return job;
}

/// The cloth's colour at a point, worked out from the pattern alone: a broad stripe of 0.16 of the repeat with a thin
/// one of 0.03 on each side, 0.135 away. None: too near an edge of a stripe to say.
std::optional<QColor> clothColour(const Pattern &pattern, double x, double y, const QColor &ground,
                                  const QColor &figure, double blur) {
    const bool upTheRoll = pattern.across.has_value();
    const double step = (upTheRoll ? *pattern.across : *pattern.along).toMillimetres();
    const double from = upTheRoll ? x - pattern.motif.x.toMillimetres() : y - pattern.motif.y.toMillimetres();
    double share = std::fmod(from, step) / step;
    share -= std::round(share); // from the middle of a stripe, -0.5 to 0.5
    const double off = std::abs(share);
    for (const double edge : {0.08, 0.135 - 0.015, 0.135 + 0.015})
        if (std::abs(off - edge) * step < blur) return std::nullopt;
    return off < 0.08 || std::abs(off - 0.135) < 0.015 ? figure : ground;
}

} // namespace

TEST_CASE("each panel is filled with exactly the cloth that its cut takes", "[piece view]") {
    const double scale = 2, blur = 1.5 / scale;
    for (const bool upTheRoll : {true, false})
        for (const Turn turn : allTurns)
            for (const bool mirrored : {false, true}) {
                Cloth cloth = bolt(54_in);
                cloth.pattern = Pattern{};
                (upTheRoll ? cloth.pattern->across : cloth.pattern->along) = 4.5_in;
                cloth.pattern->motif = {1.25_in, 0.7_in};
                Job job = jobOf(cloth, {allowed(rectangle("Seat", 12_in, 9_in), 1_in)});
                Cut cut = cutAt("Seat", 5.3_in, 7.1_in, turn);
                cut.mirrored = mirrored;
                const CoveredPiece piece = coveredPiece(job, layoutOf({cut}));
                const double across = (12_in).toMillimetres(), up = (9_in).toMillimetres();
                QImage image(int(across * scale) + 40, int(up * scale) + 40, QImage::Format_RGB32);
                image.fill(Qt::white);
                QPainter painter(&image);
                const PieceView view = viewInto(QRectF(20, 20, across * scale, up * scale), piece.box);
                CHECK(view.scale == Approx(scale));
                paintCoveredPiece(painter, job, piece, view, {lightColours(), QFont(), {}, false});
                painter.end();
                const ClothColours colours = clothColours(0, false);
                int looked = 0, wrong = 0, figure = 0;
                for (int i = 1; i < 40; ++i)
                    for (int j = 1; j < 30; ++j) {
                        // The middle of a pixel, and where it is on the panel as seen and so in the panel's own frame.
                        const QPoint pixel(20 + int(across * scale * i / 40), 20 + int(up * scale * j / 30));
                        const double right = (pixel.x() + 0.5 - 20) / scale, v = up - (pixel.y() + 0.5 - 20) / scale;
                        const QPointF at = clothUnder(cut, across, up, 25.4, mirrored ? across - right : right, v);
                        const auto expected =
                            clothColour(*cloth.pattern, at.x(), at.y(), colours.ground, colours.figure, blur);
                        if (!expected) continue;
                        ++looked;
                        figure += *expected == colours.figure;
                        wrong += !isNear(image.pixelColor(pixel), *expected, 2);
                    }
                INFO("turn " << degrees(turn) << (mirrored ? ", mirrored" : "")
                             << (upTheRoll ? ", up the roll" : ", across"));
                CHECK(wrong == 0);
                CHECK(looked > 700);
                CHECK(figure > 100);
            }
}

TEST_CASE("a remnant shows its own motif's place", "[piece view]") {
    Cloth cloth = remnantCloth({{0_in, 0_in}, {40_in, 0_in}, {40_in, 40_in}, {0_in, 40_in}});
    cloth.pattern = stripes(6_in, 0_in);
    cloth.remnants[0].motif = ClothPoint{2_in, 0_in};
    const Job job = jobOf(cloth, {rectangle("Seat", 12_in, 12_in)});
    Cut cut = cutAt("Seat", 2_in, 2_in);
    cut.on = "A";
    const CoveredPiece piece = coveredPiece(job, layoutOf({cut}));
    QImage image(305, 305, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintCoveredPiece(painter, job, piece, viewInto(QRectF(0, 0, 304.8, 304.8), piece.box),
                      {lightColours(), QFont(), {}, false});
    painter.end();
    const ClothColours colours = clothColours(0, false);
    CHECK(isNear(image.pixelColor(6, 150), colours.figure, 2));   // 2 in of the remnant: in the middle of a stripe
    CHECK(isNear(image.pixelColor(152, 150), colours.figure, 2)); // 8 in
    CHECK(isNear(image.pixelColor(76, 150), colours.ground, 2));  // 5 in: halfway between
}

TEST_CASE("where stripes do not run on, it is said in words and torn in the picture", "[piece view]") {
    JobDocument document;
    document.startWith(bench());
    CoveredPieceView view(document);
    view.resize(290, 480);
    view.show();
    CHECK(view.sentences() == QStringList{u"Front band: stripes miss the seat by 1 ½ in"_s});
    CHECK(view.picture().accessibleName() == u"As it will look"_s);
    CHECK(view.picture().accessibleDescription() == u"Front band: stripes miss the seat by 1 ½ in"_s);

    const auto brokenPixels = [&](const CoveredJoin &j) {
        const QImage image = view.picture().grab().toImage();
        const PieceView v = view.picture().view();
        const QRect around =
            QRectF(v.at(j.atA.from), v.at(j.atA.to)).normalized().adjusted(0, -4, 0, 4).toAlignedRect();
        int count = 0;
        for (int y = around.top(); y <= around.bottom(); ++y)
            for (int x = around.left(); x <= around.right(); ++x)
                count += isNear(image.pixelColor(x, y), lightColours().broken, 2);
        return count;
    };
    REQUIRE(view.picture().piece().joins.size() == 2);
    CHECK(brokenPixels(view.picture().piece().joins[1]) > 40);
    CHECK(brokenPixels(view.picture().piece().joins[0]) == 0);
}

TEST_CASE("the piece follows the hand, and goes back when the hand lets go of nothing", "[piece view]") {
    JobDocument document;
    document.startWith(bench());
    CoveredPieceView view(document);
    view.resize(290, 480);
    view.show();
    Preview preview;
    preview.layout = document.laidLayout();
    preview.cut = 2;
    preview.layout.cuts[2].x = 1_in;   // in step with the seat
    QCoreApplication::processEvents(); // the window has found its shape
    const QImage before = view.picture().grab().toImage();
    document.showPreview(preview);
    QCoreApplication::processEvents();
    CHECK(view.sentences().isEmpty());
    CHECK(view.picture().size() == before.size()); // and does not jump about while words come and go
    CHECK(view.picture().grab().toImage() != before);
    document.dropPreview();
    QCoreApplication::processEvents();
    CHECK(view.sentences().size() == 1);
    CHECK(view.picture().grab().toImage() == before);
}

TEST_CASE("a click on the piece selects the panel on the cloth, and the arrows go from one to the next",
          "[piece view]") {
    JobDocument document;
    document.startWith(bench());
    CoveredPieceView view(document);
    view.resize(290, 480);
    view.show();
    CoveredPiecePicture &picture = view.picture();
    const auto middle = [&](const CopyOf &copy) {
        return picture.view().at(boxOf(picture.piece().panel(copy)->outline)).center().toPoint();
    };
    QTest::mouseClick(&picture, Qt::LeftButton, {}, middle({"Seat", 1}));
    CHECK(document.selection() == CutName{"Seat", 1, 1});
    QTest::keyClick(&picture, Qt::Key_Up);
    CHECK(document.selection() == CutName{"Back", 1, 1});
    QTest::keyClick(&picture, Qt::Key_Down);
    QTest::keyClick(&picture, Qt::Key_Down);
    CHECK(document.selection() == CutName{"Front band", 1, 1});
    // The second stool is put aside: it is meant as a panel of the list.
    QTest::mouseClick(&picture, Qt::LeftButton, {}, middle({"Stool", 2}));
    CHECK(document.selectedPanel() == "Stool");
    QTest::mouseClick(&picture, Qt::LeftButton, {}, QPoint(2, picture.height() - 2));
    CHECK(document.selection() == std::nullopt);
    const CoveredPanel &band = *picture.piece().panel({"Front band", 1});
    CHECK(panelWords(document.job(), picture.piece(), band) ==
          QStringList{u"Front band, seen 24 × 6"_s, u"Front band: stripes miss the seat by 1 ½ in"_s});
}

TEST_CASE("the covered piece is written as a picture, and what stands in the way is said", "[piece view]") {
    QTemporaryDir folder;
    const Job job = bench();
    const std::filesystem::path file = folder.filePath(u"piece.png"_s).toStdString();
    REQUIRE(writeCoveredPiecePng(job, job.layouts[0], file, 800));
    const QImage image(QString::fromStdString(file.string()));
    CHECK(std::max(image.width(), image.height()) >= 800);
    CHECK_FALSE(writeCoveredPiecePng(job, job.layouts[0], folder.filePath(u"none/piece.png"_s).toStdString()));
    const auto empty = writeCoveredPiecePng(jobOf(bolt(54_in), {}), {}, file);
    REQUIRE_FALSE(empty);
    CHECK(empty.error().text.find("no panels") != std::string::npos);
}

namespace {

QToolButton *buttonThatSays(QWidget &in, const QString &text) {
    for (QToolButton *button : in.findChildren<QToolButton *>())
        if (button->text() == text) return button;
    return nullptr;
}

/// Does something with the dialog that the next click opens, as soon as it is there, and closes it whatever happens.
template <class Dialog>
void whenOpen(const std::function<void(Dialog &)> &deed) {
    auto *clock = new QTimer(qApp);
    clock->setInterval(20);
    QObject::connect(clock, &QTimer::timeout, clock, [clock, deed, turns = 0]() mutable {
        auto *dialog = qobject_cast<Dialog *>(QApplication::activeModalWidget());
        if (++turns > 500) { // another dialog than the one that was meant
            clock->stop();
            clock->deleteLater();
            if (QWidget *other = QApplication::activeModalWidget()) other->close();
            return;
        }
        if (!dialog || !dialog->isVisible()) return;
        clock->stop();
        clock->deleteLater();
        deed(*dialog);
        if (dialog->isVisible()) dialog->close();
    });
    clock->start();
}

/// Whether a picture holds both colours of the striped cloth.
bool showsStripes(const QImage &image) {
    const ClothColours colours = clothColours(0, false);
    bool ground = false, figure = false;
    for (int y = 0; y < image.height(); y += 2)
        for (int x = 0; x < image.width(); x += 2) {
            ground = ground || isNear(image.pixelColor(x, y), colours.ground, 2);
            figure = figure || isNear(image.pixelColor(x, y), colours.figure, 2);
        }
    return ground && figure;
}

} // namespace

TEST_CASE("the covered piece is looked at as a page before it is printed", "[piece view]") {
    JobDocument document;
    document.startWith(bench());
    CoveredPieceView view(document);
    view.resize(400, 480);
    view.show();
    QToolButton *button = buttonThatSays(view, u"Print picture…"_s);
    REQUIRE(button);
    int seen = 0, pages = 0;
    bool stripes = false;
    whenOpen<QPrintPreviewDialog>([&](QPrintPreviewDialog &dialog) {
        ++seen;
        auto *preview = dialog.findChild<QPrintPreviewWidget *>();
        pages = preview->pageCount();
        QTest::qWait(100);
        stripes = showsStripes(preview->grab().toImage());
        QTest::keyClick(&dialog, Qt::Key_Escape);
    });
    QTest::mouseClick(button, Qt::LeftButton);
    CHECK(seen == 1);
    CHECK(pages == 1);
    CHECK(stripes);
    // Nothing to print is said, and no page is shown.
    document.startWith(jobOf(bolt(54_in), {}));
    QSignalSpy failed(&view, &CoveredPieceView::failed);
    QTest::qWait(20);
    QTest::mouseClick(button, Qt::LeftButton);
    CHECK(failed.size() == 1);
}

namespace {

/// What a reader of PDF sees on the first page, at so many pixels to the inch; null where there is no such reader.
QImage firstPageOf(const QString &pdf, int perInch) {
    QTemporaryDir folder;
    QProcess reader;
    reader.start(u"pdftoppm"_s,
                 {u"-r"_s, QString::number(perInch), u"-png"_s, u"-singlefile"_s, pdf, folder.filePath(u"page"_s)});
    if (!reader.waitForStarted() || !reader.waitForFinished(20000)) return {};
    return QImage(folder.filePath(u"page.png"_s));
}

} // namespace

TEST_CASE("the covered piece is saved from its button under the name typed, as the ending says", "[piece view]") {
    QTemporaryDir folder;
    JobDocument document;
    document.startWith(bench());
    CoveredPieceView view(document);
    view.resize(400, 480);
    view.show();
    QSignalSpy saved(&view, &CoveredPieceView::saved), failed(&view, &CoveredPieceView::failed);
    QToolButton *button = buttonThatSays(view, u"Save picture…"_s);
    REQUIRE(button);
    const auto save = [&](const QString &name) {
        int asked = 0;
        whenOpen<QFileDialog>([&](QFileDialog &dialog) {
            ++asked;
            CHECK(typeName(dialog, folder.filePath(name)));
        });
        QTest::mouseClick(button, Qt::LeftButton);
        CHECK(asked == 1);
    };
    save(u"piece.png"_s);
    const QImage png(folder.filePath(u"piece.png"_s));
    CHECK(showsStripes(png));
    save(u"no ending"_s);
    CHECK(QImage(folder.filePath(u"no ending.png"_s)) == png);
    save(u"drawn.svg"_s);
    QSvgRenderer svg(folder.filePath(u"drawn.svg"_s));
    REQUIRE(svg.isValid());
    QImage drawn(svg.defaultSize(), QImage::Format_RGB32);
    drawn.fill(Qt::white);
    QPainter painter(&drawn);
    svg.render(&painter);
    painter.end();
    CHECK(showsStripes(drawn));
    save(u"whole page.pdf"_s);
    if (const QImage page = firstPageOf(folder.filePath(u"whole page.pdf"_s), 60); !page.isNull())
        CHECK(showsStripes(page));
    else
        WARN("no reader of PDF is installed: the page itself was not looked at");
    REQUIRE(saved.size() == 4);
    CHECK(saved[1][0].toString() == folder.filePath(u"no ending.png"_s));
    CHECK(failed.isEmpty());
    // What cannot be written is told in one line that names the file, and nothing is left lying about.
    save(u"other.bmp"_s);
    REQUIRE(failed.size() == 1);
    CHECK(failed[0][0].toString().contains(u"other.bmp"_s));
    CHECK_FALSE(failed[0][0].toString().contains(u'\n'));
    CHECK_FALSE(QFile::exists(folder.filePath(u"other.bmp"_s)));
    // Asked, and thought better of.
    whenOpen<QFileDialog>([&](QFileDialog &dialog) { QTest::keyClick(&dialog, Qt::Key_Escape); });
    QTest::mouseClick(button, Qt::LeftButton);
    CHECK(saved.size() == 4);
    CHECK(failed.size() == 1);
}

TEST_CASE("the covered piece is printed from the page that was looked at", "[piece view]") {
    QTemporaryDir folder;
    const QString file = folder.filePath(u"printed.pdf"_s);
    JobDocument document;
    document.startWith(bench());
    CoveredPieceView view(document);
    view.resize(400, 480);
    view.show();
    QToolButton *button = buttonThatSays(view, u"Print picture…"_s);
    REQUIRE(button);
    int printed = 0;
    whenOpen<QPrintPreviewDialog>([&](QPrintPreviewDialog &dialog) {
        // Printed to a file, so that no printer is needed and the page can be looked at.
        dialog.printer()->setOutputFormat(QPrinter::PdfFormat);
        QAction *print = nullptr;
        for (QAction *action : dialog.findChildren<QAction *>())
            if (action->text() == u"Print"_s) print = action;
        REQUIRE(print);
        QWidget *pressed = nullptr;
        for (QToolButton *one : dialog.findChildren<QToolButton *>())
            if (one->defaultAction() == print) pressed = one;
        REQUIRE(pressed);
        whenOpen<QPrintDialog>([&](QPrintDialog &asked) {
            ++printed;
            auto *name = asked.findChild<QLineEdit *>(u"filename"_s);
            REQUIRE(name);
            name->setFocus();
            name->selectAll();
            QTest::keyClicks(name, file);
            auto *buttons = asked.findChild<QDialogButtonBox *>();
            REQUIRE(buttons);
            QTest::mouseClick(buttons->button(QDialogButtonBox::Ok), Qt::LeftButton);
        });
        QTest::mouseClick(pressed, Qt::LeftButton);
    });
    QTest::mouseClick(button, Qt::LeftButton);
    REQUIRE(printed == 1);
    REQUIRE(QFile::exists(file));
    const QImage page = firstPageOf(file, 60);
    if (page.isNull()) {
        WARN("no reader of PDF is installed: the page itself was not looked at");
        return;
    }
    // The printed page against the same piece painted here: but for edges, pixel by pixel the same picture.
    const CoveredPiece &piece = view.picture().piece();
    CHECK((page.width() > page.height()) == (piece.box.width() > piece.box.height()));
    CHECK(showsStripes(page));
    QPdfWriter like(folder.filePath(u"like.pdf"_s));
    like.setResolution(300);
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    QPageLayout held = printer.pageLayout();
    held.setOrientation(page.width() > page.height() ? QPageLayout::Landscape : QPageLayout::Portrait);
    like.setPageLayout(held);
    QPainter painter(&like);
    paintPiecePage(painter, QRectF(QPointF(0, 0), held.paintRectPixels(300).size()), document.job(),
                   document.laidLayout(), 300 * 10 / 72);
    painter.end();
    const QImage expected = firstPageOf(folder.filePath(u"like.pdf"_s), 60);
    REQUIRE(expected.size() == page.size());
    int differs = 0, inked = 0;
    for (int y = 0; y < page.height(); ++y)
        for (int x = 0; x < page.width(); ++x) {
            const QColor a = page.pixelColor(x, y), b = expected.pixelColor(x, y);
            inked += b != QColor(Qt::white);
            differs += std::abs(a.lightness() - b.lightness()) > 40;
        }
    CHECK(inked > page.width() * page.height() / 10);
    CHECK(differs * 50 < inked);
}
