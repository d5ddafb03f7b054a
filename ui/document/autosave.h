#pragma once

#include "ui/document/job_document.h"

#include <QObject>
#include <QTimer>

namespace boltwright::ui {

/// Keeps a copy of unsaved work beside the job's file (or in the program's own folder while it has none, or where the
/// folder cannot be written to). The copy goes when the work is saved or given up on purpose; after a crash it is
/// still there and can be taken up again.
class Autosave : public QObject {
    Q_OBJECT
public:
    Autosave(JobDocument &document, QObject *parent = nullptr);
    ~Autosave() override;

    /// Where the copy of a file lies; empty name: of a job without a file.
    static QString copyOf(const QString &fileName);
    static QString fallbackCopyOf(const QString &fileName);
    /// The copy that was left behind, where there is one; empty: none.
    static QString leftBehind(const QString &fileName);
    static void discard(const QString &fileName);

    void writeNow();
    void setInterval(int milliseconds) { m_soon.setInterval(milliseconds); }

Q_SIGNALS:
    void failed(const QString &sentence);

private:
    void follow(Changes changes);

    JobDocument &m_document;
    QTimer m_soon;
    QString m_writtenFor; ///< the file name under which a copy of ours lies
    bool m_written = false;
};

} // namespace boltwright::ui
