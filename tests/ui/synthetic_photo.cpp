#include "tests/ui/synthetic_photo.h"

#include <QPainter>
#include <QPainterPath>

#include <cmath>

namespace boltwright::ui {

QTransform Camera::toPicture() const {
    const double t = tilt * M_PI / 180, s = spin * M_PI / 180, f = lens * pixels.width();
    // The plane is turned about its normal, then tilted about the picture's horizontal.
    const double ax = std::cos(s), ay = std::sin(s), bx = -std::sin(s), by = std::cos(s);
    const auto seen = [&](double x, double y) {
        struct Direction {
            double x, y, z;
        };
        return Direction{x, y * std::cos(t), -y * std::sin(t)};
    };
    const auto r1 = seen(ax, ay), r2 = seen(bx, by);
    const double cx = pixels.width() / 2.0, cy = pixels.height() / 2.0;
    const QTransform project(f * r1.x + cx * r1.z, f * r1.y + cy * r1.z, r1.z, f * r2.x + cx * r2.z,
                             f * r2.y + cy * r2.z, r2.z, cx * height, cy * height, height);
    return QTransform::fromTranslate(-looksAt.x(), -looksAt.y()) * project;
}

double worstShare(const QPolygonF &found, const QPolygonF &known) {
    const QRectF box = known.boundingRect();
    double least = 1e9;
    for (int quarter = 0; quarter < 4; ++quarter) {
        const QPolygonF turned = QTransform().rotate(90 * quarter).map(found);
        double worst = 0;
        const QPointF move = known.boundingRect().center() - turned.boundingRect().center();
        for (int i = 0; i < known.size(); ++i) worst = std::max(worst, QLineF(turned[i] + move, known[i]).length());
        least = std::min(least, worst);
    }
    return least / std::max(box.width(), box.height());
}

QPolygonF rectangleAt(QPointF middle, double across, double down, double turned) {
    const QPolygonF corners(
        {{-across / 2, -down / 2}, {across / 2, -down / 2}, {across / 2, down / 2}, {-across / 2, down / 2}});
    return (QTransform().rotate(turned) * QTransform::fromTranslate(middle.x(), middle.y())).map(corners);
}

QImage photograph(const Camera &camera, const QList<Flat> &things, int clothThing, double stripe) {
    QImage image(camera.pixels, QImage::Format_RGB32);
    image.fill(QColor(0x8A, 0x6F, 0x55));
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    const QTransform toPicture = camera.toPicture();
    for (int y = 0; y < image.height();
         y += 90) { // boards of the table, straight in the picture: nothing to measure by
        painter.fillRect(0, y, image.width(), 2, QColor(0x6E, 0x57, 0x42));
    }
    for (int i = 0; i < things.size(); ++i) {
        const QPolygonF outline = toPicture.map(things[i].outline);
        painter.setPen(Qt::NoPen);
        painter.setBrush(QColor(0, 0, 0, 60));
        painter.drawPolygon(outline.translated(camera.pixels.width() / 400.0, camera.pixels.width() / 400.0));
        painter.setBrush(things[i].colour);
        painter.drawPolygon(outline);
        if (i != clothThing || stripe <= 0) continue;
        painter.save();
        QPainterPath clip;
        clip.addPolygon(outline);
        painter.setClipPath(clip);
        const QRectF box = things[i].outline.boundingRect();
        for (double x = box.left() + stripe / 2; x < box.right(); x += stripe)
            for (const auto &[from, wide, colour] :
                 {std::tuple(-0.16, 0.32, QColor(0x5F, 0x7A, 0x86)), std::tuple(-0.27, 0.05, QColor(0xB5, 0x7F, 0x5A)),
                  std::tuple(0.22, 0.05, QColor(0xB5, 0x7F, 0x5A))}) {
                painter.setBrush(colour);
                painter.drawPolygon(
                    toPicture.map(QPolygonF(QRectF(x + from * stripe, box.top(), wide * stripe, box.height()))));
            }
        painter.restore();
    }
    painter.end();
    return image;
}

} // namespace boltwright::ui
