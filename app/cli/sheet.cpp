#include "app/cli/command.h"
#include "app/cli/page.h"
#include "ui/paper/cutting_sheet.h"

#include <CLI/CLI.hpp>

#include <memory>

namespace boltwright::app {

namespace {

struct SheetArguments {
    PageArguments page;
    std::string paper, wayRound;
    int scale = 0;
};

Exit runSheet(const SheetArguments &arguments) {
    SheetOptions options;
    if (!arguments.paper.empty()) {
        const auto paper = paperFromCommandLine(arguments.paper);
        if (!paper) return inputIsWrong(paper.error());
        options.paper = *paper;
    }
    if (arguments.scale > 0) options.scale = arguments.scale;
    if (!arguments.wayRound.empty()) options.sideways = arguments.wayRound == "sideways";
    return writePage(arguments.page, [&](const Job &job, const Layout &layout) -> Result<void> {
        if (std::filesystem::path(arguments.page.out).extension() == ".csv")
            return ui::writeChalkCsv(job, layout, arguments.page.out);
        return ui::writeCuttingSheet(job, layout, arguments.page.out, options);
    });
}

} // namespace

void addSheet(CLI::App &program, Command &chosen) {
    auto arguments = std::make_shared<SheetArguments>();
    auto *command = program.add_subcommand(
        "sheet", "Write the cutting sheet, to scale, with the list to chalk from; a .csv is the list alone");
    addPageArguments(*command, arguments->page, "FILE.pdf|FILE.csv");
    command->add_option("--paper", arguments->paper, "letter, a4, legal, a3 or tabloid; left out: letter")
        ->type_name("PAPER");
    command->add_option("--scale", arguments->scale, "10 for 1:10; left out: what fits")
        ->check(CLI::Range(1, 1000))
        ->type_name("N");
    command->add_option("--hold", arguments->wayRound, "upright or sideways; left out: what takes fewer pages")
        ->check(CLI::IsMember({"upright", "sideways"}))
        ->type_name("WAY");
    command->callback([arguments, &chosen] { chosen = [arguments] { return runSheet(*arguments); }; });
}

} // namespace boltwright::app
