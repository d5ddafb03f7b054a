// Contrast of the palette, as Web Content Accessibility Guidelines (WCAG) 2.1 define it: relative luminance and
// contrast ratio from its glossary, at least 4.5 : 1 for text (success criterion 1.4.3, level AA) and 3 : 1 for the
// edges of controls and for what has to be told apart in a picture (1.4.11).

#include "ui/drawing/cloth_drawing.h"
#include "ui/drawing/colours.h"

#include <QFile>

#include <catch2/catch.hpp>

#include <cmath>

using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

/// WCAG 2.1, "relative luminance".
double luminance(const QColor &colour) {
    const auto linear = [](double c) { return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) + 0.0722 * linear(colour.blueF());
}

/// WCAG 2.1, "contrast ratio".
double ratio(const QColor &a, const QColor &b) {
    const double one = luminance(a), two = luminance(b);
    return (std::max(one, two) + 0.05) / (std::min(one, two) + 0.05);
}

struct Pair {
    QString what;
    QColor front, back;
    double least;
};

QList<Pair> pairsOf(const Colours &c) {
    const QPalette p = paletteOf(c);
    const double text = 4.5, shape = 3.0;
    const QColor wholeYards = QColor(0x9A, 0x3B, 0x2F).darker(c.dark ? 150 : 100);
    return {{u"ink on table"_s, c.ink, c.table, text},
            {u"ink on paper"_s, c.ink, c.paper, text},
            {u"ink in a field"_s, c.ink, p.color(QPalette::Base), text},
            {u"ink in every second line"_s, c.ink, p.color(QPalette::AlternateBase), text},
            {u"quiet on table"_s, c.quiet, c.table, text},
            {u"quiet on paper"_s, c.quiet, c.paper, text},
            {u"quiet in a field"_s, c.quiet, p.color(QPalette::Base), text},
            {u"accent on table"_s, c.accent, c.table, text},
            {u"accent on paper"_s, c.accent, c.paper, text},
            {u"words on accent"_s, c.onAccent, c.accent, text},
            {u"broken on table"_s, c.broken, c.table, text},
            {u"broken on paper"_s, c.broken, c.paper, text},
            {u"words on broken"_s, c.onBroken, c.broken, text},
            {u"good on table"_s, c.good, c.table, text},
            {u"good on paper"_s, c.good, c.paper, text},
            {u"inches on the tape"_s, c.tapeInk, c.tape, text},
            {u"yards on the tape"_s, wholeYards, c.tape, text},
            {u"selected words"_s, p.color(QPalette::HighlightedText), p.color(QPalette::Highlight), text},
            {u"tooltip"_s, p.color(QPalette::ToolTipText), p.color(QPalette::ToolTipBase), text},
            {u"edge of a button, focus"_s, c.accent, c.paper, shape},
            {u"edge of a field on paper"_s, p.color(QPalette::Dark), c.paper, shape},
            {u"edge of a field on table"_s, p.color(QPalette::Dark), c.table, shape},
            {u"edge of a field, inside"_s, p.color(QPalette::Dark), p.color(QPalette::Base), shape},
            {u"edge of a box in every second line"_s, p.color(QPalette::Dark), p.color(QPalette::AlternateBase), shape},
            {u"chalk and its casing"_s, c.chalk, c.chalkCasing, shape}};
}

} // namespace

TEST_CASE("the formula gives the ratios that the guidelines name", "[contrast]") {
    // WCAG 2.1, "contrast ratio": from 1 to 21.
    CHECK(ratio(Qt::black, Qt::white) == Approx(21.0));
    CHECK(ratio(Qt::white, Qt::white) == Approx(1.0));
    // #767676 is the lightest grey that still has 4.5 : 1 on white (a widely quoted figure, from memory).
    CHECK(ratio(QColor(0x76, 0x76, 0x76), Qt::white) == Approx(4.54).margin(0.01));
}

TEST_CASE("words and shapes stand out enough, in light and in dark", "[contrast]") {
    QFile page(QStringLiteral(BOLTWRIGHT_SOURCE_DIR "/DEVELOPERS.md"));
    REQUIRE(page.open(QIODevice::ReadOnly));
    const QString told = QString::fromUtf8(page.readAll());
    const auto light = pairsOf(lightColours()), dark = pairsOf(darkColours());
    for (int i = 0; i < light.size(); ++i) {
        const double one = ratio(light[i].front, light[i].back), two = ratio(dark[i].front, dark[i].back);
        INFO(light[i].what.toStdString() << ": light " << one << ", dark " << two);
        CHECK(one >= light[i].least);
        CHECK(two >= dark[i].least);
        // What the page for developers says is what is measured here.
        const QString line = u"| %1 | %2 | %3 |"_s.arg(light[i].what).arg(one, 0, 'f', 1).arg(two, 0, 'f', 1);
        INFO("DEVELOPERS.md lacks: " << line.toStdString());
        CHECK(told.contains(line));
    }
}

TEST_CASE("chalk lines and their casing read on every cloth", "[contrast]") {
    for (const bool dark : {false, true})
        for (int i = 0; i < 5; ++i) {
            const ClothColours cloth = clothColours(i, dark);
            const Colours c = dark ? darkColours() : lightColours();
            for (const QColor &ground : {cloth.ground, cloth.figure}) {
                INFO("cloth " << i << (dark ? " dark" : " light"));
                CHECK(std::max(ratio(c.chalk, ground), ratio(c.chalkCasing, ground)) >= 3.0);
            }
        }
}
