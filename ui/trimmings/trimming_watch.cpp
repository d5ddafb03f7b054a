#include "ui/trimmings/trimming_watch.h"

#include <QCoreApplication>
#include <QThreadPool>

namespace boltwright::ui {

TrimmingWatch::TrimmingWatch(JobDocument &document, QObject *parent) : QObject(parent), m_document(document) {
    m_soon.setSingleShot(true);
    m_soon.setInterval(120);
    connect(&m_soon, &QTimer::timeout, this, &TrimmingWatch::ask);
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        constexpr Changes ofTheJob =
            Change::Card | Change::Cloths | Change::Panels | Change::Layout | Change::Trimmings | Change::NewJob;
        if (!(changes & ofTheJob)) return;
        const bool had = !m_figures.empty();
        m_figures.clear();
        m_waiting = !m_document.job().trimmings.empty();
        if (m_waiting) m_soon.start();
        if (had || m_waiting) Q_EMIT changed();
    });
}

TrimmingWatch::~TrimmingWatch() { *m_alive = false; }

void TrimmingWatch::ask() {
    QThreadPool::globalInstance()->start([job = m_document.job(), layout = m_document.laidLayout(),
                                          revision = m_document.revision(), alive = std::weak_ptr(m_alive), this] {
        std::vector<Reckoned> figures = reckonedAll(job, layout);
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [figures = std::move(figures), revision, alive, this] {
                const auto still = alive.lock();
                if (!still || !*still || revision != m_document.revision()) return;
                m_figures = figures;
                m_waiting = false;
                Q_EMIT changed();
            },
            Qt::QueuedConnection);
    });
}

} // namespace boltwright::ui
