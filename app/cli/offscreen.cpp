#include "app/cli/offscreen.h"

#include "ui/text/language.h"

#include <cstdio>

namespace boltwright::app {

namespace {

int &offscreen(int &argc) {
    // Whatever display the session has: the pages must look the same with and without one.
    qputenv("QT_QPA_PLATFORM", "offscreen");
    // What Qt remarks about the session (no runtime folder, say) is nothing to whoever asked for a picture.
    qInstallMessageHandler([](QtMsgType type, const QMessageLogContext &, const QString &text) {
        if (type == QtFatalMsg) std::fprintf(stderr, "boltwright: a fault of the program: %s\n", qPrintable(text));
    });
    return argc;
}

} // namespace

Offscreen::Offscreen() : m_application(offscreen(m_argc), m_argv) { ui::takeTheReadersLanguage(); }

} // namespace boltwright::app
