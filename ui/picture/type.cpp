#include "ui/picture/type.h"

#include <QFontMetricsF>
#include <QGuiApplication>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr int measuredAt = 1000; // large enough that no screen's hinting shows

const QFontMetricsF &metrics(bool bold) {
    static const QFontMetricsF regular(paperFont(measuredAt, false)), strong(paperFont(measuredAt, true));
    return bold ? strong : regular;
}

} // namespace

QFont paperFont(double size, bool bold) {
    QFont font = QGuiApplication::font();
    font.setStyleHint(QFont::SansSerif);
    font.setPixelSize(qMax(1, int(size)));
    font.setBold(bold);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setKerning(true);
    return font;
}

double wordsWidth(const QString &text, bool bold) { return metrics(bold).horizontalAdvance(text) / measuredAt; }
double typeAscent(bool bold) { return metrics(bold).ascent() / measuredAt; }
double typeDescent(bool bold) { return metrics(bold).descent() / measuredAt; }

QString shortened(const QString &text, double width, bool bold) {
    return metrics(bold).elidedText(text, Qt::ElideRight, width * measuredAt);
}

QStringList brokenIntoLines(const QString &text, double width, bool bold) {
    QStringList lines;
    QString line;
    for (QString word : text.split(u' ', Qt::SkipEmptyParts)) {
        const QString longer = line.isEmpty() ? word : line + u' ' + word;
        if (wordsWidth(longer, bold) <= width) {
            line = longer;
            continue;
        }
        if (!line.isEmpty()) lines << line;
        while (wordsWidth(word, bold) > width && word.size() > 1) {
            qsizetype fits = word.size() - 1;
            while (fits > 1 && wordsWidth(word.left(fits), bold) > width) --fits;
            lines << word.left(fits);
            word = word.mid(fits);
        }
        line = word;
    }
    if (!line.isEmpty() || lines.isEmpty()) lines << line;
    return lines;
}

} // namespace boltwright::ui
