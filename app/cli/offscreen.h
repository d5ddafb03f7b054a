#pragma once

#include <QGuiApplication>

namespace boltwright::app {

/// Qt without a display, for commands that only write a picture or a page.
class Offscreen {
public:
    Offscreen();

private:
    int m_argc = 1;
    char m_name[11] = "boltwright";
    char *m_argv[2] = {m_name, nullptr};
    QGuiApplication m_application;
};

} // namespace boltwright::app
