#include "ui/document/standing.h"

#include "ui/text/words.h"

#include <QCoreApplication>
#include <QThreadPool>

#include <algorithm>

namespace boltwright::ui {

Standing::Standing(JobDocument &document, QObject *parent) : QObject(parent), m_document(document) {
    m_judgeSoon.setSingleShot(true);
    m_judgeSoon.setInterval(60); // several quick edits are judged once
    connect(&m_judgeSoon, &QTimer::timeout, this, &Standing::askJudge);
    connect(&document, &JobDocument::changed, this, &Standing::follow);
    lookAtAll();
}

Standing::~Standing() { *m_alive = false; }

const ClothFigures *Standing::figuresOfCloth(const std::string &cloth) const {
    for (const ClothFigures &f : m_figures)
        if (f.cloth == cloth) return &f;
    return nullptr;
}

bool Standing::isBroken(int cut) const {
    return std::any_of(m_broken.begin(), m_broken.end(),
                       [&](const Breach &b) { return b.cut == cut || b.other == cut; });
}

bool Standing::isBrokenAtRest(int cut) const {
    const auto &preview = m_document.preview();
    return std::any_of(m_broken.begin(), m_broken.end(), [&](const Breach &b) {
        if (b.cut != cut && b.other != cut) return false;
        return !preview || preview->cut < 0 || (!preview->holds(b.cut) && !preview->holds(b.other));
    });
}

QString Standing::firstReason(int cut) const {
    for (const Breach &b : m_broken)
        if (b.cut == cut) return withFractions(fromCore(b.text));
    return {};
}

void Standing::follow(Changes changes) {
    constexpr Changes ofTheJob = Change::Card | Change::Cloths | Change::Panels | Change::Layout | Change::NewJob;
    if (changes & ofTheJob)
        lookAtAll();
    else if (changes & Change::Preview)
        lookAtPreview();
}

void Standing::lookAtAll() {
    const Job &job = m_document.job();
    const Layout &layout = m_document.laidLayout();
    m_figures = figuresOf(job, layout);
    m_laidBroken = breaches(job, layout);
    m_broken = m_laidBroken;
    m_aside = putAside(job, layout);
    m_verdict = layout.cuts.empty() ? Verdict::None : Verdict::Waiting;
    m_findings.clear();
    if (m_verdict == Verdict::Waiting) m_judgeSoon.start();
    Q_EMIT changed();
}

void Standing::lookAtPreview() {
    const auto &preview = m_document.preview();
    if (!preview) {
        m_figures = figuresOf(m_document.job(), m_document.laidLayout());
        m_broken = m_laidBroken;
        m_aside = putAside(m_document.job(), m_document.laidLayout());
        Q_EMIT changed();
        return;
    }
    m_figures = figuresOf(m_document.job(), preview->layout);
    if (preview->cut < 0) {
        m_broken = breaches(m_document.job(), preview->layout);
        m_aside = putAside(m_document.job(), preview->layout);
    } else {
        // All but what is in the hand lie as they did.
        m_broken.clear();
        for (const Breach &b : m_laidBroken)
            if (!preview->holds(b.cut) && !preview->holds(b.other)) m_broken.push_back(b);
        m_broken.insert(m_broken.end(), preview->settled.broken.begin(), preview->settled.broken.end());
    }
    Q_EMIT changed();
}

void Standing::askJudge() {
    QThreadPool::globalInstance()->start([job = m_document.job(), layout = m_document.laidLayout(),
                                          revision = m_document.revision(), alive = std::weak_ptr(m_alive), this] {
        auto findings = check(job, layout);
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [findings = std::move(findings), revision, alive, this] {
                // The job may have moved on, or the window be gone, while the judge looked.
                const auto still = alive.lock();
                if (!still || !*still || revision != m_document.revision()) return;
                m_findings = findings;
                m_verdict = findings.empty() ? Verdict::Right : Verdict::Wrong;
                Q_EMIT changed();
            },
            Qt::QueuedConnection);
    });
}

} // namespace boltwright::ui
