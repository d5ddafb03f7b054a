#pragma once

#include "ui/document/job_document.h"
#include "ui/printing/print_wishes.h"

#include <QWidget>

class QComboBox;
class QFormLayout;
class QLabel;
class QPrinter;
class QPrintPreviewWidget;
class QPushButton;
class QSpinBox;

namespace boltwright::ui {

class Answering;
class LengthEdit;
class Preferences;

/// Everything that goes on paper: what, on which paper and how at the left, the pages as they will be at the right;
/// then to a printer, or into a PDF. Follows the document.
class PrintPage : public QWidget {
    Q_OBJECT
public:
    PrintPage(JobDocument &document, Preferences &preferences, QWidget *parent = nullptr);
    ~PrintPage() override;

    /// The cutting sheet with what has changed since that layout of the job.
    void showChangesFrom(int layout);
    void showWhat(PrintWishes::What what);
    const std::shared_ptr<const Pages> &pages() const { return m_pages; } ///< null: none, and `refusal` says why
    QString refusal() const;
    /// Writes the pages; a name without an ending gets one.
    bool writePdfTo(const QString &fileName);
    /// How long the why of the client's page is planned.
    void setSeconds(double seconds) { m_seconds = seconds; }

private:
    void buildForm();
    void buildLabelFields();
    void fillFromJob();
    void showOptions();
    void showGrid(const LabelGrid &grid);
    LabelGrid gridAsTyped() const;
    PrintWishes wishes() const;
    void refresh();
    void planWhy();
    void paintOn(QPrinter *printer);
    void print();
    void savePdf();

    JobDocument &m_document;
    Preferences &m_preferences;
    std::unique_ptr<QPrinter> m_printer;
    std::shared_ptr<const Pages> m_pages;
    std::vector<Staircase> m_why;
    bool m_whyAsked = false, m_filling = false;
    double m_seconds = 6;
    Answering *m_answering;
    QFormLayout *m_form;
    QComboBox *m_what, *m_paper, *m_hold, *m_scale, *m_changed, *m_grid, *m_panel;
    QSpinBox *m_columns, *m_rows, *m_used;
    QList<LengthEdit *> m_measures; ///< width, height, from left, from top, every across, every down
    QLabel *m_said, *m_count;
    QPushButton *m_print, *m_save;
    QPrintPreviewWidget *m_preview;
};

} // namespace boltwright::ui
