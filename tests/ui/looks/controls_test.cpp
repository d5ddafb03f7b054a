// Every control tells what it is for, has a name for those who listen, is reached by the keyboard and shows when it is.

#include "core/edit/job_edit.h"
#include "core/edit/outline_edit.h"
#include "core/geometry/shape_ops.h"
#include "core/planner/plan.h"
#include "tests/ui/window_fixture.h"
#include "ui/answers/ways_page.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/outline_bar.h"
#include "ui/document/standing.h"
#include "ui/help/help_page.h"
#include "ui/panes/ledge.h"
#include "ui/panes/standing_pane.h"
#include "ui/window/look.h"
#include "ui/window/notice_bar.h"
#include "ui/window/over_sheet.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QAccessible>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QSlider>
#include <QTextBrowser>

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

bool isControl(const QWidget *w) {
    if (w->objectName().startsWith(u"qt_"_s)) return false; // Qt's own inner parts
    return qobject_cast<const QAbstractButton *>(w) || qobject_cast<const QComboBox *>(w) ||
           qobject_cast<const QLineEdit *>(w) || qobject_cast<const QAbstractSpinBox *>(w) ||
           qobject_cast<const QAbstractItemView *>(w) || qobject_cast<const QPlainTextEdit *>(w) ||
           qobject_cast<const QSlider *>(w);
}

/// A control that is a part of another one: the line of a number field, the corner of a table.
bool isInside(const QWidget *w) {
    for (const QWidget *p = w->parentWidget(); p; p = p->parentWidget())
        if (qobject_cast<const QComboBox *>(p) || qobject_cast<const QAbstractSpinBox *>(p) ||
            (qobject_cast<const QAbstractItemView *>(p) && !p->inherits("QListWidget")))
            return true;
    return w->inherits("QHeaderView") || w->inherits("QTableCornerButton");
}

QList<QWidget *> controlsIn(QWidget &window) {
    QList<QWidget *> all;
    for (QWidget *w : window.findChildren<QWidget *>())
        if (w->isVisible() && isControl(w) && !isInside(w)) all << w;
    return all;
}

std::string called(const QWidget *w) {
    QStringList parts;
    parts << QString::fromLatin1(w->metaObject()->className());
    if (!w->objectName().isEmpty()) parts << w->objectName();
    if (const auto *b = qobject_cast<const QAbstractButton *>(w)) parts << u"“%1”"_s.arg(b->text());
    if (!w->accessibleName().isEmpty()) parts << w->accessibleName();
    for (const QWidget *p = w->parentWidget(); p; p = p->parentWidget())
        if (QString::fromLatin1(p->metaObject()->className()).startsWith(u"boltwright"_s)) {
            parts << u"in %1"_s.arg(QString::fromLatin1(p->metaObject()->className()));
            break;
        }
    return parts.join(u' ').toStdString();
}

void everyControlTells(QWidget &window, const QString &where) {
    for (QWidget *w : controlsIn(window)) {
        INFO(where.toStdString() << ": " << called(w));
        CHECK_FALSE(w->toolTip().isEmpty());
        if (const auto *b = qobject_cast<QAbstractButton *>(w)) CHECK(w->toolTip() != b->text());
        if (w->focusPolicy() == Qt::NoFocus) continue;
        QAccessibleInterface *heard = QAccessible::queryAccessibleInterface(w);
        REQUIRE(heard);
        CHECK_FALSE(heard->text(QAccessible::Name).isEmpty());
    }
}

/// Every page that is laid over the table.
const QList<ActionId> pages = {
    ActionId::Measure,   ActionId::Panels,         ActionId::Matches,
    ActionId::Cloths,    ActionId::ClothQuestions, ActionId::Trimmings,
    ActionId::ShopRules, ActionId::JobCard,        ActionId::RemnantFromPhotograph,
    ActionId::WaysToFit, ActionId::HowToRun,       ActionId::AskFor,
    ActionId::Why,       ActionId::HowTo,          ActionId::Keys,
    ActionId::Outlines,  ActionId::FlawFound,
};

/// A job in which nothing is missing that a page may ask about: two cloths, one of them remnants with flaws of both
/// kinds, one patterned; a trimming of each kind; panels that lie on the cloth.
void openFullJob(MainWindow &window) {
    window.files().openSample(u":/boltwright/samples/striped-settee.boltwright"_s);
    Job job = window.document().job();
    Cloth scraps = newCloth(job);
    scraps.bolt.reset();
    scraps.selvage = Length{};
    scraps.pattern = Pattern{.across = 9_in, .along = 12_in, .drop = {}, .motif = {4.5_in, 0_in}, .kept = {}};
    Remnant remnant;
    remnant.id = "A";
    remnant.outline = ringOf(ClothBox{{}, {40_in, 50_in}});
    remnant.flaws = {{ringOf(ClothBox{{5_in, 5_in}, {8_in, 9_in}}), "slub", {}},
                     {ringOf(Spot{{20_in, 20_in}, 2_in}), "", {}}};
    scraps.remnants = {remnant};
    job.cloths.push_back(scraps);
    for (Trimming::Kind kind : {Trimming::Kind::Welt, Trimming::Kind::DoubleWelt, Trimming::Kind::Gimp,
                                Trimming::Kind::Cord, Trimming::Kind::Nails}) {
        Trimming t;
        t.kind = kind;
        t.edges = 120_in;
        t.strip = 1.5_in;
        t.shortest = 12_in;
        t.from = kind == Trimming::Kind::Welt         ? StripsFrom::Scraps
                 : kind == Trimming::Kind::DoubleWelt ? StripsFrom::Cloth
                                                      : StripsFrom::Bought;
        t.head = 0.5_in;
        job.trimmings.push_back(t);
    }
    Cut cut;
    cut.panel = job.panels.front().id;
    cut.x = cut.y = 2_in;
    Layout layout;
    layout.cuts = {cut};
    job.layouts = {layout};
    REQUIRE(window.document().changeJob(job, u"All that there can be"_s));
    QTest::qWait(20);
}

/// The widgets that the page's own controls are in.
QWidget *pageOf(MainWindow &window, ActionId page) {
    return page == ActionId::Outlines ? static_cast<QWidget *>(&window.outlines()) : &window.sheet();
}

void showPage(MainWindow &window, ActionId page) {
    window.actions()[page]->trigger();
    QTest::qWait(30);
    if (page == ActionId::Outlines) QTest::keyClick(&window.canvas(), Qt::Key_Tab); // a corner, and what is told of it
    QTest::qWait(10);
    REQUIRE(pageOf(window, page)->isVisible());
}

void leavePage(MainWindow &window, ActionId page) {
    if (page == ActionId::Outlines)
        window.outlines().close();
    else
        window.sheet().close();
    QTest::qWait(10);
}

void openSample(MainWindow &window) {
    window.files().openSample(u":/boltwright/samples/striped-settee.boltwright"_s);
    QTest::qWait(20);
}

} // namespace

TEST_CASE("every action has a sentence that says more than its name", "[controls]") {
    for (const ActionRow &row : actionTable()) {
        INFO(row.text);
        CHECK(Actions::sentenceOf(row).size() > 10);
        CHECK(Actions::sentenceOf(row).endsWith(u'.'));
        CHECK(Actions::sentenceOf(row) != Actions::textOf(row));
    }
    // No two share a key.
    QList<QKeySequence> keys;
    for (const ActionRow &row : actionTable()) {
        if (row.key.isEmpty()) continue;
        INFO(row.key.toString().toStdString());
        CHECK_FALSE(keys.contains(row.key));
        keys << row.key;
    }
}

TEST_CASE("every control of the empty window tells what it is for", "[controls]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show();
    everyControlTells(window, u"start"_s);
    fixture.leave();
}

TEST_CASE("every control around the table and on every page tells what it is for", "[controls]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1400, 900});
    openFullJob(window);
    everyControlTells(window, u"table"_s);
    for (const ActionId page : pages) {
        showPage(window, page);
        everyControlTells(*pageOf(window, page), window.actions()[page]->text());
        leavePage(window, page);
    }
    // Each cloth asks for what is its own.
    for (int cloth = 0; cloth < int(window.document().job().cloths.size()); ++cloth) {
        window.showClothForm(cloth);
        QTest::qWait(20);
        everyControlTells(window.sheet(), u"cloth %1"_s.arg(cloth));
        window.showSwatchPage(cloth);
        QTest::qWait(20);
        everyControlTells(window.sheet(), u"swatch %1"_s.arg(cloth));
    }
    // What each part may give up, in place of the order.
    showPage(window, ActionId::WaysToFit);
    QTest::mouseClick(qobject_cast<WaysPage *>(window.sheet().content())->leaveButton(), Qt::LeftButton);
    QTest::qWait(20);
    everyControlTells(window.sheet(), u"leave"_s);
    window.sheet().close();
    // And the line that offers what can be done where nothing fits.
    Job job = window.document().job();
    job.cloths.front().bolt->length = 3_in;
    REQUIRE(window.document().changeJob(job, u"Three inches"_s));
    window.planOptions().seconds = 0.2;
    window.actions()[ActionId::Plan]->trigger();
    REQUIRE(waitFor([&] { return window.notice().isVisible(); }, 20000));
    everyControlTells(window.notice(), u"does not fit"_s);
    fixture.leave();
}

TEST_CASE("Tab goes through every page, and whatever it stops at shows it", "[controls]") {
    WindowFixture fixture;
    boltwright::ui::applyLook(*qApp, Preferences::Look::Light, 100);
    MainWindow &window = fixture.show({1400, 900});
    openFullJob(window);
    for (const ActionId page : pages) {
        showPage(window, page);
        const std::string where = window.actions()[page]->text().toStdString();
        QWidget *own = pageOf(window, page);
        QList<QWidget *> reached;
        int rounds = 0;
        // Fields of a table are gone through one by one, so it takes a while; three times through is enough.
        for (int i = 0; i < 4000 && rounds < 3; ++i) {
            QWidget *now = QApplication::focusWidget();
            if (now && !reached.contains(now)) reached << now;
            QTest::keyClick(now ? now : &window, Qt::Key_Tab);
            if (QApplication::focusWidget() != now && QApplication::focusWidget() == reached.value(0)) ++rounds;
        }
        for (QWidget *w : controlsIn(*own)) {
            if (!w->isEnabled() || w->focusPolicy() == Qt::NoFocus) continue;
            // Of buttons of which one is chosen, Tab stops at that one; the arrows go on to the others.
            if (const auto *radio = qobject_cast<QAbstractButton *>(w);
                radio && radio->autoExclusive() && !radio->isChecked())
                continue;
            INFO(where << ": " << called(w));
            CHECK((reached.contains(w) || reached.contains(w->focusProxy())));
        }
        for (QWidget *w : reached) {
            INFO(where << ": " << called(w));
            // Nothing has the keyboard that lies out of sight below the page.
            if (own == &window.sheet()) {
                CHECK_FALSE(w == &window.canvas());
                CHECK_FALSE(window.ledge().isAncestorOf(w));
            }
            if (!own->isAncestorOf(w)) continue; // what stands around the table has its own test
            w->setFocus(Qt::TabFocusReason);
            QTest::qWait(1);
            const QImage with = w->grab().toImage();
            w->clearFocus();
            const QImage without = w->grab().toImage();
            CHECK(with != without);
        }
        leavePage(window, page);
    }
    fixture.leave();
    qApp->setStyleSheet({});
}

TEST_CASE("every entry of the menus has a sentence", "[controls]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show();
    for (QAction *menu : window.menuBar()->actions())
        for (QAction *action : menu->menu()->actions()) {
            if (action->isSeparator() || action->menu()) continue;
            INFO(action->text().toStdString());
            CHECK(action->toolTip().size() > action->text().size());
        }
    fixture.leave();
}

TEST_CASE("Tab reaches every control, and each shows that it has the keyboard", "[controls]") {
    WindowFixture fixture;
    boltwright::ui::applyLook(*qApp, Preferences::Look::Light, 100);
    MainWindow &window = fixture.show({1400, 900});
    for (const bool open : {false, true}) {
        if (open) openSample(window);
        QSet<QWidget *> reached;
        window.activateWindow();
        for (int i = 0; i < 200; ++i) {
            QWidget *now = QApplication::focusWidget();
            if (now) reached << now;
            QTest::keyClick(now ? now : &window, Qt::Key_Tab);
        }
        for (QWidget *w : controlsIn(window)) {
            if (!w->isEnabled() || w->focusPolicy() == Qt::NoFocus) continue;
            INFO((open ? "table: " : "start: ") << called(w));
            CHECK((reached.contains(w) || reached.contains(w->focusProxy())));
            if (!qobject_cast<QAbstractButton *>(w)) continue;
            w->setFocus(Qt::TabFocusReason);
            QTest::qWait(1);
            const QImage with = w->grab().toImage();
            w->clearFocus();
            const QImage without = w->grab().toImage();
            CHECK(with != without);
        }
    }
    fixture.leave();
    qApp->setStyleSheet({});
}

TEST_CASE("whoever listens hears a name for all that can be reached", "[controls]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1400, 900});
    openFullJob(window);
    int heard = 0;
    const std::function<void(QAccessibleInterface *)> walk = [&](QAccessibleInterface *part) {
        if (!part || !part->isValid() || part->state().invisible) return;
        if (part->state().focusable) {
            ++heard;
            const QObject *object = part->object();
            INFO((object ? object->metaObject()->className() : "part") << " in role " << part->role());
            CHECK_FALSE(part->text(QAccessible::Name).isEmpty());
        }
        for (int i = 0; i < part->childCount(); ++i) walk(part->child(i));
    };
    walk(QAccessible::queryAccessibleInterface(&window));
    CHECK(heard > 15);
    for (const ActionId page : pages) {
        showPage(window, page);
        INFO(window.actions()[page]->text().toStdString());
        walk(QAccessible::queryAccessibleInterface(pageOf(window, page)));
        leavePage(window, page);
    }
    fixture.leave();
}

TEST_CASE("what was out of use below a page is so again when the page goes", "[controls]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show();
    openSample(window);
    QWidget *over = window.sheet().parentWidget();
    auto *off = new QPushButton(u"Off"_s, over), *on = new QPushButton(u"On"_s, over);
    off->setEnabled(false);
    window.actions()[ActionId::Cloths]->trigger();
    CHECK_FALSE(on->isEnabled());
    CHECK_FALSE(window.canvas().isEnabled());
    window.showPanelTable(); // a page in place of a page
    window.sheet().close();
    CHECK(on->isEnabled());
    CHECK(window.canvas().isEnabled());
    CHECK_FALSE(off->isEnabled());
    fixture.leave();
}

TEST_CASE("no heading stands over nothing", "[controls]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1280, 720});
    const auto headed = [&] {
        for (QLabel *label : window.standingPane().findChildren<QLabel *>(u"paneTitle"_s))
            if (label->text() == u"What holds it back"_s) return label->isVisible();
        FAIL("the pane has no such heading");
        return false;
    };
    CHECK(window.standingPane().sentences().isEmpty());
    CHECK_FALSE(headed());
    openSample(window);
    CHECK_FALSE(window.standingPane().sentences().isEmpty());
    CHECK(headed());
    fixture.leave();
}

TEST_CASE("help has a page for each thing, with its pictures", "[controls]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show();
    REQUIRE(helpPages().size() >= 8);
    for (const auto &[page, title] : helpPages()) {
        INFO(title.toStdString());
        HelpPage shown(page);
        CHECK(shown.shownText().startsWith(title));
        auto *browser = shown.findChild<QTextBrowser *>();
        REQUIRE(browser);
        const QString text = browser->toMarkdown();
        for (qsizetype at = text.indexOf(u"]("_s); at >= 0; at = text.indexOf(u"]("_s, at + 1)) {
            const QString name = text.mid(at + 2, text.indexOf(u')', at) - at - 2);
            INFO(name.toStdString());
            CHECK(QFile::exists(u":/boltwright/help/%1"_s.arg(name)));
        }
        // README leads to the same page by the same title.
        QFile readme(QStringLiteral(BOLTWRIGHT_SOURCE_DIR "/README.md"));
        REQUIRE(readme.open(QIODevice::ReadOnly));
        CHECK(QString::fromUtf8(readme.readAll()).contains(u"[%1](resources/help/%2.md)"_s.arg(title, page)));
    }
    window.actions()[ActionId::HowTo]->trigger();
    CHECK(window.sheet().isVisible());
    fixture.leave();
}

namespace {

/// Whatever lies between a widget and the window, of which the widget may show a part and be moved to show the rest.
bool isScrolled(const QWidget *w, const QWidget *window) {
    for (const QWidget *p = w->parentWidget(); p && p != window; p = p->parentWidget())
        if (p->inherits("QAbstractScrollArea")) return true;
    return false;
}

/// What the window must be able to show at that size: itself no larger, and every control whole and inside it, but
/// for what is scrolled to.
void fits(MainWindow &window, QSize screen, const std::string &where) {
    INFO(where << ": the window is " << window.width() << " x " << window.height());
    CHECK(window.width() <= screen.width());
    CHECK(window.height() <= screen.height());
    // A page is scrolled up and down where it is long, but not from side to side as well.
    if (window.sheet().isVisible()) {
        const auto *page = window.sheet().findChild<QScrollArea *>(QString(), Qt::FindDirectChildrenOnly);
        REQUIRE(page);
        CHECK(page->horizontalScrollBar()->maximum() == 0);
    }
    for (QWidget *w : controlsIn(window)) {
        INFO(called(w) << " has " << w->width() << " x " << w->height() << ", wants " << w->minimumSizeHint().width());
        const auto *button = qobject_cast<QAbstractButton *>(w);
        if (button && !button->text().isEmpty() && !button->inherits("QToolButton")) {
            CHECK(w->width() >= w->minimumSizeHint().width());
            CHECK(w->height() + 1 >= w->fontMetrics().height());
        }
        if (const auto *line = qobject_cast<QLineEdit *>(w)) {
            const QString &said = line->text().isEmpty() ? line->placeholderText() : line->text();
            CHECK((w->width() >= line->fontMetrics().horizontalAdvance(said) + 8 || said.size() > 24));
        }
        if (const auto *box = qobject_cast<QComboBox *>(w); box && box->currentText().size() < 40)
            CHECK(w->width() >= box->fontMetrics().horizontalAdvance(box->currentText()) + 20);
        if (isScrolled(w, &window)) continue;
        if (window.sheet().isVisible() && window.sheet().parentWidget()->isAncestorOf(w) &&
            !window.sheet().isAncestorOf(w))
            continue; // it lies below the page
        CHECK(window.rect().contains(QRect(w->mapTo(&window, QPoint(0, 0)), w->size())));
        CHECK(w->visibleRegion().boundingRect().contains(w->rect().adjusted(1, 1, -1, -1)));
    }
}

} // namespace

TEST_CASE("the window and every page fit a small screen with usual letters, and a full HD one with twice as large ones",
          "[controls][fits]") {
    for (const auto &[percent, screen] : {std::pair{100, QSize(1280, 720)}, std::pair{130, QSize(1366, 768)},
                                          std::pair{150, QSize(1280, 720)}, std::pair{200, QSize(1920, 1080)}}) {
        applyLook(*qApp, Preferences::Look::Light, percent);
        WindowFixture fixture;
        MainWindow &window = fixture.show(screen);
        const std::string at = std::to_string(percent) + " %";
        fits(window, screen, at + " start");
        openFullJob(window);
        fits(window, screen, at + " table");
        window.notice().say(u"The picture of a cloth is gone; the cloth is drawn from its description instead."_s,
                            {{u"Print what has changed"_s, [] {}}, {u"Take it out"_s, [] {}}});
        fits(window, screen, at + " notice");
        window.notice().hide();
        for (const ActionId page : pages) {
            showPage(window, page);
            fits(window, screen, at + ' ' + window.actions()[page]->text().toStdString());
            leavePage(window, page);
        }
        fixture.leave();
    }
    applyLook(*qApp, Preferences::Look::Light, 100);
    qApp->setStyleSheet({});
}
