#include "app/cli/command.h"
#include "app/cli/page.h"
#include "core/files/job_file.h"
#include "core/measure/length_text.h"
#include "core/paper/words.h"
#include "ui/paper/cutting_sheet.h"
#include "ui/paper/label_pages.h"
#include "ui/paper/true_size_pages.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <tuple>

namespace boltwright::app {

namespace {

struct SheetArguments {
    PageArguments page;
    std::string paper, wayRound, changedFrom;
    std::string scale;
    std::string labels;
    std::vector<std::string> labelSize, labelFrom, labelEvery;
    int labelsUsed = 0;
    bool trueSize = false;
    std::string panel;
};

Result<Length> lengthOf(const std::string &text, Unit unit, const std::string &option) {
    auto length = readLength(text, unit);
    if (!length) return fault(length.error().at(option));
    if (*length < Length{}) return fault(option + ": a length of a label cannot be below nothing");
    return length;
}

Result<std::pair<int, int>> columnsAndRows(const std::string &text) {
    int columns = 0, rows = 0, read = 0;
    if (std::sscanf(text.c_str(), "%dx%d%n", &columns, &rows, &read) == 2 && read == int(text.size()))
        return std::pair{columns, rows};
    return fault("--labels " + text + ": write slips, or columns and rows such as 3x10");
}

/// The grid that the command line tells; measures left out are those of the usual grid with so many columns and rows.
Result<LabelGrid> labelGrid(const SheetArguments &arguments, Paper paper, Unit unit) {
    if (arguments.labels == "slips") return slipsOn(paper);
    const auto counts = columnsAndRows(arguments.labels);
    if (!counts) return fault(counts.error());
    LabelGrid grid;
    bool usual = false;
    std::string known;
    for (const LabelGrid &one : usualLabelGrids()) {
        if (one.paper != paper) continue;
        known += fmt::format("{}{}x{}", known.empty() ? "" : ", ", one.columns, one.rows);
        if (one.columns != counts->first || one.rows != counts->second) continue;
        grid = one;
        usual = true;
    }
    if (!usual && arguments.labelSize.empty())
        return fault(fmt::format("--labels {}: on {} paper the usual grids are {}; for any other, say --label-size, "
                                 "--label-from and --label-every",
                                 arguments.labels, nameOf(paper), known.empty() ? "none" : known));
    grid.paper = paper;
    std::tie(grid.columns, grid.rows) = *counts;
    const auto take = [&](const std::vector<std::string> &texts, const char *option, Length &one,
                          Length &two) -> Result<void> {
        if (texts.empty()) return {};
        const auto first = lengthOf(texts[0], unit, option), second = lengthOf(texts[1], unit, option);
        if (!first) return fault(first.error());
        if (!second) return fault(second.error());
        one = *first;
        two = *second;
        return {};
    };
    if (auto r = take(arguments.labelSize, "--label-size", grid.width, grid.height); !r) return fault(r.error());
    if (auto r = take(arguments.labelFrom, "--label-from", grid.fromLeft, grid.fromTop); !r) return fault(r.error());
    if (!arguments.labelSize.empty() && arguments.labelEvery.empty()) {
        grid.everyAcross = grid.width;
        grid.everyDown = grid.height;
    }
    if (auto r = take(arguments.labelEvery, "--label-every", grid.everyAcross, grid.everyDown); !r)
        return fault(r.error());
    return grid;
}

Result<void> writeLabels(const SheetArguments &arguments, const Job &job, const Layout &layout, Paper paper) {
    const auto grid = labelGrid(arguments, paper, job.unit);
    if (!grid) return fault(grid.error());
    const auto pages = ui::labelPages(job, layout, *grid, arguments.labelsUsed);
    if (!pages) return fault(pages.error());
    return ui::writePdf(**pages, arguments.page.out);
}

Result<void> writeTrueSize(const SheetArguments &arguments, const Job &job, const Layout &layout,
                           const SheetOptions &options) {
    const auto pages = ui::trueSizePages(job, layout, arguments.panel, options.paper, options.sideways);
    if (!pages) return fault(pages.error());
    return ui::writePdf(**pages, arguments.page.out);
}

/// What has changed since the last layout of another file.
Result<ui::SheetExtras> extrasOf(const SheetArguments &arguments, const Job &job, const Layout &layout) {
    ui::SheetExtras extras;
    if (arguments.changedFrom.empty()) return extras;
    const auto before = loadJob(arguments.changedFrom);
    if (!before) return fault(before.error());
    const auto old = chosenLayout(*before, {}, arguments.changedFrom);
    if (!old) return fault(old.error());
    extras.changes = changesBetween(*before, *old, job, layout);
    return extras;
}

Exit runSheet(const SheetArguments &arguments) {
    SheetOptions options;
    if (!arguments.paper.empty()) {
        const auto paper = paperFromCommandLine(arguments.paper);
        if (!paper) return inputIsWrong(paper.error());
        options.paper = *paper;
    }
    if (arguments.scale == "fit")
        options.onOnePage = true;
    else if (!arguments.scale.empty())
        options.scale = std::atoi(arguments.scale.c_str());
    if (!arguments.wayRound.empty()) options.sideways = arguments.wayRound == "sideways";
    return writePage(arguments.page, [&](const Job &asRead, const Layout &layout) -> Result<void> {
        const Job job = namedForPaper(asRead, std::filesystem::path(arguments.page.job).stem().string());
        if (std::filesystem::path(arguments.page.out).extension() == ".csv")
            return ui::writeChalkCsv(job, layout, arguments.page.out);
        if (!arguments.labels.empty()) return writeLabels(arguments, job, layout, options.paper);
        if (arguments.trueSize || !arguments.panel.empty()) return writeTrueSize(arguments, job, layout, options);
        const auto extras = extrasOf(arguments, job, layout);
        if (!extras) return fault(extras.error());
        return ui::writeCuttingSheet(job, layout, arguments.page.out, options, *extras);
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
    command->add_option("--scale", arguments->scale, "10 for 1:10, fit for all on one page; left out: what can be read")
        ->check(CLI::Range(1, 1000) | CLI::IsMember({"fit"}))
        ->type_name("N|fit");
    command->add_option("--hold", arguments->wayRound, "upright or sideways; left out: what takes fewer pages")
        ->check(CLI::IsMember({"upright", "sideways"}))
        ->type_name("WAY");
    command
        ->add_option("--changed-from", arguments->changedFrom,
                     "Begin with what has changed since the last layout of another job file")
        ->type_name("OLD");
    command->add_flag("--true-size", arguments->trueSize, "The whole layout at 1:1 over as many pages as it takes");
    command->add_option("--panel", arguments->panel, "One panel at 1:1, by its mark, or mark and copy such as IB/2")
        ->type_name("MARK");
    auto *labels =
        command
            ->add_option("--labels", arguments->labels,
                         "Labels to pin on each piece: slips on plain paper, or a grid of columns x rows such as 3x10")
            ->type_name("slips|CxR");
    const auto pair = [&](const char *name, std::vector<std::string> &into, const char *help) {
        command->add_option(name, into, help)->expected(2)->needs(labels)->type_name("ACROSS DOWN");
    };
    pair("--label-size", arguments->labelSize, "Of one label; left out: as the usual grid of so many has it");
    pair("--label-from", arguments->labelFrom, "From the sheet's left and top edge to the first label");
    pair("--label-every", arguments->labelEvery, "From one label's edge to the next one's; left out: the label's size");
    command->add_option("--labels-used", arguments->labelsUsed, "How many labels of the first sheet are gone already")
        ->check(CLI::Range(0, 999))
        ->needs(labels)
        ->type_name("N");
    command->callback([arguments, &chosen] { chosen = [arguments] { return runSheet(*arguments); }; });
}

} // namespace boltwright::app
