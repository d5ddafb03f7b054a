#pragma once

#include "ui/document/job_document.h"
#include "ui/photo/marked_picture.h"
#include "ui/photo/photo_remnant.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QRadioButton>
#include <QStackedWidget>

#include <array>

namespace boltwright::ui {

class LengthEdit;

/// A remnant from a photograph, in two steps beside the picture: click the corners of something known in it; then trace
/// the cloth on the straightened picture, and its flaws.
class RemnantPage : public QWidget {
    Q_OBJECT
public:
    explicit RemnantPage(JobDocument &document, QWidget *parent = nullptr);

    bool openPicture(const QString &file); ///< false: it cannot be read, and the page says why
    MarkedPicture &picture() { return *m_picture; }
    const PhotoFind &find() const { return m_find; }
    QString said() const { return m_said->text(); }

Q_SIGNALS:
    /// The remnant lies on the table.
    void taken(const QString &cloth, const QString &remnant);

private:
    enum Known { A4, Letter, Yardstick, Own };
    enum Step { Corners, Outline };
    /// How a corner came to be where it is: clicked and no more, found on the edges beside the click, or set by hand.
    enum class CornerIs { Clicked, Found, Set };
    QWidget *cornersStep();
    QWidget *outlineStep();
    void askForPicture();
    void goTo(Step step);
    void takeKnown();
    void knownChanged();
    void followMarks();
    void settleCorners(int placed);
    QString aboutCorners() const;
    void closeOutline();
    void beginFlaw(bool flaw);
    void showShapes();
    void say(const QString &text, bool wrong);
    void sayCorners();
    void sayOutline();
    void putOnTable();
    PictureSource pictureToKeep() const;

    JobDocument &m_document;
    MarkedPicture *m_picture;
    QStackedWidget *m_steps;
    QLabel *m_said;
    PhotoFind m_find;
    std::array<CornerIs, 4> m_cornerIs{};
    StraightPhoto m_straight;
    QString m_file;
    Step m_step = Corners;
    bool m_flaw = false;       ///< a flaw is being traced
    bool m_traced = false;     ///< the outline is closed
    bool m_sideChosen = false; ///< which side is the long one was said, and is no longer guessed
    QLabel *m_fileName = nullptr;
    QComboBox *m_known = nullptr, *m_top = nullptr, *m_where = nullptr;
    QLabel *m_firstWord = nullptr, *m_secondWord = nullptr;
    LengthEdit *m_first = nullptr, *m_second = nullptr;
    QCheckBox *m_longFirst = nullptr;
    QPushButton *m_next = nullptr, *m_flawButton = nullptr, *m_again = nullptr, *m_take = nullptr;
    QRadioButton *m_within = nullptr;
};

} // namespace boltwright::ui
