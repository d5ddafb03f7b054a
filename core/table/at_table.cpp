#include "core/table/at_table.h"

#include "core/base/language.h"
#include "core/edit/job_edit.h"
#include "core/figures/figures.h"
#include "core/rules/cut_already.h"
#include "core/rules/rules.h"

#include <algorithm>

namespace boltwright {
namespace {

std::vector<Flaw> *flawsOf(Job &job, const SheetOf &sheet) {
    for (Cloth &cloth : job.cloths) {
        if (cloth.id != sheet.cloth) continue;
        if (!sheet.on) return cloth.bolt ? &cloth.bolt->flaws : nullptr;
        for (Remnant &remnant : cloth.remnants)
            if (remnant.id == *sheet.on) return &remnant.flaws;
    }
    return nullptr;
}

bool isCopyOf(const Cut &a, const Cut &b) { return a.panel == b.panel && a.copy == b.copy; }

/// A layout without the piece that went wrong.
Layout withoutPiece(const Job &job, Layout layout, int cut) {
    const Cut wrong = layout.cuts[std::size_t(cut)];
    const bool joinedToCut = std::any_of(layout.cuts.begin(), layout.cuts.end(), [&](const Cut &other) {
        return isCopyOf(other, wrong) && other.piece != wrong.piece && other.state == CutState::Cut;
    });
    if (joinedToCut) return withCutState(std::move(layout), cut, CutState::Planned);
    std::erase_if(layout.cuts, [&](const Cut &other) { return isCopyOf(other, wrong); });
    std::erase_if(layout.conceded, [&](const Concession &c) { return c.panel == wrong.panel && c.copy == wrong.copy; });
    return withFigures(job, std::move(layout));
}

} // namespace

bool mayMove(const Cut &cut) { return cut.state == CutState::Planned; }

std::vector<int> cutsOnFlaws(const Job &job, const Layout &layout) {
    const auto laid = layAll(job, layout);
    std::vector<int> out;
    for (int i = 0; i < int(layout.cuts.size()); ++i) {
        if (layout.cuts[std::size_t(i)].state == CutState::Cut || !laid[std::size_t(i)].panel) continue;
        const auto broken = breachesOf(job, layout, laid, i);
        if (std::any_of(broken.begin(), broken.end(), [](const Breach &b) { return b.kind == Breach::Kind::Flaw; }))
            out.push_back(i);
    }
    return out;
}

Job withFlawFound(Job job, const SheetOf &sheet, Flaw flaw) {
    std::vector<Flaw> *flaws = flawsOf(job, sheet);
    if (!flaws) return job;
    flaws->push_back(std::move(flaw));
    for (Layout &layout : job.layouts)
        for (int cut : cutsOnFlaws(job, layout)) layout.cuts[std::size_t(cut)].state = CutState::Planned;
    return job;
}

std::vector<Layout> withCutsMarked(const Job &job, int layout, const std::vector<int> &cuts, CutState state) {
    std::vector<Layout> after = job.layouts;
    const Layout &own = job.layouts[std::size_t(layout)];
    for (int index : cuts) {
        const Cut &marked = own.cuts[std::size_t(index)];
        for (std::size_t i = 0; i < after.size(); ++i)
            for (std::size_t k = 0; k < after[i].cuts.size(); ++k) {
                Cut &cut = after[i].cuts[k];
                const Layout &before = job.layouts[i];
                const bool here = int(i) == layout && int(k) == index;
                const bool elsewhere = isCopyOf(cut, marked) && cut.piece == marked.piece &&
                                       (state == CutState::Cut ? isSameCut(job, own, marked, before, before.cuts[k])
                                                               : cut.state == CutState::Cut);
                if (here || elsewhere) cut.state = state;
            }
    }
    return after;
}

Job withCutGoneWrong(const Job &job, int layout, int cut) {
    const Layout &laid = job.layouts[std::size_t(layout)];
    const Cut &wrong = laid.cuts[std::size_t(cut)];
    const Panel *panel = job.panel(wrong.panel);
    if (!panel) return job;
    Flaw spoiled;
    spoiled.outline = outlineOnCloth(job, laid, wrong);
    spoiled.note = phrase("cut wrong: %1", {panel->mark.empty() ? panel->id : panel->mark});
    Job after = job;
    for (Layout &other : after.layouts)
        for (Cut &piece : other.cuts)
            if (isCopyOf(piece, wrong) && piece.piece == wrong.piece && piece.state == CutState::Cut)
                piece.state = CutState::Planned;
    after.layouts[std::size_t(layout)] = withoutPiece(job, laid, cut);
    return withFlawFound(std::move(after), sheetOf(job, wrong), std::move(spoiled));
}

} // namespace boltwright
