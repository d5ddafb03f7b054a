#include "core/planner/plan.h"

#include "app/cli/command.h"
#include "app/cli/interrupt.h"
#include "app/cli/progress_line.h"
#include "core/concede/concede.h"
#include "core/figures/figures.h"
#include "core/files/job_file.h"
#include "core/measure/length_text.h"
#include "core/paper/words.h"
#include "core/table/plan_again.h"
#include "core/yardage/ask.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <memory>
#include <thread>

namespace boltwright::app {

namespace {

using nlohmann::ordered_json;

struct PlanArguments {
    std::string job, out;
    double seconds = 5;
    std::int64_t steps = 0; ///< 0: `seconds` holds
    int threads = 1;
    std::uint64_t seed = 1;
    bool json = false;
    bool stay = false;
};

/// Cuts that are locked or off the cloth must stay: then the last layout is what planning goes on from.
const Layout *layoutToKeep(const Job &job) {
    if (job.layouts.empty()) return nullptr;
    const auto &last = job.layouts.back();
    const bool stays =
        std::any_of(last.cuts.begin(), last.cuts.end(), [](const Cut &cut) { return cut.state != CutState::Planned; });
    return stays ? &last : nullptr;
}

std::string freeName(const Job &job) {
    const auto taken = [&job](const std::string &name) {
        return std::any_of(job.layouts.begin(), job.layouts.end(),
                           [&name](const Layout &layout) { return layout.name == name; });
    };
    for (int number = 1;; ++number) {
        if (auto name = fmt::format("Plan {}", number); !taken(name)) return name;
    }
}

/// The layout as the job file writes it, so that the same thing has one spelling.
ordered_json layoutAsWritten(const Job &job) { return ordered_json::parse(writeJob(job))["layouts"].back(); }

ordered_json numberOrNull(const std::optional<Length> &length, Unit unit) {
    return length ? ordered_json::parse(writeDecimal(*length, unit)) : ordered_json(nullptr);
}

ordered_json clothsAsJson(const Job &job, const Layout &layout) {
    auto cloths = ordered_json::array();
    for (const auto &figures : figuresOf(job, layout)) {
        const auto use = std::find_if(layout.cloths.begin(), layout.cloths.end(),
                                      [&](const ClothUse &one) { return one.id == figures.cloth; });
        if (use == layout.cloths.end()) continue;
        cloths.push_back({{"id", use->id},
                          {"length", numberOrNull(use->length, job.unit)},
                          {"bound", numberOrNull(use->bound, job.unit)},
                          {"proved", use->proved},
                          {"waste", std::round(figures.waste() * 1e4) / 1e4}});
    }
    return cloths;
}

/// How much longer each bolt or remnant there is would have to be.
ordered_json moreAsJson(const std::vector<ExtraLength> &more, Unit unit) {
    auto all = ordered_json::array();
    for (const auto &e : more)
        all.push_back({{"id", e.cloth},
                       {"on", e.remnant ? ordered_json(*e.remnant) : ordered_json(nullptr)},
                       {"more", numberOrNull(e.extra, unit)},
                       {"at_least", numberOrNull(e.atLeast, unit)}});
    return all;
}

/// `job` holds the new layout as its last, when it fits.
ordered_json answerAsJson(const Job &job, const Plan &plan, const std::vector<ExtraLength> &more, double seconds) {
    const bool fits = plan.kind == planner::Outcome::Kind::Fits;
    const auto none = ordered_json::array();
    const auto written = fits ? layoutAsWritten(job) : ordered_json::object();
    ordered_json answer{{"fits", fits},
                        {"proved", plan.proved},
                        {"cloths", fits ? clothsAsJson(job, job.layouts.back()) : none},
                        {"conceded", written.value("conceded", none)},
                        {"left_out", written.value("left_out", none)},
                        {"seconds", std::round(seconds * 100) / 100},
                        {"unit", nameOf(job.unit)}};
    if (!fits) answer["reason"] = plan.reason;
    if (!fits) answer["more"] = moreAsJson(more, job.unit);
    return answer;
}

std::string spokenLine(const Job &job, const ClothFigures &figures) {
    const auto *cloth = job.cloth(figures.cloth);
    const auto name = cloth->name.empty() ? cloth->id : cloth->name;
    const auto waste = fmt::format("waste {:.1f} %", figures.waste() * 100);
    if (!cloth->bolt) return fmt::format("{}: {}", name, waste);
    const auto least = !figures.bound ? std::string()
                       : *figures.bound == figures.length
                           ? ", the least it can take"
                           : ", the least it can take is " + spokenWithUnit(*figures.bound, job.unit);
    return fmt::format("{}: {}{}; {}; {}", name, spokenWithUnit(figures.length, job.unit), least,
                       onHandWords(*cloth, figures.length, job.unit, true), waste);
}

/// "Inside back, copy 2: made of 2 pieces".
std::vector<std::string> givenUp(const Job &job, const Layout &layout) {
    std::vector<std::string> lines;
    const auto add = [&](const std::string &id, int copy, const std::string &what) {
        const auto *panel = job.panel(id);
        const auto whose = panel->count > 1 ? fmt::format(", copy {}", copy) : std::string();
        lines.push_back(fmt::format("{}{}: {}", panel->name.empty() ? id : panel->name, whose, what));
    };
    for (const auto &one : layout.conceded) add(one.panel, one.copy, concessionWords(job, layout, one));
    for (const auto &one : layout.leftOut) add(one.panel, one.copy, "cut from other cloth");
    return lines;
}

void say(const Job &job, const Plan &plan, const std::vector<ExtraLength> &more, const std::string &savedIn) {
    if (plan.kind != planner::Outcome::Kind::Fits) {
        fmt::print("{}\n", plan.reason);
        for (const auto &e : more) fmt::print("{}\n", extraInWords(job, e));
        return;
    }
    const auto &layout = job.layouts.back();
    for (const auto &figures : figuresOf(job, layout)) {
        if (figures.laid > 0) fmt::print("{}\n", spokenLine(job, figures));
    }
    for (const auto &line : givenUp(job, layout)) fmt::print("what we give up: {}\n", line);
    fmt::print("kept as \"{}\" in {}\n", layout.name, savedIn);
}

PlanOptions optionsOf(const PlanArguments &arguments, const Job &job) {
    PlanOptions options;
    if (arguments.steps > 0) {
        options.seconds.reset();
        options.steps = arguments.steps;
    } else {
        options.seconds = arguments.seconds;
    }
    options.threads = arguments.threads;
    options.seed = arguments.seed;
    options.from = arguments.stay && !job.layouts.empty() ? &job.layouts.back() : layoutToKeep(job);
    return options;
}

/// Planning takes a while, and somebody may save the job meanwhile: what they saved is not written over.
Result<void> saveUnlessChanged(const Job &asRead, const Job &planned, const PlanArguments &arguments) {
    if (!arguments.out.empty()) return saveJob(planned, arguments.out);
    const auto now = loadJob(arguments.job);
    if (!now || *now != asRead) {
        return fault(fmt::format("{}: was changed while planning, so nothing was written; plan again", arguments.job));
    }
    return saveJob(planned, arguments.job);
}

/// Where the cloth does not do: how much more would. A no that is proved early leaves time for it; after a search that
/// used all of its own, half of that is added, and no more than five seconds.
std::vector<ExtraLength> moreThatWouldDo(const Job &job, PlanOptions options, double gone) {
    if (options.stop()) return {};
    if (options.seconds) options.seconds = std::max((*options.seconds - gone) / 2, std::min(5.0, *options.seconds / 2));
    options.report = nullptr;
    return extraLengths(job, options);
}

Exit runPlan(const PlanArguments &arguments) {
    const auto job = loadJob(arguments.job);
    if (!job) return inputIsWrong(job.error());

    auto options = optionsOf(arguments, *job);
    const Interrupt interrupt;
    options.stop = [] { return Interrupt::asked(); };
    ProgressLine line(job->unit);
    if (line.shows()) options.report = [&line](const PlanProgress &progress) { line.show(progress); };

    const auto start = std::chrono::steady_clock::now();
    Plan plan;
    if (arguments.stay) plan = planAgain(*job, options);
    if (plan.kind != planner::Outcome::Kind::Fits) plan = planOrConcede(*job, options);
    const auto gone = [&] { return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count(); };
    const bool fits = plan.kind == planner::Outcome::Kind::Fits;
    std::vector<ExtraLength> more;
    if (!fits) more = moreThatWouldDo(*job, options, gone());
    line.clear();

    auto planned = *job;
    if (fits) {
        plan.layout.name = freeName(*job);
        plan.layout.madeBy = "plan";
        for (Layout &before : planned.layouts) before.onTable = false; // what has just been made is what one looks at
        planned.layouts.push_back(plan.layout);
        if (const auto saved = saveUnlessChanged(*job, planned, arguments); !saved) return inputIsWrong(saved.error());
    }
    if (arguments.json) {
        fmt::print("{}\n", answerAsJson(planned, plan, more, gone()).dump());
    } else {
        say(planned, plan, more, arguments.out.empty() ? arguments.job : arguments.out);
    }
    return fits ? Exit::Done : Exit::DoesNotFit;
}

} // namespace

void addPlan(CLI::App &program, Command &chosen) {
    auto arguments = std::make_shared<PlanArguments>();
    arguments->threads = int(std::max(1U, std::thread::hardware_concurrency()));
    auto *command = program.add_subcommand("plan", "Make the best layout there is time for, and keep it in the job");
    command->add_option("JOB", arguments->job, "The job file")->required();
    command->add_option("--out", arguments->out, "Where to write the job with its new layout; left out: JOB itself")
        ->type_name("FILE");
    auto *seconds = command->add_option("--seconds", arguments->seconds, "How long to look; left out: 5")
                        ->check(CLI::Range(0.01, 86400.0))
                        ->type_name("S");
    command
        ->add_option("--steps", arguments->steps,
                     "Look for N steps instead: the same layout on every machine, with any number of threads")
        ->check(CLI::Range(std::int64_t(1), std::int64_t(1'000'000'000'000)))
        ->excludes(seconds)
        ->type_name("N");
    command->add_option("--threads", arguments->threads, "Left out: one for every core")
        ->check(CLI::Range(1, 256))
        ->type_name("N");
    command->add_option("--seed", arguments->seed, "Another seed looks in another order; left out: 1")->type_name("N");
    command->add_flag("--stay", arguments->stay,
                      "Pieces stay where the last layout has them, where that takes no more cloth to buy");
    command->add_flag("--json", arguments->json, "One JSON object on standard output");
    command->footer("Ctrl-C ends the search early and keeps the best layout so far, if there is one.");
    command->callback([arguments, &chosen] { chosen = [arguments] { return runPlan(*arguments); }; });
}

} // namespace boltwright::app
