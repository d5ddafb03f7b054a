#pragma once

#include "ui/document/job_document.h"

#include <QObject>

namespace boltwright::ui {

/// What is done to the selected panel by menu and key. Each is one step of the history; what cannot be done is said
/// in a few words.
class LayoutDeeds : public QObject {
    Q_OBJECT
public:
    explicit LayoutDeeds(JobDocument &document, QObject *parent = nullptr);

    void turn();
    void toggleLock();
    void toggleCut();
    void putAside();
    void layDown(); ///< the selected panel's next copy that is put aside, or else the first of all
    void selectNeighbour(int step);

Q_SIGNALS:
    void refused(const QString &sentence);

private:
    void setState(CutState state, const QString &text);
    QString markOf(const std::string &panel) const;
    JobDocument &m_document;
};

} // namespace boltwright::ui
