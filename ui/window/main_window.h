#pragma once

#include <QMainWindow>

#include <memory>

class QLabel;
class QProgressBar;
class QPushButton;
class QSplitter;
class QStackedWidget;

namespace boltwright {
struct PlanOptions;
}

namespace boltwright::ui {

class Actions;
class AnswerBook;
class Canvas;
class CoveredPieceView;
class CutListPane;
class FileDesk;
class JobDocument;
class KeptLayouts;
class LayoutDeeds;
class Ledge;
class NoticeBar;
class OutlineBar;
class OverSheet;
class Planning;
class Preferences;
class Shop;
class Standing;
class StandingPane;
class StartPage;
class TrimmingWatch;

/// The window: wires the document to canvas, panes and sheets. Knows nothing of cloth.
class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    explicit MainWindow(Preferences &preferences, QWidget *parent = nullptr);
    ~MainWindow() override;

    bool openFile(const QString &fileName);
    void offerLeftBehind();

    JobDocument &document() { return *m_document; }
    Canvas &canvas() { return *m_canvas; }
    Standing &standing() { return *m_standing; }
    StandingPane &standingPane() { return *m_standingPane; }
    CoveredPieceView &coveredPiece() { return *m_piece; }
    KeptLayouts &kept() { return *m_kept; }
    CutListPane &cutList() { return *m_cutList; }
    OutlineBar &outlines() { return *m_outlines; }
    NoticeBar &notice() { return *m_notice; }
    OverSheet &sheet() { return *m_sheet; }
    Ledge &ledge() { return *m_ledge; }
    Actions &actions() { return *m_actions; }
    Planning &planning() { return *m_planning; }
    FileDesk &files() { return *m_files; }
    /// How planning is asked for; tests ask for steps in place of seconds.
    PlanOptions &planOptions() { return *m_planOptions; }

    void showPanelTable();
    void showMatches();
    void showClothForm(int cloth = 0);
    void showSwatchPage(int cloth);
    void showRemnantPage();
    void showTapePage(const QString &cloth, const QString &remnant);
    void showOutlines(); ///< the table, ready to draw remnants and flaws
    void showJobCard();
    void showMeasures();
    void showTrimmings();
    TrimmingWatch &trimmings() { return *m_trimmings; }
    Shop &shop() { return *m_shop; }
    void showPrint();
    void showFlawForm();
    void showCutForm();

protected:
    void closeEvent(QCloseEvent *event) override;
    void dragEnterEvent(QDragEnterEvent *event) override;
    void dropEvent(QDropEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    void buildHeader(QWidget *header);
    void buildMenus();
    void wireActions();
    void wireCanvas();
    void wireTools();
    void wirePlanning();
    void sayNotFitting(const QString &sentence);
    void unsayNotFitting();
    void showPage(const QString &title, QWidget *page);
    void clearSides();
    void wireTable();
    template <class Page>
    void showQuestion(const QString &title, Page *page);
    void refreshRecent();
    void refreshTitle();
    void refreshActions();
    void refreshCentre();
    void refreshStrips();
    void scaleText(int step);
    void setLook(int look);
    void showHelp(const QString &page);
    void showKeys();
    void showAbout();

    Preferences &m_preferences;
    JobDocument *m_document;
    Standing *m_standing;
    Planning *m_planning;
    TrimmingWatch *m_trimmings;
    std::unique_ptr<Shop> m_shop;
    Actions *m_actions;
    LayoutDeeds *m_deeds;
    std::unique_ptr<PlanOptions> m_planOptions;
    std::shared_ptr<AnswerBook> m_answers; ///< what the question pages have found
    Canvas *m_canvas = nullptr;
    QWidget *m_tablePage = nullptr; ///< canvas and ledge
    Ledge *m_ledge = nullptr;
    CutListPane *m_cutList = nullptr;
    StandingPane *m_standingPane = nullptr;
    CoveredPieceView *m_piece = nullptr;
    KeptLayouts *m_kept = nullptr;
    QSplitter *m_rightPane = nullptr;
    QString m_notFitting; ///< the notice of the last plan that did not fit
    NoticeBar *m_notice = nullptr;
    OutlineBar *m_outlines = nullptr;
    FileDesk *m_files = nullptr;
    OverSheet *m_sheet = nullptr;
    StartPage *m_start = nullptr;
    QStackedWidget *m_centre = nullptr;
    QLabel *m_title = nullptr, *m_subtitle = nullptr;
    QProgressBar *m_progress = nullptr;
    QPushButton *m_planButton = nullptr;
    QMenu *m_recentMenu = nullptr;
    int m_matchesDroppedAt = 0; ///< after which step of the history it was said that matches are gone; 0: not said
    int m_layBefore = -1;       ///< the layout that lay on the table before planning had to begin again; -1: none
    bool m_begun = false;       ///< the start page has been left
};

} // namespace boltwright::ui
