#include "tests/ui/window_fixture.h"

#include "core/edit/job_edit.h"

#include <QApplication>
#include <QStandardPaths>

using namespace Qt::StringLiterals;

static void initResources() { Q_INIT_RESOURCE(window); }

namespace boltwright::ui {

WindowFixture::WindowFixture() {
    initResources();
    QStandardPaths::setTestModeEnabled(true);
    m_preferences = std::make_unique<Preferences>(m_folder.filePath(u"preferences.ini"_s));
}

WindowFixture::~WindowFixture() {
    if (m_window) leave();
}

MainWindow &WindowFixture::show(QSize size) {
    m_window = std::make_unique<MainWindow>(*m_preferences);
    m_window->resize(size);
    m_window->show();
    (void)QTest::qWaitForWindowExposed(m_window.get());
    m_window->activateWindow();
    QTest::qWait(20);
    return *m_window;
}

void WindowFixture::leave() {
    m_window->planning().stop();
    m_window->document().startWith(newJob(Unit::Inch)); // nothing unsaved, so nothing is asked
    m_window->close();
    m_window.reset();
}

bool waitFor(const std::function<bool()> &holds, int milliseconds) { return QTest::qWaitFor(holds, milliseconds); }

void moveMouse(QWidget *widget, QPoint to, Qt::KeyboardModifiers modifiers) {
    QMouseEvent event(QEvent::MouseMove, to, widget->mapToGlobal(to), Qt::NoButton, Qt::LeftButton, modifiers);
    QApplication::sendEvent(widget, &event);
    QCoreApplication::processEvents();
}

} // namespace boltwright::ui
