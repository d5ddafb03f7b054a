#include "app/cli/page.h"

#include "app/cli/offscreen.h"
#include "core/check/check.h"
#include "core/files/job_file.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cstdio>

namespace boltwright::app {

void addPageArguments(CLI::App &command, PageArguments &arguments, const std::string &fileNames) {
    command.add_option("JOB", arguments.job, "The job file")->required();
    command.add_option("--out", arguments.out, "Where to write it")->required()->type_name(fileNames);
    command.add_option("--layout", arguments.layout, "The layout's name; left out: the last one")->type_name("NAME");
}

Exit writePage(const PageArguments &arguments, const std::function<Result<void>(const Job &, const Layout &)> &write) {
    const auto job = loadJob(arguments.job);
    if (!job) return inputIsWrong(job.error());
    const auto layout = chosenLayout(*job, arguments.layout, arguments.job);
    if (!layout) return inputIsWrong(layout.error());
    const Offscreen qt;
    if (const auto written = write(*job, *layout); !written) return inputIsWrong(written.error());
    if (const auto findings = check(*job, *layout); !findings.empty()) {
        fmt::print(stderr, "boltwright: do not cut from this: the layout is not right ({} {}). {}\n", findings.size(),
                   findings.size() == 1 ? "fault" : "faults", findings.front().text);
    }
    return Exit::Done;
}

Result<Paper> paperFromCommandLine(const std::string &name) {
    if (const auto paper = paperNamed(name)) return *paper;
    std::string known;
    for (const auto paper : allPapers()) known += (known.empty() ? "" : ", ") + nameOf(paper);
    return fault(fmt::format("--paper {}: no such paper; there are {}", name, known));
}

} // namespace boltwright::app
