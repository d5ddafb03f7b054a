#include "app/cli/command.h"
#include "app/cli/page.h"
#include "ui/picture/picture.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <memory>

namespace boltwright::app {

namespace {

struct DrawArguments {
    PageArguments page;
    int dotsPerInch = 150;
};

std::string endOf(const std::filesystem::path &file) {
    auto end = file.extension().string();
    std::transform(end.begin(), end.end(), end.begin(), [](unsigned char c) { return char(std::tolower(c)); });
    return end;
}

Exit runDraw(const DrawArguments &arguments) {
    const std::filesystem::path out = arguments.page.out;
    const auto end = endOf(out);
    if (end != ".svg" && end != ".png") {
        return inputIsWrong({fmt::format("{}: the picture's name must end in .svg or .png", out.string())});
    }
    return writePage(arguments.page, [&](const Job &job, const Layout &layout) {
        return end == ".svg" ? ui::writeSvg(job, layout, out) : ui::writePng(job, layout, out, arguments.dotsPerInch);
    });
}

} // namespace

void addDraw(CLI::App &program, Command &chosen) {
    auto arguments = std::make_shared<DrawArguments>();
    auto *command = program.add_subcommand("draw", "Write a layout as a picture; an SVG is in true millimetres");
    addPageArguments(*command, arguments->page, "FILE.svg|FILE.png");
    command->add_option("--dpi", arguments->dotsPerInch, "Dots an inch of a PNG, a tenth of true size; left out: 150")
        ->check(CLI::Range(20, 1200))
        ->type_name("N");
    command->callback([arguments, &chosen] { chosen = [arguments] { return runDraw(*arguments); }; });
}

} // namespace boltwright::app
