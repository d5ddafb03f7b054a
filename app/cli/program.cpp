#include "app/cli/program.h"

#include "app/cli/command.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <csignal>
#include <cstdio>
#include <exception>
#include <filesystem>
#include <unistd.h>

namespace boltwright::app {

namespace {

/// A failed assertion has said what it was; the shell is to see a fault of the program, not a signal.
void endAsProgramFault(int) { _exit(int(Exit::ProgramFault)); }

Exit readAndRun(int argc, char **argv) {
    CLI::App program("Plans the cutting of upholstery cloth.", "boltwright");
    program.set_version_flag("--version", "boltwright " BOLTWRIGHT_VERSION, "Say which version this is");
    program.set_help_flag("-h,--help", "Say how it is used");
    program.require_subcommand(0, 1);
    program.footer("Exit codes: 0 done and it fits; 1 it does not fit or is not right; 2 the input is wrong, and one "
                   "line says why; 3 a fault of the program.\nMore of a command: boltwright plan --help");
    Command chosen;
    addWindow(program, chosen, argc, argv);
    addPlan(program, chosen);
    addCheck(program, chosen);
    addDraw(program, chosen);
    addSheet(program, chosen);
    addClient(program, chosen);
    addNote(program, chosen);
    try {
        program.parse(argc, argv);
    } catch (const CLI::Success &asked) { // help or version
        program.exit(asked);
        return Exit::Done;
    } catch (const CLI::ParseError &wrong) {
        return inputIsWrong({fmt::format("{}; see boltwright --help", wrong.what())});
    }
    std::signal(SIGABRT, endAsProgramFault);
    return chosen();
}

} // namespace

int run(int argc, char **argv) {
    try {
        return int(readAndRun(argc, argv));
    } catch (const std::exception &fault) {
        fmt::print(stderr, "boltwright: a fault of the program: {}\n", fault.what());
        return int(Exit::ProgramFault);
    }
}

} // namespace boltwright::app
