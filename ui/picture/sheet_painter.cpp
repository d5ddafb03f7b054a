#include "ui/picture/sheet_painter.h"

#include "core/base/ensure.h"
#include "core/figures/figures.h"
#include "core/measure/length_text.h"
#include "core/paper/drawing.h"
#include "core/paper/word_room.h"
#include "core/paper/words.h"
#include "core/rules/cut_shape.h"
#include "core/rules/rules.h"
#include "ui/drawing/cloth_drawing.h"
#include "ui/drawing/table_frame.h"
#include "ui/picture/slip.h"
#include "ui/picture/type.h"
#include "ui/text/on_paper.h"
#include "ui/text/words.h"

#include <QPainter>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

QColor between(const QColor &a, const QColor &b, double share) {
    auto mix = [&](int x, int y) { return qRound(x + (y - x) * share); };
    return QColor(mix(a.red(), b.red()), mix(a.green(), b.green()), mix(a.blue(), b.blue()));
}

/// The cloth's colours as they are printed: pale, since ink on white paper has to stand out from them in grey as well.
struct Inks {
    Inks(const std::optional<ClothLook> &look, int clothIndex)
        : colours(lightColours()), cloth(clothColours(look, clothIndex, false)) {
        ground = between(cloth.ground, Qt::white, 0.45);
        strip = between(cloth.selvage, Qt::white, 0.15);
        figure = between(cloth.figure, Qt::white, 0.15);
        panel = QColor(0xFF, 0xFE, 0xFB);
        cutAlready = QColor(0xD2, 0xCC, 0xC2);
    }
    Colours colours;
    ClothColours cloth;
    QColor ground, strip, figure, panel, cutAlready;
};

/// One stretch being painted.
class Painting {
public:
    Painting(Surface &surface, const DrawnLayout &drawn, std::size_t index, const SheetView &view)
        : m_surface(surface), m_drawn(drawn), m_index(index), m_sheet(drawn.sheets[index]), m_view(view),
          m_unit(surface.paperMillimetre()), m_cloth(*drawn.job.cloth(m_sheet.cloth)),
          m_inks(m_cloth.look, int(&m_cloth - drawn.job.cloths.data())) {
        m_shown = m_sheet.box();
        m_shown.low.y = std::max(m_shown.low.y, view.from);
        m_shown.high.y = std::min(m_shown.high.y, view.to);
    }

    void all() {
        m_surface.beginGroup(u"cloth-%1"_s.arg(m_index + 1),
                             fromCore(sheetName(m_drawn.job, m_sheet.cloth, m_sheet.on)), {});
        if (const auto picture = pictureOfCloth()) {
            m_surface.picture(*picture, shownRect());
        } else {
            cloth();
            for (const SheetCut &cut : m_sheet.cuts) panelGround(cut);
        }
        pattern();
        flaws();
        clothEdge();
        straightCuts();
        stripsLeft();
        chalkLines();
        m_surface.endGroup();
        for (const SheetCut &cut : m_sheet.cuts) panel(cut);
        if (!m_tiny.isEmpty()) {
            m_surface.beginGroup(u"callouts-%1"_s.arg(m_index + 1), {}, {});
            callouts();
            m_surface.endGroup();
        }
        if (!m_sheet.notes.empty() && !m_view.plain) {
            m_surface.beginGroup(u"notes-%1"_s.arg(m_index + 1), {}, {});
            for (const SheetNote &note : m_sheet.notes) pin(note);
            m_surface.endGroup();
        }
        m_surface.beginGroup(u"tape-%1"_s.arg(m_index + 1), {}, {});
        offcut();
        matchMarks();
        wordsBelow();
        tapeAlong();
        tapeAcross();
        m_surface.endGroup();
    }

private:
    double mm(double paper) const { return paper * m_unit; }
    /// A length of paper as cloth.
    Length asCloth(double paper) const { return Length::ticks(std::llround(mm(paper) / m_view.scale * 320)); }
    QRectF shownRect() const { return m_view.at(m_shown); }
    bool shows(const ClothBox &box) const { return box.low.y < m_shown.high.y && box.high.y > m_shown.low.y; }
    bool showsWhole(const ClothBox &box) const { return box.low.y >= m_shown.low.y && box.high.y <= m_shown.high.y; }

    void ringLines(const ClothRing &ring, const Stroke &stroke) {
        if (showsWhole(boxOf(ring))) {
            m_surface.area(m_view.at(ring), {}, stroke);
            return;
        }
        QList<QLineF> lines;
        for (const ClothLine &edge : edgesAlong(ring, m_shown.low.y, m_shown.high.y))
            lines << QLineF(m_view.at(edge.from), m_view.at(edge.to));
        m_surface.lines(lines, stroke);
    }

    /// Strips for welt, cut from what is left over: fine lines, since they are cut when the panels are off.
    void stripsLeft() {
        const Job &job = m_drawn.job;
        for (std::size_t i = 0; i < m_drawn.trimmings.size(); ++i) {
            const auto &own = job.trimmings[i].cloth;
            if ((own ? job.cloth(*own) : &job.cloths.front()) != &m_cloth) continue;
            for (const Strip &strip : m_drawn.trimmings[i].used)
                if (strip.on == m_sheet.on && shows(boxOf(strip.ring)))
                    ringLines(strip.ring, {m_inks.colours.ink, 0.13, {0.5, 0.9}});
        }
    }

    void ringArea(const ClothRing &ring, const QColor &fill) {
        m_surface.area(m_view.at(clippedAlong(ring, m_shown.low.y, m_shown.high.y)), fill);
    }

    void strip(const ClothBox &box, const QColor &fill) {
        if (box.width() > Length{} && box.height() > Length{} && shows(box)) ringArea(ringOf(box), fill);
    }

    /// Cloth that is drawn from a picture, with the panels on it as lighter places: paler than the cloth itself, since
    /// the words on it are to be read in grey as well. None: it has no picture, and is drawn in lines and areas.
    std::optional<QImage> pictureOfCloth() const {
        const int number = int(&m_cloth - m_drawn.job.cloths.data());
        const Remnant *remnant = m_sheet.on ? m_cloth.remnant(*m_sheet.on) : nullptr;
        SheetPicture sheet = remnant ? pictureOfRemnant(m_cloth, number, *remnant)
                                     : pictureOfBolt(m_cloth, number, m_sheet.box().high.y);
        if ((!sheet.swatch && !sheet.photo) || shownRect().isEmpty()) return std::nullopt;
        sheet.endless = false;
        constexpr double longest = 1600; // pixels: sharp enough for what is pale
        const QRectF shown = onTable(m_shown);
        const double scale = longest / std::max(shown.width(), shown.height());
        QImage image((shown.size() * scale).toSize().expandedTo(QSize(1, 1)), QImage::Format_RGB32);
        image.fill(Qt::white);
        const QTransform toPixels =
            QTransform::fromTranslate(-shown.left(), -shown.top()) *
            QTransform::fromScale(image.width() / shown.width(), image.height() / shown.height());
        QPainter painter(&image);
        painter.setRenderHint(QPainter::Antialiasing);
        drawSheet(painter, sheet, toPixels, image.rect(), false, m_inks.colours);
        painter.fillRect(image.rect(), QColor(255, 255, 255, 110));
        painter.setPen(Qt::NoPen);
        for (const SheetCut &cut : m_sheet.cuts) {
            QColor over = m_drawn.rowOf(cut).alreadyCut ? m_inks.cutAlready : m_inks.panel;
            over.setAlpha(150);
            painter.setBrush(over);
            painter.drawPolygon(toPixels.map(onTable(cut.outline)));
        }
        return image;
    }

    void cloth() {
        ringArea(m_sheet.outline, m_inks.ground);
        if (!m_cloth.bolt) return;
        const Length width = m_cloth.bolt->width, end = m_sheet.box().high.y, selvage = m_cloth.selvage;
        strip({{{}, {}}, {selvage, end}}, m_inks.strip);
        strip({{width - selvage, {}}, {width, end}}, m_inks.strip);
        strip({{selvage, {}}, {width - selvage, m_cloth.bolt->square}}, m_inks.strip);
    }

    void panelGround(const SheetCut &cut) {
        if (!shows(cut.box)) return;
        ringArea(cut.outline, m_drawn.rowOf(cut).alreadyCut ? m_inks.cutAlready : m_inks.panel);
    }

    void pattern() {
        const auto lattice = m_cloth.latticeOn(m_sheet.on);
        if (!lattice) return;
        const PatternMarks marks = patternMarks(*lattice, m_shown, asCloth(2.0));
        QList<QLineF> lines;
        for (const ClothLine &line : marks.lines) addInside(lines, line);
        m_surface.lines(lines, {m_inks.figure, 0.18});
        const double reach = mm(0.8);
        for (ClothPoint p : marks.motifs) {
            const QPointF c = m_view.at(p);
            if (!insideOutline(p)) continue;
            const QRectF r = shownRect();
            if (!r.adjusted(reach, reach, -reach, -reach).contains(c)) continue;
            m_surface.area(
                QPolygonF({c - QPointF(reach, 0), c - QPointF(0, reach), c + QPointF(reach, 0), c + QPointF(0, reach)}),
                m_inks.figure);
        }
    }

    bool insideOutline(ClothPoint p) const {
        return QPolygonF(m_view.at(m_sheet.outline)).containsPoint(m_view.at(p), Qt::OddEvenFill);
    }

    /// The parts of a line that lie on the cloth; a bolt holds all of it.
    void addInside(QList<QLineF> &lines, const ClothLine &line) const {
        if (m_cloth.bolt) {
            lines << QLineF(m_view.at(line.from), m_view.at(line.to));
            return;
        }
        const QLineF whole(m_view.at(line.from), m_view.at(line.to));
        const QPolygonF outline = m_view.at(m_sheet.outline);
        QList<double> shares = {0, 1};
        for (int i = 0; i < outline.size(); ++i) {
            const QLineF edge(outline[i], outline[(i + 1) % outline.size()]);
            QPointF met;
            if (whole.intersects(edge, &met) == QLineF::BoundedIntersection)
                shares << QLineF(whole.p1(), met).length() / whole.length();
        }
        std::sort(shares.begin(), shares.end());
        for (int i = 0; i + 1 < shares.size(); ++i)
            if (outline.containsPoint(whole.pointAt((shares[i] + shares[i + 1]) / 2), Qt::OddEvenFill))
                lines << QLineF(whole.pointAt(shares[i]), whole.pointAt(shares[i + 1]));
    }

    void flaws() {
        for (const Flaw &flaw : flawsOn(m_cloth, m_sheet.on)) {
            const ClothBox box = boxOf(flaw.outline);
            if (!shows(box)) continue;
            ringArea(flaw.outline, between(m_inks.colours.broken, Qt::white, 0.55));
            ringLines(flaw.outline, {m_inks.colours.broken, 0.25});
            QList<QLineF> cross;
            for (const ClothLine &line :
                 {ClothLine{box.low, box.high}, ClothLine{{box.low.x, box.high.y}, {box.high.x, box.low.y}}})
                if (const auto part = clippedAlong(line, m_shown.low.y, m_shown.high.y))
                    cross << QLineF(m_view.at(part->from), m_view.at(part->to));
            m_surface.lines(cross, {m_inks.colours.broken, 0.25});
        }
    }

    void clothEdge() {
        if (m_sheet.goesOn && m_shown.high.y == m_sheet.box().high.y) {
            const QRectF r = shownRect();
            m_surface.lines({QLineF(r.topLeft(), r.topRight()), QLineF(r.bottomLeft(), r.bottomRight())},
                            {m_inks.colours.ink, 0.25});
            if (m_shown.low.y == m_sheet.box().low.y)
                m_surface.lines({QLineF(r.topLeft(), r.bottomLeft())}, {m_inks.colours.ink, 0.25});
            // A torn end: the roll lies on beyond it.
            QList<QLineF> torn;
            const int teeth = std::max(6, int(r.height() / mm(5)));
            const double step = r.height() / teeth, deep = mm(1.2);
            auto tooth = [&](int i) { return QPointF(r.right() - (i % 2 ? deep : 0), r.top() + i * step); };
            for (int i = 0; i < teeth; ++i) torn << QLineF(tooth(i), tooth(i + 1));
            m_surface.lines(torn, {m_inks.colours.quiet, 0.18});
        } else {
            ringLines(m_sheet.outline, {m_inks.colours.ink, 0.25});
        }
    }

    void straightCuts() {
        QList<QLineF> lines;
        for (Length y : m_drawn.chalk[m_index].across)
            if (!m_view.plain && y >= m_shown.low.y && y <= m_shown.high.y && y != m_sheet.lastCut)
                lines << QLineF(m_view.at(ClothPoint{m_shown.low.x, y}), m_view.at(ClothPoint{m_shown.high.x, y}));
        m_surface.lines(lines, {m_inks.colours.ink, 0.3, {3, 1.2}});
        if (!m_cloth.bolt || m_sheet.lastCut < m_shown.low.y || m_sheet.lastCut > m_shown.high.y) return;
        m_surface.lines({QLineF(m_view.at(ClothPoint{m_shown.low.x, m_sheet.lastCut}),
                                m_view.at(ClothPoint{m_shown.high.x, m_sheet.lastCut}))},
                        {m_inks.colours.broken, 0.7});
    }

    SlipText slipText(const ChalkRow &row) const {
        const Unit unit = m_drawn.job.unit;
        QString name = fromCore(row.name);
        const QString copy = fromCore(copyWords(row));
        if (!copy.isEmpty()) name += u", "_s + copy;
        if (const QString news = m_drawn.news.value(row.cut); !news.isEmpty()) name += u" – "_s + news;
        if (m_view.plain) return {{}, fromCore(row.mark.empty() ? row.name : row.mark), fromCore(row.name), {}, {}};
        return {QString::number(row.number), fromCore(row.mark), name, shownSize(row.cutAcross, row.cutUp, unit),
                onPaper("selvage %1").arg(shownLength(row.fromSelvage, unit)) + u" · "_s +
                    onPaper("end %1").arg(shownLength(row.fromEnd, unit))};
    }

    void panel(const SheetCut &cut) {
        if (!shows(cut.box)) return;
        const ChalkRow &row = m_drawn.rowOf(cut);
        const Cut &own = m_drawn.layout.cuts[std::size_t(cut.cut)];
        m_surface.beginGroup(panelId(own), title(row), description(row));
        const bool locked = own.state == CutState::Locked;
        ringLines(cut.outline, {m_inks.colours.ink, 0.42});
        if (cut.measured != cut.outline && !m_view.plain)
            ringLines(cut.measured, {m_inks.colours.ink, 0.16, {1.4, 0.9}});
        QList<QLineF> centre;
        for (const ClothLine &line : centrelines(m_drawn.job, m_drawn.layout, cut))
            if (const auto part = clippedAlong(line, m_shown.low.y, m_shown.high.y))
                centre << QLineF(m_view.at(part->from), m_view.at(part->to));
        if (!m_view.plain) m_surface.lines(centre, {m_inks.colours.accent, 0.25, {3, 0.8, 0.6, 0.8}});

        const QRectF room = roomFor(row, cut);
        const double deep = std::min(2.6, 0.35 * std::min(room.width(), room.height()) / m_unit);
        // Of a panel that runs over two stretches, the words stand where enough of it is to be seen.
        const Length seen = std::min(cut.box.high.y, m_shown.high.y) - std::max(cut.box.low.y, m_shown.low.y);
        if (5 * seen < 2 * std::min(cut.box.height(), m_shown.height())) {
            m_surface.endGroup();
            return;
        }
        const Slip slip = wedgeAndSlip(cut, row, room, deep);
        if (!slip.isEmpty()) {
            m_surface.rectangle(slip.rect, row.alreadyCut ? m_inks.cutAlready : m_inks.panel);
            for (const QRectF &ring : slip.rings) m_surface.rectangle(ring, {}, {m_inks.colours.ink, 0.22});
            for (const SetWords &words : slip.words) m_surface.words(words);
            m_said << slip.rect;
        }
        if (slip.words.size() < 2 && !m_view.plain && showsWhole(cut.box)) m_tiny << &cut;
        if (locked) padlock(room);
        m_surface.endGroup();
    }

    /// Lines of chalk that a person drew: pale long dashes, as no cut has them.
    void chalkLines() {
        if (m_view.plain) return;
        QList<QLineF> lines;
        for (const ClothLine &line : m_sheet.chalk)
            if (const auto part = clippedAlong(line, m_shown.low.y, m_shown.high.y)) addInside(lines, *part);
        m_surface.lines(lines, {m_inks.colours.quiet, 0.22, {5, 2.5}});
    }

    /// A note: a dot on the very place that it is pinned to, and beside it a slip with its letter and, where there is
    /// room between the lines, its words.
    void pin(const SheetNote &note) {
        if (note.at.y < m_shown.low.y || note.at.y > m_shown.high.y) return;
        const QPointF at = m_view.at(note.at);
        const QString letter = fromCore(note.letter);
        QList<QRectF> taken = m_said;
        if (const auto left = largestOffcut(m_drawn.job, m_drawn.layout, m_sheet.cloth, m_sheet.on))
            taken << offcutWords(m_view.at(*left));
        for (const bool whole : {true, false}) {
            const QStringList lines = whole ? broken(fromCore(note.text), 36 / noteSize) : QStringList();
            if (lines.size() > 4) continue; // the list below the drawing has all of it
            double wide = 0;
            for (const QString &line : lines) wide = std::max(wide, wordsWidth(line, false));
            const double line = typeAscent(false) + typeDescent(false), lead = wordsWidth(letter, true) + 0.5;
            const QSizeF room(mm((lead + wide) * noteSize + 1.2),
                              mm(line * noteSize * double(std::max<qsizetype>(1, lines.size())) + 0.8));
            const auto place = besideLines(at, room, taken);
            if (!place && whole) continue;
            const QRectF slip = place.value_or(QRectF(at + QPointF(mm(0.9), mm(0.9)), room));
            const QPointF end(std::clamp(at.x(), slip.left(), slip.right()),
                              std::clamp(at.y(), slip.top(), slip.bottom()));
            m_surface.lines({QLineF(at, end)}, {m_inks.colours.ink, 0.18});
            m_surface.rectangle(slip, between(m_inks.colours.tape, Qt::white, 0.4), {m_inks.colours.ink, 0.18});
            const double baseline = slip.top() + mm(0.4 + typeAscent(true) * noteSize);
            m_surface.words({letter, {slip.left() + mm(0.6), baseline}, mm(noteSize), true, m_inks.colours.ink});
            for (qsizetype i = 0; i < lines.size(); ++i)
                m_surface.words({lines[i],
                                 {slip.left() + mm(0.6 + lead * noteSize), baseline + double(i) * mm(line * noteSize)},
                                 mm(noteSize),
                                 false,
                                 m_inks.colours.ink});
            m_said << slip;
            break;
        }
        QPolygonF dot;
        for (int k = 0; k < 16; ++k)
            dot << at + mm(0.7) * QPointF(std::cos(k * std::numbers::pi / 8), std::sin(k * std::numbers::pi / 8));
        m_surface.area(dot, m_inks.colours.broken, {m_inks.colours.ink, 0.15});
    }

    static constexpr double noteSize = 2.6, most = 25; ///< of type, and how far off its slip may stand, millimetres

    /// Words in lines no wider than `width` times their size; a word that is wider stands alone.
    static QStringList broken(const QString &text, double width) {
        QStringList lines;
        for (const QString &word : text.split(QChar::Space, Qt::SkipEmptyParts)) {
            const QString longer = lines.isEmpty() ? word : lines.last() + u' ' + word;
            if (!lines.isEmpty() && wordsWidth(longer, false) <= width)
                lines.last() = longer;
            else
                lines << word;
        }
        return lines;
    }

    /// The place nearest to `at`, and not over it, where a slip covers no line to cut or fold by and no words.
    std::optional<QRectF> besideLines(QPointF at, QSizeF size, const QList<QRectF> &taken) const {
        QList<QPolygonF> outlines;
        for (const SheetCut &cut : m_sheet.cuts) outlines << m_view.at(cut.outline) << m_view.at(cut.measured);
        for (const Flaw &flaw : flawsOn(m_cloth, m_sheet.on)) outlines << m_view.at(flaw.outline);
        const double off = mm(0.5);
        const auto isFree = [&](const QRectF &rect) {
            const QRectF wide = rect.adjusted(-off, -off, off, off);
            if (!within(wide, shownRect()) || wide.contains(at)) return false;
            if (std::any_of(taken.begin(), taken.end(), [&](const QRectF &box) { return box.intersects(wide); }))
                return false;
            return std::none_of(outlines.begin(), outlines.end(), [&](const QPolygonF &ring) {
                for (int i = 0; i < ring.size(); ++i)
                    if (crosses(QLineF(ring[i], ring[(i + 1) % ring.size()]), wide)) return true;
                return false;
            });
        };
        constexpr int reach = 25;
        const double step = mm(1.2);
        std::optional<QRectF> best;
        double least = mm(most);
        for (int i = -reach; i <= reach; ++i)
            for (int k = -reach; k <= reach; ++k) {
                QRectF rect(QPointF(), size);
                rect.moveCenter(at + QPointF(i, k) * step);
                const QPointF end(std::clamp(at.x(), rect.left(), rect.right()),
                                  std::clamp(at.y(), rect.top(), rect.bottom()));
                double far = QLineF(at, end).length() + 0.1 * QLineF(at, rect.center()).length();
                if (far >= least || !isFree(rect)) continue;
                if (crossesWords(QLineF(at, end), rect)) far += mm(most); // its line would go through words
                if (far >= least) continue;
                best = rect;
                least = far;
            }
        return best;
    }

    /// Whether a line goes through a rectangle, or ends in it.
    static bool crosses(const QLineF &line, const QRectF &rect) {
        if (rect.contains(line.p1()) || rect.contains(line.p2())) return true;
        const QList<QPointF> c = {rect.topLeft(), rect.topRight(), rect.bottomRight(), rect.bottomLeft()};
        for (int i = 0; i < 4; ++i)
            if (QLineF(c[i], c[(i + 1) % 4]).intersects(line, nullptr) == QLineF::BoundedIntersection) return true;
        return false;
    }

    /// Panels too small for their mark have it beside them, on cloth that no panel takes, with a line that leads there.
    void callouts() {
        QList<QRectF> taken = takenOnCloth();
        for (const SheetCut *cut : m_tiny) {
            const ChalkRow &row = m_drawn.rowOf(*cut);
            const QString number = QString::number(row.number), mark = fromCore(row.mark.empty() ? row.name : row.mark);
            const double size = 2.6, between = wordsWidth(number + u' ', true);
            const QSizeF room(mm((between + wordsWidth(mark, true)) * size + 0.8),
                              mm((typeAscent(true) + typeDescent(true)) * size + 0.4));
            const auto place = calloutPlace(*cut, room, taken);
            if (!place) continue;
            const QPointF middle = m_view.at(cut->box).center();
            const QPointF end(std::clamp(middle.x(), place->left(), place->right()),
                              std::clamp(middle.y(), place->top(), place->bottom()));
            m_surface.lines({QLineF(middle, end)}, {m_inks.colours.ink, 0.18});
            m_leaders << QLineF(middle, end);
            m_surface.rectangle(*place, m_inks.ground);
            const double baseline = place->top() + mm(0.2 + typeAscent(true) * size);
            m_surface.words({number, {place->left() + mm(0.4), baseline}, mm(size), true, m_inks.colours.quiet});
            m_surface.words(
                {mark, {place->left() + mm(0.4 + between * size), baseline}, mm(size), true, m_inks.colours.ink});
            m_said << *place;
            taken << *place;
        }
    }

    QList<QRectF> takenOnCloth() const {
        QList<QRectF> taken = m_said;
        for (const SheetCut &cut : m_sheet.cuts) taken << m_view.at(cut.box);
        for (const Flaw &flaw : flawsOn(m_cloth, m_sheet.on)) taken << m_view.at(boxOf(flaw.outline));
        if (const auto left = largestOffcut(m_drawn.job, m_drawn.layout, m_sheet.cloth, m_sheet.on))
            taken << offcutWords(m_view.at(*left));
        for (const SheetMatch &match : m_view.matches) {
            const double x = m_view.at(ClothPoint{{}, match.at}).x();
            taken << QRectF(x - mm(2.2), shownRect().top(), mm(4.4), shownRect().height());
        }
        return taken;
    }

    /// The nearest free place for words of a size; one whose line crosses words or another line only where there is no
    /// other.
    std::optional<QRectF> calloutPlace(const SheetCut &cut, QSizeF size, const QList<QRectF> &taken) const {
        const QPointF middle = m_view.at(cut.box).center();
        constexpr int reach = 25;
        const double step = mm(1.6);
        std::optional<QRectF> best;
        double least = 0;
        for (int i = -reach; i <= reach; ++i)
            for (int k = -reach; k <= reach; ++k) {
                QRectF rect(QPointF(), size);
                rect.moveCenter(middle + QPointF(i, k) * step);
                double far = std::hypot(i, k);
                if ((best && far >= least) || !isFreeCloth(rect, taken)) continue;
                if (crossesWords(QLineF(middle, rect.center()), rect)) far += 2 * reach;
                if (best && far >= least) continue;
                best = rect;
                least = far;
            }
        return best;
    }

    bool isFreeCloth(const QRectF &rect, const QList<QRectF> &taken) const {
        const double off = mm(0.6);
        const QRectF wide = rect.adjusted(-off, -off, off, off);
        if (!within(wide, shownRect())) return false;
        if (std::any_of(taken.begin(), taken.end(), [&](const QRectF &box) { return box.intersects(wide); }))
            return false;
        const QList<QPointF> corners = {wide.topLeft(), wide.topRight(), wide.bottomLeft(), wide.bottomRight()};
        const QPolygonF outline = m_view.at(m_sheet.outline);
        return std::all_of(corners.begin(), corners.end(),
                           [&](QPointF corner) { return outline.containsPoint(corner, Qt::OddEvenFill); });
    }

    bool crossesWords(const QLineF &line, const QRectF &own) const {
        const auto crosses = [&](const QRectF &r) {
            const QList<QPointF> c = {r.topLeft(), r.topRight(), r.bottomRight(), r.bottomLeft()};
            for (int i = 0; i < 4; ++i)
                if (QLineF(c[i], c[(i + 1) % 4]).intersects(line, nullptr) == QLineF::BoundedIntersection) return true;
            return false;
        };
        return std::any_of(m_said.begin(), m_said.end(), [&](const QRectF &r) { return r != own && crosses(r); }) ||
               std::any_of(m_leaders.begin(), m_leaders.end(), [&](const QLineF &other) {
                   return other.intersects(line, nullptr) == QLineF::BoundedIntersection;
               });
    }

    QRectF roomIn(const ClothRing &ring) const {
        const ClothRing part = clippedAlong(ring, m_shown.low.y, m_shown.high.y);
        if (part.size() < 3) return {};
        return m_view.at(wordRoom(part)).adjusted(mm(0.3), mm(0.3), -mm(0.3), -mm(0.3));
    }

    /// Words stand inside the measured shape where they are not the shorter for it, so that its line stays whole.
    QRectF roomFor(const ChalkRow &row, const SheetCut &cut) const {
        const QRectF inner = roomIn(cut.measured), outer = roomIn(cut.outline);
        auto said = [&](const QRectF &room) { return setSlip(slipText(row), room, m_unit, {}, {}).words.size(); };
        return inner.isValid() && said(inner) >= said(outer) ? inner : outer;
    }

    /// The top arrow at the edge that is the panel's top, and the words where it leaves room: words first give way,
    /// then the arrow goes aside, and last it grows small.
    Slip wedgeAndSlip(const SheetCut &cut, const ChalkRow &row, const QRectF &room, double deep) {
        const QPointF up = QPointF(cut.up.y.toMillimetres(), cut.up.x.toMillimetres());
        const QRectF kept = room.adjusted(up.x() < -0.5 ? mm(deep) : 0, up.y() < -0.5 ? mm(deep) : 0,
                                          up.x() > 0.5 ? -mm(deep) : 0, up.y() > 0.5 ? -mm(deep) : 0);
        const SlipText text = slipText(row);
        Slip full = setSlip(text, room, m_unit, m_inks.colours.ink, m_inks.colours.quiet);
        Slip slip = setSlip(text, kept, m_unit, m_inks.colours.ink, m_inks.colours.quiet);
        if (slip.words.size() < full.words.size()) slip = full;
        if (m_view.plain) return full;
        // The arrow stands at the cut's edge, beyond the room for words.
        const QPointF aside(-up.y(), up.x());
        for (double size : {deep, deep * 0.6}) {
            for (double share : {0.0, 0.36, -0.36, 0.2, -0.2, 0.44, -0.44}) {
                const QPointF from =
                    room.center() + QPointF(aside.x() * room.width() * share, aside.y() * room.height() * share);
                const TopWedge wedge = topWedge(cut, onCloth(from), asCloth(size));
                const QPolygonF shape({m_view.at(wedge.tip), m_view.at(wedge.left), m_view.at(wedge.right)});
                if (!within(shape.boundingRect(), shownRect())) continue;
                if (!slip.isEmpty() && shape.boundingRect().intersects(slip.rect)) continue;
                m_surface.area(shape, m_inks.colours.ink);
                return slip;
            }
        }
        return slip;
    }

    static bool within(const QRectF &inner, const QRectF &outer) {
        return inner.left() >= outer.left() && inner.right() <= outer.right() && inner.top() >= outer.top() &&
               inner.bottom() <= outer.bottom();
    }

    ClothPoint onCloth(QPointF p) const {
        const QPointF table = (p - m_view.zero) / m_view.scale;
        return {Length::ticks(std::llround(table.y() * 320)), Length::ticks(std::llround(table.x() * 320))};
    }

    void padlock(const QRectF &room) {
        const QRectF body(room.left() + mm(0.3), room.top() + mm(1.6), mm(2.2), mm(1.7));
        if (!within(body, room)) return;
        m_surface.rectangle(body, m_inks.colours.ink);
        const double l = body.left() + mm(0.45), r = body.right() - mm(0.45), t = body.top() - mm(1.1);
        m_surface.lines({QLineF(l, body.top(), l, t), QLineF(l, t, r, t), QLineF(r, t, r, body.top())},
                        {m_inks.colours.ink, 0.35});
    }

    static QString panelId(const Cut &cut) {
        QString id = u"panel-%1-%2"_s.arg(fromCore(cut.panel)).arg(cut.copy);
        if (cut.of > 1) id += u"-%1"_s.arg(cut.piece);
        for (QChar &c : id)
            if (!c.isLetterOrNumber() && c != u'-' && c != u'_' && c != u'.') c = u'_';
        return id;
    }

    QString title(const ChalkRow &row) const {
        QString text = fromCore(row.mark.empty() ? row.name : row.mark + " · " + row.name);
        const QString copy = fromCore(copyWords(row));
        return copy.isEmpty() ? text : text + u", "_s + copy;
    }

    QString description(const ChalkRow &row) const {
        const Unit unit = m_drawn.job.unit;
        QString text = onPaper("Cut %1; %2 from the left selvage, %3 from the cut end; %4.")
                           .arg(shownSize(row.cutAcross, row.cutUp, unit), shownLengthWithUnit(row.fromSelvage, unit),
                                shownLengthWithUnit(row.fromEnd, unit), fromCore(turnWords(row.turn)));
        if (row.motif) text += u' ' + onPaper("Chalked from %1.").arg(fromCore(seatWords(*row.motif)));
        return text;
    }

    /// What is left, where it is worth something, on the stretch that shows all of it.
    void offcut() {
        const auto box = largestOffcut(m_drawn.job, m_drawn.layout, m_sheet.cloth, m_sheet.on);
        if (!box || !showsWhole(*box)) return;
        const QRectF rect = m_view.at(*box), words = offcutWords(rect);
        const QColor ink = m_inks.colours.good;
        m_surface.rectangle(rect, {}, {ink, 0.3, {0.6, 0.9}});
        if (!within(words, rect)) return;
        const QString name = onPaper("left over"), size = shownSize(box->width(), box->height(), m_drawn.job.unit);
        const QPointF c = words.center();
        m_surface.rectangle(words, m_inks.ground);
        m_surface.words(
            {name, c + QPointF(-mm(wordsWidth(name, false) * offcutSize / 2), -mm(typeDescent(false) * offcutSize)),
             mm(offcutSize), false, ink});
        m_surface.words({size,
                         c + QPointF(-mm(wordsWidth(size, true) * offcutSize / 2), mm(typeAscent(true) * offcutSize)),
                         mm(offcutSize), true, ink});
    }

    static constexpr double offcutSize = 3.0;
    /// Where the words of an offcut stand, in its middle.
    QRectF offcutWords(const QRectF &offcut) const {
        const ClothPoint low = onCloth(offcut.topLeft()), high = onCloth(offcut.bottomRight());
        const QString size = shownSize(high.x - low.x, high.y - low.y, m_drawn.job.unit);
        const double width = std::max(wordsWidth(onPaper("left over"), false), wordsWidth(size, true)) * offcutSize,
                     height = (typeAscent(true) + typeDescent(true)) * offcutSize;
        return QRectF(offcut.center() - QPointF(mm(width / 2 + 0.4), mm(height)),
                      QSizeF(mm(width + 0.8), mm(2 * height)));
    }

    /// A line across and a ringed cross at both selvages, to lay one stretch over the next.
    void matchMarks() {
        const QRectF r = shownRect();
        const Stroke fine{m_inks.colours.accent, 0.2};
        for (const SheetMatch &match : m_view.matches) {
            const double x = m_view.at(ClothPoint{{}, match.at}).x(), reach = mm(2);
            m_surface.lines({QLineF(x, r.top(), x, r.bottom())}, {m_inks.colours.accent, 0.2, {0.5, 1}});
            for (double y : {r.top() + reach, r.bottom() - reach}) {
                m_surface.lines({QLineF(x - reach, y, x + reach, y), QLineF(x, y - reach, x, y + reach)}, fine);
                QPolygonF ring;
                for (int k = 0; k < 24; ++k)
                    ring << QPointF(x + reach * 0.7 * std::cos(k * std::numbers::pi / 12),
                                    y + reach * 0.7 * std::sin(k * std::numbers::pi / 12));
                m_surface.area(ring, {}, fine);
            }
        }
    }

    bool isMatch(Length y) const {
        return std::any_of(m_view.matches.begin(), m_view.matches.end(),
                           [&](const SheetMatch &m) { return m.at == y; });
    }

    /// Under the cloth: the last cut and what to buy, then every straight cut that has room for its words.
    void wordsBelow() {
        const QRectF r = shownRect();
        QList<QRectF> taken;
        const double size = 3.0, top = r.bottom() + mm(0.8);
        auto put = [&](Length y, const QString &text, bool bold, const QColor &ink) {
            if (y < m_shown.low.y || y > m_shown.high.y) return;
            const double x = m_view.at(ClothPoint{m_shown.high.x, y}).x(), width = wordsWidth(text, bold) * mm(size);
            const double start =
                std::clamp(x - width / 2, r.left() - mm(StripEdges::left.toMillimetres()),
                           std::max(r.left() - mm(StripEdges::left.toMillimetres()), r.right() - width));
            const QRectF box(start - mm(1), top, width + mm(2), mm(4));
            for (const QRectF &other : taken)
                if (other.intersects(box)) return;
            taken << box;
            m_surface.words({text, {start, top + mm(typeAscent(bold) * size)}, mm(size), bold, ink});
        };
        const Unit unit = m_drawn.job.unit;
        const auto &across = m_drawn.chalk[m_index].across;
        for (const SheetMatch &match : m_view.matches) {
            QString text = onPaper("match %1").arg(match.number);
            if (std::find(across.begin(), across.end(), match.at) != across.end())
                text += u" · "_s + onPaper("across at %1").arg(shownLength(match.at, unit));
            put(match.at, text, true, m_inks.colours.accent);
        }
        if (m_cloth.bolt)
            put(m_sheet.lastCut,
                onPaper("last cut %1").arg(shownAlongRoll(m_sheet.lastCut, unit)) + u" · "_s +
                    withFractions(fromCore(
                        onHandWords(m_cloth, m_sheet.lastCut, unit, everythingLies(m_drawn.job, m_drawn.layout)))),
                true, m_inks.colours.broken);
        if (m_view.plain) return;
        for (Length y : across)
            if (y != m_sheet.lastCut && !isMatch(y))
                put(y, onPaper("across at %1").arg(shownLength(y, unit)), false, m_inks.colours.ink);
    }

    /// Steps of a tape that can be told apart at this scale.
    struct Steps {
        std::int64_t tick, middle, label; ///< in the tape's unit
        Length unit;
        std::int64_t large = 0; ///< a yard or a metre
    };
    Steps steps() const {
        const Unit unit = m_drawn.job.unit;
        Steps s{};
        const bool inches = unit == Unit::Inch;
        s.unit = Length::ticks(inches ? 8128 : 3200);
        s.large = inches ? 36 : 100;
        auto roomy = [&](std::int64_t n, double least) {
            return (s.unit * n).toMillimetres() * m_view.scale >= mm(least);
        };
        auto first = [&](std::initializer_list<std::int64_t> options, double least) {
            for (std::int64_t n : options)
                if (roomy(n, least)) return n;
            return *(options.end() - 1);
        };
        s.tick = inches ? first({1, 3, 6, 12, 36}, 0.9) : first({1, 2, 5, 10, 50, 100}, 0.9);
        s.middle = inches ? first({6, 12, 36}, 3) : first({5, 10, 50, 100}, 3);
        s.label = inches ? first({6, 12, 36, 180}, 10) : first({10, 20, 50, 100, 500}, 10);
        return s;
    }

    /// What stands at a mark, from both tapes' zero.
    QString tapeLabel(std::int64_t n) const {
        return QString::number(m_drawn.job.unit == Unit::Millimetre ? n * 10 : n);
    }

    void tapeAlong() {
        const QRectF r = shownRect();
        const double bottom = r.top() - mm(0.8), top = bottom - mm(5.2);
        const Steps s = steps();
        m_surface.rectangle(QRectF(QPointF(r.left(), top), QPointF(r.right(), bottom)),
                            between(m_inks.colours.tape, Qt::white, 0.45), {m_inks.colours.tapeEdge, 0.2});
        QList<QLineF> ticks;
        double free = r.left();
        const Length zero = m_cloth.bolt ? Length{} : m_sheet.box().low.y;
        const std::int64_t begin = std::max<std::int64_t>(0, (m_shown.low.y - zero).ticks() / s.unit.ticks()),
                           end = (m_shown.high.y - zero).ticks() / s.unit.ticks();
        for (std::int64_t n = begin; n <= end; ++n) {
            if (n % s.tick != 0 && n % s.middle != 0) continue;
            const double x = m_view.at(ClothPoint{{}, zero + s.unit * n}).x();
            if (x < r.left() - mm(0.01)) continue;
            ticks << QLineF(x, bottom, x, bottom - mm(n % s.label == 0 ? 2.2 : n % s.middle == 0 ? 1.7 : 1.0));
            if (n % s.label != 0) continue;
            const bool large = n > 0 && n % s.large == 0;
            QString text = tapeLabel(n);
            if (large)
                text = m_drawn.job.unit == Unit::Inch ? onPaper("%1 yd").arg(n / s.large)
                                                      : onPaper("%1 m").arg(n / s.large);
            const double size = mm(2.6), width = wordsWidth(text, large) * size, start = x - width / 2;
            if (start < free || start + width > r.right()) continue;
            free = start + width + mm(0.8);
            m_surface.words(
                {text, {start, bottom - mm(2.5)}, size, large, large ? m_inks.colours.broken : m_inks.colours.tapeInk});
        }
        m_surface.lines(ticks, {m_inks.colours.tapeInk, 0.15});
        const QString name = m_drawn.nameOf(m_sheet);
        const double room = std::max(r.right(), m_view.right) - r.left();
        const double size = std::clamp(room / std::max(0.01, wordsWidth(name, true)) * 0.998, mm(2.2), mm(3.4));
        m_surface.words(
            {shortened(name, room / size, true), {r.left(), top - mm(1.4)}, size, true, m_inks.colours.ink});
    }

    void tapeAcross() {
        const QRectF r = shownRect();
        const double right = r.left() - mm(0.8), left = right - mm(7.0);
        const Steps s = steps();
        m_surface.rectangle(QRectF(QPointF(left, r.top()), QPointF(right, r.bottom())),
                            between(m_inks.colours.tape, Qt::white, 0.45), {m_inks.colours.tapeEdge, 0.2});
        QList<QLineF> ticks;
        const Length zero = m_sheet.box().low.x;
        const std::int64_t end = m_sheet.box().width().ticks() / s.unit.ticks();
        double free = r.top();
        for (std::int64_t n = 0; n <= end; ++n) {
            if (n % s.tick != 0 && n % s.middle != 0) continue;
            const double y = m_view.at(ClothPoint{zero + s.unit * n, {}}).y();
            ticks << QLineF(right, y, right - mm(n % s.label == 0 ? 2.0 : n % s.middle == 0 ? 1.5 : 0.9), y);
            if (n % s.label != 0 || n == 0) continue;
            const double size = mm(2.4), width = wordsWidth(tapeLabel(n), false) * size, up = typeAscent(false) * size;
            const double baseline = y + size * 0.36;
            if (baseline - up < free || baseline + typeDescent(false) * size > r.bottom()) continue;
            free = baseline + typeDescent(false) * size;
            m_surface.words({tapeLabel(n), {right - mm(2.3) - width, baseline}, size, false, m_inks.colours.tapeInk});
        }
        m_surface.lines(ticks, {m_inks.colours.tapeInk, 0.15});
    }

    Surface &m_surface;
    const DrawnLayout &m_drawn;
    std::size_t m_index;
    const ClothSheet &m_sheet;
    const SheetView &m_view;
    double m_unit;
    const Cloth &m_cloth;
    Inks m_inks;
    ClothBox m_shown;
    QList<QRectF> m_said;           ///< where words stand on the cloth
    QList<const SheetCut *> m_tiny; ///< those without room for their mark
    QList<QLineF> m_leaders;        ///< from callouts to their panels
};

} // namespace

DrawnLayout::DrawnLayout(const Job &j, const Layout &l)
    : job(j), layout(l), sheets(clothSheets(j, l)), chalk(chalkList(j, l)), news() {}

const ChalkRow &DrawnLayout::rowOf(const SheetCut &cut) const {
    for (const ChalkSheet &sheet : chalk)
        for (const ChalkRow &row : sheet.rows)
            if (row.cut == cut.cut) return row;
    ensure(false, "every cut of a sheet has a row on the chalk list");
    return chalk.front().rows.front();
}

QString DrawnLayout::nameOf(const ClothSheet &sheet) const {
    const Cloth &cloth = *job.cloth(sheet.cloth);
    QString name = fromCore(sheetName(job, sheet.cloth, sheet.on));
    if (cloth.bolt) name += u" · "_s + onPaper("%1 wide").arg(shownLengthWithUnit(cloth.bolt->width, job.unit));
    if (sheet.on)
        if (const Remnant *remnant = cloth.remnant(*sheet.on); remnant && !remnant->lot.empty())
            name += u" · "_s + onPaper("lot %1").arg(fromCore(remnant->lot));
    return name + u" · "_s + (cloth.way == Way::One ? onPaper("one way") : onPaper("two ways"));
}

QPolygonF SheetView::at(const ClothRing &ring) const {
    QPolygonF out;
    for (ClothPoint p : ring) out << at(p);
    return out;
}

QRectF SheetView::at(const ClothBox &box) const { return QRectF(at(box.low), at(box.high)).normalized(); }

bool DrawnLayout::hasStrips() const {
    return std::any_of(trimmings.begin(), trimmings.end(), [](const Reckoned &r) { return !r.used.empty(); });
}

void paintSheet(Surface &surface, const DrawnLayout &drawn, std::size_t sheet, const SheetView &view) {
    Painting(surface, drawn, sheet, view).all();
}

} // namespace boltwright::ui
