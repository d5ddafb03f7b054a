#include "ui/answers/answering.h"

#include <QMetaObject>

#include <atomic>
#include <thread>
#include <vector>

namespace boltwright::ui {

struct Answering::Run {
    Job job;
    Layout laid;
    std::atomic<bool> stopped = false;
    std::atomic<bool> dropped = false;
};

struct Answering::Threads {
    std::vector<std::thread> all;
    void join() {
        for (std::thread &thread : all) thread.join();
        all.clear();
    }
};

Answering::Answering(JobDocument &document, QObject *parent)
    : QObject(parent), m_document(document), m_threads(std::make_unique<Threads>()) {
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        constexpr Changes ofTheQuestion = Change::Card | Change::Cloths | Change::Panels | Change::NewJob;
        if (changes & ofTheQuestion) drop();
    });
}

Answering::~Answering() {
    if (m_run) m_run->stopped = m_run->dropped = true;
    m_threads->join();
}

void Answering::start(Work work) {
    if (m_run) return;
    m_threads->join();
    ++m_number;
    auto run = std::make_shared<Run>();
    run->job = m_document.job();
    run->laid = m_document.laidLayout();
    m_run = run;
    m_threads->all.emplace_back([this, run, work = std::move(work)] {
        const auto report = [this, run](double share) {
            QMetaObject::invokeMethod(
                this,
                [this, run, share] {
                    if (m_run == run) Q_EMIT progressed(share);
                },
                Qt::QueuedConnection);
        };
        auto answer = work(
            run->job, run->laid, [run] { return run->stopped.load(); }, report);
        if (run->dropped) return;
        QMetaObject::invokeMethod(
            this,
            [this, run, answer = std::move(answer)] {
                if (m_run != run) return;
                m_run.reset();
                if (answer) answer();
                Q_EMIT ended();
            },
            Qt::QueuedConnection);
    });
    Q_EMIT started();
}

void Answering::finishEarly() {
    if (m_run) m_run->stopped = true;
}

void Answering::drop() {
    if (!m_run) return;
    m_run->stopped = m_run->dropped = true;
    m_run.reset();
    Q_EMIT ended();
}

} // namespace boltwright::ui
