#include "core/edit/trim_edit.h"

#include "core/base/language.h"
#include "core/figures/figures.h"
#include "core/measure/length_text.h"
#include "core/panel/edges.h"
#include "core/rules/rules.h"

#include <algorithm>
#include <iterator>

namespace boltwright {
namespace {

std::string spokenLength(Length length, Unit unit) { return localised(spokenWithUnit(length, unit)); }

bool isOfSameCopy(const Cut &a, const Cut &b) { return a.panel == b.panel && a.copy == b.copy; }

/// Changes the cuts of one copy while the cloth under each of its points stays what it was.
template <class Change>
Layout withCopyChanged(const Job &job, Layout layout, const Cut &of, const Change &change) {
    const Panel &panel = *job.panel(of.panel);
    const Cut copy = of; // `of` is in the layout
    const Layout before = layout;
    change(layout);
    for (std::size_t i = 0; i < layout.cuts.size(); ++i) {
        Cut &cut = layout.cuts[i];
        if (!isOfSameCopy(cut, copy)) continue;
        const LaidCut was = lay(panel, before.cuts[i], before), is = lay(panel, cut, layout);
        const Vector by = was.at(PanelPoint{}) - is.at(PanelPoint{});
        cut.x = cut.x + by.x;
        cut.y = cut.y + by.y;
    }
    return withFigures(job, std::move(layout));
}

} // namespace

Result<Layout> withLeftAtEdge(const Job &job, Layout layout, int index, int edge, std::optional<Length> left) {
    const Cut of = layout.cuts[std::size_t(index)];
    const Panel *panel = job.panel(of.panel);
    if (!panel || edge < 0 || std::size_t(edge) >= edgeCount(panel->shape))
        return fault(phrase("There is no such edge."));
    const Length full = panel->allowance(edge);
    if (left && (*left < Length{} || *left > full))
        return fault(phrase("%1: from 0 to the %2 that is added there.",
                            {edgeInWords(panel->shape, edge), spokenLength(full, job.unit)}));
    const bool sideToSide = spanOf(*panel, of, layout).sideToSide;
    const Length more = left.value_or(full) - allowancesOf(*panel, of)[std::size_t(edge)];
    const int atEnd = edge == (sideToSide ? Left : Bottom) ? 1 : edge == (sideToSide ? Right : Top) ? of.of : 0;
    // The pieces of a copy are of one panel, and what is left at its edges is the same for all.
    return withCopyChanged(job, std::move(layout), of, [&](Layout &changed) {
        for (Cut &cut : changed.cuts) {
            if (!isOfSameCopy(cut, of)) continue;
            if (cut.length && cut.piece == atEnd) cut.length = *cut.length + more;
            cut.allow.resize(edgeCount(panel->shape));
            cut.allow[std::size_t(edge)] = left && *left != full ? left : std::nullopt;
            if (std::none_of(cut.allow.begin(), cut.allow.end(), [](const auto &l) { return l.has_value(); }))
                cut.allow.clear();
        }
        std::erase_if(changed.conceded, [&](const Concession &c) {
            return c.panel == of.panel && c.copy == of.copy &&
                   (c.kind == Concession::Kind::Trim || c.kind == Concession::Kind::Stretcher);
        });
        for (const Cut &cut : changed.cuts) {
            if (!isOfSameCopy(cut, of)) continue;
            auto trims = trimsOf(*panel, cut);
            changed.conceded.insert(changed.conceded.end(), std::make_move_iterator(trims.begin()),
                                    std::make_move_iterator(trims.end()));
        }
    });
}

Result<Layout> withPieceLength(const Job &job, Layout layout, int index, Length length) {
    const Cut of = layout.cuts[std::size_t(index)];
    const Panel *panel = job.panel(of.panel);
    if (!panel || of.of < 2) return fault(phrase("It is cut whole: only pieces have a length of their own."));
    const int other = of.piece < of.of ? of.piece + 1 : of.piece - 1;
    const auto mate = std::find_if(layout.cuts.begin(), layout.cuts.end(),
                                   [&](const Cut &c) { return isOfSameCopy(c, of) && c.piece == other; });
    if (mate == layout.cuts.end() || !mate->length || !of.length)
        return fault(phrase("The piece beside it is not on the cloth."));
    const auto seams = [&](int piece) { return panel->pieces.seam * ((piece > 1) + (piece < of.of)); };
    const Length rest = *mate->length + *of.length - length;
    for (const auto &[piece, cut] : {std::pair(of.piece, length), std::pair(other, rest)})
        if (cut <= seams(piece))
            return fault(phrase("Piece %1 of %2 would be %3 long, no longer than its seams.",
                                {std::to_string(piece), std::to_string(of.of), spokenLength(cut, job.unit)}));
    return withCopyChanged(job, std::move(layout), of, [&](Layout &changed) {
        for (Cut &cut : changed.cuts) {
            if (!isOfSameCopy(cut, of)) continue;
            if (cut.piece == of.piece) cut.length = length;
            if (cut.piece == other) cut.length = rest;
        }
    });
}

} // namespace boltwright
