// Every control tells what it is for, has a name for those who listen, is reached by the keyboard and shows when it is.

#include "tests/ui/window_fixture.h"
#include "ui/canvas/canvas.h"
#include "ui/document/standing.h"
#include "ui/help/help_page.h"
#include "ui/window/look.h"
#include "ui/window/over_sheet.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QAccessible>
#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QSlider>
#include <QTextBrowser>

#include <catch2/catch.hpp>

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

/// Pages on which every control has its sentence by now; each of the others joins them with its sentences.
const QList<ActionId> pages = {ActionId::HowTo, ActionId::Keys};

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

TEST_CASE("every control around the table and on the help pages tells what it is for", "[controls]") {
    WindowFixture fixture;
    MainWindow &window = fixture.show({1400, 900});
    openSample(window);
    everyControlTells(window, u"table"_s);
    for (const ActionId page : pages) {
        window.actions()[page]->trigger();
        QTest::qWait(30);
        everyControlTells(window.sheet(), window.actions()[page]->text());
        window.sheet().close();
    }
    fixture.leave();
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
    openSample(window);
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

TEST_CASE("the window fits a small screen at 100 percent of text, and a full HD one at 200", "[controls]") {
    for (const int percent : {100, 130, 160, 200}) {
        applyLook(*qApp, Preferences::Look::Light, percent);
        WindowFixture fixture;
        MainWindow &window = fixture.show({1366, 768});
        openSample(window);
        QTest::qWait(20);
        INFO(percent << " %: " << window.minimumSizeHint().width() << " x " << window.minimumSizeHint().height());
        const QSize screen = percent == 100 ? QSize(1366, 768) : QSize(1920, 1080);
        CHECK(window.minimumSizeHint().width() <= screen.width());
        CHECK(window.minimumSizeHint().height() <= screen.height());
        for (QWidget *w : controlsIn(window)) {
            const auto *button = qobject_cast<QAbstractButton *>(w);
            if (!button || button->text().isEmpty() || button->inherits("QToolButton")) continue;
            INFO(called(w));
            CHECK(w->width() >= w->minimumSizeHint().width());
            CHECK(w->height() + 1 >= w->fontMetrics().height());
        }
        fixture.leave();
    }
    applyLook(*qApp, Preferences::Look::Light, 100);
    qApp->setStyleSheet({});
}
