#include "ui/window/layout_deeds.h"

#include "core/edit/moves.h"
#include "core/figures/figures.h"
#include "core/rules/settle.h"
#include "core/table/at_table.h"
#include "ui/text/words.h"

#include <algorithm>
#include <numeric>

namespace boltwright::ui {

LayoutDeeds::LayoutDeeds(JobDocument &document, QObject *parent) : QObject(parent), m_document(document) {}

QString LayoutDeeds::markOf(const std::string &panel) const {
    const Panel *p = m_document.job().panel(panel);
    return p ? fromCore(p->mark) : QString();
}

void LayoutDeeds::turn() {
    const int cut = m_document.selectedCut();
    if (cut < 0) return;
    const Layout &layout = m_document.laidLayout();
    const Cut &own = layout.cuts[std::size_t(cut)];
    if (!mayMove(own)) {
        Q_EMIT refused(own.state == CutState::Cut ? tr("%1 is already cut.").arg(markOf(own.panel))
                                                  : tr("It stays where it is: unlock it first."));
        return;
    }
    const auto turns = turnsByHand(m_document.job(), own);
    const auto now = std::find(turns.begin(), turns.end(), own.turn);
    if (turns.empty() || (turns.size() == 1 && now != turns.end())) {
        Q_EMIT refused(
            tr("%1 may lie only this way: nap, pattern or its own wish asks for it.").arg(markOf(own.panel)));
        return;
    }
    const Turn next = now == turns.end() || now + 1 == turns.end() ? turns.front() : *(now + 1);
    m_document.changeLayout(withCutTurned(m_document.job(), layout, cut, next), tr("Turn %1").arg(markOf(own.panel)));
}

QString LayoutDeeds::called(const std::vector<int> &cuts) const {
    if (cuts.size() != 1) return tr("%n panels", nullptr, int(cuts.size()));
    return markOf(m_document.laidLayout().cuts[std::size_t(cuts.front())].panel);
}

void LayoutDeeds::setState(const std::vector<int> &cuts, CutState state, const QString &text) {
    Layout layout = m_document.laidLayout();
    for (int cut : cuts) layout = withCutState(std::move(layout), cut, state);
    m_document.changeLayout(std::move(layout), text);
}

void LayoutDeeds::toggleLock() {
    std::vector<int> cuts = m_document.selectedCuts();
    if (cuts.empty()) return;
    const Layout &layout = m_document.laidLayout();
    const QString name = called(cuts);
    std::erase_if(cuts, [&](int cut) { return layout.cuts[std::size_t(cut)].state == CutState::Cut; });
    if (cuts.empty()) {
        Q_EMIT refused(tr("%1: already cut.").arg(name));
        return;
    }
    const bool locked = layout.cuts[std::size_t(cuts.front())].state == CutState::Locked;
    setState(cuts, locked ? CutState::Planned : CutState::Locked,
             locked ? tr("Unlock %1").arg(called(cuts)) : tr("Lock %1").arg(called(cuts)));
}

void LayoutDeeds::toggleCut() {
    const auto cuts = m_document.selectedCuts();
    if (cuts.empty()) return;
    const bool isCut = m_document.laidLayout().cuts[std::size_t(cuts.front())].state == CutState::Cut;
    // What is off the cloth is off it in every layout that was kept.
    m_document.changeLayouts(
        withCutsMarked(m_document.job(), m_document.layoutIndex(), cuts, isCut ? CutState::Planned : CutState::Cut),
        isCut ? tr("%1 not cut yet").arg(called(cuts)) : tr("%1 cut").arg(called(cuts)));
}

/// One step of the history: the layout on the table is kept, then the job changes.
void LayoutDeeds::changeAtTable(const QString &text, const std::function<Job()> &after) {
    if (m_document.job().layouts.empty()) return;
    QUndoStack *history = m_document.history();
    history->beginMacro(text);
    m_document.keepLayout(tr("Before: %1").arg(text));
    m_document.changeJob(after(), text);
    history->endMacro();
    Q_EMIT hasToBePlannedAgain(m_document.layoutIndex() - 1);
}

void LayoutDeeds::cutWentWrong() {
    const int cut = m_document.selectedCut();
    if (cut < 0) return;
    const QString mark = markOf(m_document.laidLayout().cuts[std::size_t(cut)].panel);
    changeAtTable(tr("%1 cut wrong").arg(mark),
                  [&] { return withCutGoneWrong(m_document.job(), m_document.layoutIndex(), cut); });
}

void LayoutDeeds::enterFlaw(const SheetOf &sheet, const Flaw &flaw) {
    changeAtTable(tr("flaw found"), [&] { return withFlawFound(m_document.job(), sheet, flaw); });
}

void LayoutDeeds::putAside() {
    std::vector<int> cuts = m_document.selectedCuts();
    if (cuts.empty()) return;
    const Layout &layout = m_document.laidLayout();
    const std::string panel = layout.cuts[std::size_t(cuts.front())].panel;
    const QString name = called(cuts);
    std::erase_if(cuts, [&](int cut) { return layout.cuts[std::size_t(cut)].state == CutState::Cut; });
    if (cuts.empty()) {
        Q_EMIT refused(tr("%1: already cut.").arg(name));
        return;
    }
    m_document.changeLayout(withCutsPutAside(m_document.job(), layout, cuts), tr("Put %1 aside").arg(called(cuts)));
    m_document.selectPanel({});
    m_document.selectPanel(panel);
}

void LayoutDeeds::take(const Moved &moved, const QString &text) {
    if (moved.layout)
        m_document.changeLayout(*moved.layout, text);
    else
        Q_EMIT refused(withFractions(fromCore(moved.why)));
}

void LayoutDeeds::changePlaces() {
    const auto cuts = m_document.selectedCuts();
    if (cuts.size() != 2) {
        Q_EMIT refused(tr("Select the two panels that change places: the second one with Shift."));
        return;
    }
    const Layout &layout = m_document.laidLayout();
    const auto mark = [&](int cut) { return markOf(layout.cuts[std::size_t(cut)].panel); };
    take(withCutsSwapped(m_document.job(), layout, cuts[0], cuts[1]),
         tr("%1 and %2 change places").arg(mark(cuts[1]), mark(cuts[0])));
}

void LayoutDeeds::layHeadToFoot() {
    const auto cuts = m_document.selectedCuts();
    if (cuts.empty()) return;
    const Layout &layout = m_document.laidLayout();
    const int cut = cuts.front();
    const auto pair = cuts.size() == 2 ? std::optional(cuts[1]) : pairOf(m_document.job(), layout, cut);
    const QString mark = markOf(layout.cuts[std::size_t(cut)].panel);
    if (!pair) {
        Q_EMIT refused(tr("%1 has no second copy here: select two panels to lay one against the other.").arg(mark));
        return;
    }
    take(withHeadToFoot(m_document.job(), layout, cut, *pair), tr("Lay %1 head to foot").arg(mark));
}

void LayoutDeeds::pushToTheCutEnd() {
    const Layout &layout = m_document.laidLayout();
    std::vector<int> cuts = m_document.selectedCuts();
    if (cuts.size() < 2) {
        cuts.resize(layout.cuts.size());
        std::iota(cuts.begin(), cuts.end(), 0);
    }
    Layout pushed = withCutsPushed(m_document.job(), layout, cuts);
    if (pushed == layout) {
        Q_EMIT refused(tr("Everything lies as near to the cut end as it may."));
        return;
    }
    m_document.changeLayout(std::move(pushed), tr("Push towards the cut end"));
}

void LayoutDeeds::layDown() {
    const Job &job = m_document.job();
    const auto aside = copiesPutAside(job, m_document.laidLayout());
    if (aside.empty()) {
        Q_EMIT refused(tr("Every panel lies on the cloth."));
        return;
    }
    auto copy = std::find_if(aside.begin(), aside.end(),
                             [&](const CopyOf &c) { return c.panel == m_document.selectedPanel(); });
    if (copy == aside.end()) copy = aside.begin();
    const Cloth &cloth = job.clothOf(*job.panel(copy->panel));
    std::vector<SheetOf> sheets;
    if (cloth.bolt) sheets.push_back({cloth.id, {}});
    for (const Remnant &remnant : cloth.remnants) sheets.push_back({cloth.id, remnant.id});
    // The first sheet on which it finds a place to rest; none: on the first, where it says why not.
    std::optional<Layout> best;
    for (const SheetOf &sheet : sheets) {
        Layout layout = withCopyLaid(job, m_document.laidLayout(), *copy, sheet, {});
        const int cut = int(layout.cuts.size()) - 1;
        const Settled settled = rest(job, layout, cut, {}, Length::ticks(ticksIn(Unit::Inch))); // any reach will do
        layout.cuts.back().x = settled.corner.x;
        layout.cuts.back().y = settled.corner.y;
        if (settled.right || !best) best = layout;
        if (settled.right) break;
    }
    if (!best) return;
    const CutName name = nameOf(best->cuts.back());
    m_document.changeLayout(withFigures(job, std::move(*best)), tr("Lay %1").arg(markOf(copy->panel)));
    m_document.select(name);
}

void LayoutDeeds::selectNeighbour(int step) {
    const auto &cuts = m_document.layout().cuts;
    if (cuts.empty()) return;
    const int count = int(cuts.size()), now = m_document.selectedCut();
    const int to = now < 0 ? (step > 0 ? 0 : count - 1) : (now + step + count) % count;
    m_document.select(nameOf(cuts[std::size_t(to)]));
}

void LayoutDeeds::takeAlongNeighbour(int step) {
    const auto &cuts = m_document.layout().cuts;
    const int now = m_document.selectedCut();
    if (now < 0) return selectNeighbour(step);
    // Over those already taken along, so that the same key goes on.
    const int count = int(cuts.size());
    for (int i = 1; i < count; ++i) {
        const int to = (now + step * i % count + count) % count;
        if (m_document.isSelected(to)) continue;
        m_document.selectAlso(nameOf(cuts[std::size_t(to)]));
        return;
    }
}

void LayoutDeeds::selectEverything() {
    std::vector<CutName> names;
    for (const Cut &cut : m_document.layout().cuts) names.push_back(nameOf(cut));
    m_document.selectSeveral(names);
}

} // namespace boltwright::ui
