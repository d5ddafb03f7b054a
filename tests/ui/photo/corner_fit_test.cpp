#include "tests/ui/synthetic_photo.h"
#include "ui/photo/corner_fit.h"
#include "ui/photo/photo_remnant.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace boltwright;
using namespace boltwright::ui;

namespace {

const QPolygonF cloth({{-1000, -640}, {990, -655}, {1010, 300}, {420, 320}, {400, 660}, {-1010, 650}});
const QPolygonF a4 = rectangleAt({-180, 60}, 210, 297);

QList<Camera> cameras() {
    QList<Camera> all;
    for (const double tilt : {0.0, 15.0, 35.0})
        for (const double spin : {0.0, 24.0, 100.0}) {
            Camera camera;
            camera.tilt = tilt;
            camera.spin = spin;
            camera.height = 3300;
            camera.pixels = {4000, 3000};
            all << camera;
        }
    return all;
}

/// As a lens and a dark workroom make it, round one place only, for the rest is not looked at: each pixel shared with
/// its neighbours twice over (a blur of one pixel), then grain of six shades.
void spoil(QImage &image, QRect where, std::mt19937 &random) {
    where &= image.rect().adjusted(1, 1, -1, -1);
    for (int pass = 0; pass < 2; ++pass) {
        const QImage before = image.copy();
        const auto channel = [&](int x, int y, int (*of)(QRgb)) {
            double sum = 0;
            for (int dy = -1; dy <= 1; ++dy)
                for (int dx = -1; dx <= 1; ++dx)
                    sum += of(before.pixel(x + dx, y + dy)) * (dx == 0 ? 2.0 : 1.0) * (dy == 0 ? 2.0 : 1.0) / 16;
            return int(std::lround(sum));
        };
        for (int y = where.top(); y <= where.bottom(); ++y)
            for (int x = where.left(); x <= where.right(); ++x)
                image.setPixel(x, y, qRgb(channel(x, y, qRed), channel(x, y, qGreen), channel(x, y, qBlue)));
    }
    // The sum of four even draws is near enough to a bell, and the same on every machine.
    const auto grain = [&] {
        double sum = 0;
        for (int i = 0; i < 4; ++i) sum += double(random() % 2001) / 1000 - 1;
        return sum * 6 / std::sqrt(4.0 / 3);
    };
    for (int y = where.top(); y <= where.bottom(); ++y)
        for (int x = where.left(); x <= where.right(); ++x) {
            const double g = grain();
            const QRgb p = image.pixel(x, y);
            const auto with = [&](int c) { return std::clamp(int(std::lround(c + g)), 0, 255); };
            image.setPixel(x, y, qRgb(with(qRed(p)), with(qGreen(p)), with(qBlue(p))));
        }
}

/// Each place up to two pixels from where it is.
QPolygonF clickedRoughly(QPolygonF places, std::mt19937 &random) {
    for (QPointF &p : places) {
        const double far = 2.0 * double(random() % 1001) / 1000, round = 2 * M_PI * double(random() % 1000) / 1000;
        p += QPointF(std::cos(round), std::sin(round)) * far;
    }
    return places;
}

} // namespace

TEST_CASE("the corners of a sheet of paper are found beside rough clicks, in grain and blur", "[photo][corner]") {
    std::mt19937 random(20);
    double worstCorner = 0, worst = 0, worstClicked = 0;
    int number = 0;
    for (const Camera &camera : cameras()) {
        // On plain cloth and on striped cloth, whose stripes come up to the sheet's edge.
        QImage image = photograph(camera, {{cloth, QColor(0xD9, 0xCF, 0xB8)}, {a4, QColor(0xFB, 0xFB, 0xFA)}}, 0,
                                  ++number % 2 == 0 ? 76.2 : 0);
        const QPolygonF corners = camera.toPicture().map(a4);
        spoil(image, corners.boundingRect().toRect().adjusted(-30, -30, 30, 30), random);
        for (int round = 0; round < 3; ++round) {
            INFO("tilt " << camera.tilt << ", turned " << camera.spin << ", round " << round);
            PhotoFind find;
            find.photo = image;
            find.known = {210, 297};
            find.longFirst = false;
            find.corners = clickedRoughly(corners, random);
            find.outline = clickedRoughly(camera.toPicture().map(cloth), random);
            worstClicked = std::max(worstClicked, worstShare(find.toPlane().map(find.outline), cloth));
            const auto found = cornersOnEdges(image, find.corners, 6, SheetShade::Lighter);
            for (int i = 0; i < 4; ++i) {
                REQUIRE(found[std::size_t(i)]);
                worstCorner = std::max(worstCorner, QLineF(*found[std::size_t(i)], corners[i]).length());
                find.corners[i] = *found[std::size_t(i)];
            }
            find.fitted = true;
            const double share = worstShare(find.toPlane().map(find.outline), cloth);
            worst = std::max(worst, share);
            CHECK(share <= 0.005);
            CHECK(errorOf(find) > share * 2020); // the margin that is kept is no smaller than what happened
        }
    }
    INFO("worst corner " << worstCorner << " px; worst place " << worst * 100 << " %, as clicked " << worstClicked * 100
                         << " %");
    CHECK(worstCorner < fittedMiss);
    CHECK(worstClicked > 0.005); // else the clicks would have done without
}

TEST_CASE("where no sheet stands out, no corner is found", "[photo][corner]") {
    std::mt19937 random(21);
    Camera camera;
    camera.tilt = 15;
    camera.spin = 24;
    const QPolygonF corners = camera.toPicture().map(a4);
    const auto count = [](const std::array<std::optional<QPointF>, 4> &found) {
        return std::count_if(found.begin(), found.end(), [](const auto &corner) { return corner.has_value(); });
    };
    QImage bare = photograph(camera, {{cloth, QColor(0xD9, 0xCF, 0xB8)}});
    spoil(bare, corners.boundingRect().toRect().adjusted(-30, -30, 30, 30), random);
    CHECK(count(cornersOnEdges(bare, corners, 6, SheetShade::Lighter)) == 0);
    // Clicks that are farther off than any hand, and a picture that ends within the sheet.
    const QImage sheet = photograph(camera, {{cloth, QColor(0xD9, 0xCF, 0xB8)}, {a4, QColor(0xFB, 0xFB, 0xFA)}});
    CHECK(count(cornersOnEdges(sheet, corners, 6, SheetShade::Lighter)) == 4);
    QPolygonF far = corners;
    for (QPointF &p : far) p += QPointF(25, 25);
    CHECK(count(cornersOnEdges(sheet, far, 6, SheetShade::Lighter)) == 0);
    const QRect left(0, 0, int(corners.boundingRect().center().x()), sheet.height());
    const QImage half = sheet.copy(left);
    QPolygonF inHalf = corners;
    for (QPointF &p : inHalf) p.setX(std::min(p.x(), double(half.width())));
    for (const auto &corner : cornersOnEdges(half, inHalf, 6, SheetShade::Lighter))
        if (corner) CHECK(corner->x() < half.width());
    CHECK(count(cornersOnEdges(QImage(), corners, 6, SheetShade::Lighter)) == 0);
    CHECK(count(cornersOnEdges(sheet, QPolygonF(), 6, SheetShade::Lighter)) == 0);
}

TEST_CASE("a rounded or folded corner is found by its sides, and a crooked side is refused", "[photo][corner]") {
    Camera camera;
    camera.tilt = 10;
    camera.pixels = {4000, 3000};
    const QPolygonF corners = camera.toPicture().map(a4);
    QPolygonF folded = a4; // a dog-ear of 6 mm at the first corner
    folded.replace(0, a4[0] + QPointF(0, 6));
    folded.insert(1, a4[0] + QPointF(6, 0));
    const QImage ear = photograph(camera, {{cloth, QColor(0xB9, 0xA9, 0x98)}, {folded, QColor(0xFB, 0xFB, 0xFA)}});
    const auto found = cornersOnEdges(ear, corners, 6, SheetShade::Lighter);
    REQUIRE(found[0]);
    CHECK(QLineF(*found[0], corners[0]).length() < fittedMiss);
    QPolygonF torn = a4; // its first side is torn: ten teeth of 12 mm
    torn.clear();
    for (int i = 0; i < 20; ++i) torn << a4[0] + (a4[1] - a4[0]) * i / 20 + QPointF(0, i % 2 == 0 ? 0 : 12);
    torn << a4[1] << a4[2] << a4[3];
    const QImage teeth = photograph(camera, {{cloth, QColor(0xB9, 0xA9, 0x98)}, {torn, QColor(0xFB, 0xFB, 0xFA)}});
    const auto crooked = cornersOnEdges(teeth, corners, 6, SheetShade::Lighter);
    CHECK_FALSE(crooked[0]);
    CHECK_FALSE(crooked[1]);
    CHECK(crooked[2]);
    CHECK(crooked[3]);
}
