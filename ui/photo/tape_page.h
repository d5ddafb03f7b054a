#pragma once

#include "ui/document/job_document.h"
#include "ui/photo/marked_picture.h"

#include <QLabel>
#include <QPushButton>

namespace boltwright::ui {

class LengthEdit;

/// Two lengths taped on the cloth itself confirm the scale of a remnant's photograph, or put it right. Until then
/// nothing is printed for cutting.
class TapePage : public QWidget {
    Q_OBJECT
public:
    TapePage(JobDocument &document, const QString &cloth, const QString &remnant, QWidget *parent = nullptr);
    MarkedPicture &picture() { return *m_picture; }
    QString said() const { return m_said->text(); }
    /// From the remnant's table frame, millimetres, to the picture's pixels.
    const QTransform &fromTable() const { return m_fromTable; }

Q_SIGNALS:
    void taken();

private:
    const Remnant *remnant() const; ///< null: it is gone
    void followMarks();
    void say(const QString &text, bool wrong);
    void confirm();

    JobDocument &m_document;
    std::string m_clothId, m_remnantId;
    MarkedPicture *m_picture;
    QLabel *m_said;
    LengthEdit *m_lengths[2];
    QPushButton *m_confirm;
    QTransform m_fromTable;
};

/// The first remnant of the job whose scale nobody has taped: cloth and remnant. Empty: none.
std::pair<QString, QString> firstUntaped(const Job &job);

} // namespace boltwright::ui
