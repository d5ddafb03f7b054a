#include "ui/paper/true_size_pages.h"

#include "core/paper/sheet_plan.h"
#include "ui/drawing/colours.h"
#include "ui/paper/page_ink.h"
#include "ui/picture/slip.h"
#include "ui/picture/type.h"
#include "ui/text/on_paper.h"
#include "ui/text/words.h"

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr double mm = unitsPerMillimetre;

Stroke strokeOf(TrueInk ink, const Colours &colours) {
    switch (ink) {
    case TrueInk::Cut:
        return {colours.ink, 0.4};
    case TrueInk::Measured:
        return {colours.ink, 0.2, {4, 2.5}};
    case TrueInk::Centre:
        return {colours.accent, 0.25, {8, 2, 1.5, 2}};
    case TrueInk::Pattern:
        return {colours.hairline, 0.15};
    case TrueInk::ClothEdge:
        return {colours.quiet, 0.25};
    }
    return {};
}

/// The part of a tile that is no neighbour's: words stand there once.
PaperBox ownPart(const TruePlan &plan, const TrueTile &tile) {
    PaperBox own = plan.shown(tile);
    const Length off = plan.overlap + Length::ticks(4 * 320); // match marks reach a little beyond
    if (tile.column > 0) own.low.x += off;
    if (tile.column + 1 < plan.columns) own.high.x -= off;
    if (tile.row > 0) own.low.y += off;
    if (tile.row + 1 < plan.rows) own.high.y -= off;
    return own;
}

PaperBox common(const PaperBox &a, const PaperBox &b) {
    return {{std::max(a.low.x, b.low.x), std::max(a.low.y, b.low.y)},
            {std::min(a.high.x, b.high.x), std::min(a.high.y, b.high.y)}};
}

double worth(const PaperBox &box) {
    const double width = box.width().toMillimetres(), height = box.height().toMillimetres();
    return width <= 0 || height <= 0 ? 0 : std::min(width, 80.0) * std::min(height, 40.0);
}

/// The page on which a piece's words have the most room.
const TrueTile *tileFor(const TruePlan &plan, const TruePiece &piece) {
    const TrueTile *best = nullptr;
    double most = 0;
    for (const TrueTile &tile : plan.tiles)
        if (const double here = worth(common(ownPart(plan, tile), piece.room)); here > most) {
            most = here;
            best = &tile;
        }
    return best;
}

} // namespace

Result<std::shared_ptr<const TrueSizePages>> TrueSizePages::make(const Job &job, std::vector<TrueDrawing> drawings,
                                                                 Paper paper, std::optional<bool> sideways) {
    if (drawings.empty()) return fault("there is nothing on the cloth to print at true size");
    // One file has one paper, held one way: that of its first drawing.
    auto pages = std::make_shared<TrueSizePages>();
    pages->m_unit = job.unit;
    pages->m_job = fromCore(job.card.title);
    pages->m_drawings = std::move(drawings);
    for (std::size_t i = 0; i < pages->m_drawings.size(); ++i) {
        const auto plan = planTrueSize(pages->m_drawings[i], paper, sideways);
        if (!plan) return fault(plan.error());
        sideways = plan->paper.width > plan->paper.height;
        for (std::size_t tile = 0; tile < plan->tiles.size(); ++tile) pages->m_pages.push_back({i, tile});
        pages->m_plans.push_back(*plan);
    }
    return pages;
}

QString TrueSizePages::title() const {
    QStringList parts{m_job, m_drawings.size() == 1 ? fromCore(m_drawings.front().what) : QString(),
                      onPaper("true size")};
    parts.removeAll(QString());
    return parts.join(u" · "_s);
}

void TrueSizePages::paint(Surface &surface, int page) const {
    const Page &which = m_pages[std::size_t(page)];
    const TrueDrawing &drawing = m_drawings[which.drawing];
    const TruePlan &plan = m_plans[which.drawing];
    const TrueTile &tile = plan.tiles[which.tile];
    paintLines(surface, drawing, plan, tile);
    paintMatches(surface, plan, tile);
    paintWords(surface, drawing, plan, tile);
    paintHeading(surface, drawing, plan, tile);
}

void TrueSizePages::paintLines(Surface &surface, const TrueDrawing &drawing, const TruePlan &plan,
                               const TrueTile &tile) const {
    const Colours colours = lightColours();
    const Vector toPaper = plan.toPaper(tile);
    for (const TrueLine &line : drawing.lines)
        if (const auto part = clippedTo(plan.shown(tile), line))
            surface.lines({QLineF(onPage(part->from + toPaper), onPage(part->to + toPaper))},
                          strokeOf(line.ink, colours));
}

void TrueSizePages::paintWords(Surface &surface, const TrueDrawing &drawing, const TruePlan &plan,
                               const TrueTile &tile) const {
    const Colours colours = lightColours();
    for (const TruePiece &piece : drawing.pieces) {
        if (tileFor(plan, piece) != &tile) continue;
        const PaperBox part = common(ownPart(plan, tile), piece.room);
        QRectF room = onPage(PaperBox{part.low + plan.toPaper(tile), part.high + plan.toPaper(tile)});
        room.adjust(mm, mm, -mm, -mm);
        // The arrow to the top stands beside the words, on the side that it points to.
        const QPointF up(piece.top.x.toMillimetres(), piece.top.y.toMillimetres());
        const double deep = std::min(7 * mm, 0.3 * std::min(room.width(), room.height()));
        const QRectF words = room.adjusted(up.x() < -0.5 ? deep : 0, up.y() < -0.5 ? deep : 0, up.x() > 0.5 ? -deep : 0,
                                           up.y() > 0.5 ? -deep : 0);
        QString name = fromCore(piece.name);
        if (!piece.copy.empty()) name += u", "_s + fromCore(piece.copy);
        const Slip slip = setSlip({piece.number > 0 ? QString::number(piece.number) : QString(),
                                   fromCore(piece.mark),
                                   name,
                                   shownSize(piece.cutAcross, piece.cutUp, m_unit),
                                   {}},
                                  words, surface.paperMillimetre(), colours.ink, colours.quiet);
        if (slip.isEmpty()) continue;
        surface.rectangle(slip.rect, Qt::white);
        for (const QRectF &ring : slip.rings) surface.rectangle(ring, {}, {colours.ink, 0.25});
        for (const SetWords &set : slip.words) surface.words(set);
        const QPointF aside(-up.y(), up.x()), middle = slip.rect.center();
        const QPointF tip =
            middle + QPointF(up.x() * (slip.rect.width() / 2 + deep), up.y() * (slip.rect.height() / 2 + deep));
        const QPointF foot = tip - up * deep * 0.8;
        surface.area(QPolygonF({tip, foot + aside * deep * 0.4, foot - aside * deep * 0.4}), colours.ink);
    }
}

void TrueSizePages::paintMatches(Surface &surface, const TruePlan &plan, const TrueTile &tile) const {
    const Colours colours = lightColours();
    const Length half = Length::ticks(plan.overlap.ticks() / 2);
    const QRectF room = onPage(plan.room);
    const Stroke fine{colours.accent, 0.2};
    const double size = 2.8;
    const auto cross = [&](QPointF at) {
        const double reach = 2.5 * mm;
        surface.lines({QLineF(at - QPointF(reach, 0), at + QPointF(reach, 0)),
                       QLineF(at - QPointF(0, reach), at + QPointF(0, reach))},
                      fine);
        QPolygonF ring;
        for (int k = 0; k < 24; ++k)
            ring << at +
                        QPointF(std::cos(k * std::numbers::pi / 12), std::sin(k * std::numbers::pi / 12)) * reach * 0.7;
        surface.area(ring, {}, fine);
    };
    const auto label = [&](QPointF middle, const TrueTile &one, const TrueTile &other) {
        const QString text = fromCore(nameOf(one) + "|" + nameOf(other));
        const double wide = wordsWidth(text, true) * size * mm;
        const QPointF start = middle + QPointF(-wide / 2, typeAscent(true) * size * mm / 2);
        surface.rectangle(QRectF(start.x() - 0.4 * mm, start.y() - typeAscent(true) * size * mm, wide + 0.8 * mm,
                                 (typeAscent(true) + typeDescent(true)) * size * mm),
                          Qt::white);
        surface.words({text, start, size * mm, true, colours.accent});
    };
    const auto beside = [&](int columns, int rows) {
        TrueTile other = tile;
        other.column += columns;
        other.row += rows;
        return other;
    };
    // Marks of a join stand where both its pages have them: a quarter and three quarters along it.
    const auto upright = [&](double x, const TrueTile &one, const TrueTile &other) {
        surface.lines({QLineF(x, room.top(), x, room.bottom())}, {colours.accent, 0.2, {0.5, 1.5}});
        for (double share : {0.25, 0.75}) cross({x, room.top() + room.height() * share});
        label({x, room.center().y()}, one, other);
    };
    const auto level = [&](double y, const TrueTile &one, const TrueTile &other) {
        surface.lines({QLineF(room.left(), y, room.right(), y)}, {colours.accent, 0.2, {0.5, 1.5}});
        for (double share : {0.25, 0.75}) cross({room.left() + room.width() * share, y});
        label({room.center().x(), y}, one, other);
    };
    const double in = half.toMillimetres() * mm;
    if (tile.column > 0) upright(room.left() + in, beside(-1, 0), tile);
    if (tile.column + 1 < plan.columns) upright(room.right() - in, tile, beside(1, 0));
    if (tile.row > 0) level(room.top() + in, beside(0, -1), tile);
    if (tile.row + 1 < plan.rows) level(room.bottom() - in, tile, beside(0, 1));
}

void TrueSizePages::paintHeading(Surface &surface, const TrueDrawing &drawing, const TruePlan &plan,
                                 const TrueTile &tile) const {
    const Colours colours = lightColours();
    const QRectF frame = onPage(plan.heading);
    PageInk ink;
    const bool inches = m_unit == Unit::Inch;
    const double bar = (inches ? 4 * 25.4 : 100) * mm, high = 1.6 * mm;
    const double left = frame.width() - bar - 5 * mm;
    ink.words(fromCore(drawing.what), frame.topLeft() + QPointF(0, 4.4 * mm), left, 4.4, true, colours.ink);
    const TrueTile last{plan.columns - 1, plan.rows - 1, {}};
    const QString place =
        plan.columns * plan.rows > 1
            ? onPaper("true size · page %1 of A1 to %2").arg(fromCore(nameOf(tile)), fromCore(nameOf(last)))
            : onPaper("true size");
    ink.words(place, frame.topLeft() + QPointF(0, 9 * mm), left, 3.2, false, colours.quiet);
    const QPointF corner(frame.right() - bar, frame.top() + 1 * mm);
    ink.box(QRectF(corner, QSizeF(bar / 2, high)), colours.ink, {});
    ink.box(QRectF(corner, QSizeF(bar, high)), {}, {colours.ink, 0.2});
    ink.paragraph(inches ? onPaper("Lay a rule on this bar: 4 in. If it is not, print again at actual size (100 %).")
                  : m_unit == Unit::Centimetre
                      ? onPaper("Lay a rule on this bar: 10 cm. If it is not, print again at actual size (100 %).")
                      : onPaper("Lay a rule on this bar: 100 mm. If it is not, print again at actual size (100 %)."),
                  corner + QPointF(0, high + 0.8 * mm), bar, 2.6, false, colours.ink, 2);
    ink.paint(surface);
}

Result<std::shared_ptr<const TrueSizePages>> trueSizePages(const Job &job, const Layout &layout,
                                                           const std::string &panel, Paper paper,
                                                           std::optional<bool> sideways) {
    std::vector<TrueDrawing> drawings;
    if (panel.empty()) {
        for (const ClothSheet &sheet : clothSheets(job, layout)) drawings.push_back(trueSheet(job, layout, sheet));
    } else {
        const auto cut = cutNamed(job, layout, panel);
        if (!cut) return fault(cut.error());
        bool any = false;
        for (const Cut &piece : layout.cuts)
            if (piece.panel == cut->panel && piece.copy == cut->copy) {
                drawings.push_back(truePanel(job, layout, piece));
                any = true;
            }
        if (!any) drawings.push_back(truePanel(job, layout, *cut));
    }
    return TrueSizePages::make(job, std::move(drawings), paper, sideways);
}

} // namespace boltwright::ui
