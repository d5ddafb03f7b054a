#include "ui/photo/straightening.h"

#include "ui/drawing/table_frame.h"
#include "ui/photo/photo_words.h"
#include "ui/text/words.h"

#include <QLineF>

#include <algorithm>
#include <cmath>

namespace boltwright::ui {

namespace {

Result<void> refuse(const char *why) { return fault(toCore(aboutPictures(why))); }

double cross(QPointF a, QPointF b) { return a.x() * b.y() - a.y() * b.x(); }

/// Twice the area to the right of a, b, c as seen on screen.
double turnAt(QPointF a, QPointF b, QPointF c) { return cross(b - a, c - b); }

double side(const QPolygonF &p, int i) { return QLineF(p[i], p[(i + 1) % 4]).length(); }

bool properlyCross(QPointF a, QPointF b, QPointF c, QPointF d) {
    return QLineF(a, b).intersects(QLineF(c, d), nullptr) == QLineF::BoundedIntersection;
}

/// Clockwise as seen on screen, beginning with the same corner: a photograph is no mirror.
QPolygonF clockwise(QPolygonF corners) {
    double area = 0;
    for (int i = 0; i < 4; ++i) area += cross(corners[i], corners[(i + 1) % 4]);
    if (area < 0) std::swap(corners[1], corners[3]);
    return corners;
}

} // namespace

Result<void> cornersOfRectangle(const QPolygonF &p, QSizeF picture) {
    if (p.size() != 4) return refuse("click all four corners of the rectangle");
    const double size = std::max(picture.width(), picture.height());
    double longest = 0;
    for (int i = 0; i < 4; ++i)
        for (int j = i + 1; j < 4; ++j) {
            const double apart = QLineF(p[i], p[j]).length();
            longest = std::max(longest, apart);
            if (apart < size * 0.004) return refuse("two of the corners are the same; click each corner once");
        }
    for (int i = 0; i < 4; ++i) { // each three of them
        const QPointF a = p[i], b = p[(i + 1) % 4], c = p[(i + 2) % 4];
        const double longSide = std::max({QLineF(a, b).length(), QLineF(b, c).length(), QLineF(a, c).length()});
        if (std::abs(turnAt(a, b, c)) < 0.03 * longSide * longSide)
            return refuse("three of the corners lie in a line; a rectangle has none that do");
    }
    if (properlyCross(p[0], p[1], p[2], p[3]) || properlyCross(p[1], p[2], p[3], p[0]))
        return refuse("the sides cross; click the corners in order, one way round");
    int right = 0;
    for (int i = 0; i < 4; ++i) right += turnAt(p[i], p[(i + 1) % 4], p[(i + 2) % 4]) > 0;
    if (right != 0 && right != 4)
        return refuse("one corner lies between the others; no rectangle looks like that from anywhere");
    if (longest < size * 0.05)
        return refuse("that is too small in the picture to measure a cloth by; take the photograph from nearer by");
    return {};
}

bool looksLongFirst(const QPolygonF &corners) {
    return side(corners, 0) + side(corners, 2) >= side(corners, 1) + side(corners, 3);
}

QTransform straightening(const QPolygonF &corners, KnownRectangle rectangle, bool longFirst) {
    const QPolygonF p = clockwise(corners);
    const double longSide = std::max(rectangle.across, rectangle.down),
                 shortSide = std::min(rectangle.across, rectangle.down);
    // Where turning round has swapped second and last corner, the first side is what was the last.
    const bool swapped = p[1] != corners[1];
    const double first = longFirst != swapped ? longSide : shortSide,
                 second = longFirst != swapped ? shortSide : longSide;
    QTransform toPlane;
    QTransform::quadToQuad(p, QPolygonF({{0, 0}, {first, 0}, {first, second}, {0, second}}), toPlane);
    // Turned by quarters until the plane lies as the picture does, however the clicking began.
    const QPointF along = p[1] - p[0];
    const int quarters = int(std::lround(std::atan2(along.y(), along.x()) / (M_PI / 2)) + 4) % 4;
    const QTransform turns[] = {{1, 0, 0, 1, 0, 0}, {0, 1, -1, 0, 0, 0}, {-1, 0, 0, -1, 0, 0}, {0, -1, 1, 0, 0, 0}};
    return toPlane * turns[quarters];
}

double mostError(const QPolygonF &corners, KnownRectangle rectangle, bool longFirst, const QPolygonF &points,
                 double cornerMiss, double miss) {
    const QTransform right = straightening(corners, rectangle, longFirst);
    double most = 0;
    for (const QPointF &point : points) {
        const QPointF there = right.map(point);
        double squares = 0;
        for (int corner = 0; corner < 4; ++corner) {
            double worst = 0;
            for (const QPointF by :
                 {QPointF(cornerMiss, 0), QPointF(-cornerMiss, 0), QPointF(0, cornerMiss), QPointF(0, -cornerMiss)}) {
                QPolygonF missed = corners;
                missed[corner] += by;
                worst = std::max(worst, QLineF(there, straightening(missed, rectangle, longFirst).map(point)).length());
            }
            squares += worst * worst; // four clicks miss independently
        }
        double own = 0;
        for (const QPointF by : {QPointF(miss, 0), QPointF(0, miss)})
            own = std::max(own, QLineF(there, right.map(point + by)).length());
        most = std::max(most, std::sqrt(squares + own * own));
    }
    return most;
}

QTransform planeToTable(PhotoTop top, const QPolygonF &outline) {
    // Up the roll is to the right on the table: the picture is turned until its top points there.
    const QTransform turns[] = {{0, 1, -1, 0, 0, 0}, {1, 0, 0, 1, 0, 0}, {0, -1, 1, 0, 0, 0}, {-1, 0, 0, -1, 0, 0}};
    const QTransform turn = turns[int(top)];
    const QPointF corner = turn.map(outline).boundingRect().topLeft();
    return turn * QTransform::fromTranslate(-corner.x(), -corner.y());
}

QTransform photoToTable(const RemnantPhoto &photo) {
    QPolygonF shares;
    for (const PicturePoint &p : photo.points) shares << QPointF(p.right, p.down);
    QTransform transform;
    if (shares.size() != 4 || photo.at.size() != 4 || !QTransform::quadToQuad(shares, onTable(photo.at), transform))
        return QTransform(0, 0, 0, 0, 0, 0);
    return transform;
}

} // namespace boltwright::ui
