#pragma once

#include <filesystem>
#include <optional>

class QApplication;

namespace boltwright::ui {

/// Shows the window, with a job opened where one is given, and returns when it is closed: the program's exit code.
int runWindow(QApplication &application, const std::optional<std::filesystem::path> &job);

} // namespace boltwright::ui
