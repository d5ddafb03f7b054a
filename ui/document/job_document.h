#pragma once

#include "core/base/result.h"
#include "core/edit/layout_edit.h"
#include "core/job/job.h"
#include "core/rules/settle.h"

#include <QObject>
#include <QString>
#include <QStringList>
#include <QUndoStack>

#include <optional>
#include <vector>

namespace boltwright::ui {

/// What became different, so that everybody who listens asks once and only for what concerns them.
enum class Change {
    Card = 1, ///< title, client, unit, gap
    Cloths = 2,
    Panels = 4,   ///< panels and the joins between them
    Layout = 8,   ///< the layout that is laid
    Preview = 16, ///< what is shown in its place for the moment
    Selection = 32,
    File = 64,    ///< name, or whether it is saved
    NewJob = 128, ///< another job altogether
    Trimmings = 256,
};
Q_DECLARE_FLAGS(Changes, Change)
Q_DECLARE_OPERATORS_FOR_FLAGS(Changes)

/// One cut, by name: stays what it is when others come and go.
struct CutName {
    std::string panel;
    int copy = 1, piece = 1;
    bool operator==(const CutName &) const = default;
};

CutName nameOf(const Cut &cut);
/// The cut of that name in the layout; -1: none.
int indexOf(const Layout &layout, const CutName &name);

/// What is shown in place of the layout for the moment.
struct Preview {
    Layout layout;
    int cut = -1;               ///< the cut in the hand; -1: the whole layout is new, as while planning
    Settled settled;            ///< why that cut lies where it does, and what it breaks
    std::vector<int> with = {}; ///< others in the hand with it

    bool holds(int other) const {
        for (int held : with)
            if (held == other) return true;
        return other >= 0 && other == cut;
    }
};

/// Owns the job, its history and its file name; says what changed. Everything that changes the job goes through here
/// and can be undone. What is *shown* is the layout, or a preview in its place while something is dragged or planned;
/// dropping the preview leaves no trace.
class JobDocument : public QObject {
    Q_OBJECT
public:
    explicit JobDocument(QObject *parent = nullptr);

    const Job &job() const { return m_job; }
    const Layout &layout() const { return m_preview ? m_preview->layout : laidLayout(); } ///< what is shown
    const Layout &laidLayout() const; ///< without the preview; an empty one while the job has none
    int layoutIndex() const { return m_layoutIndex; }
    const std::optional<Preview> &preview() const { return m_preview; }
    /// Counts every change of the job; what was worked out for an earlier number is out of date.
    quint64 revision() const { return m_revision; }
    QUndoStack *history() { return &m_history; }

    // The file. Names are absolute; empty: not saved yet.
    QString fileName() const { return m_fileName; }
    QString displayName() const;
    /// The job as it is printed: under the name of its file, or of the piece, where its card has none.
    Job jobForPaper() const;
    bool isUnsaved() const { return !m_history.isClean() || m_recovered; }
    void startWith(Job job);
    Result<void> open(const QString &fileName);
    Result<void> save();
    Result<void> saveAs(const QString &fileName);
    Job jobToWrite() const; ///< with a mark at the layout that is laid
    /// Takes a job that a crash left behind: it counts as unsaved under `fileName` (empty: never saved).
    void recover(Job job, const QString &fileName);
    /// The file's bytes differ from what was last read or written here.
    bool fileChangedOutside() const;

    // Edits. Neighbours with the same non-empty `mergeKey` become one step of the history, and none at all when the
    // last leads back to where the first began.
    void changeLayout(Layout layout, const QString &text, const QString &mergeKey = {});
    /// For panels, cloths, card: the layouts follow (see core/edit/job_edit.h). Refused, with the reason in the trade's
    /// words, where the outcome would be no job that a file can hold.
    Result<void> changeJob(Job job, const QString &text, const QString &mergeKey = {});

    /// Several layouts change at once, such as by a mark that holds in all of them; there are as many as before.
    void changeLayouts(std::vector<Layout> layouts, const QString &text);

    // The job's layouts, of which one at a time is laid. To lay another is no change of the job and no step of the
    // history; keeping, naming and dropping are. Undoing a step brings back the layout that it was done to.
    void setLayoutIndex(int index);
    /// A copy of what is laid stands under that name from now on, just before it; work goes on on the one laid.
    void keepLayout(const QString &name);
    void renameLayout(int index, const QString &name);
    /// Where the one laid is dropped, its neighbour is laid.
    void dropLayout(int index);

    void showPreview(Preview preview);
    void dropPreview();

    const std::optional<CutName> &selection() const { return m_selection; }
    int selectedCut() const; ///< index in the layout shown; -1: none
    void select(const std::optional<CutName> &name);
    /// Several at once; the last one named is the one that `selection` speaks of.
    void selectSeveral(const std::vector<CutName> &names);
    /// Takes a cut along with those selected, or leaves it out again.
    void selectAlso(const CutName &name);
    std::vector<int> selectedCuts() const; ///< indices in the layout shown, the one of `selectedCut` first
    bool isSelected(int cut) const;
    /// The panel that is meant in lists, on the cloth or not; empty: none.
    const std::string &selectedPanel() const { return m_selectedPanel; }
    void selectPanel(const std::string &panel);

Q_SIGNALS:
    void changed(boltwright::ui::Changes changes);
    /// A change of panels left matches without an edge, a panel or a copy of it; in words. Undoing brings them back.
    void matchesDropped(const QStringList &matches);

private:
    friend class ChangeLayout;
    friend class ChangeJob;
    friend class ChangeLayouts;
    Layout exchangeLayout(int index, Layout layout);
    Job exchangeJob(Job job);
    std::vector<Layout> exchangeLayouts(std::vector<Layout> layouts, int index);
    void layAnother(int index);
    bool hasLayout(int index) const { return index >= 0 && index < int(m_job.layouts.size()); }
    void adopt(Job job, const QString &fileName);
    void rememberFile();

    Job m_job;
    Layout m_noLayout;
    int m_layoutIndex = 0;
    std::optional<Preview> m_preview;
    QUndoStack m_history;
    QString m_fileName;
    QByteArray m_fileBytes; ///< digest of the file as last read or written
    bool m_recovered = false;
    std::optional<CutName> m_selection;
    std::vector<CutName> m_alsoSelected; ///< without `m_selection`
    std::string m_selectedPanel;
    quint64 m_revision = 0;
};

} // namespace boltwright::ui
