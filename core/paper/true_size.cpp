#include "core/paper/true_size.h"

#include "core/base/language.h"
#include "core/measure/length_text.h"
#include "core/paper/chalk_list.h"
#include "core/paper/drawing.h"
#include "core/paper/word_room.h"
#include "core/paper/words.h"
#include "core/rules/cut_shape.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <functional>

namespace boltwright {
using namespace literals;
namespace {

constexpr std::size_t mostPages = 200;
constexpr Length headingHeight = 13_mm, overlapOnPaper = 12_mm;

template <class Frame>
void addRing(TrueDrawing &drawing, const RingIn<Frame> &ring, TrueInk ink,
             const std::function<PaperPoint(PointIn<Frame>)> &at) {
    for (std::size_t i = 0; i < ring.size(); ++i)
        drawing.lines.push_back({at(ring[i]), at(ring[(i + 1) % ring.size()]), ink});
}

/// The row of a cut on the chalk list; none where it is on no layout.
std::optional<ChalkRow> rowOf(const std::vector<ChalkSheet> &list, int cut) {
    for (const ChalkSheet &sheet : list)
        for (const ChalkRow &row : sheet.rows)
            if (row.cut == cut) return row;
    return std::nullopt;
}

/// The measured part of a piece, between its joins.
PanelRing measuredPart(const Panel &panel, const PieceSpan &span, bool pieces) {
    PanelRing ring = measuredOutline(panel.shape);
    if (!pieces) return ring;
    PanelBox part = boxOf(ring);
    Length &low = span.sideToSide ? part.low.x : part.low.y, &high = span.sideToSide ? part.high.x : part.high.y;
    if (!span.first) low = std::max(low, span.from);
    if (!span.last) high = std::min(high, span.to);
    return ringOf(part);
}

std::string titleOf(const Panel &panel) {
    const std::string name = panel.name.empty() ? panel.id : panel.name;
    return panel.mark.empty() ? name : panel.mark + " · " + name;
}

/// Where pages begin along one axis, so that they reach over all of it.
std::vector<Length> beginnings(Length all, Length room) {
    std::vector<Length> from = {Length{}};
    while (from.back() + room < all) from.push_back(from.back() + room - overlapOnPaper);
    return from;
}

bool showsSomething(const TrueDrawing &drawing, const PaperBox &box) {
    return std::any_of(drawing.lines.begin(), drawing.lines.end(),
                       [&](const TrueLine &line) { return line.ink != TrueInk::Pattern && clippedTo(box, line); });
}

Result<TruePlan> planned(const TrueDrawing &drawing, Paper paper, bool sideways) {
    TruePlan plan;
    plan.paper = heldAs(paper, sideways);
    const PaperBox all = printable(plan.paper);
    plan.heading = {all.low, {all.high.x, all.low.y + headingHeight}};
    plan.room = {{all.low.x, plan.heading.high.y}, all.high};
    plan.overlap = overlapOnPaper;
    const auto across = beginnings(drawing.size.width, plan.room.width()),
               down = beginnings(drawing.size.height, plan.room.height());
    plan.columns = int(across.size());
    plan.rows = int(down.size());
    if (across.size() * down.size() > mostPages)
        return fault(
            phrase("%1 at true size would take %2 pages of %3 paper; larger paper, or one panel at a time, would do",
                   {drawing.what, std::to_string(across.size() * down.size()), nameOf(paper)}));
    for (int row = 0; row < plan.rows; ++row)
        for (int column = 0; column < plan.columns; ++column) {
            const TrueTile tile{column, row, {across[std::size_t(column)], down[std::size_t(row)]}};
            if (showsSomething(drawing, plan.shown(tile))) plan.tiles.push_back(tile);
        }
    return plan;
}

} // namespace

TrueDrawing truePanel(const Job &job, const Layout &layout, const Cut &cut) {
    const Panel &panel = *job.panel(cut.panel);
    const PanelRing outline = outlineOf(panel, cut, layout);
    const PanelBox box = boxOf(outline);
    const bool pieces = cut.of > 1;
    const PieceSpan span = pieces ? spanOf(panel, cut, layout) : PieceSpan{};
    const std::function<PaperPoint(PanelPoint)> at = [&](PanelPoint p) {
        return PaperPoint{cut.mirrored ? box.high.x - p.x : p.x - box.low.x, box.high.y - p.y};
    };
    TrueDrawing drawing;
    drawing.what = titleOf(panel);
    drawing.size = {box.width(), box.height()};
    addRing(drawing, outline, TrueInk::Cut, at);
    const PanelRing measured = measuredPart(panel, span, pieces);
    if (measured != outline) addRing(drawing, measured, TrueInk::Measured, at);
    // As seen on the furniture the panel is a cut that lies with its top up the roll.
    SheetCut seen;
    for (PanelPoint p : outline) seen.outline.push_back({p.x, p.y});
    seen.up = {{}, 1_mm};
    const PanelPoint anchor = anchorOf(panel);
    if (panel.motif && !isFreed(layout, cut) && (!pieces || span.holds(anchor))) {
        seen.motif = ClothPoint{anchor.x, anchor.y};
        const auto through = [&](Vector way) {
            const auto one = edgeMet(seen.outline, *seen.motif, way), two = edgeMet(seen.outline, *seen.motif, -way);
            if (one && two) drawing.lines.push_back({at({one->x, one->y}), at({two->x, two->y}), TrueInk::Centre});
        };
        if (panel.motif->centre != Centre::Up) through({{}, 1_mm});
        if (panel.motif->centre != Centre::Across) through({1_mm, {}});
    }
    const ClothBox words = wordRoom(seen.outline);
    const PaperPoint a = at({words.low.x, words.low.y}), b = at({words.high.x, words.high.y});
    TruePiece piece;
    const auto index = std::find(layout.cuts.begin(), layout.cuts.end(), cut) - layout.cuts.begin();
    ChalkRow row;
    row.copy = cut.copy;
    row.copies = panel.count;
    row.piece = cut.piece;
    row.of = cut.of;
    if (index < std::ptrdiff_t(layout.cuts.size()))
        if (const auto listed = rowOf(chalkList(job, layout), int(index))) row = *listed;
    piece.number = row.number;
    piece.mark = panel.mark;
    piece.name = panel.name.empty() ? panel.id : panel.name;
    piece.copy = copyWords(row);
    piece.cutAcross = box.width();
    piece.cutUp = box.height();
    piece.room = {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
    piece.top = {{}, -1_mm};
    drawing.pieces.push_back(std::move(piece));
    return drawing;
}

Result<Cut> cutNamed(const Job &job, const Layout &layout, const std::string &name) {
    const auto slash = name.rfind('/');
    const std::string who = name.substr(0, slash);
    int copy = 1;
    if (slash != std::string::npos) {
        const char *begin = name.data() + slash + 1, *end = name.data() + name.size();
        if (std::from_chars(begin, end, copy).ptr != end || begin == end)
            return fault(phrase("\"%1\" names no panel; write its mark, or mark and copy such as IB/2", {name}));
    }
    const auto panel = std::find_if(job.panels.begin(), job.panels.end(),
                                    [&](const Panel &p) { return p.mark == who || p.id == who; });
    if (panel == job.panels.end()) {
        std::string marks;
        for (const Panel &p : job.panels) marks += (marks.empty() ? "" : ", ") + (p.mark.empty() ? p.id : p.mark);
        return fault(phrase("the job has no panel \"%1\"; there are %2", {who, marks}));
    }
    if (copy < 1 || copy > panel->count)
        return fault(phrase("panel \"%1\" has no copy %2; there are %3",
                            {who, std::to_string(copy), std::to_string(panel->count)}));
    for (const Cut &cut : layout.cuts)
        if (cut.panel == panel->id && cut.copy == copy) return cut;
    Cut cut;
    cut.panel = panel->id;
    cut.copy = copy;
    cut.mirrored = panel->mirror && copy % 2 == 0;
    return cut;
}

TrueDrawing trueSheet(const Job &job, const Layout &layout, const ClothSheet &sheet) {
    const ClothBox box = sheet.box();
    const std::function<PaperPoint(ClothPoint)> at = [&](ClothPoint p) {
        return PaperPoint{p.y - box.low.y, p.x - box.low.x};
    };
    TrueDrawing drawing;
    drawing.what = sheetName(job, sheet.cloth, sheet.on);
    drawing.size = {box.height(), box.width()};
    const Cloth &cloth = *job.cloth(sheet.cloth);
    if (const auto lattice = cloth.latticeOn(sheet.on))
        for (const ClothLine &line : patternMarks(*lattice, box, 5_mm).lines)
            drawing.lines.push_back({at(line.from), at(line.to), TrueInk::Pattern});
    addRing(drawing, sheet.outline, TrueInk::ClothEdge, at);
    for (const Flaw &flaw : flawsOn(cloth, sheet.on)) addRing(drawing, flaw.outline, TrueInk::ClothEdge, at);
    const auto list = chalkList(job, layout);
    for (const SheetCut &cut : sheet.cuts) {
        addRing(drawing, cut.outline, TrueInk::Cut, at);
        if (cut.measured != cut.outline) addRing(drawing, cut.measured, TrueInk::Measured, at);
        for (const ClothLine &line : centrelines(job, layout, cut))
            drawing.lines.push_back({at(line.from), at(line.to), TrueInk::Centre});
        const auto row = rowOf(list, cut.cut);
        const ClothBox room = wordRoom(cut.outline);
        drawing.pieces.push_back({row->number,
                                  row->mark,
                                  row->name,
                                  copyWords(*row),
                                  row->cutAcross,
                                  row->cutUp,
                                  {at(room.low), at(room.high)},
                                  {cut.up.y, cut.up.x}});
    }
    return drawing;
}

std::string nameOf(const TrueTile &tile) {
    std::string row;
    for (int r = tile.row; r >= 0; r = r / 26 - 1) row.insert(row.begin(), char('A' + r % 26));
    return row + std::to_string(tile.column + 1);
}

Result<TruePlan> planTrueSize(const TrueDrawing &drawing, Paper paper, std::optional<bool> sideways) {
    if (sideways) return planned(drawing, paper, *sideways);
    auto upright = planned(drawing, paper, false), lying = planned(drawing, paper, true);
    if (!upright) return lying;
    return lying && lying->tiles.size() < upright->tiles.size() ? lying : upright;
}

std::optional<TrueLine> clippedTo(const PaperBox &box, const TrueLine &line) {
    // Liang and Barsky, ACM Transactions on Graphics 3 (1984): the share of the line inside all four sides.
    double first = 0, last = 1;
    const double dx = double((line.to.x - line.from.x).ticks()), dy = double((line.to.y - line.from.y).ticks());
    const auto within = [&](double way, Length inside) {
        const double room = double(inside.ticks());
        if (way == 0) return room >= 0;
        if (way < 0)
            first = std::max(first, room / way);
        else
            last = std::min(last, room / way);
        return first <= last;
    };
    if (!within(-dx, line.from.x - box.low.x) || !within(dx, box.high.x - line.from.x) ||
        !within(-dy, line.from.y - box.low.y) || !within(dy, box.high.y - line.from.y))
        return std::nullopt;
    const auto at = [&](double share) {
        return line.from + Vector{Length::ticks(std::llround(share * dx)), Length::ticks(std::llround(share * dy))};
    };
    if (first == last) return std::nullopt;
    return TrueLine{at(first), at(last), line.ink};
}

} // namespace boltwright
