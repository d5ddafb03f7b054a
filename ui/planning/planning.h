#pragma once

#include "ui/document/job_document.h"

#include <QObject>

#include <memory>

namespace boltwright {
struct Plan;
struct PlanOptions;
} // namespace boltwright

namespace boltwright::ui {

/// Plans beside the window. The planner has a copy of the job; what it finds is shown as it comes, and becomes one step
/// of the history when it ends or is stopped. When the job moves on in the meantime, the results are dropped.
class Planning : public QObject {
    Q_OBJECT
public:
    explicit Planning(JobDocument &document, QObject *parent = nullptr);
    ~Planning() override;

    bool isRunning() const { return m_run != nullptr; }
    void start(const PlanOptions &options) { begin(options, false); }
    /// What is left once cutting has begun: pieces stay where they lie, where that takes no more cloth.
    void startAgain(const PlanOptions &options) { begin(options, true); }
    /// Ends with what has been found so far; at once.
    void stop();

Q_SIGNALS:
    void started();
    void progressed(double share);
    /// `sentence` says what came of it.
    void finished(const QString &sentence, bool fits);
    /// Some seconds after it did not fit: how much more of the cloth there is would do, where that was found.
    void moreWouldDo(const QString &sentence);

private:
    struct Run;
    void begin(const PlanOptions &options, bool staying);
    void found(const std::shared_ptr<Run> &run, const Layout &layout);
    void ended(const std::shared_ptr<Run> &run, const Plan &plan);
    void keep(const Layout &layout);
    void drop();
    void dropBeyond();

    JobDocument &m_document;
    std::shared_ptr<Run> m_run;    ///< null: none
    std::shared_ptr<Run> m_beyond; ///< one that did not fit, while it looks how much more would do; null: none
    struct Threads;
    std::unique_ptr<Threads> m_threads;
};

} // namespace boltwright::ui
