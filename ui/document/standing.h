#pragma once

#include "core/check/check.h"
#include "core/figures/figures.h"
#include "core/rules/rules.h"
#include "ui/document/job_document.h"

#include <QObject>
#include <QTimer>

#include <memory>

namespace boltwright::ui {

/// How the layout shown stands: its figures, what is broken, what is put aside, and whether the judge calls it right.
/// Figures and broken rules follow at once, also while a panel is dragged; the judge looks at what is laid, beside the
/// window's own thread, and its word arrives a moment later.
class Standing : public QObject {
    Q_OBJECT
public:
    enum class Verdict { None, Waiting, Right, Wrong };

    explicit Standing(JobDocument &document, QObject *parent = nullptr);
    ~Standing() override;

    const std::vector<ClothFigures> &figures() const { return m_figures; }
    const ClothFigures *figuresOfCloth(const std::string &cloth) const; ///< null: none
    const std::vector<Breach> &broken() const { return m_broken; }
    bool isBroken(int cut) const;
    /// The same, but for what is broken only because of a panel in the hand: its neighbours lie as they did.
    bool isBrokenAtRest(int cut) const;
    /// The first thing that the cut breaks; empty: nothing.
    QString firstReason(int cut) const;
    const std::vector<LeftOut> &aside() const { return m_aside; }
    Verdict verdict() const { return m_verdict; }
    const std::vector<Finding> &findings() const { return m_findings; } ///< of the last verdict

Q_SIGNALS:
    void changed();

private:
    void follow(Changes changes);
    void lookAtAll();
    void lookAtPreview();
    void askJudge();

    JobDocument &m_document;
    std::vector<ClothFigures> m_figures;
    std::vector<Breach> m_laidBroken; ///< of the layout laid
    std::vector<Breach> m_broken;     ///< of what is shown
    std::vector<LeftOut> m_aside;
    Verdict m_verdict = Verdict::None;
    std::vector<Finding> m_findings;
    QTimer m_judgeSoon;
    std::shared_ptr<bool> m_alive = std::make_shared<bool>(true);
};

} // namespace boltwright::ui
