// Cloth that is drawn from a picture, as it comes out on paper: the layout's picture (`boltwright draw`) and the
// client's page, pixel by pixel against a picture that is worked out here from the file format alone.

#include "tests/core/support/jobs.h"
#include "ui/paper/client_page.h"
#include "ui/picture/picture.h"

#include <QBuffer>
#include <QFile>
#include <QImage>
#include <QPainter>
#include <QRegularExpression>
#include <QTemporaryDir>

#include <catch2/catch.hpp>

#include <cmath>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

constexpr double inch = 25.4;
const QColor quarters[2][2] = {{QColor(200, 60, 50), QColor(60, 160, 80)}, {QColor(50, 80, 180), QColor(230, 200, 70)}};

/// Four quarters, each of its own colour.
PictureSource quartered(QSize size) {
    QImage image(size, QImage::Format_RGB32);
    QPainter painter(&image);
    for (int row : {0, 1})
        for (int column : {0, 1})
            painter.fillRect(column * size.width() / 2, row * size.height() / 2, size.width() / 2, size.height() / 2,
                             quarters[row][column]);
    painter.end();
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    PictureSource source;
    source.data = PictureBytes(bytes.toBase64().toStdString());
    return source;
}

/// The quarter at a share of the picture; none within `near` of where two of them meet.
std::optional<QColor> quarterAt(double right, double down, double nearRight, double nearDown) {
    for (const double meet : {0.0, 0.5, 1.0})
        if (std::abs(right - meet) < nearRight || std::abs(down - meet) < nearDown) return std::nullopt;
    return quarters[down < 0.5 ? 0 : 1][right < 0.5 ? 0 : 1];
}

QColor over(const QColor &below, const QColor &above, int alpha) {
    const auto mix = [&](int b, int a) { return int(std::lround(b + (a - b) * alpha / 255.0)); };
    return QColor(mix(below.red(), above.red()), mix(below.green(), above.green()), mix(below.blue(), above.blue()));
}

/// As it is printed: paler, so that words can be read on it; where a panel lies, paler still.
QColor printed(const QColor &cloth, bool panel) {
    const QColor pale = over(cloth, Qt::white, 110);
    return panel ? over(pale, QColor(0xFF, 0xFE, 0xFB), 150) : pale;
}

struct Case {
    const char *name;
    Job job;
    Layout layout;
    /// Inches from the left and up the roll to the picture's colour there.
    std::function<std::optional<QColor>(double, double)> colour;
};

const std::vector<Case> &cases() {
    static const std::vector<Case> all = [] {
        std::vector<Case> made;
        // A bolt of pictured cloth: a repeat of 9 by 12 in, its motif in the middle of the picture, 4 1/2 in from the
        // left selvage and 3 in from the cut end.
        Cloth swatch = bolt(54_in);
        swatch.pattern = motifs(9_in, 12_in, {4.5_in, 3_in}, 0_in);
        swatch.look = ClothLook{};
        swatch.look->swatch = Swatch{};
        swatch.look->swatch->picture = quartered({240, 320});
        swatch.look->swatch->motif = {0.5, 0.5};
        Cut cut = cutAt("Seat", 10_in, 8_in);
        Job job = jobOf(swatch, {rectangle("Seat", 24_in, 22_in)});
        made.push_back({"swatch", job, layoutOf({cut}), [](double x, double y) {
                            const double right = (x - 4.5) / 9 + 0.5, down = 0.5 - (y - 3) / 12;
                            return quarterAt(right - std::floor(right), down - std::floor(down), 0.4 / 9, 0.4 / 12);
                        }});
        // A remnant of 40 by 32 in as it was photographed: the picture shows it and 4 in of table all round.
        Cloth photo = remnantCloth({{0_in, 0_in}, {40_in, 0_in}, {40_in, 32_in}, {0_in, 32_in}});
        Remnant &remnant = photo.remnants.front();
        remnant.photo = RemnantPhoto{};
        remnant.photo->picture = quartered({480, 400});
        remnant.photo->points = {{0, 0}, {1, 0}, {1, 1}, {0, 1}};
        remnant.photo->at = {{-4_in, 36_in}, {44_in, 36_in}, {44_in, -4_in}, {-4_in, -4_in}};
        remnant.photo->taped = {{{0_in, 0_in}, {40_in, 0_in}, 40_in, {}}, {{0_in, 0_in}, {0_in, 32_in}, 32_in, {}}};
        cut = cutAt("Seat", 9_in, 6_in);
        cut.on = "A";
        made.push_back({"photograph", jobOf(photo, {rectangle("Seat", 24_in, 20_in)}), layoutOf({cut}),
                        [](double x, double y) { return quarterAt((x + 4) / 48, (36 - y) / 40, 0.4 / 48, 0.4 / 40); }});
        return made;
    }();
    return all;
}

/// How many of the places looked at show the wrong colour. `at`: inches of the cloth to pixels of `image`. Marks, words
/// and measures stand on the cloth too, so places are looked at where none are: in the panel's lower left, between its
/// edge and its slip, and on bare cloth beside it.
struct Looked {
    int places = 0, wrong = 0;
};
Looked look(const Case &c, const QImage &image, const std::function<QPointF(double, double)> &at) {
    Looked looked;
    const Cut &cut = c.layout.cuts.front();
    const double left = cut.x.toMillimetres() / inch, low = cut.y.toMillimetres() / inch;
    const auto patch = [&](double x0, double y0, double wide, double high, bool panel) {
        for (double x = x0; x < x0 + wide; x += 0.23)
            for (double y = y0; y < y0 + high; y += 0.23) {
                const auto cloth = c.colour(x, y);
                if (!cloth) continue;
                const QColor expected = printed(*cloth, panel), found = image.pixelColor(at(x, y).toPoint());
                ++looked.places;
                looked.wrong += std::abs(found.red() - expected.red()) > 4 ||
                                std::abs(found.green() - expected.green()) > 4 ||
                                std::abs(found.blue() - expected.blue()) > 4;
            }
    };
    patch(left + 1.5, low + 1.5, 6, 7, true);
    patch(left - 6, low - 4.5, 5, 4, false); // below the words about what is left over
    return looked;
}

/// Keeps where pictures were painted.
class Places : public Surface {
public:
    using Surface::Surface;
    void area(const QPolygonF &, const QColor &, const Stroke &) override {}
    void lines(const QList<QLineF> &, const Stroke &) override {}
    void words(const SetWords &) override {}
    void picture(const QImage &, const QRectF &place) override { places << place; }
    QList<QRectF> places;
};

} // namespace

TEST_CASE("the layout's picture shows pictured cloth where it lies", "[picture on paper]") {
    QTemporaryDir folder;
    for (const Case &c : cases()) {
        INFO(c.name);
        const QString svg = folder.filePath(u"layout.svg"_s), png = folder.filePath(u"layout.png"_s);
        REQUIRE(writeSvg(c.job, c.layout, svg.toStdString()));
        REQUIRE(writePng(c.job, c.layout, png.toStdString(), 150));
        // Where the picture begins is told by the SVG alone: a unit of it is a millimetre of cloth, its x from the cut
        // end, its y from the left selvage.
        QFile file(svg);
        REQUIRE(file.open(QIODevice::ReadOnly));
        const auto box =
            QRegularExpression(u"viewBox=\"(\\S+) (\\S+) (\\S+) (\\S+)\""_s).match(QString::fromUtf8(file.readAll()));
        REQUIRE(box.hasMatch());
        const QPointF corner(box.captured(1).toDouble(), box.captured(2).toDouble());
        const QImage image(png);
        const double scale = 150 / 25.4 / 10; // pixels to a millimetre of cloth, at a tenth of true size
        const Looked looked = look(c, image, [&](double x, double y) {
            return (QPointF(y * inch, x * inch) - corner) * scale - QPointF(0.5, 0.5);
        });
        CHECK(looked.places > 700);
        CHECK(looked.wrong == 0);
    }
}

TEST_CASE("the client's page shows pictured cloth where it lies", "[picture on paper]") {
    for (const Case &c : cases()) {
        INFO(c.name);
        const auto page = clientPage(c.job, c.layout);
        REQUIRE(page);
        Places places(unitsPerMillimetre);
        (*page)->paint(places, 0);
        REQUIRE(places.places.size() == 1);
        // The picture is of the whole cloth, so its place says where everything lies.
        const QRectF place = places.places.front();
        const bool remnant = c.job.cloths.front().bolt == std::nullopt;
        const double across = remnant ? 40 : 54;
        constexpr double dots = 16; // to a millimetre of paper
        QImage image(int((*page)->paper().width.toMillimetres() * dots),
                     int((*page)->paper().height.toMillimetres() * dots), QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        paintPage(painter, **page, 0, dots);
        painter.end();
        const double perInch = place.height() / across;
        const Looked looked = look(c, image, [&](double x, double y) {
            return (place.topLeft() + QPointF(y, x) * perInch) / unitsPerMillimetre * dots - QPointF(0.5, 0.5);
        });
        CHECK(looked.places > 700);
        CHECK(looked.wrong == 0);
    }
}
