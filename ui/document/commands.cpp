#include "ui/document/commands.h"

namespace boltwright::ui {

ChangeLayout::ChangeLayout(JobDocument &document, int index, Layout layout, const QString &text,
                           const QString &mergeKey)
    : ExchangeCommand(document, text, mergeKey), m_index(index), m_layout(std::move(layout)) {}

void ChangeLayout::redo() { m_layout = m_document.exchangeLayout(m_index, std::move(m_layout)); }

bool ChangeLayout::mergeWith(const QUndoCommand *next) {
    const auto *other = dynamic_cast<const ChangeLayout *>(next);
    if (!other || other->m_mergeKey != m_mergeKey || other->m_index != m_index) return false;
    // The first keeps where it all began; where it ended stands in the document.
    setObsolete(m_layout == m_document.job().layouts[std::size_t(m_index)]);
    return true;
}

ChangeLayouts::ChangeLayouts(JobDocument &document, std::vector<Layout> layouts, int index, const QString &text)
    : ExchangeCommand(document, text, {}), m_layouts(std::move(layouts)), m_index(index) {}

void ChangeLayouts::redo() {
    const int before = m_document.layoutIndex();
    m_layouts = m_document.exchangeLayouts(std::move(m_layouts), m_index);
    m_index = before;
}

ChangeJob::ChangeJob(JobDocument &document, Job job, const QString &text, const QString &mergeKey)
    : ExchangeCommand(document, text, mergeKey), m_job(std::move(job)) {}

void ChangeJob::redo() { m_job = m_document.exchangeJob(std::move(m_job)); }

bool ChangeJob::mergeWith(const QUndoCommand *next) {
    const auto *other = dynamic_cast<const ChangeJob *>(next);
    if (!other || other->m_mergeKey != m_mergeKey) return false;
    setObsolete(m_job == m_document.job());
    return true;
}

} // namespace boltwright::ui
