// Plans many job files in one run, for soaks: names one a line on standard input, with the steps before each.
//
// usage: planner < LINES        (a line: STEPS FILE)
// For each file, plans it with one thread and with two, and appends the layout to the job in FILE. Prints a line:
// `fits`, `cannot` or `not-found`; then what is wrong, where anything is: `input` and the text, `threads` where the two
// runs differ, `check` and the findings.

#include "core/check/check.h"
#include "core/concede/concede.h"
#include "core/files/job_file.h"
#include "core/planner/plan.h"

#include <iostream>
#include <sstream>
#include <string>

namespace {

using namespace boltwright;

std::string kindOf(const Plan &plan) {
    switch (plan.kind) {
    case planner::Outcome::Kind::Fits:
        return "fits";
    case planner::Outcome::Kind::CannotFit:
        return "cannot";
    default:
        return "not-found";
    }
}

std::string verdictOn(const std::string &file, std::int64_t steps) {
    auto job = loadJob(file);
    if (!job) return "input " + job.error().text;
    PlanOptions options;
    options.seconds.reset();
    options.steps = steps;
    options.threads = 1;
    const Plan one = planOrConcede(*job, options);
    options.threads = 2;
    const Plan two = planOrConcede(*job, options);
    std::string verdict = kindOf(one);
    if (one.kind != two.kind || one.layout != two.layout || one.proved != two.proved) verdict += " threads";
    if (one.kind != planner::Outcome::Kind::Fits) return verdict;
    for (const Finding &finding : check(*job, one.layout)) verdict += " check " + finding.text;
    job->layouts.push_back(one.layout);
    if (const auto saved = saveJob(*job, file); !saved) verdict += " save " + saved.error().text;
    return verdict;
}

} // namespace

int main() {
    for (std::string line; std::getline(std::cin, line);) {
        std::istringstream words(line);
        std::int64_t steps = 0;
        std::string file;
        words >> steps >> std::ws;
        std::getline(words, file);
        std::cout << verdictOn(file, steps) << std::endl;
    }
}
