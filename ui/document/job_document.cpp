#include "ui/document/job_document.h"

#include "core/edit/job_edit.h"
#include "core/edit/match_edit.h"
#include "core/files/job_file.h"
#include "core/job/fault_words.h"
#include "core/paper/words.h"
#include "ui/document/commands.h"
#include "ui/text/words.h"

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>

#include <algorithm>
#include <utility>

namespace boltwright::ui {

CutName nameOf(const Cut &cut) { return {cut.panel, cut.copy, cut.piece}; }

int indexOf(const Layout &layout, const CutName &name) {
    for (std::size_t i = 0; i < layout.cuts.size(); ++i)
        if (nameOf(layout.cuts[i]) == name) return int(i);
    return -1;
}

namespace {

std::filesystem::path pathOf(const QString &fileName) {
    return std::filesystem::path(QFile::encodeName(fileName).toStdString());
}

QByteArray digestOf(const QString &fileName) {
    QFile file(fileName);
    if (!file.open(QIODevice::ReadOnly)) return {};
    return QCryptographicHash::hash(file.readAll(), QCryptographicHash::Sha256);
}

Changes differences(const Job &a, const Job &b) {
    Changes changes;
    if (!(a.card == b.card) || a.unit != b.unit || a.gap != b.gap) changes |= Change::Card;
    if (!(a.cloths == b.cloths)) changes |= Change::Cloths;
    if (!(a.panels == b.panels) || !(a.flows == b.flows)) changes |= Change::Panels;
    if (!(a.trimmings == b.trimmings)) changes |= Change::Trimmings;
    if (!(a.layouts == b.layouts)) changes |= Change::Layout;
    return changes;
}

} // namespace

JobDocument::JobDocument(QObject *parent) : QObject(parent), m_job(newJob(Unit::Inch)), m_history(this) {
    connect(&m_history, &QUndoStack::cleanChanged, this, [this] { Q_EMIT changed(Change::File); });
}

const Layout &JobDocument::laidLayout() const {
    if (m_layoutIndex < 0 || m_layoutIndex >= int(m_job.layouts.size())) return m_noLayout;
    return m_job.layouts[std::size_t(m_layoutIndex)];
}

QString JobDocument::displayName() const {
    if (!m_job.card.title.empty()) return fromCore(m_job.card.title);
    if (!m_fileName.isEmpty()) return QFileInfo(m_fileName).completeBaseName();
    return tr("A new job");
}

Job JobDocument::jobForPaper() const { return namedForPaper(m_job, toCore(QFileInfo(m_fileName).completeBaseName())); }

void JobDocument::adopt(Job job, const QString &fileName) {
    m_job = std::move(job);
    m_fileName = fileName;
    m_layoutIndex = std::max(0, int(m_job.layouts.size()) - 1);
    for (std::size_t i = 0; i < m_job.layouts.size(); ++i)
        if (std::exchange(m_job.layouts[i].onTable, false)) m_layoutIndex = int(i);
    m_preview.reset();
    m_selection.reset();
    m_alsoSelected.clear();
    m_selectedPanel.clear();
    m_recovered = false;
    ++m_revision;
    m_history.clear();
    m_history.setClean();
    rememberFile();
    Q_EMIT changed(Change::NewJob | Change::Card | Change::Cloths | Change::Panels | Change::Layout |
                   Change::Selection | Change::File);
}

void JobDocument::startWith(Job job) { adopt(std::move(job), {}); }

Result<void> JobDocument::open(const QString &fileName) {
    const QString absolute = QFileInfo(fileName).absoluteFilePath();
    auto job = loadJob(pathOf(absolute));
    if (!job) return tl::unexpected<Fault>(job.error());
    adopt(std::move(*job), absolute);
    return {};
}

void JobDocument::recover(Job job, const QString &fileName) {
    adopt(std::move(job), fileName);
    m_recovered = true;
    Q_EMIT changed(Change::File);
}

Job JobDocument::jobToWrite() const {
    Job job = m_job;
    if (m_layoutIndex + 1 < int(job.layouts.size())) job.layouts[std::size_t(m_layoutIndex)].onTable = true;
    return job;
}

Result<void> JobDocument::save() { return saveAs(m_fileName); }

Result<void> JobDocument::saveAs(const QString &fileName) {
    const QString absolute = QFileInfo(fileName).absoluteFilePath();
    auto saved = saveJob(jobToWrite(), pathOf(absolute));
    if (!saved) return saved;
    m_fileName = absolute;
    m_recovered = false;
    rememberFile();
    m_history.setClean();
    Q_EMIT changed(Change::File);
    return {};
}

void JobDocument::rememberFile() { m_fileBytes = m_fileName.isEmpty() ? QByteArray() : digestOf(m_fileName); }

bool JobDocument::fileChangedOutside() const {
    return !m_fileName.isEmpty() && !m_fileBytes.isEmpty() && digestOf(m_fileName) != m_fileBytes;
}

void JobDocument::changeLayout(Layout layout, const QString &text, const QString &mergeKey) {
    m_preview.reset();
    if (m_job.layouts.empty()) {
        Job job = m_job;
        job.layouts.push_back(std::move(layout));
        m_history.push(new ChangeJob(*this, std::move(job), text, {}));
        return;
    }
    if (layout == laidLayout()) {
        Q_EMIT changed(Change::Preview);
        return;
    }
    m_history.push(new ChangeLayout(*this, m_layoutIndex, std::move(layout), text, mergeKey));
}

void JobDocument::changeLayouts(std::vector<Layout> layouts, const QString &text) {
    if (layouts.size() != m_job.layouts.size() || layouts == m_job.layouts) return;
    m_history.push(new ChangeLayouts(*this, std::move(layouts), m_layoutIndex, text));
}

Result<void> JobDocument::changeJob(Job job, const QString &text, const QString &mergeKey) {
    if (job == m_job) {
        dropPreview();
        return {};
    }
    QStringList dropped;
    for (const std::string &match : boltwright::matchesDropped(m_job, job)) dropped << withFractions(fromCore(match));
    job = withLayoutsFollowing(m_job, std::move(job));
    if (const auto faults = faultsInWords(job); !faults.empty()) return fault(faults.front());
    m_history.push(new ChangeJob(*this, std::move(job), text, mergeKey));
    if (!dropped.isEmpty()) Q_EMIT matchesDropped(dropped);
    return {};
}

Layout JobDocument::exchangeLayout(int index, Layout layout) {
    m_preview.reset();
    std::swap(m_job.layouts[std::size_t(index)], layout);
    m_layoutIndex = index; // a step that is taken back is seen to be
    ++m_revision;
    Q_EMIT changed(Change::Layout);
    return layout;
}

Job JobDocument::exchangeJob(Job job) {
    const bool shown = m_preview.has_value();
    m_preview.reset();
    std::swap(m_job, job);
    m_layoutIndex = std::clamp(m_layoutIndex, 0, std::max(0, int(m_job.layouts.size()) - 1));
    ++m_revision;
    Changes changes = differences(job, m_job);
    if (shown) changes |= Change::Preview;
    if (!m_selectedPanel.empty() && !m_job.panel(m_selectedPanel)) {
        m_selectedPanel.clear();
        m_selection.reset();
        m_alsoSelected.clear();
        changes |= Change::Selection;
    }
    Q_EMIT changed(changes);
    return job;
}

std::vector<Layout> JobDocument::exchangeLayouts(std::vector<Layout> layouts, int index) {
    m_preview.reset();
    std::swap(m_job.layouts, layouts);
    layAnother(index);
    return layouts;
}

void JobDocument::layAnother(int index) {
    m_preview.reset();
    m_layoutIndex = std::clamp(index, 0, std::max(0, int(m_job.layouts.size()) - 1));
    ++m_revision; // what was worked out for the layout before is out of date
    Q_EMIT changed(Change::Layout);
}

void JobDocument::setLayoutIndex(int index) {
    if (hasLayout(index) && index != m_layoutIndex) layAnother(index);
}

void JobDocument::keepLayout(const QString &name) {
    if (!hasLayout(m_layoutIndex)) return;
    std::vector<Layout> layouts = m_job.layouts;
    Layout copy = laidLayout();
    copy.name = toCore(name);
    layouts.insert(layouts.begin() + m_layoutIndex, std::move(copy));
    m_history.push(new ChangeLayouts(*this, std::move(layouts), m_layoutIndex + 1, tr("Keep a copy")));
}

void JobDocument::renameLayout(int index, const QString &name) {
    if (!hasLayout(index) || m_job.layouts[std::size_t(index)].name == toCore(name)) return;
    std::vector<Layout> layouts = m_job.layouts;
    layouts[std::size_t(index)].name = toCore(name);
    m_history.push(new ChangeLayouts(*this, std::move(layouts), m_layoutIndex, tr("Name a layout")));
}

void JobDocument::dropLayout(int index) {
    if (!hasLayout(index)) return;
    std::vector<Layout> layouts = m_job.layouts;
    layouts.erase(layouts.begin() + index);
    m_history.push(new ChangeLayouts(*this, std::move(layouts), m_layoutIndex - (index < m_layoutIndex ? 1 : 0),
                                     tr("Drop a layout")));
}

void JobDocument::showPreview(Preview preview) {
    m_preview = std::move(preview);
    Q_EMIT changed(Change::Preview);
}

void JobDocument::dropPreview() {
    if (!m_preview) return;
    m_preview.reset();
    Q_EMIT changed(Change::Preview);
}

int JobDocument::selectedCut() const { return m_selection ? indexOf(layout(), *m_selection) : -1; }

void JobDocument::select(const std::optional<CutName> &name) {
    if (name == m_selection && m_alsoSelected.empty() && (!name || name->panel == m_selectedPanel)) return;
    m_selection = name;
    m_alsoSelected.clear();
    m_selectedPanel = name ? name->panel : std::string();
    Q_EMIT changed(Change::Selection);
}

void JobDocument::selectSeveral(const std::vector<CutName> &names) {
    if (names.empty()) return select(std::nullopt);
    m_selection = names.back();
    m_selectedPanel = names.back().panel;
    m_alsoSelected.assign(names.begin(), names.end() - 1);
    std::erase(m_alsoSelected, *m_selection);
    Q_EMIT changed(Change::Selection);
}

void JobDocument::selectAlso(const CutName &name) {
    std::vector<CutName> names = m_alsoSelected;
    if (m_selection) names.push_back(*m_selection);
    if (std::erase(names, name) == 0) names.push_back(name);
    selectSeveral(names);
}

std::vector<int> JobDocument::selectedCuts() const {
    std::vector<int> cuts;
    if (const int first = selectedCut(); first >= 0) cuts.push_back(first);
    for (const CutName &name : m_alsoSelected)
        if (const int cut = indexOf(layout(), name); cut >= 0) cuts.push_back(cut);
    return cuts;
}

bool JobDocument::isSelected(int cut) const {
    const auto cuts = selectedCuts();
    return std::find(cuts.begin(), cuts.end(), cut) != cuts.end();
}

void JobDocument::selectPanel(const std::string &panel) {
    if (panel == m_selectedPanel) return;
    m_selectedPanel = panel;
    m_selection.reset();
    m_alsoSelected.clear();
    for (const Cut &cut : layout().cuts)
        if (cut.panel == panel) {
            m_selection = nameOf(cut);
            break;
        }
    Q_EMIT changed(Change::Selection);
}

} // namespace boltwright::ui
