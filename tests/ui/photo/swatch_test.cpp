#include "core/piece/covered_piece.h"
#include "tests/core/support/jobs.h"
#include "tests/ui/seen_cloth.h"
#include "ui/drawing/cloth_drawing.h"
#include "ui/photo/read_picture.h"
#include "ui/piece/piece_page.h"
#include "ui/piece/piece_painter.h"

#include <QBuffer>
#include <QImage>
#include <QPainter>
#include <QTemporaryDir>

#include <catch2/catch.hpp>

#include <cmath>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

const QColor quarters[2][2] = {{QColor(200, 60, 50), QColor(60, 160, 80)}, {QColor(50, 80, 180), QColor(230, 200, 70)}};

/// One repeat of four quarters, each of its own colour: upper left, upper right, lower left, lower right.
QImage repeatPicture() {
    QImage image(240, 360, QImage::Format_RGB32);
    QPainter painter(&image);
    for (int row : {0, 1})
        for (int column : {0, 1}) painter.fillRect(column * 120, row * 180, 120, 180, quarters[row][column]);
    return image;
}

PictureSource asPng(const QImage &image) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    PictureSource source;
    source.data = PictureBytes(bytes.toBase64().toStdString());
    return source;
}

Cloth pictured(Length across, Length along, Length drop, PatternUp up) {
    Cloth cloth = bolt(54_in);
    cloth.pattern = motifs(across, along, {1.25_in, 0.7_in}, drop);
    cloth.up = up;
    cloth.look = ClothLook{};
    cloth.look->swatch = Swatch{};
    cloth.look->swatch->picture = asPng(repeatPicture());
    cloth.look->swatch->motif = {0.25, 0.75};
    return cloth;
}

/// The swatch's colour at a point of the cloth, from what the file format says of motifs alone. The motif's middle is a
/// quarter from the picture's left and three quarters down. None: too near where two colours meet.
std::optional<QColor> clothColour(const Cloth &cloth, double x, double y, double blur) {
    const Pattern &p = *cloth.pattern;
    const double across = p.across->toMillimetres(), along = p.along->toMillimetres(), drop = p.drop.toMillimetres();
    const double fromX = x - p.motif.x.toMillimetres(), fromY = y - p.motif.y.toMillimetres();
    const bool roll = cloth.up == PatternUp::Roll;
    // The picture's right and down on the cloth: its top points up the roll, or towards the left selvage.
    const double left = roll ? 0.25 : 0.75; // of the repeat, on the side of smaller x from the motif
    const double below = roll ? 0.25 : 0.25;
    const double column = std::floor(fromX / across + left);
    const double shareX = fromX / across + left - column;
    const double upShare = (fromY - column * drop) / along + below, shareY = upShare - std::floor(upShare);
    for (const double meet : {0.0, 0.5, 1.0})
        if (std::abs(shareX - meet) * across < blur || std::abs(shareY - meet) * along < blur) return std::nullopt;
    const double right = roll ? shareX : shareY, down = roll ? 1 - shareY : shareX;
    return quarters[down < 0.5 ? 0 : 1][right < 0.5 ? 0 : 1];
}

} // namespace

TEST_CASE("a panel of pictured cloth shows exactly the part of the repeat that its cut takes", "[swatch]") {
    const double scale = 2;
    for (const PatternUp way : {PatternUp::Roll, PatternUp::Across})
        for (const Length drop : {0_in, 2.25_in, 1.5_in})
            for (const Turn turn : allTurns)
                for (const bool mirrored : {false, true}) {
                    const bool slanted = degrees(turn) % 90 != 0;
                    const Cloth cloth = pictured(3.3_in, 4.5_in, drop, way);
                    Panel seat = rectangle("Seat", 12_in, 9_in);
                    seat.allow = EdgeLengths(4, 1_in);
                    const Job job = jobOf(cloth, {seat});
                    Cut cut = cutAt("Seat", 5.3_in, 7.1_in, turn);
                    cut.mirrored = mirrored;
                    const CoveredPiece piece = coveredPiece(job, layoutOf({cut}));
                    const double across = (12_in).toMillimetres(), up = (9_in).toMillimetres();
                    QImage image(int(across * scale) + 40, int(up * scale) + 40, QImage::Format_RGB32);
                    image.fill(Qt::white);
                    QPainter painter(&image);
                    paintCoveredPiece(painter, job, piece,
                                      viewInto(QRectF(20, 20, across * scale, up * scale), piece.box),
                                      {lightColours(), QFont(), {}, false});
                    painter.end();
                    int looked = 0, wrong = 0;
                    for (int i = 1; i < 40; ++i)
                        for (int j = 1; j < 30; ++j) {
                            const QPoint pixel(20 + int(across * scale * i / 40), 20 + int(up * scale * j / 30));
                            const double right = (pixel.x() + 0.5 - 20) / scale,
                                         v = up - (pixel.y() + 0.5 - 20) / scale;
                            const QPointF at = clothUnder(cut, across, up, 25.4, mirrored ? across - right : right, v);
                            const auto expected = clothColour(cloth, at.x(), at.y(), slanted ? 2.5 : 1.5);
                            if (!expected) continue;
                            ++looked;
                            wrong += !isNear(image.pixelColor(pixel), *expected, 3);
                        }
                    INFO("turn " << degrees(turn) << (mirrored ? ", mirrored" : "") << ", drop " << drop.ticks()
                                 << (way == PatternUp::Roll ? ", up the roll" : ", across"));
                    CHECK(wrong == 0);
                    CHECK(looked > 700);
                }
}

TEST_CASE("pictured cloth is the same at every distance, from one repeat to a bolt of them", "[swatch]") {
    const Cloth cloth = pictured(3.3_in, 4.5_in, 1.5_in, PatternUp::Roll);
    SheetPicture sheet = pictureOfBolt(cloth, 0, 1000_in);
    REQUIRE(sheet.swatch);
    for (const double scale : {0.06, 0.4, 1.5, 7.0, 40.0}) {
        QImage image(500, 400, QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        const QTransform toScreen = QTransform::fromTranslate(-300, -200) * QTransform::fromScale(scale, scale);
        drawSheet(painter, sheet, toScreen, image.rect(), false, lightColours());
        painter.end();
        int looked = 0, wrong = 0;
        for (int x = 5; x < 500; x += 7)
            for (int y = 5; y < 400; y += 7) {
                const QPointF table = toScreen.inverted().map(QPointF(x + 0.5, y + 0.5));
                if (table.y() > 1350 || table.y() < 20) continue;
                const auto expected = clothColour(cloth, table.y(), table.x(), 1.5 / scale);
                if (!expected) continue;
                ++looked;
                wrong += !isNear(image.pixelColor(x, y), *expected, 3);
            }
        INFO("scale " << scale << ", looked at " << looked);
        CHECK(wrong == 0);
        CHECK((scale < 0.1 || looked > 500));
    }
}

TEST_CASE("a swatch photographed at a slant is straightened between its corners", "[swatch]") {
    QImage slanted(500, 500, QImage::Format_RGB32);
    slanted.fill(Qt::black);
    const QPolygonF seen({{60, 40}, {420, 90}, {460, 430}, {30, 380}});
    QTransform lay;
    REQUIRE(QTransform::quadToQuad(QPolygonF({{0, 0}, {240, 0}, {240, 360}, {0, 360}}), seen, lay));
    {
        QPainter painter(&slanted);
        painter.setTransform(lay);
        painter.drawImage(0, 0, repeatPicture());
    }
    Swatch swatch;
    swatch.picture = asPng(slanted);
    swatch.corners.clear();
    for (const QPointF &p : seen) swatch.corners.push_back({p.x() / 500, p.y() / 500});
    const auto straight = swatchPicture(swatch);
    REQUIRE(straight);
    const QSize size = straight->repeat.size();
    for (int row : {0, 1})
        for (int column : {0, 1})
            for (const double in : {0.08, 0.25, 0.42}) {
                const QColor found = straight->repeat.pixelColor(int((column * 0.5 + in) * size.width()),
                                                                 int((row * 0.5 + in) * size.height()));
                CHECK(isNear(found, quarters[row][column], 3));
            }
    swatch.corners[0] = {0.92, 0.86}; // crossed: drawn from its description, and no more
    CHECK_FALSE(swatchPicture(swatch));
}

TEST_CASE("told colours, bands and figures are drawn to scale", "[swatch]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(4_in, 2_in);
    cloth.look = ClothLook{};
    cloth.look->ground = "#102030";
    cloth.look->bands = {Band{0_in, 1_in, "#c04020", {}}, Band{-1.5_in, 0.5_in, "#20c040", {}}};
    const auto at = [&](const Cloth &c, double x, double y) { // inches of cloth
        QImage image(800, 800, QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        drawSheet(painter, pictureOfBolt(c, 0, 60_in), QTransform::fromScale(0.5, 0.5), image.rect(), false,
                  lightColours());
        painter.end();
        return image.pixelColor(int(y * 12.7), int(x * 12.7));
    };
    for (const double motif : {2.0, 6.0, 26.0}) {
        CHECK(at(cloth, motif + 0.5, 20) == QColor(0xC0, 0x40, 0x20));
        CHECK(at(cloth, motif - 1.25, 20) == QColor(0x20, 0xC0, 0x40));
        CHECK(at(cloth, motif - 0.5, 20) == QColor(0x10, 0x20, 0x30));
    }
    cloth.pattern = motifs(8_in, 6_in, {4_in, 3_in}, 3_in);
    cloth.look->colour = "#f0e0d0";
    cloth.look->figure = Figure::Spots;
    cloth.look->size = 2_in;
    for (const auto &[x, y] : {std::pair(4.0, 9.0), {12.0, 6.0}, {20.0, 9.0}}) { // every other column half dropped
        CHECK(at(cloth, x, y) == QColor(0xF0, 0xE0, 0xD0));
        CHECK(at(cloth, x + 0.85, y) == QColor(0xF0, 0xE0, 0xD0));
        CHECK(at(cloth, x + 1.15, y) == QColor(0x10, 0x20, 0x30));
    }
}

TEST_CASE("the covered piece is written as PNG, SVG and PDF, with its picture in each", "[swatch]") {
    QTemporaryDir folder;
    Panel seat = rectangle("Seat", 12_in, 9_in);
    seat.mark = "S";
    const Job job = jobOf(pictured(3.3_in, 4.5_in, 0_in, PatternUp::Roll), {seat});
    const Layout layout = layoutOf({cutAt("Seat", 5.3_in, 7.1_in)});
    for (const char *ending : {"png", "svg", "pdf"}) {
        const QString file = folder.filePath(u"piece."_s + QString::fromLatin1(ending));
        INFO(ending);
        REQUIRE(writeCoveredPiece(job, layout, file.toStdString()));
        if (std::string(ending) == "pdf") continue;
        const auto read = readPicture(file, 900);
        REQUIRE(read);
        // Somewhere in its middle each of the four colours is seen.
        int found = 0;
        for (const auto &row : quarters)
            for (const QColor &colour : row) {
                bool any = false;
                for (int y = 100; y < read->image.height() - 200 && !any; y += 5)
                    for (int x = 100; x < read->image.width() - 100 && !any; x += 5)
                        any = isNear(read->image.pixelColor(x, y), colour, 3);
                found += any;
            }
        CHECK(found == 4);
    }
    const auto other = writeCoveredPiece(job, layout, folder.filePath(u"piece.gif"_s).toStdString());
    REQUIRE_FALSE(other);
    CHECK(other.error().text.find("no picture is written with that ending") != std::string::npos);
    CHECK_FALSE(writeCoveredPiece(jobOf(bolt(54_in), {}), {}, folder.filePath(u"piece.svg"_s).toStdString()));
}
