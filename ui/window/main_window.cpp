#include "ui/window/main_window.h"

#include "core/edit/job_edit.h"
#include "core/planner/plan.h"
#include "ui/actions/actions.h"
#include "ui/answers/answer_book.h"
#include "ui/answers/ask_page.h"
#include "ui/answers/runs_page.h"
#include "ui/answers/ways_page.h"
#include "ui/answers/why_page.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/outline_bar.h"
#include "ui/canvas/tools/chalk_tool.h"
#include "ui/canvas/tools/note_tool.h"
#include "ui/canvas/tools/tape_tool.h"
#include "ui/document/standing.h"
#include "ui/drawing/cloth_pictures.h"
#include "ui/drawing/colours.h"
#include "ui/drawing/table_frame.h"
#include "ui/forms/cloth_form.h"
#include "ui/forms/cloth_questions_page.h"
#include "ui/forms/cut_form.h"
#include "ui/forms/flaw_form.h"
#include "ui/forms/job_card_form.h"
#include "ui/forms/match_page.h"
#include "ui/forms/panel_table.h"
#include "ui/forms/piece_form_page.h"
#include "ui/help/help_page.h"
#include "ui/kept/kept_layouts.h"
#include "ui/kept/layout_comparison.h"
#include "ui/panes/cut_list.h"
#include "ui/panes/ledge.h"
#include "ui/panes/standing_pane.h"
#include "ui/photo/remnant_page.h"
#include "ui/photo/swatch_page.h"
#include "ui/photo/tape_page.h"
#include "ui/piece/covered_piece_view.h"
#include "ui/planning/planning.h"
#include "ui/printing/print_page.h"
#include "ui/settings/preferences.h"
#include "ui/shop/rules_page.h"
#include "ui/shop/shop.h"
#include "ui/text/words.h"
#include "ui/trimmings/trimming_watch.h"
#include "ui/trimmings/trimmings_page.h"
#include "ui/widgets/elided_label.h"
#include "ui/window/file_desk.h"
#include "ui/window/layout_deeds.h"
#include "ui/window/look.h"
#include "ui/window/notice_bar.h"
#include "ui/window/over_sheet.h"
#include "ui/window/start_page.h"
#include "ui/window/yielding_row.h"

#include <QActionGroup>
#include <QApplication>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QMimeData>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QTextBrowser>
#include <QThread>
#include <QToolButton>

#include <functional>
#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

template <class Pane>
Pane *named(Pane *pane, const QString &name) {
    pane->setObjectName(name);
    pane->setAttribute(Qt::WA_StyledBackground);
    return pane;
}

} // namespace

MainWindow::MainWindow(Preferences &preferences, QWidget *parent)
    : QMainWindow(parent), m_preferences(preferences), m_document(new JobDocument(this)),
      m_standing(new Standing(*m_document, this)), m_planning(new Planning(*m_document, this)),
      m_trimmings(new TrimmingWatch(*m_document, this)), m_shop(std::make_unique<Shop>(preferences.folder())),
      m_actions(new Actions(this)), m_deeds(new LayoutDeeds(*m_document, this)),
      m_planOptions(std::make_unique<PlanOptions>()), m_answers(std::make_shared<AnswerBook>()) {
    m_planOptions->seconds = preferences.planSeconds();
    m_planOptions->threads = std::max(1, QThread::idealThreadCount());
    connect(m_document, &JobDocument::changed, this, [this](Changes changes) {
        if (changes & Change::NewJob) m_answers->clear();
    });
    // Before any button shows them: one that has no icon yet asks for the room of its words.
    m_actions->paintIcons(coloursOf(palette()).accent);
    setAcceptDrops(true);
    setWindowIcon(QIcon(u":/boltwright/icons/boltwright.svg"_s));
    resize(1440, 900);

    auto *whole = new QWidget(this);
    auto *column = new QVBoxLayout(whole);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    auto *header = named(new QWidget(whole), u"header"_s);
    m_notice = new NoticeBar(whole);
    m_centre = new QStackedWidget(whole);
    m_tablePage = new QWidget(m_centre);
    m_canvas = new Canvas(*m_document, *m_standing, m_tablePage);
    m_ledge = named(new Ledge(*m_canvas, *m_actions, m_tablePage), u"ledge"_s);
    auto *table = new QVBoxLayout(m_tablePage);
    table->setContentsMargins(0, 0, 0, 0);
    table->setSpacing(0);
    table->addWidget(m_canvas, 1);
    table->addWidget(m_ledge);
    m_tablePage->setFocusProxy(m_canvas);
    m_outlines = new OutlineBar(*m_document, *m_canvas, whole);
    m_start = new StartPage(m_centre);
    m_centre->addWidget(m_start);
    m_centre->addWidget(m_tablePage);
    m_sheet = new OverSheet(m_centre);
    m_cutList = new CutListPane(*m_document, whole);
    m_rightPane = new QSplitter(Qt::Vertical, whole);
    m_piece = new CoveredPieceView(*m_document, m_rightPane);
    m_standingPane = new StandingPane(*m_document, *m_standing, m_rightPane);
    m_rightPane->setHandleWidth(1);
    m_rightPane->setSizes({340, 230});
    m_rightPane->setStretchFactor(0, 3);
    m_rightPane->setStretchFactor(1, 2);
    m_kept = new KeptLayouts(*m_document, whole);
    named(m_cutList, u"leftPane"_s);
    named(m_rightPane, u"rightPane"_s);
    named(m_kept, u"keptPane"_s);
    auto *splitter = new QSplitter(Qt::Horizontal, whole);
    splitter->setHandleWidth(1);
    splitter->addWidget(m_cutList);
    splitter->addWidget(m_centre);
    splitter->addWidget(m_rightPane);
    splitter->setStretchFactor(1, 1);
    splitter->setCollapsible(1, false);
    splitter->setSizes({290, 860, 290});
    buildHeader(header);
    column->addWidget(header);
    column->addWidget(m_notice);
    column->addWidget(m_outlines);
    column->addWidget(splitter, 1);
    column->addWidget(m_kept);
    setCentralWidget(whole);

    m_files = new FileDesk(*m_document, m_preferences, *m_notice, this);
    buildMenus();
    wireActions();
    wireCanvas();
    wireTools();
    wirePlanning();
    wireTable();
    connect(m_document, &JobDocument::changed, this, [this](Changes changes) {
        if (changes & (Change::Card | Change::File | Change::NewJob | Change::Cloths)) refreshTitle();
        refreshActions();
        // It was said of the job as it was.
        if (changes & (Change::NewJob | Change::Cloths | Change::Panels | Change::Layout)) unsayNotFitting();
        if (changes & (Change::NewJob | Change::Panels | Change::Layout)) refreshCentre();
    });
    connect(m_document, &JobDocument::matchesDropped, this, [this](const QStringList &matches) {
        m_matchesDroppedAt = m_document->history()->index();
        m_notice->say(tr("The pattern no longer runs on there, as an edge or a panel of the match is gone: %1. Undo "
                         "brings it back.")
                          .arg(matches.join(u";  "_s)));
    });
    // The document tells of a step while it is taken, when the history does not count it yet.
    connect(m_document->history(), &QUndoStack::indexChanged, this, &MainWindow::refreshActions);
    connect(m_document->history(), &QUndoStack::indexChanged, this, [this](int index) {
        if (index >= m_matchesDroppedAt) return;
        m_matchesDroppedAt = 0;
        m_notice->say({}); // it is back
    });
    connect(m_files, &FileDesk::filesUsedChanged, this, &MainWindow::refreshRecent);
    connect(m_files, &FileDesk::opened, this, [this] {
        m_begun = true;
        m_sheet->close();
        refreshCentre();
        // A picture that is gone is no reason to lose anything: the cloth is drawn from its description.
        if (const QStringList missing = picturesNotShown(m_document->job()); !missing.isEmpty())
            m_notice->say(missing.join(u'\n'));
        // A job that has just been opened has nothing selected, though the list may have had the focus on the way.
        m_canvas->setFocus();
        m_document->select(std::nullopt);
    });
    m_cutList->setVisible(preferences.paneShown(u"left"_s));
    m_rightPane->setVisible(preferences.paneShown(u"right"_s));
    if (!preferences.geometry().isEmpty()) restoreGeometry(preferences.geometry());
    refreshRecent();
    refreshTitle();
    refreshActions();
    refreshCentre();
}

MainWindow::~MainWindow() = default;

void MainWindow::buildHeader(QWidget *header) {
    m_title = new ElidedLabel(header);
    m_title->setObjectName(u"jobTitle"_s);
    m_title->setTextFormat(Qt::PlainText);
    m_title->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Preferred); // gives way before the buttons do
    m_subtitle = new ElidedLabel(header);
    m_subtitle->setTextFormat(Qt::PlainText);
    m_subtitle->setObjectName(u"quiet"_s);
    m_subtitle->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    m_progress = new QProgressBar(header);
    m_progress->setTextVisible(false);
    m_progress->setRange(0, 1000);
    m_progress->setFixedWidth(140);
    m_progress->setAccessibleName(tr("Planning"));
    m_progress->hide();
    m_planButton = new QPushButton(tr("Plan"), header);
    m_planButton->setObjectName(u"mainButton"_s);
    auto *row = new QHBoxLayout(header);
    row->setContentsMargins(20, 8, 16, 8);
    row->setSpacing(8);
    row->addWidget(m_title);
    row->addWidget(m_subtitle, 1);
    row->addWidget(m_progress);
    for (ActionId id : {ActionId::Undo, ActionId::Redo}) {
        auto *button = new QToolButton(header);
        button->setDefaultAction((*m_actions)[id]);
        button->setFocusPolicy(Qt::TabFocus);
        row->addWidget(button);
    }
    auto *questions = new YieldingRow(header);
    questions->setMoreToolTip(tr("What there is no room for here."));
    row->addWidget(questions);
    for (ActionId id : {ActionId::Cloths, ActionId::Panels, ActionId::WaysToFit, ActionId::AskFor}) {
        QAction *action = (*m_actions)[id];
        auto *button = new QPushButton(action->text(), questions);
        button->setToolTip(action->toolTip());
        connect(action, &QAction::enabledChanged, button, &QWidget::setEnabled);
        connect(button, &QPushButton::clicked, action, &QAction::trigger);
        questions->add(button, action);
    }
    row->addWidget(m_planButton);
    connect(m_planButton, &QPushButton::clicked, this,
            [this] { (*m_actions)[m_planning->isRunning() ? ActionId::Stop : ActionId::Plan]->trigger(); });
}

void MainWindow::buildMenus() {
    for (const auto &[title, actions] : m_actions->menus()) {
        QMenu *menu = menuBar()->addMenu(title);
        menu->setToolTipsVisible(true);
        for (QAction *action : actions) {
            if (action == (*m_actions)[ActionId::OpenSample]) {
                QMenu *sub = menu->addMenu(action->text());
                for (const auto &[file, name] : samples())
                    connect(sub->addAction(name), &QAction::triggered, this,
                            [this, file = file] { m_files->openSample(file); });
                m_recentMenu = menu->addMenu(tr("Used before"));
                continue;
            }
            if (action == (*m_actions)[ActionId::HowTo]) {
                menu->addAction(action);
                QMenu *sub = menu->addMenu(tr("How to"));
                for (const auto &[page, name] : helpPages())
                    connect(sub->addAction(name), &QAction::triggered, this, [this, page = page] { showHelp(page); });
                continue;
            }
            menu->addAction(action);
        }
    }
    auto *looks = new QActionGroup(this);
    for (ActionId id : {ActionId::LookAsSystem, ActionId::LookLight, ActionId::LookDark})
        looks->addAction((*m_actions)[id]);
    (*m_actions)[ActionId(int(ActionId::LookAsSystem) + int(m_preferences.look()))]->setChecked(true);
    (*m_actions)[ActionId::ShowLeftPane]->setChecked(m_preferences.paneShown(u"left"_s));
    (*m_actions)[ActionId::ShowRightPane]->setChecked(m_preferences.paneShown(u"right"_s));
    (*m_actions)[ActionId::ShowStrips]->setChecked(m_preferences.paneShown(u"strips"_s));
    (*m_actions)[ActionId::ShowKept]->setChecked(m_preferences.paneShown(u"kept"_s));
}

void MainWindow::wireActions() {
    const auto on = [this](ActionId id, auto deed) { connect((*m_actions)[id], &QAction::triggered, this, deed); };
    on(ActionId::NewJob, [this] { m_files->begin(); });
    on(ActionId::Open, [this] { m_files->openAsking(); });
    on(ActionId::Save, [this] { m_files->save(); });
    on(ActionId::SaveAs, [this] { m_files->saveAs(); });
    on(ActionId::Print, [this] { showPrint(); });
    on(ActionId::Quit, [this] { close(); });
    on(ActionId::Undo, [this] {
        m_planning->stop();
        m_document->history()->undo();
    });
    on(ActionId::Redo, [this] { m_document->history()->redo(); });
    on(ActionId::JobCard, [this] { showJobCard(); });
    on(ActionId::Cloths, [this] { showClothForm(); });
    on(ActionId::Outlines, [this](bool wanted) { wanted ? showOutlines() : m_outlines->close(); });
    connect(m_outlines, &OutlineBar::closed, this, [this] {
        (*m_actions)[ActionId::Outlines]->setChecked(false);
        refreshCentre();
    });
    on(ActionId::RemnantFromPhotograph, [this] { showRemnantPage(); });
    on(ActionId::TapeLengths, [this] {
        const auto [cloth, remnant] = firstUntaped(m_document->job());
        if (!remnant.isEmpty()) showTapePage(cloth, remnant);
    });
    on(ActionId::SavePiece, [this] { m_piece->savePicture(); });
    on(ActionId::PrintPiece, [this] { m_piece->print(); });
    on(ActionId::Panels, [this] { showPanelTable(); });
    on(ActionId::Matches, [this] { showMatches(); });
    on(ActionId::Measure, [this] { showMeasures(); });
    on(ActionId::Trimmings, [this] { showTrimmings(); });
    on(ActionId::ClothQuestions,
       [this] { showPage(tr("What the cloth must be"), new ClothQuestionsPage(*m_document)); });
    on(ActionId::ShopRules,
       [this] { showPage(tr("The shop's rules"), new RulesPage(*m_shop, m_document->job().unit)); });
    on(ActionId::ShowStrips, [this](bool shown) {
        m_preferences.setPaneShown(u"strips"_s, shown);
        refreshStrips();
    });
    connect(m_trimmings, &TrimmingWatch::changed, this, &MainWindow::refreshStrips);
    on(ActionId::Plan, [this] {
        if (m_document->preview() && !m_planning->isRunning()) return; // a panel is in the hand
        m_sheet->close();
        m_begun = true;
        refreshCentre();
        m_planning->start(*m_planOptions);
    });
    on(ActionId::Stop, [this] { m_planning->stop(); });
    on(ActionId::WaysToFit,
       [this] { showQuestion(tr("Ways to fit"), new WaysPage(*m_document, m_answers, m_preferences, *m_shop)); });
    on(ActionId::HowToRun, [this] { showQuestion(tr("How to run it"), new RunsPage(*m_document, m_answers)); });
    on(ActionId::AskFor, [this] { showQuestion(tr("How much to ask for"), new AskPage(*m_document, m_answers)); });
    on(ActionId::Why, [this] { showQuestion(tr("Where the yardage goes"), new WhyPage(*m_document, m_answers)); });
    on(ActionId::NextPanel, [this] { m_deeds->selectNeighbour(1); });
    on(ActionId::PreviousPanel, [this] { m_deeds->selectNeighbour(-1); });
    on(ActionId::AlsoNextPanel, [this] { m_deeds->takeAlongNeighbour(1); });
    on(ActionId::AlsoPreviousPanel, [this] { m_deeds->takeAlongNeighbour(-1); });
    on(ActionId::AllPanels, [this] { m_deeds->selectEverything(); });
    const auto onPanel = [&](ActionId id, void (LayoutDeeds::*deed)()) {
        on(id, [this, deed] {
            m_planning->stop();
            std::invoke(deed, *m_deeds); // by ->* GCC 12's sanitizer takes the closure for the window
            refreshActions();
        });
    };
    onPanel(ActionId::Turn, &LayoutDeeds::turn);
    onPanel(ActionId::HeadToFoot, &LayoutDeeds::layHeadToFoot);
    onPanel(ActionId::ChangePlaces, &LayoutDeeds::changePlaces);
    onPanel(ActionId::PushToCutEnd, &LayoutDeeds::pushToTheCutEnd);
    onPanel(ActionId::Lock, &LayoutDeeds::toggleLock);
    onPanel(ActionId::MarkCut, &LayoutDeeds::toggleCut);
    onPanel(ActionId::CutWrong, &LayoutDeeds::cutWentWrong);
    on(ActionId::FlawFound, [this] { showFlawForm(); });
    on(ActionId::TrimCut, [this] { showCutForm(); });
    onPanel(ActionId::PutAside, &LayoutDeeds::putAside);
    onPanel(ActionId::LayDown, &LayoutDeeds::layDown);
    on(ActionId::ZoomIn, [this] { m_canvas->zoomBy(1.25); });
    on(ActionId::ZoomOut, [this] { m_canvas->zoomBy(0.8); });
    on(ActionId::ZoomToFit, [this] { m_canvas->zoomToFit(); });
    on(ActionId::ShowLeftPane, [this](bool shown) {
        m_cutList->setVisible(shown);
        m_preferences.setPaneShown(u"left"_s, shown);
    });
    on(ActionId::ShowRightPane, [this](bool shown) {
        m_rightPane->setVisible(shown);
        m_preferences.setPaneShown(u"right"_s, shown);
    });
    on(ActionId::ShowKept, [this](bool shown) {
        m_preferences.setPaneShown(u"kept"_s, shown);
        refreshCentre();
    });
    connect(m_piece, &CoveredPieceView::failed, this, [this](const QString &sentence) { m_notice->say(sentence); });
    connect(m_piece, &CoveredPieceView::saved, this,
            [this](const QString &file) { m_notice->say(tr("The picture is in %1.").arg(file)); });
    connect(m_kept, &KeptLayouts::comparisonWanted, this, [this](int with) {
        showPage(tr("One over the other"), new LayoutComparison(m_document->job(), m_document->layoutIndex(), with));
    });
    on(ActionId::LargerText, [this] { scaleText(10); });
    on(ActionId::SmallerText, [this] { scaleText(-10); });
    on(ActionId::LookAsSystem, [this] { setLook(0); });
    on(ActionId::LookLight, [this] { setLook(1); });
    on(ActionId::LookDark, [this] { setLook(2); });
    on(ActionId::HowTo, [this] { showHelp({}); });
    on(ActionId::Keys, [this] { showKeys(); });
    on(ActionId::About, [this] { showAbout(); });
    // Single letters belong to the table alone, so that they can be typed everywhere else.
    for (ActionId id :
         {ActionId::Turn, ActionId::HeadToFoot, ActionId::ChangePlaces, ActionId::PushToCutEnd, ActionId::Lock,
          ActionId::MarkCut, ActionId::CutWrong, ActionId::TrimCut, ActionId::PutAside, ActionId::LayDown,
          ActionId::AllPanels, ActionId::Hand, ActionId::Tape, ActionId::Chalk, ActionId::Notes}) {
        (*m_actions)[id]->setShortcutContext(Qt::WidgetWithChildrenShortcut);
        m_canvas->addAction((*m_actions)[id]);
    }
}

void MainWindow::wireCanvas() {
    connect(m_canvas, &Canvas::takingHold, this, [this] { m_planning->stop(); });
    connect(m_deeds, &LayoutDeeds::refused, m_canvas, &Canvas::showNote);
    connect(m_cutList, &CutListPane::panelTableWanted, this, &MainWindow::showPanelTable);
    connect(m_cutList, &CutListPane::layDownWanted, this, [this] {
        if (m_document->selectedCut() >= 0)
            m_canvas->showSelection();
        else
            (*m_actions)[ActionId::LayDown]->trigger();
        m_canvas->setFocus();
    });
    connect(m_standingPane, &StandingPane::panelWanted, this, [this](const QString &panel) {
        m_document->selectPanel(toCore(panel));
        m_canvas->showSelection();
        m_canvas->setFocus();
    });
    connect(m_start, &StartPage::clothWanted, this, [this] { showClothForm(); });
    connect(m_start, &StartPage::panelsWanted, this, &MainWindow::showPanelTable);
    connect(m_start, &StartPage::measureWanted, this, &MainWindow::showMeasures);
    connect(m_start, &StartPage::openWanted, this, [this] { m_files->openAsking(); });
    connect(m_start, &StartPage::sampleWanted, this, [this](const QString &file) { m_files->openSample(file); });
    connect(m_start, &StartPage::fileWanted, this, [this](const QString &file) { m_files->openFile(file); });
    connect(m_sheet, &OverSheet::closed, this, [this] {
        m_cutList->setVisible(m_preferences.paneShown(u"left"_s));
        m_rightPane->setVisible(m_preferences.paneShown(u"right"_s));
        refreshCentre();
        m_centre->currentWidget()->setFocus();
    });
}

void MainWindow::wireTools() {
    auto *tape = new TapeTool(*m_canvas);
    auto *chalk = new ChalkTool(*m_canvas);
    auto *notes = new NoteTool(*m_canvas);
    const QList<QPair<ActionId, Tool *>> tools{{ActionId::Hand, &m_canvas->tool()},
                                               {ActionId::Tape, tape},
                                               {ActionId::Chalk, chalk},
                                               {ActionId::Notes, notes}};
    for (const auto &[id, tool] : tools)
        connect((*m_actions)[id], &QAction::triggered, this, [this, tool = tool] {
            m_canvas->useTool(*tool);
            m_canvas->setFocus();
            refreshActions();
        });
    const auto tick = [this, tools] {
        for (const auto &[id, tool] : tools) (*m_actions)[id]->setChecked(&m_canvas->tool() == tool);
    };
    connect(m_canvas, &Canvas::toolChanged, this, tick);
    tick();
}

void MainWindow::wirePlanning() {
    connect(m_planning, &Planning::started, this, [this] {
        m_progress->setValue(0);
        m_progress->show();
        m_planButton->setText(tr("Stop"));
        m_notice->say({});
        refreshActions();
    });
    connect(m_planning, &Planning::progressed, this, [this](double share) { m_progress->setValue(int(share * 1000)); });
    connect(m_planning, &Planning::finished, this, [this](const QString &sentence, bool fits) {
        m_progress->hide();
        m_planButton->setText(tr("Plan"));
        if (m_canvas->isFitted()) m_canvas->zoomToFit();
        if (fits)
            m_canvas->showNote(sentence);
        else
            sayNotFitting(sentence);
        refreshActions();
    });
    connect(m_planning, &Planning::moreWouldDo, this, [this](const QString &more) {
        // Another notice may have come in its place meanwhile.
        if (!m_notFitting.isEmpty() && m_notice->sentence() == m_notFitting) sayNotFitting(m_notFitting + u' ' + more);
    });
    connect(m_notice, &NoticeBar::closed, this, [this] { m_centre->currentWidget()->setFocus(); });
}

/// Never a bare no: what can be done about it stands beside it, and has the keyboard where nobody types elsewhere.
void MainWindow::sayNotFitting(const QString &sentence) {
    m_notFitting = sentence;
    const auto ask = [this](ActionId id) {
        return [this, id] {
            (*m_actions)[id]->trigger();
            if (auto *page = qobject_cast<QuestionPage *>(m_sheet->content())) page->askUnlessKnown();
        };
    };
    m_notice->say(sentence,
                  {{tr("Ways to fit"), ask(ActionId::WaysToFit), tr("What could be given up so that this cloth does.")},
                   {tr("How much more"), ask(ActionId::AskFor),
                    tr("How much more of this cloth would do, and what other cloth would take.")},
                   {tr("As it falls best"), ask(ActionId::HowToRun),
                    tr("Whether it does when panels may run up the roll or along it, as it falls best for each.")},
                   NoticeBar::closing()});
    QWidget *now = focusWidget();
    if (!now || now == m_canvas || now == m_planButton || now == m_centre) m_notice->answers().first()->setFocus();
}

void MainWindow::unsayNotFitting() {
    if (!m_notFitting.isEmpty() && m_notice->sentence() == m_notFitting) m_notice->say({});
}

bool MainWindow::openFile(const QString &fileName) { return m_files->openFile(fileName); }
void MainWindow::offerLeftBehind() { m_files->offerLeftBehind(); }

/// Every page lies over all of the window, so that its title and its way back stand where they did on the page before.
void MainWindow::showPage(const QString &title, QWidget *page) {
    clearSides();
    m_sheet->show(title, page);
}

void MainWindow::clearSides() {
    m_cutList->hide();
    m_rightPane->hide();
    m_kept->hide();
}

void MainWindow::showPanelTable() {
    auto *table = new PanelTable(*m_document);
    connect(table, &PanelTable::matchesWanted, this, &MainWindow::showMatches, Qt::QueuedConnection);
    showPage(tr("Panels"), table);
}
void MainWindow::showMatches() { showPage(tr("Pattern match"), new MatchPage(*m_document)); }
void MainWindow::showTrimmings() { showPage(tr("Trimmings"), new TrimmingsPage(*m_document, *m_trimmings, *m_shop)); }

void MainWindow::showMeasures() {
    auto *page = new PieceFormPage(*m_document, *m_shop);
    connect(page, &PieceFormPage::taken, this, [this] {
        m_begun = true;
        m_sheet->close();
    });
    connect(page, &PieceFormPage::newJobWanted, this, [this, page] {
        // What was measured is held while the question about what is open is asked, and lost only with the page.
        const Job begun = page->added(newJob(m_document->job().unit));
        if (m_files->begin()) m_document->changeJob(begun, tr("Measure a piece"));
    });
    showPage(tr("From measurements"), page);
}

void MainWindow::refreshStrips() {
    QList<Canvas::StripShown> strips;
    const auto &figures = m_trimmings->figures();
    const auto &trimmings = m_document->job().trimmings;
    if (figures.size() == trimmings.size() && m_preferences.paneShown(u"strips"_s))
        for (std::size_t i = 0; i < figures.size(); ++i) {
            if (!figures[i].found) continue;
            const std::string cloth = trimmings[i].cloth.value_or(m_document->job().cloths.front().id);
            // No more than are needed, the longest first; all where they are not enough.
            const auto enough = enoughFor(*figures[i].found, figures[i].need, trimmings[i].strip);
            for (const Strip &strip : (enough ? *enough : *figures[i].found).strips)
                strips.append({cloth, strip.on, onTable(strip.ring)});
        }
    m_canvas->showStrips(strips);
}

void MainWindow::showClothForm(int cloth) {
    auto *form = new ClothForm(*m_document);
    if (cloth > 0) form->showCloth(cloth);
    // The sheet shows something else in place of the form that asks, so the form has to have done with its event.
    connect(form, &ClothForm::drawingWanted, this, &MainWindow::showOutlines, Qt::QueuedConnection);
    connect(form, &ClothForm::swatchWanted, this, &MainWindow::showSwatchPage, Qt::QueuedConnection);
    connect(form, &ClothForm::photographWanted, this, &MainWindow::showRemnantPage, Qt::QueuedConnection);
    connect(form, &ClothForm::tapeWanted, this, &MainWindow::showTapePage, Qt::QueuedConnection);
    showPage(tr("Cloth"), form);
}

void MainWindow::showSwatchPage(int cloth) {
    auto *page = new SwatchPage(*m_document, cloth);
    connect(
        page, &SwatchPage::taken, this, [this, cloth] { showClothForm(cloth); }, Qt::QueuedConnection);
    showPage(tr("A picture of the cloth"), page);
}

void MainWindow::showRemnantPage() {
    auto *page = new RemnantPage(*m_document);
    connect(page, &RemnantPage::taken, this, &MainWindow::showTapePage, Qt::QueuedConnection);
    showPage(tr("A remnant from a photograph"), page);
}

void MainWindow::showTapePage(const QString &cloth, const QString &remnant) {
    m_begun = true;
    auto *page = new TapePage(*m_document, cloth, remnant);
    connect(page, &TapePage::taken, m_sheet, &OverSheet::close, Qt::QueuedConnection);
    showPage(tr("Tape two lengths of remnant %1").arg(remnant), page);
}

void MainWindow::showOutlines() {
    m_planning->stop();
    m_sheet->close();
    m_begun = true;
    refreshCentre();
    (*m_actions)[ActionId::Outlines]->setChecked(true);
    m_kept->hide(); // the bar takes its room, so that the table keeps its own
    m_outlines->open();
}

void MainWindow::showPrint() {
    m_planning->stop();
    showPage(tr("Print"), new PrintPage(*m_document, m_preferences));
}

void MainWindow::showFlawForm() {
    m_planning->stop();
    auto *form = new FlawForm(*m_document);
    connect(form, &FlawForm::found, this, [this](const SheetOf &sheet, const Flaw &flaw) {
        m_sheet->close();
        m_deeds->enterFlaw(sheet, flaw);
    });
    showPage(tr("Flaw found"), form);
}

void MainWindow::showCutForm() {
    m_planning->stop();
    showPage(tr("Trims and pieces"), new CutForm(*m_document));
}

/// What happens at the table is planned around at once; then a fresh sheet is offered.
void MainWindow::wireTable() {
    connect(m_deeds, &LayoutDeeds::hasToBePlannedAgain, this, [this](int before) {
        m_layBefore = before;
        m_planning->startAgain(*m_planOptions);
    });
    connect(m_planning, &Planning::finished, this, [this](const QString &, bool fits) {
        const int before = std::exchange(m_layBefore, -1);
        if (before < 0 || !fits) return;
        const auto printChanges = [this, before] {
            auto *page = new PrintPage(*m_document, m_preferences);
            page->showChangesFrom(before);
            showPage(tr("Print"), page);
        };
        m_notice->say(tr("What is left is planned again; what is cut stays where it was."),
                      {{tr("Print what has changed"), printChanges}});
    });
}

void MainWindow::showJobCard() { showPage(tr("Job card"), new JobCardForm(*m_document)); }

template <class Page>
void MainWindow::showQuestion(const QString &title, Page *page) {
    m_planning->stop();
    unsayNotFitting(); // what is asked now is answered on the page, by a longer search
    if constexpr (requires { &Page::taken; }) connect(page, &Page::taken, m_sheet, &OverSheet::close);
    showPage(title, page);
}

void MainWindow::refreshRecent() {
    const QStringList files = m_preferences.recentFiles();
    m_start->setRecent(files);
    m_recentMenu->clear();
    m_recentMenu->setEnabled(!files.isEmpty());
    for (const QString &file : files) {
        QAction *action = m_recentMenu->addAction(QFileInfo(file).completeBaseName());
        action->setToolTip(file);
        connect(action, &QAction::triggered, this, [this, file] { m_files->openFile(file); });
    }
}

void MainWindow::refreshTitle() {
    const Job &job = m_document->job();
    m_title->setText(m_document->displayName() + (m_document->isUnsaved() ? u" *"_s : QString()));
    QStringList parts;
    if (!job.card.client.empty()) parts << tr("for %1").arg(fromCore(job.card.client));
    if (!job.cloths.empty()) {
        const Cloth &cloth = job.cloths.front();
        if (!cloth.name.empty()) parts << fromCore(cloth.name);
        if (cloth.bolt)
            parts << shownLengthWithUnit(cloth.bolt->width, job.unit);
        else
            parts << (cloth.remnants.size() == 1 ? tr("1 remnant")
                                                 : tr("%n remnants", nullptr, int(cloth.remnants.size())));
        parts << (cloth.way == Way::One ? tr("one way") : tr("either way"));
    }
    m_subtitle->setText(parts.join(u" · "_s));
    setWindowTitle(tr("%1[*] – Boltwright").arg(m_document->displayName()));
    setWindowFilePath(m_document->fileName());
    setWindowModified(m_document->isUnsaved());
}

void MainWindow::refreshActions() {
    const int cut = m_document->selectedCut();
    const Layout &layout = m_document->layout();
    const bool any = cut >= 0;
    for (ActionId id : {ActionId::Turn, ActionId::HeadToFoot, ActionId::Lock, ActionId::MarkCut, ActionId::CutWrong,
                        ActionId::PutAside, ActionId::TrimCut})
        (*m_actions)[id]->setEnabled(any);
    for (ActionId id : {ActionId::Print, ActionId::FlawFound}) (*m_actions)[id]->setEnabled(!layout.cuts.empty());
    (*m_actions)[ActionId::ChangePlaces]->setEnabled(m_document->selectedCuts().size() == 2);
    for (ActionId id : {ActionId::PushToCutEnd, ActionId::AllPanels, ActionId::NextPanel, ActionId::PreviousPanel,
                        ActionId::AlsoNextPanel, ActionId::AlsoPreviousPanel})
        (*m_actions)[id]->setEnabled(!layout.cuts.empty());
    (*m_actions)[ActionId::Lock]->setChecked(any && layout.cuts[std::size_t(cut)].state == CutState::Locked);
    (*m_actions)[ActionId::MarkCut]->setChecked(any && layout.cuts[std::size_t(cut)].state == CutState::Cut);
    const bool running = m_planning->isRunning();
    const bool something = !m_document->job().panels.empty();
    (*m_actions)[ActionId::Plan]->setEnabled(!running && something);
    (*m_actions)[ActionId::Stop]->setEnabled(running);
    for (ActionId id : {ActionId::WaysToFit, ActionId::HowToRun, ActionId::AskFor, ActionId::Why})
        (*m_actions)[id]->setEnabled(something);
    m_planButton->setEnabled(running || something);
    m_planButton->setToolTip((*m_actions)[running ? ActionId::Stop : ActionId::Plan]->toolTip());
    (*m_actions)[ActionId::TapeLengths]->setEnabled(!firstUntaped(m_document->job()).second.isEmpty());
    for (ActionId id : {ActionId::SavePiece, ActionId::PrintPiece}) (*m_actions)[id]->setEnabled(something);
    QUndoStack *history = m_document->history();
    QAction *undo = (*m_actions)[ActionId::Undo], *redo = (*m_actions)[ActionId::Redo];
    undo->setEnabled(history->canUndo());
    redo->setEnabled(history->canRedo());
    undo->setText(history->canUndo() ? tr("Undo: %1").arg(history->undoText()) : tr("Undo"));
    redo->setText(history->canRedo() ? tr("Redo: %1").arg(history->redoText()) : tr("Redo"));
}

void MainWindow::refreshCentre() {
    const bool empty = !m_begun && m_document->job().panels.empty();
    QWidget *wanted = empty ? static_cast<QWidget *>(m_start) : m_tablePage;
    if (m_centre->currentWidget() != wanted) m_centre->setCurrentWidget(wanted);
    m_kept->setVisible(!empty && m_sheet->isHidden() && m_outlines->isHidden() && m_preferences.paneShown(u"kept"_s));
    if (m_sheet->isVisible()) m_sheet->raise();
}

void MainWindow::scaleText(int step) {
    m_preferences.setTextPercent(m_preferences.textPercent() + step);
    applyLook(*qApp, m_preferences.look(), m_preferences.textPercent());
}

void MainWindow::setLook(int look) {
    m_preferences.setLook(Preferences::Look(look));
    applyLook(*qApp, m_preferences.look(), m_preferences.textPercent());
}

void MainWindow::changeEvent(QEvent *event) {
    QMainWindow::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && m_actions) m_actions->paintIcons(coloursOf(palette()).accent);
}

void MainWindow::showHelp(const QString &page) { showPage(tr("How to …"), new HelpPage(page)); }

void MainWindow::showKeys() {
    auto *page = new QTextBrowser;
    page->setAccessibleName(tr("Keys and gestures"));
    QString text = u"<table cellpadding='5'>"_s;
    const auto row = [&](const QString &key, const QString &title, const QString &sentence) {
        text += u"<tr><td><b>%1</b></td><td>%2</td><td>%3</td></tr>"_s.arg(key.toHtmlEscaped(), title.toHtmlEscaped(),
                                                                           sentence.toHtmlEscaped());
    };
    for (const ActionRow &action : actionTable())
        row(action.key.toString(QKeySequence::NativeText), Actions::textOf(action), Actions::sentenceOf(action));
    row(tr("Drag"), tr("Move a panel"),
        tr("It comes to rest on the nearest allowed place; Escape puts it back. With Ctrl or Alt it snaps to nothing, "
           "R "
           "turns it in the hand. Down to the tray it is put aside."));
    row(tr("Shift and click"), tr("Take along"),
        tr("The panel is moved with those selected; once more leaves it out again."));
    row(tr("Drag on bare table"), tr("Chalk ring"), tr("All panels that it meets are selected."));
    row(tr("Arrows"), tr("Nudge"),
        tr("A small step; with Shift on to the next allowed place that way, or for several panels a long step."));
    row(tr("Tab"), tr("Next panel"), tr("And with Shift the one before."));
    row(tr("Wheel"), tr("Unroll"), tr("With Ctrl nearer and further, with Shift up and down."));
    row(tr("Middle button"), tr("Move the view"), tr("Also by dragging with Space held."));
    row(tr("Enter, Tab, arrows, Delete"), tr("Chalk and notes"),
        tr("With one of these tools in use: add one, go from one to the next, move it, take it off."));
    page->setHtml(text + u"</table>"_s);
    showPage(tr("Keys and gestures"), page);
}

void MainWindow::showAbout() {
    QMessageBox::about(
        this, tr("About Boltwright"),
        tr("<b>Boltwright</b> plans how upholstery cloth is cut.<br>A plan is no substitute for measuring: "
           "measure the cloth and the work before you cut. What is cut cannot be undone."));
}

void MainWindow::closeEvent(QCloseEvent *event) {
    m_sheet->close();
    m_planning->stop();
    if (!m_files->mayLeave()) {
        event->ignore();
        return;
    }
    m_preferences.setGeometry(saveGeometry());
    event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent *event) {
    if (event->mimeData()->hasUrls() && event->mimeData()->urls().first().isLocalFile()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent *event) {
    event->acceptProposedAction();
    m_files->openFile(event->mimeData()->urls().first().toLocalFile());
}

} // namespace boltwright::ui
