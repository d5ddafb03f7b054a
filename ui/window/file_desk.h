#pragma once

#include "ui/document/autosave.h"
#include "ui/settings/preferences.h"
#include "ui/window/notice_bar.h"

#include <QFileSystemWatcher>
#include <QObject>

namespace boltwright::ui {

/// Opening, saving, recovering, and the question about unsaved changes.
class FileDesk : public QObject {
    Q_OBJECT
public:
    FileDesk(JobDocument &document, Preferences &preferences, NoticeBar &notice, QWidget *window);

    bool openFile(const QString &fileName);   ///< after the question, where there is one to ask
    bool openSample(const QString &resource); ///< an unsaved job of its own: the sample stays as it is
    bool openAsking();
    bool save();
    bool saveAs();
    bool begin(); ///< a new job; false where what is open may not go
    /// True: what is open may go.
    bool mayLeave();
    /// Unsaved work of a job without a file that a crash left behind is offered.
    void offerLeftBehind();

Q_SIGNALS:
    void opened(); ///< also for a new job and a sample
    void filesUsedChanged();

private:
    bool saveTo(const QString &fileName);
    void offerCopyOf(const QString &fileName, const QString &copy);
    void watch();
    void fileTouched();

    JobDocument &m_document;
    Preferences &m_preferences;
    NoticeBar &m_notice;
    QWidget *m_window;
    Autosave m_autosave;
    QFileSystemWatcher m_watcher;
};

} // namespace boltwright::ui
