#pragma once

#include "ui/document/job_document.h"

#include <QObject>

namespace boltwright {
struct Moved;
}

namespace boltwright::ui {

/// What is done to the selected panels by menu and key. Each is one step of the history; what cannot be done is said
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
    void takeAlongNeighbour(int step); ///< selects it with those selected
    void selectEverything();

    void changePlaces();    ///< the two selected
    void layHeadToFoot();   ///< against the other one selected, or its own second copy
    void pushToTheCutEnd(); ///< those selected when there are several, or else all

Q_SIGNALS:
    void refused(const QString &sentence);

private:
    void setState(CutState state, const QString &text);
    /// Lays what a move gave, or says why there is none.
    void take(const Moved &moved, const QString &text);
    QString called(const std::vector<int> &cuts) const; ///< the mark of one, the number of several
    QString markOf(const std::string &panel) const;
    JobDocument &m_document;
};

} // namespace boltwright::ui
