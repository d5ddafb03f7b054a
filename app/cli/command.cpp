#include "app/cli/command.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>

namespace boltwright::app {

Exit inputIsWrong(const Fault &fault) {
    auto line = fault.text;
    std::replace(line.begin(), line.end(), '\n', ' ');
    fmt::print(stderr, "boltwright: {}\n", line);
    return Exit::InputIsWrong;
}

Result<Layout> chosenLayout(const Job &job, const std::string &name, const std::filesystem::path &file) {
    if (job.layouts.empty()) {
        return fault(fmt::format("{0}: holds no layout yet; make one with: boltwright plan {0}", file.string()));
    }
    if (name.empty()) return job.layouts.back();
    const auto named = std::find_if(job.layouts.rbegin(), job.layouts.rend(),
                                    [&name](const Layout &layout) { return layout.name == name; });
    if (named != job.layouts.rend()) return *named;
    std::string names;
    for (const auto &layout : job.layouts) names += fmt::format("{}\"{}\"", names.empty() ? "" : ", ", layout.name);
    return fault(fmt::format("{}: no layout is called \"{}\"; it holds {}", file.string(), name, names));
}

} // namespace boltwright::app
