#pragma once

#include "core/base/result.h"
#include "core/job/job.h"

#include <filesystem>
#include <functional>
#include <string>

namespace CLI {
class App;
}

namespace boltwright::app {

/// How a call ends, as the shell sees it.
enum class Exit {
    Done = 0,         ///< and it fits, or is right
    DoesNotFit = 1,   ///< or is not right
    InputIsWrong = 2, ///< one line says which file, which key and why
    ProgramFault = 3,
};

/// What the command line asks for. Each command puts its own here when it is the one named; it runs once the whole
/// line has been read.
using Command = std::function<Exit()>;

/// The window is what is wanted unless a command is named.
void addWindow(CLI::App &program, Command &chosen, int argc, char **argv);
void addPlan(CLI::App &program, Command &chosen);
void addCheck(CLI::App &program, Command &chosen);
void addDraw(CLI::App &program, Command &chosen);
void addSheet(CLI::App &program, Command &chosen);
void addClient(CLI::App &program, Command &chosen);
void addNote(CLI::App &program, Command &chosen);

/// Says what is wrong in one line on standard error.
Exit inputIsWrong(const Fault &fault);

/// The layout called `name`, or the last one when `name` is empty. Errors: there is none; the sentence names `file`.
Result<Layout> chosenLayout(const Job &job, const std::string &name, const std::filesystem::path &file);

} // namespace boltwright::app
