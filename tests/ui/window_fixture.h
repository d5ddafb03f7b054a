#pragma once

#include "ui/actions/actions.h"
#include "ui/planning/planning.h"
#include "ui/settings/preferences.h"
#include "ui/window/file_desk.h"
#include "ui/window/main_window.h"

#include <QMouseEvent>
#include <QTemporaryDir>
#include <QTest>

#include <functional>
#include <memory>

namespace boltwright::ui {

/// A window of its own, with preferences and unsaved copies in a folder that goes away.
class WindowFixture {
public:
    WindowFixture();
    ~WindowFixture();
    MainWindow &show(QSize size = {1200, 800});
    /// Closes without a question.
    void leave();
    QString folder() const { return m_folder.path(); }
    Preferences &preferences() { return *m_preferences; }

private:
    QTemporaryDir m_folder;
    std::unique_ptr<Preferences> m_preferences;
    std::unique_ptr<MainWindow> m_window;
};

/// Lets events come until `holds`; false when it does not in time.
bool waitFor(const std::function<bool()> &holds, int milliseconds = 5000);
/// A mouse move with the left button held, as the window system would send it.
void moveMouse(QWidget *widget, QPoint to, Qt::KeyboardModifiers modifiers = {});

} // namespace boltwright::ui
