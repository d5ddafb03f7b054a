#pragma once

#ifndef Q_MOC_RUN // which cannot read the standard headers behind these in C++20, and need not
#include "core/trimmings/reckoned.h"
#include "ui/document/job_document.h"

#include <memory>
#include <vector>
#endif

#include <QObject>
#include <QTimer>

namespace boltwright::ui {

/// What every trimming of the job needs and whether it is there, for the layout that is laid. Strips from scraps take a
/// moment, so all is reckoned beside the window's own thread; what belongs to a job that has moved on is dropped.
class TrimmingWatch : public QObject {
    Q_OBJECT
public:
    explicit TrimmingWatch(JobDocument &document, QObject *parent = nullptr);
    ~TrimmingWatch() override;

    /// One for each trimming of the job; empty while they are being reckoned.
    const std::vector<Reckoned> &figures() const { return m_figures; }
    bool isWaiting() const { return m_waiting; }

Q_SIGNALS:
    void changed();

private:
    void ask();

    JobDocument &m_document;
    std::vector<Reckoned> m_figures;
    bool m_waiting = false;
    QTimer m_soon;
    std::shared_ptr<bool> m_alive = std::make_shared<bool>(true);
};

} // namespace boltwright::ui
