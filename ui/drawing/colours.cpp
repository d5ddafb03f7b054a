#include "ui/drawing/colours.h"

#include <array>

namespace boltwright::ui {

Colours lightColours() {
    Colours c;
    c.table = QColor(0xE7, 0xE1, 0xD6);
    c.paper = QColor(0xFB, 0xF8, 0xF2);
    c.ink = QColor(0x2B, 0x2A, 0x33);
    c.quiet = QColor(0x5E, 0x5A, 0x66);
    c.accent = QColor(0x2F, 0x5D, 0x62);
    c.onAccent = QColor(0xFB, 0xF8, 0xF2);
    c.broken = QColor(0x9A, 0x3B, 0x2F);
    c.onBroken = QColor(0xFB, 0xF8, 0xF2);
    c.good = QColor(0x3F, 0x6B, 0x3A);
    c.hairline = QColor(0xB9, 0xB0, 0xA2);
    c.tape = QColor(0xF3, 0xE2, 0xA9);
    c.tapeEdge = QColor(0xC9, 0xB3, 0x6A);
    c.tapeInk = QColor(0x2B, 0x2A, 0x33);
    c.chalk = QColor(0xFF, 0xFD, 0xF8);
    c.chalkCasing = QColor(0x2B, 0x2A, 0x33);
    return c;
}

Colours darkColours() {
    Colours c;
    c.table = QColor(0x1F, 0x1E, 0x22);
    c.paper = QColor(0x2A, 0x29, 0x2F);
    c.ink = QColor(0xEF, 0xEB, 0xE3);
    c.quiet = QColor(0xB3, 0xAD, 0xB8);
    c.accent = QColor(0x8C, 0xC3, 0xC0);
    c.onAccent = QColor(0x1F, 0x1E, 0x22);
    c.broken = QColor(0xF0, 0xA3, 0x94);
    c.onBroken = QColor(0x1F, 0x1E, 0x22);
    c.good = QColor(0xA8, 0xCF, 0x9C);
    c.hairline = QColor(0x57, 0x53, 0x5E);
    c.tape = QColor(0xB9, 0xAB, 0x7C);
    c.tapeEdge = QColor(0x8F, 0x80, 0x4E);
    c.tapeInk = QColor(0x1F, 0x1E, 0x22);
    c.chalk = QColor(0xFF, 0xFD, 0xF8);
    c.chalkCasing = QColor(0x1A, 0x19, 0x1E);
    c.dark = true;
    return c;
}

Colours coloursOf(const QPalette &palette) {
    return palette.color(QPalette::Active, QPalette::Window).lightness() < 128 ? darkColours() : lightColours();
}

QPalette paletteOf(const Colours &c) {
    QPalette p;
    p.setColor(QPalette::Window, c.paper);
    p.setColor(QPalette::WindowText, c.ink);
    p.setColor(QPalette::Base, c.dark ? c.paper.lighter(112) : QColor(0xFF, 0xFE, 0xFB));
    p.setColor(QPalette::AlternateBase, c.dark ? c.paper.lighter(122) : QColor(0xF5, 0xF1, 0xE8));
    p.setColor(QPalette::Text, c.ink);
    p.setColor(QPalette::Button, c.dark ? c.paper.lighter(120) : QColor(0xF3, 0xEE, 0xE4));
    p.setColor(QPalette::ButtonText, c.ink);
    p.setColor(QPalette::BrightText, c.broken);
    p.setColor(QPalette::Highlight, c.accent);
    p.setColor(QPalette::HighlightedText, c.onAccent);
    p.setColor(QPalette::Link, c.accent);
    p.setColor(QPalette::LinkVisited, c.accent);
    p.setColor(QPalette::ToolTipBase, c.paper);
    p.setColor(QPalette::ToolTipText, c.ink);
    p.setColor(QPalette::PlaceholderText, c.quiet);
    p.setColor(QPalette::Light, c.dark ? c.paper.lighter(150) : QColor(0xFF, 0xFF, 0xFF));
    p.setColor(QPalette::Midlight, c.dark ? c.paper.lighter(130) : QColor(0xEF, 0xE9, 0xDD));
    p.setColor(QPalette::Mid, c.hairline);
    // The edge of a field to fill in and of a box to tick (`applyLook` draws it), and of sunken frames.
    p.setColor(QPalette::Dark, c.dark ? QColor(0x92, 0x8D, 0x9B) : QColor(0x85, 0x7D, 0x72));
    p.setColor(QPalette::Shadow, c.dark ? QColor(0x10, 0x10, 0x12) : QColor(0x70, 0x69, 0x60));
    for (auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        p.setColor(QPalette::Disabled, role, c.dark ? QColor(0x7D, 0x78, 0x84) : QColor(0x9A, 0x95, 0x9C));
    return p;
}

ClothColours clothColours(int clothIndex, bool dark) { return clothColours(std::nullopt, clothIndex, dark); }

QColor byNight(const QColor &colour, bool dark) { return dark ? colour.darker(135) : colour; }

ClothColours clothColours(const std::optional<ClothLook> &look, int clothIndex, bool dark) {
    struct Pair {
        QColor ground, figure;
    };
    static const std::array<Pair, 5> pairs = {{
        {QColor(0xE8, 0xE2, 0xCE), QColor(0xA7, 0xB0, 0xAD)}, // oat with slate
        {QColor(0xDD, 0xD5, 0xDC), QColor(0xA3, 0x90, 0xA6)}, // lilac grey with heather
        {QColor(0xD9, 0xE0, 0xD2), QColor(0x93, 0xA8, 0x8E)}, // pale sage with leaf
        {QColor(0xE8, 0xD9, 0xC8), QColor(0xBE, 0x99, 0x78)}, // sand with clay
        {QColor(0xD3, 0xDC, 0xE3), QColor(0x8B, 0xA1, 0xB5)}, // mist with blue
    }};
    Pair pair = pairs[std::size_t(clothIndex) % pairs.size()];
    if (look && !look->ground.empty()) pair.ground = QColor(QString::fromStdString(look->ground));
    if (look && !look->colour.empty()) pair.figure = QColor(QString::fromStdString(look->colour));
    ClothColours c;
    c.ground = byNight(pair.ground, dark);
    c.figure = byNight(pair.figure, dark);
    c.selvage = c.ground.darker(112);
    c.flaw = QColor(0x9A, 0x3B, 0x2F);
    c.edge = c.ground.darker(150);
    return c;
}

} // namespace boltwright::ui
