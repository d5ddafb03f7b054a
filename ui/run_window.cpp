#include "ui/run_window.h"

#include "ui/settings/preferences.h"
#include "ui/window/look.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QFile>

using namespace Qt::StringLiterals;

static void initResources() { Q_INIT_RESOURCE(window); } // outside the namespace, as the macro asks

namespace boltwright::ui {

int runWindow(QApplication &application, const std::optional<std::filesystem::path> &job) {
    initResources();
    QCoreApplication::setApplicationName(u"boltwright"_s);
    QCoreApplication::setOrganizationName(u"boltwright"_s);
    QGuiApplication::setApplicationDisplayName(u"Boltwright"_s);
    QGuiApplication::setDesktopFileName(u"boltwright"_s);
    Preferences preferences;
    applyLook(application, preferences.look(), preferences.textPercent());
    MainWindow window(preferences);
    window.show();
    if (job)
        window.openFile(QFile::decodeName(QByteArray::fromStdString(job->string())));
    else
        window.offerLeftBehind();
    return application.exec();
}

} // namespace boltwright::ui
