#pragma once

#include "ui/document/job_document.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace boltwright::ui {

class LengthEdit;

/// A flaw found at the table: in which cloth, where, how large. Begins at the selected panel.
class FlawForm : public QWidget {
    Q_OBJECT
public:
    explicit FlawForm(JobDocument &document, QWidget *parent = nullptr);

Q_SIGNALS:
    void found(const boltwright::SheetOf &sheet, const boltwright::Flaw &flaw);

private:
    void enter();

    JobDocument &m_document;
    std::vector<SheetOf> m_sheets;
    QComboBox *m_where;
    LengthEdit *m_x, *m_y, *m_across, *m_along;
    QLineEdit *m_note;
    QLabel *m_refusal;
};

} // namespace boltwright::ui
