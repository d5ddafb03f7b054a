// A whole piece as it is joined, every pixel of it beside a picture that is reckoned from the layout's numbers and the
// description of the file alone: where each panel stands, which point of the cloth is under each pixel, and what the
// repeat shows there. Nothing of the program's geometry, joins or drawing takes part in that.

#include "tests/core/support/jobs.h"
#include "tests/ui/seen_cloth.h"
#include "ui/piece/piece_painter.h"

#include <QBuffer>
#include <QImage>
#include <QPainter>

#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using namespace boltwright::ui;

namespace {

constexpr double inch = 25.4;     // and a pixel a millimetre
constexpr double allowance = 1.0; // all lengths of this file in inches
constexpr double repeatAcross = 9, repeatAlong = 8, drop = 4, motifAcross = 4.5, motifAlong = 4;
constexpr int cellsAcross = 3, cellsDown = 4;
constexpr double lostAbove = 0.75, lostBelow = 1.25; // in the joins of the seat with back and border

/// No two cells of the repeat are alike, so that nothing turned, mirrored or shifted passes for what it is not.
QColor colourOfCell(int column, int rowFromTop) {
    return QColor(30 + 90 * column, 40 + 60 * rowFromTop, 220 - 50 * ((column + 2 * rowFromTop) % 4));
}

PictureBytes repeatPicture() {
    QImage image(cellsAcross * 80, cellsDown * 60, QImage::Format_RGB32);
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x) image.setPixelColor(x, y, colourOfCell(x / 80, y / 60));
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    REQUIRE(image.save(&buffer, "PNG"));
    return PictureBytes(bytes.toBase64().toStdString());
}

/// The cloth's colour, from its description: the motif's middle is the middle of the repeat, whose top points up the
/// roll, and each column to the right lies a drop higher. None: too near an edge of two cells to say.
std::optional<QColor> clothColour(double x, double y, double blur) {
    const double right = (x / inch - motifAcross) / repeatAcross + 0.5;
    const double column = std::floor(right), share = right - column;
    const double up = (y / inch - motifAlong - column * drop) / repeatAlong + 0.5;
    const double down = 1 - (up - std::floor(up));
    const double cellX = share * cellsAcross, cellY = down * cellsDown;
    if (std::abs(cellX - std::round(cellX)) * repeatAcross / cellsAcross * inch < blur) return std::nullopt;
    if (std::abs(cellY - std::round(cellY)) * repeatAlong / cellsDown * inch < blur) return std::nullopt;
    return colourOfCell(int(cellX), int(cellY));
}

/// A panel where it stands on the piece: an upright rectangle, from the piece's lower left corner. Worked out by hand.
struct Stands {
    int cut; ///< in the layout
    double left, bottom, across, up;
};

/// The border below the seat, the back above it, an arm at each side with its middle at the seat's: edge to edge, since
/// what is lost in a join is not seen.
const std::vector<Stands> standing = {
    {0, 10, 23, 24, 20}, {1, 10, 5, 24, 18}, {2, 10, 0, 24, 5}, {3, 0, 3, 10, 22}, {4, 34, 3, 10, 22}};
constexpr double pieceWidth = 44, pieceHeight = 43;

Panel panelOf(const char *id, Length across, Length up, int count = 1) {
    Panel panel = rectangle(id, across, up, count);
    panel.allow.assign(4, 1_in);
    return panel;
}

Flow joined(FlowEnd from, FlowEnd to, Length lost) {
    Flow flow;
    flow.from = std::move(from);
    flow.to = std::move(to);
    flow.lost = lost;
    return flow;
}

/// A chair whose panels are cut so that the pattern runs on over every join. Where each cut must lie follows from the
/// seat's, by whole steps of the repeat and its drop: the back's bottom edge is what is lost above the seat's top edge,
/// the border's top edge is what is lost below the seat's bottom edge, and the arms' middles are level with the seat's.
Job chair() {
    Cloth cloth = bolt(54_in);
    cloth.pattern = Pattern{.across = 9_in, .along = 8_in, .drop = 4_in, .motif = {4.5_in, 4_in}, .kept = {}};
    cloth.look = ClothLook{};
    cloth.look->swatch = Swatch{};
    cloth.look->swatch->picture.data = repeatPicture();
    Panel arm = panelOf("arm", 10_in, 22_in, 2);
    arm.mirror = true;
    Job job = jobOf(
        cloth, {panelOf("back", 24_in, 20_in), panelOf("seat", 24_in, 18_in), panelOf("border", 24_in, 5_in), arm});
    job.flows = {joined({"back", Bottom, {}, {}}, {"seat", Top, {}, {}}, 0.75_in),
                 joined({"seat", Bottom, {}, {}}, {"border", Top, {}, {}}, 1.25_in),
                 joined({"arm", Right, {}, 1}, {"seat", Left, {}, {}}, {}),
                 joined({"arm", Right, {}, 2}, {"seat", Right, {}, {}}, {})};
    // The seat's measured shape lies from 3 1/4 to 27 1/4 in across and from 4 1/8 to 22 1/8 in up.
    Layout layout = layoutOf({cutAt("back", 2.25_in, 29.875_in), cutAt("seat", 2.25_in, 3.125_in),
                              cutAt("border", 2.25_in, 52.875_in), cutAt("arm", 37.25_in, 5.125_in),
                              cutAt("arm", 35.25_in, 37.125_in, Turn::Deg0, 2)});
    layout.cuts[4].mirrored = true;
    job.layouts = {layout};
    return job;
}

constexpr int margin = 20;

QImage painted(const Job &job) {
    const CoveredPiece piece = coveredPiece(job, job.layouts.front());
    QImage image(int(pieceWidth * inch) + 2 * margin, int(pieceHeight * inch) + 2 * margin, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    const PieceView view = viewInto(QRectF(margin, margin, pieceWidth * inch, pieceHeight * inch), piece.box);
    paintCoveredPiece(painter, job, piece, view, {lightColours(), QFont(), {}, false});
    return image;
}

struct Compared {
    int right = 0, wrong = 0, unsure = 0; ///< pixels; unsure: on a line or between two cells
    int torn = 0;                         ///< of the colour of a torn line, near the border's top edge
};

/// Every pixel against the layout. `lineBelow`: how far around the border's top edge a torn line may reach, pixels.
Compared compared(const QImage &image, const Layout &layout, double lineBelow) {
    constexpr double line = 2, blur = 2.5; // of outlines and of resampled cells, pixels
    Compared result;
    for (int row = 0; row < image.height(); ++row)
        for (int column = 0; column < image.width(); ++column) {
            const double x = column + 0.5 - margin, y = pieceHeight * inch - (row + 0.5 - margin);
            std::optional<QColor> expected = QColor(Qt::white);
            for (const Stands &s : standing) {
                const double right = x - s.left * inch, up = y - s.bottom * inch;
                const double width = s.across * inch, height = s.up * inch;
                const double beyond = std::max(std::max(-right, right - width), std::max(-up, up - height));
                if (beyond >= line) continue;
                if (beyond > -line) {
                    expected.reset();
                    break;
                }
                const Cut &cut = layout.cuts[std::size_t(s.cut)];
                const QPointF at =
                    clothUnder(cut, width, height, allowance * inch, cut.mirrored ? width - right : right, up);
                expected = clothColour(at.x(), at.y(), blur);
            }
            const QColor seen = image.pixelColor(column, row);
            const double off = std::abs(y - 5 * inch); // from the border's top edge
            if (off < 8 && x > 10 * inch && x < 34 * inch && isNear(seen, lightColours().broken, 2)) ++result.torn;
            if (off < lineBelow && x > 10 * inch - 4 && x < 34 * inch + 4) continue; // with the line's round ends
            if (!expected)
                ++result.unsure;
            else
                ++(isNear(seen, *expected, 3) ? result.right : result.wrong);
        }
    return result;
}

} // namespace

TEST_CASE("a whole joined piece shows, pixel by pixel, the cloth that its cuts take", "[piece view]") {
    const Job job = chair();
    const Compared all = compared(painted(job), job.layouts.front(), 0);
    CHECK(all.wrong == 0);
    CHECK(all.torn == 0);
    const int pixels = all.right + all.unsure;
    CHECK(all.right > 0.8 * pixels); // the rest are edges of 3 by 2 in cells, and outlines
    // The very join that is hidden: across the seat's bottom edge the cloth jumps by what is lost, no more and no less.
    const Layout &layout = job.layouts.front();
    for (double right = 10.2; right < 34; right += 0.5) {
        const QPointF seat = clothUnder(layout.cuts[1], 24 * inch, 18 * inch, inch, (right - 10) * inch, 0),
                      border = clothUnder(layout.cuts[2], 24 * inch, 5 * inch, inch, (right - 10) * inch, 5 * inch);
        const double steps = (border.y() + lostBelow * inch - seat.y()) / (repeatAlong * inch);
        CHECK(std::abs(steps - std::round(steps)) < 1e-9);
    }
}

TEST_CASE("a panel that misses is shown where it is cut, torn along its own join alone", "[piece view]") {
    Job job = chair();
    Cut &border = job.layouts.front().cuts[2];
    for (const Vector by : {Vector{1_in, 0_in}, Vector{0_in, 2.5_in}, Vector{-1.5_in, 1_in}}) {
        const Cut before = border;
        border.x = border.x + by.x;
        border.y = border.y + by.y;
        const Compared all = compared(painted(job), job.layouts.front(), 8);
        CHECK(all.wrong == 0);
        CHECK(all.torn > 200);
        CHECK(all.right > 0.8 * (all.right + all.unsure));
        border = before;
    }
}

TEST_CASE("the comparison of a whole piece sees a quarter of an inch and a turn", "[piece view]") {
    const Job job = chair();
    const QImage image = painted(job);
    for (int cut = 0; cut < 5; ++cut) {
        Layout other = job.layouts.front();
        other.cuts[std::size_t(cut)].x = other.cuts[std::size_t(cut)].x + 0.25_in;
        CHECK(compared(image, other, 0).wrong > 500);
        other = job.layouts.front();
        other.cuts[std::size_t(cut)].turn = Turn::Deg180;
        CHECK(compared(image, other, 0).wrong > 500);
    }
}
