#include "app/cli/command.h"
#include "ui/run_window.h"
#include "ui/text/language.h"

#include <QApplication>

#include <CLI/CLI.hpp>

#include <memory>
#include <optional>
#include <string>

namespace boltwright::app {

void addWindow(CLI::App &program, Command &chosen, int argc, char **argv) {
    auto job = std::make_shared<std::string>();
    program.add_option("JOB", *job, "The job to open in the window; none: begin with an empty one");
    chosen = [job, argc, argv]() mutable {
        QApplication application(argc, argv);
        ui::takeTheReadersLanguage();
        std::optional<std::filesystem::path> file;
        if (!job->empty()) file = *job;
        return ui::runWindow(application, file) == 0 ? Exit::Done : Exit::ProgramFault;
    };
}

} // namespace boltwright::app
