#include "core/yardage/run_ways.h"

#include "core/base/language.h"
#include "core/rules/rules.h"

#include <algorithm>

namespace boltwright {
namespace {

std::string wordsFor(Run run) {
    switch (run) {
    case Run::UpRoll:
        return phrase("up the roll");
    case Run::DownRoll:
        return phrase("down the roll");
    case Run::Railroad:
        return phrase("railroaded");
    case Run::Either:
        return phrase("either way");
    case Run::Bias:
        return phrase("on the bias");
    }
    return {};
}

int joinsIn(const Layout &layout) {
    return int(std::count_if(layout.cuts.begin(), layout.cuts.end(), [](const Cut &c) { return c.piece > 1; }));
}

/// How a cut lies, as the trade says it.
Run runOf(Turn turn) {
    switch (turn) {
    case Turn::Deg0:
        return Run::UpRoll;
    case Turn::Deg180:
        return Run::DownRoll;
    case Turn::Deg90:
    case Turn::Deg270:
        return Run::Railroad;
    default:
        return Run::Bias;
    }
}

/// The panels that lie in the layout in a turn that was not asked for, each once.
std::vector<std::string> differences(const Job &asked, const Layout &layout) {
    std::vector<std::string> all;
    for (const Panel &panel : asked.panels) {
        const Cloth &cloth = asked.clothOf(panel);
        const std::vector<Turn> turns = turnsOf(panel, cloth, cloth);
        const auto other = std::find_if(layout.cuts.begin(), layout.cuts.end(), [&](const Cut &cut) {
            return cut.panel == panel.id && std::find(turns.begin(), turns.end(), cut.turn) == turns.end();
        });
        if (other == layout.cuts.end()) continue;
        const std::string &name = panel.name.empty() ? panel.id : panel.name;
        all.push_back(phrase("%1: %2 instead of %3",
                             {name, wordsFor(runOf(other->turn)), wordsFor(boltwright::runOf(panel, cloth))}));
    }
    return all;
}

} // namespace

std::string nameOf(RunWay way) {
    switch (way) {
    case RunWay::AsAsked:
        return "as asked";
    case RunWay::UpRoll:
        return "up the roll";
    case RunWay::Railroad:
        return "railroaded";
    case RunWay::AsItFalls:
        return "as it falls best";
    }
    return {};
}

Job runThatWay(Job job, RunWay way) {
    for (Panel &panel : job.panels) {
        if (way == RunWay::AsAsked || panel.run == Run::Bias) continue;
        panel.run = way == RunWay::UpRoll ? Run::UpRoll : way == RunWay::Railroad ? Run::Railroad : Run::Either;
    }
    return job;
}

std::vector<RunAnswer> compareRuns(const Job &job, const PlanOptions &options,
                                   const std::function<void(double share)> &progress,
                                   const std::function<void(const RunAnswer &answer)> &found) {
    constexpr RunWay ways[] = {RunWay::AsAsked, RunWay::UpRoll, RunWay::Railroad, RunWay::AsItFalls};
    std::vector<RunAnswer> answers;
    for (RunWay way : ways) {
        if (progress) progress(double(answers.size()) / double(std::size(ways)));
        RunAnswer answer;
        answer.way = way;
        answer.job = runThatWay(job, way);
        PlanOptions share = options;
        if (share.steps)
            *share.steps = std::max<std::int64_t>(1, *share.steps / std::int64_t(std::size(ways)));
        else
            share.seconds = share.seconds.value_or(5) / double(std::size(ways));
        // As it falls, a layout of any one way is right: begin from the best of them.
        const Layout *best = nullptr;
        if (way == RunWay::AsItFalls)
            for (const RunAnswer &a : answers)
                if (a.plan.kind == planner::Outcome::Kind::Fits && !a.plan.layout.cloths.empty() &&
                    (!best || a.plan.layout.cloths.front().length < best->cloths.front().length))
                    best = &a.plan.layout;
        if (best) share.from = best;
        answer.plan = plan(answer.job, share);
        answer.joins = joinsIn(answer.plan.layout);
        answer.turned = differences(job, answer.plan.layout);
        const bool cutShort = options.stop && options.stop();
        if (cutShort && answer.plan.kind == planner::Outcome::Kind::NotFound) continue;
        if (found) found(answer);
        answers.push_back(std::move(answer));
    }
    return answers;
}

} // namespace boltwright
