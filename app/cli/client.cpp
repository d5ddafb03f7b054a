#include "app/cli/command.h"
#include "app/cli/page.h"
#include "core/paper/words.h"
#include "ui/paper/client_page.h"

#include <CLI/CLI.hpp>

#include <filesystem>
#include <memory>

namespace boltwright::app {

namespace {

struct ClientArguments {
    PageArguments page;
    std::string paper;
    double seconds = 5;
};

/// Why each bolt takes what it takes. A staircase that cannot be planned is left off the page.
std::vector<Staircase> staircases(const Job &job, const Layout &layout, double seconds) {
    std::vector<Staircase> out;
    if (seconds <= 0) return out;
    for (const Cloth &cloth : job.cloths) {
        if (!cloth.bolt) continue;
        StaircaseOptions options;
        options.plan.seconds = seconds;
        options.plan.from = &layout;
        if (auto why = staircaseOf(job, cloth.id, options)) out.push_back(*std::move(why));
    }
    return out;
}

Exit runClient(const ClientArguments &arguments) {
    Paper paper = Paper::Letter;
    if (!arguments.paper.empty()) {
        const auto named = paperFromCommandLine(arguments.paper);
        if (!named) return inputIsWrong(named.error());
        paper = *named;
    }
    return writePage(arguments.page, [&](const Job &asRead, const Layout &layout) {
        const Job job = namedForPaper(asRead, std::filesystem::path(arguments.page.job).stem().string());
        return ui::writeClientPage(job, layout, arguments.page.out, paper, staircases(job, layout, arguments.seconds));
    });
}

} // namespace

void addClient(CLI::App &program, Command &chosen) {
    auto arguments = std::make_shared<ClientArguments>();
    auto *command = program.add_subcommand("client", "Write the client's page: what is needed, why, and what it costs");
    addPageArguments(*command, arguments->page, "FILE.pdf");
    command->add_option("--paper", arguments->paper, "letter, a4, legal, a3 or tabloid; left out: letter")
        ->type_name("PAPER");
    command
        ->add_option("--seconds", arguments->seconds,
                     "How long to plan for the why of each cloth, 0 for none; left out: 5")
        ->check(CLI::Range(0.0, 3600.0))
        ->type_name("S");
    command->callback([arguments, &chosen] { chosen = [arguments] { return runClient(*arguments); }; });
}

} // namespace boltwright::app
