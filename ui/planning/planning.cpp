#include "ui/planning/planning.h"

#include "core/planner/plan.h"
#include "core/table/plan_again.h"
#include "core/yardage/ask.h"
#include "ui/text/words.h"

#include <QMetaObject>
#include <QStringList>

#include <algorithm>
#include <atomic>
#include <thread>
#include <vector>

namespace boltwright::ui {

/// One call of the planner. Outlives the window's interest in it: a run that was stopped ends by itself.
struct Planning::Run {
    Job job;
    Layout from;
    PlanOptions options;
    quint64 revision = 0;
    std::atomic<bool> stopped = false;
    std::optional<Layout> best; ///< window's thread only
};

/// Those that were stopped are left to end by themselves and are waited for before the next begins.
struct Planning::Threads {
    std::vector<std::thread> all;
    void join() {
        for (std::thread &thread : all) thread.join();
        all.clear();
    }
};

Planning::Planning(JobDocument &document, QObject *parent)
    : QObject(parent), m_document(document), m_threads(std::make_unique<Threads>()) {
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        constexpr Changes ofTheJob = Change::Card | Change::Cloths | Change::Panels | Change::Layout | Change::NewJob;
        if (m_run && (changes & ofTheJob)) drop();
        if (changes & (ofTheJob & ~Changes(Change::Layout))) dropBeyond();
    });
}

Planning::~Planning() {
    if (m_run) m_run->stopped = true;
    dropBeyond();
    m_threads->join();
}

void Planning::dropBeyond() {
    if (m_beyond) m_beyond->stopped = true;
    m_beyond.reset();
}

namespace {

/// A short second search: whoever is told no wants to know at once how far off it is.
QString moreThatWouldDo(const Job &job, PlanOptions options) {
    if (options.seconds) options.seconds = std::clamp(*options.seconds, 1.0, 5.0);
    options.report = nullptr;
    QStringList said;
    std::string cloth;
    for (const ExtraLength &extra : extraLengths(job, options)) {
        // Of a cloth's remnants any one would do, and the first needs the least.
        if (extra.extra > Length{} && extra.cloth != cloth) said << withFractions(fromCore(extraInWords(job, extra)));
        cloth = extra.cloth;
    }
    return said.join(u' ');
}

} // namespace

void Planning::begin(const PlanOptions &options, bool staying) {
    if (m_run) return;
    dropBeyond();
    m_threads->join();
    auto run = std::make_shared<Run>();
    run->job = m_document.job();
    run->from = m_document.laidLayout();
    run->revision = m_document.revision();
    run->options = options;
    m_run = run;
    // Calls from the planner's thread are queued for this object and die with it.
    const auto queue = [this](auto call) { QMetaObject::invokeMethod(this, std::move(call), Qt::QueuedConnection); };
    run->options.from = run->from.cuts.empty() ? nullptr : &run->from;
    run->options.stop = [raw = run.get()] { return raw->stopped.load(); };
    run->options.report = [this, queue, weak = std::weak_ptr(run)](const PlanProgress &progress) {
        const auto still = weak.lock();
        if (!still || still->stopped) return;
        queue([this, still, share = progress.share] {
            if (m_run == still) Q_EMIT progressed(share);
        });
        if (progress.better) queue([this, still, layout = *progress.better] { found(still, layout); });
    };
    m_threads->all.emplace_back([this, queue, run, staying] {
        const Plan result = staying ? planAgain(run->job, run->options) : plan(run->job, run->options);
        if (!run->stopped) queue([this, run, result] { ended(run, result); });
        run->options.report = nullptr;
        if (staying || result.kind == planner::Outcome::Kind::Fits || run->stopped) return;
        const QString more = moreThatWouldDo(run->job, run->options);
        if (run->stopped || more.isEmpty()) return;
        queue([this, run, more] {
            if (m_beyond != run) return;
            m_beyond.reset();
            Q_EMIT moreWouldDo(more);
        });
    });
    Q_EMIT started();
}

void Planning::found(const std::shared_ptr<Run> &run, const Layout &layout) {
    if (m_run != run) return;
    run->best = layout;
    m_document.showPreview({layout, -1, {}});
}

void Planning::ended(const std::shared_ptr<Run> &run, const Plan &result) {
    if (m_run != run) return;
    m_run.reset();
    if (result.kind == planner::Outcome::Kind::Fits) {
        keep(result.layout);
        const bool onBolt = std::any_of(result.layout.cloths.begin(), result.layout.cloths.end(),
                                        [](const ClothUse &use) { return use.length.has_value(); });
        Q_EMIT finished(!onBolt         ? tr("Planned: everything fits.")
                        : result.proved ? tr("Planned: no layout takes less.")
                                        : tr("Planned: the shortest that was found."),
                        true);
        return;
    }
    m_beyond = run;
    m_document.dropPreview();
    QString why = withFractions(fromCore(result.reason));
    if (why.isEmpty()) {
        why = tr("No layout was found in the time given.");
    } else {
        why.front() = why.front().toUpper();
        if (!why.endsWith(u'.')) why += u'.';
    }
    Q_EMIT finished(why, false);
}

void Planning::stop() {
    if (!m_run) return;
    const auto run = m_run;
    run->stopped = true;
    m_run.reset();
    if (run->best) {
        keep(*run->best);
        Q_EMIT finished(tr("Stopped: this is the best that was found."), true);
    } else {
        m_document.dropPreview();
        Q_EMIT finished(tr("Stopped before a layout was found; nothing has changed."), true);
    }
}

void Planning::keep(const Layout &layout) {
    Layout kept = layout;
    kept.name = m_document.laidLayout().name;
    m_document.changeLayout(std::move(kept), tr("Plan"));
}

void Planning::drop() {
    const auto run = m_run;
    run->stopped = true;
    m_run.reset();
    Q_EMIT finished(tr("Planning ended: the job has changed meanwhile."), true);
}

} // namespace boltwright::ui
