#pragma once

#include "core/planner/plan.h"

#include <vector>

namespace boltwright {

/// One way to run the cloth for a whole job.
enum class RunWay { AsAsked, UpRoll, Railroad, AsItFalls };

/// What running the cloth that way comes to.
struct RunAnswer {
    RunWay way = RunWay::AsAsked;
    Job job; ///< the job with that run; taking the answer means taking its panels' runs
    Plan plan;
    int joins = 0;                   ///< seams inside panels that are made of pieces
    std::vector<std::string> turned; ///< panels that lie otherwise than was asked, in words
};

/// The job with every panel run that way; panels on the bias stay on the bias.
Job runThatWay(Job job, RunWay way);

/// The same job up the roll, railroaded, and as it falls best for each panel, each with its share of the time. A way in
/// which a motif has no repeat is answered with the plan's own reason. `found` is handed each answer as it comes. Stops
/// early when the options' `stop` says so, with the ways for which something was found by then.
std::vector<RunAnswer> compareRuns(const Job &job, const PlanOptions &options,
                                   const std::function<void(double share)> &progress = nullptr,
                                   const std::function<void(const RunAnswer &answer)> &found = nullptr);

std::string nameOf(RunWay way);

} // namespace boltwright
