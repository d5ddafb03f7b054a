#include "ui/drawing/colours.h"
#include "ui/drawing/panel_drawing.h"
#include "ui/drawing/tape_drawing.h"

#include <QApplication>
#include <QFontMetricsF>
#include <QImage>
#include <QPainter>

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::ui;

TEST_CASE("no number on the tape is chopped at either end of it", "[looks]") {
    const SlipFonts fonts{QApplication::font()};
    const Colours colours = lightColours();
    int numbers = 0;
    for (const double scale : {0.02, 0.2, 0.9, 3.0})
        for (int scrolled = 0; scrolled < 400; scrolled += 7) {
            QImage image(420, 60, QImage::Format_RGB32);
            image.fill(Qt::white);
            QPainter painter(&image);
            TapePicture tape;
            tape.rect = QRectF(20, 5, 380, QFontMetricsF(fonts.small).height() + 14);
            tape.zero = 20 - scrolled;
            tape.pixelsPerMillimetre = scale;
            tape.unit = Unit::Inch;
            drawTape(painter, tape, colours, fonts);
            painter.end();
            // Above the marks, between the rounded corners, nothing is written into the outermost pixels.
            const int top = int(tape.rect.top()) + 6, bottom = int(tape.rect.bottom()) - 14;
            int touched = 0;
            for (int y = top; y < bottom; ++y) {
                for (const int x : {21, 398}) touched += image.pixelColor(x, y) != colours.tape;
                for (int x = 24; x < 396; ++x) numbers += image.pixelColor(x, y) != colours.tape;
            }
            INFO("at " << scale << " px/mm, scrolled by " << scrolled);
            CHECK(touched == 0);
        }
    CHECK(numbers > 10000);
}
