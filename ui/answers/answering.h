#pragma once

#include "ui/document/job_document.h"

#include <QObject>

#include <atomic>
#include <functional>
#include <memory>

namespace boltwright::ui {

/// Works a long question out beside the window. The work has its own copy of the job and hands back what to do with
/// its answer on the window's thread; when it was stopped, or the job has moved on, nothing is done.
class Answering : public QObject {
    Q_OBJECT
public:
    using Stop = std::function<bool()>;
    using Report = std::function<void(double share)>; ///< 0 to 1, from any thread
    /// Runs away from the window's thread; the call it returns runs on it.
    using Work = std::function<std::function<void()>(const Job &job, const Layout &laid, const Stop &stop,
                                                     const Report &report)>;

    explicit Answering(JobDocument &document, QObject *parent = nullptr);
    ~Answering() override;

    bool isRunning() const { return m_run != nullptr; }
    /// Counts the questions. On the thread that works one out, it is the number of that one.
    int number() const { return m_number; }
    void start(Work work);
    /// Asks the work to end with what it has; its answer still comes.
    void finishEarly();
    /// Lets go of it; no answer comes.
    void drop();

Q_SIGNALS:
    void started();
    void progressed(double share);
    void ended();

private:
    struct Run;
    JobDocument &m_document;
    std::shared_ptr<Run> m_run;
    std::atomic<int> m_number = 0;
    struct Threads;
    std::unique_ptr<Threads> m_threads;
};

} // namespace boltwright::ui
