#include "core/check/check.h"

#include "app/cli/command.h"
#include "core/files/job_file.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cstdio>
#include <memory>

namespace boltwright::app {

namespace {

using nlohmann::ordered_json;

struct CheckArguments {
    std::string job, layout;
    bool json = false;
};

const char *kindOf(Finding::Kind kind) {
    switch (kind) {
    case Finding::Kind::Missing:
        return "missing";
    case Finding::Kind::Cloth:
        return "cloth";
    case Finding::Kind::Edge:
        return "edge";
    case Finding::Kind::Flaw:
        return "flaw";
    case Finding::Kind::Overlap:
        return "overlap";
    case Finding::Kind::Turn:
        return "turn";
    case Finding::Kind::Motif:
        return "motif";
    case Finding::Kind::Alike:
        return "alike";
    case Finding::Kind::Flow:
        return "flow";
    case Finding::Kind::Allowance:
        return "allowance";
    case Finding::Kind::Pieces:
        return "pieces";
    case Finding::Kind::Mirror:
        return "mirror";
    case Finding::Kind::Conceded:
        return "conceded";
    case Finding::Kind::Figures:
        return "figures";
    }
    return "";
}

ordered_json jsonOf(const Finding &finding) {
    ordered_json json{{"kind", kindOf(finding.kind)}};
    if (!finding.panel.empty()) json["panel"] = finding.panel;
    if (finding.copy > 0) json["copy"] = finding.copy;
    if (finding.piece > 0) json["piece"] = finding.piece;
    json["text"] = finding.text;
    return json;
}

void say(const std::vector<Finding> &findings, const std::string &layout, bool json) {
    if (json) {
        auto faults = ordered_json::array();
        for (const auto &finding : findings) faults.push_back(jsonOf(finding));
        fmt::print("{}\n", ordered_json{{"right", findings.empty()}, {"layout", layout}, {"faults", faults}}.dump());
        return;
    }
    for (const auto &finding : findings) fmt::print("{}\n", finding.text);
    if (findings.empty()) fmt::print("right\n");
}

Exit runCheck(const CheckArguments &arguments) {
    const auto job = loadJob(arguments.job);
    if (!job) return inputIsWrong(job.error());
    if (job->layouts.empty() && arguments.layout.empty()) {
        say({Finding{Finding::Kind::Missing, "", 0, 0, "The job holds no layout."}}, "", arguments.json);
        return Exit::DoesNotFit;
    }
    const auto layout = chosenLayout(*job, arguments.layout, arguments.job);
    if (!layout) return inputIsWrong(layout.error());
    const auto findings = check(*job, *layout);
    say(findings, layout->name, arguments.json);
    return findings.empty() ? Exit::Done : Exit::DoesNotFit;
}

} // namespace

void addCheck(CLI::App &program, Command &chosen) {
    auto arguments = std::make_shared<CheckArguments>();
    auto *command = program.add_subcommand("check", "Verify a layout without the planner's code, naming each fault");
    command->add_option("JOB", arguments->job, "The job file")->required();
    command->add_option("--layout", arguments->layout, "The layout's name; left out: the last one")->type_name("NAME");
    command->add_flag("--json", arguments->json, "One JSON object on standard output");
    command->callback([arguments, &chosen] { chosen = [arguments] { return runCheck(*arguments); }; });
}

} // namespace boltwright::app
