#pragma once

#include "ui/document/job_document.h"

#include <QObject>

#include <functional>

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
    /// The selected panel's cloth is spoiled. What lay on the table is kept under a name, for a sheet of what changes.
    void cutWentWrong();
    void enterFlaw(const SheetOf &sheet, const Flaw &flaw);
    void putAside();
    void layDown(); ///< the selected panel's next copy that is put aside, or else the first of all
    void selectNeighbour(int step);
    void takeAlongNeighbour(int step); ///< selects it with those selected
    void selectEverything();

    void changePlaces();    ///< the two selected
    void layHeadToFoot();   ///< against the other one selected, or its own second copy
    void pushToTheCutEnd(); ///< those selected when there are several, or else all

Q_SIGNALS:
    /// Something happened at the table, and what is left has to be planned again; `before` is the layout kept.
    void hasToBePlannedAgain(int before);
    void refused(const QString &sentence);

private:
    void setState(const std::vector<int> &cuts, CutState state, const QString &text);
    /// Lays what a move gave, or says why there is none.
    void take(const Moved &moved, const QString &text);
    QString called(const std::vector<int> &cuts) const; ///< the mark of one, the number of several
    void changeAtTable(const QString &text, const std::function<Job()> &after);
    QString markOf(const std::string &panel) const;
    JobDocument &m_document;
};

} // namespace boltwright::ui
