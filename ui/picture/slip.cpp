#include "ui/picture/slip.h"

#include "ui/picture/type.h"

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

struct Run {
    QString text;
    double size = 0; ///< millimetres of paper
    bool bold = false, quiet = false, ringed = false;
};
using Line = QList<Run>;
using Block = QList<Line>;

constexpr double pad = 0.35; // around the words, millimetres of paper
constexpr double betweenRuns = 1.4;
constexpr double ringPad = 0.5; // between number and its frame

double widthOf(const Run &run) {
    const double width = wordsWidth(run.text, run.bold) * run.size;
    return run.ringed ? std::max(width + 2 * ringPad, run.size * 1.25) : width;
}

double widthOf(const Line &line) {
    double width = 0;
    for (const Run &run : line) width += widthOf(run) + (&run == &line.first() ? 0 : betweenRuns);
    return width;
}

double ascentOf(const Line &line) {
    double most = 0;
    for (const Run &run : line) most = std::max(most, typeAscent(run.bold) * run.size);
    return most;
}

double heightOf(const Line &line) {
    double most = 0;
    for (const Run &run : line) most = std::max(most, typeDescent(run.bold) * run.size);
    return ascentOf(line) + most;
}

/// A number alone stands for a panel that has room for nothing else: it takes all there is.
double padOf(const Block &block) { return block.size() == 1 && block.first().size() == 1 ? 0.05 : pad; }

QSizeF sizeOf(const Block &block) {
    QSizeF size(0, 0);
    for (const Line &line : block) {
        size.setWidth(std::max(size.width(), widthOf(line)));
        size.setHeight(size.height() + heightOf(line));
    }
    return size + QSizeF(2, 2) * padOf(block);
}

/// A line without the runs that say nothing.
Line lineOf(Line runs) {
    runs.removeIf([](const Run &run) { return run.text.isEmpty(); });
    return runs;
}

Block blockOf(QList<Line> lines) {
    Block block;
    for (Line &line : lines)
        if (Line said = lineOf(std::move(line)); !said.isEmpty()) block << said;
    return block;
}

/// All ways to say it, from the fullest to the barest; those that say the same stand together, best-looking first.
QList<QList<Block>> waysToSay(const SlipText &t) {
    auto head = [&](double size) { return Line{{t.number, size * 0.8, true, false, true}, {t.mark, size, true}}; };
    const QStringList places = t.place.split(u" · "_s);
    const QString one = places.value(0), two = places.value(1);
    QList<Block> everything, withoutName, withoutPlace, markAndSize, mark, number;
    for (double k : {1.0, 0.86}) {
        const Run name{t.name, 3.0 * k}, size{t.size, 3.0 * k}, place{t.place, 2.6 * k, false, true};
        const Run first{one, 2.6 * k, false, true}, second{two, 2.6 * k, false, true};
        everything << blockOf({head(4.8 * k), {name}, {size}, {place}})
                   << blockOf({head(4.8 * k), {name}, {size}, {first}, {second}})
                   << blockOf({head(4.4 * k) << name, {size, place}})
                   << blockOf({head(3.6 * k) << name << size << place});
        withoutName << blockOf({head(4.2 * k), {size}, {first}, {second}}) << blockOf({head(3.6 * k) << size << place});
        withoutPlace << blockOf({head(4.2 * k), {name}, {size}}) << blockOf({head(3.6 * k) << name << size});
        markAndSize << blockOf({head(4.2 * k), {size}}) << blockOf({head(3.4 * k) << size});
    }
    for (double size : {2.9, 2.4, 2.1})
        withoutPlace << blockOf({Line{{t.number, size, true}, {t.mark, size, true}, {t.name, size}, {t.size, size}}});
    for (double size : {4.2, 3.2, 2.6}) mark << blockOf({head(size)});
    for (double size : {2.6, 2.2}) mark << blockOf({Line{{t.number, size, true}, {t.mark, size}}});
    for (double size : {2.6, 2.2, 1.8, 1.5})
        number << blockOf({Line{{t.number.isEmpty() ? t.mark : t.number, size, true}}});
    return {everything, withoutName, withoutPlace, markAndSize, mark, number};
}

/// Places a block of known size around the middle of the room.
Slip placed(const Block &block, const QRectF &room, double unit, bool upward, const QColor &ink, const QColor &quiet) {
    const QSizeF size = sizeOf(block) * unit;
    Slip slip;
    const QSizeF onPaper = upward ? size.transposed() : size;
    slip.rect = QRectF(room.center() - QPointF(onPaper.width() / 2, onPaper.height() / 2), onPaper);
    // Words are set as if upright from a corner at 0, then laid into the slip.
    auto lay = [&](QPointF p) {
        return upward ? QPointF(slip.rect.left() + p.y(), slip.rect.bottom() - p.x()) : slip.rect.topLeft() + p;
    };
    double y = padOf(block) * unit;
    for (const Line &line : block) {
        const double baseline = y + ascentOf(line) * unit;
        double x = (size.width() - widthOf(line) * unit) / 2;
        for (const Run &run : line) {
            const double width = widthOf(run) * unit, own = wordsWidth(run.text, run.bold) * run.size * unit;
            const double start = x + (width - own) / 2;
            slip.words << SetWords{run.text, lay({start, baseline}),  run.size * unit,
                                   run.bold, run.quiet ? quiet : ink, upward};
            if (run.ringed) {
                const double reach = std::max(width, run.size * 1.25 * unit);
                const QPointF a = lay({x, baseline - run.size * 0.98 * unit}),
                              b = lay({x + reach, baseline + run.size * 0.25 * unit});
                slip.rings << QRectF(a, b).normalized();
            }
            x += width + betweenRuns * unit;
        }
        y += heightOf(line) * unit;
    }
    return slip;
}

} // namespace

Slip setSlip(const SlipText &text, const QRectF &room, double unit, const QColor &ink, const QColor &quiet) {
    for (const QList<Block> &ways : waysToSay(text))
        for (bool upward : {false, true})
            for (const Block &block : ways) {
                QSizeF size = sizeOf(block) * unit;
                if (upward) size.transpose();
                if (!block.isEmpty() && size.width() <= room.width() && size.height() <= room.height())
                    return placed(block, room, unit, upward, ink, quiet);
            }
    return {};
}

} // namespace boltwright::ui
