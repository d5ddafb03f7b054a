#include "ui/window/layout_deeds.h"

#include "core/edit/layout_edit.h"
#include "core/figures/figures.h"
#include "core/rules/settle.h"
#include "ui/text/words.h"

#include <algorithm>

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
    if (own.state != CutState::Planned) {
        Q_EMIT refused(tr("It stays where it is: unlock it first."));
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

void LayoutDeeds::setState(CutState state, const QString &text) {
    const int cut = m_document.selectedCut();
    if (cut < 0) return;
    m_document.changeLayout(withCutState(m_document.laidLayout(), cut, state), text);
}

void LayoutDeeds::toggleLock() {
    const int cut = m_document.selectedCut();
    if (cut < 0) return;
    const Cut &own = m_document.laidLayout().cuts[std::size_t(cut)];
    const bool locked = own.state == CutState::Locked;
    setState(locked ? CutState::Planned : CutState::Locked,
             locked ? tr("Unlock %1").arg(markOf(own.panel)) : tr("Lock %1").arg(markOf(own.panel)));
}

void LayoutDeeds::toggleCut() {
    const int cut = m_document.selectedCut();
    if (cut < 0) return;
    const Cut &own = m_document.laidLayout().cuts[std::size_t(cut)];
    const bool isCut = own.state == CutState::Cut;
    setState(isCut ? CutState::Planned : CutState::Cut,
             isCut ? tr("%1 is not cut yet").arg(markOf(own.panel)) : tr("%1 is cut").arg(markOf(own.panel)));
}

void LayoutDeeds::putAside() {
    const int cut = m_document.selectedCut();
    if (cut < 0) return;
    const Cut own = m_document.laidLayout().cuts[std::size_t(cut)];
    if (own.state == CutState::Cut) {
        Q_EMIT refused(tr("%1 is already cut.").arg(markOf(own.panel)));
        return;
    }
    m_document.changeLayout(withCopyPutAside(m_document.job(), m_document.laidLayout(), {own.panel, own.copy}),
                            tr("Put %1 aside").arg(markOf(own.panel)));
    m_document.selectPanel({});
    m_document.selectPanel(own.panel);
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

} // namespace boltwright::ui
