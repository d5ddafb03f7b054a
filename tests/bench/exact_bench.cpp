// Exact answers on the open test sets: how long each takes, and whether it agrees with what is published.
//
//   exact_bench opp   [SECONDS] [NAME...]   do all pieces fit the bin? 42 with published labels
//   exact_bench ngcut [SECONDS] [NAME...]   least length, proved
//   exact_bench c     [SECONDS] [NAME...]   C1 to C3: least length, proved
//
// The sets are read where they are (BOLTWRIGHT_SHARED, or ../shared beside the checkout); see bench/README.md there for
// their sources. Exit 1: an answer contradicts the published one.

#include "core/planner/exact.h"
#include "core/planner/solve.h"

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>
#include <string>

using namespace boltwright;
using namespace boltwright::planner;

namespace {

struct Set {
    std::string name, label;
    std::int64_t width = 0, height = 0, optimum = 0;
    std::vector<std::pair<std::int64_t, std::int64_t>> sizes;
};

Set read(const std::filesystem::path &path) {
    Set set;
    set.name = path.stem();
    std::ifstream file(path);
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line[0] == '#') continue;
        std::istringstream in(line);
        std::string word;
        if (std::isdigit(static_cast<unsigned char>(line[0]))) {
            std::int64_t w = 0, h = 0;
            in >> w >> h;
            set.sizes.emplace_back(w, h);
            continue;
        }
        in >> word;
        if (word == "bin") in >> set.width >> set.height;
        if (word == "label") in >> set.label;
        if (word == "strip_width") in >> set.width;
        if (word == "optimal_height") in >> set.optimum;
    }
    return set;
}

/// One unit of a set is one inch here.
Length unit(std::int64_t n) { return Length::ticks(n * 8128); }

Instance instanceOf(const Set &set, bool open) {
    Instance instance;
    const Length high = open ? unit(10'000) : unit(set.height);
    instance.sheets.push_back(
        {.room = ringOf(ClothBox{{}, {unit(set.width), high}}), .open = open, .flaws = {}, .lattice = {}});
    for (const auto &[w, h] : set.sizes) {
        const auto known = std::find(set.sizes.begin(), set.sizes.end(), std::pair{w, h}) - set.sizes.begin();
        Item item;
        Option option;
        option.outline = int(instance.outlines.size());
        item.options = {option};
        item.kind = int(known);
        instance.items.push_back(item);
        instance.outlines.push_back(makeOutline(ringOf(ClothBox{{}, {unit(w), unit(h)}})));
    }
    return instance;
}

double since(std::chrono::steady_clock::time_point start) {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

/// Whether the answer goes with the label.
bool runOpp(const Set &set, double seconds) {
    const auto start = std::chrono::steady_clock::now();
    const Instance instance = instanceOf(set, false);
    ExactOutcome outcome;
    const bool cheap = cannotFit(instance);
    if (cheap)
        outcome.kind = ExactOutcome::Kind::Cannot;
    else
        outcome = decide(instance, {}, {.seconds = seconds, .steps = {}, .stop = {}});
    const char *answer = outcome.kind == ExactOutcome::Kind::Fits     ? "feasible"
                         : outcome.kind == ExactOutcome::Kind::Cannot ? "infeasible"
                                                                      : "undecided";
    const bool right = outcome.kind == ExactOutcome::Kind::Undecided || set.label == answer;
    std::cout << set.name << "," << set.label << "," << answer << "," << (cheap ? "bound" : "search") << ","
              << since(start) << "," << outcome.steps << (right ? "" : ",WRONG") << std::endl;
    return right;
}

bool runStrip(const Set &set, double seconds) {
    const auto start = std::chrono::steady_clock::now();
    const Instance instance = instanceOf(set, true);
    const Length bound = lowerBound(instance);
    const Closing closing = closeExcess(instance, bound, {}, {.seconds = seconds, .steps = {}, .stop = {}});
    const bool right =
        closing.bound <= unit(set.optimum) && (closing.placements.empty() || closing.length >= unit(set.optimum));
    std::cout << set.name << "," << set.optimum << "," << double(bound.ticks()) / 8128 << ","
              << double(closing.bound.ticks()) / 8128 << ","
              << (closing.placements.empty() ? 0 : double(closing.length.ticks()) / 8128) << ","
              << (closing.proved ? "proved" : "open") << "," << since(start) << "," << closing.steps
              << (right ? "" : ",WRONG") << std::endl;
    return right;
}

} // namespace

int main(int argc, char **argv) {
    const std::string which = argc > 1 ? argv[1] : "";
    const double seconds = argc > 2 ? std::atof(argv[2]) : 60;
    const std::vector<std::string> names(argv + std::min(argc, 3), argv + argc);
    const char *shared = std::getenv("BOLTWRIGHT_SHARED");
    const std::filesystem::path bench = std::filesystem::path(shared ? shared : "../shared") / "bench";
    if (which != "opp" && which != "ngcut" && which != "c") {
        std::cerr << "exact_bench opp|ngcut|c [SECONDS] [NAME...]\n";
        return 2;
    }
    const std::filesystem::path folder = bench / (which == "opp" ? "opp" : "rect");
    if (!std::filesystem::exists(folder)) {
        std::cerr << folder << ": no test sets there\n";
        return 2;
    }
    std::vector<std::filesystem::path> files;
    for (const auto &entry : std::filesystem::directory_iterator(folder)) {
        const std::string name = entry.path().stem();
        const bool asked = which == "opp" || (which == "ngcut" ? name.starts_with("NGCUT")
                                                               : name.starts_with("C1P") || name.starts_with("C2P") ||
                                                                     name.starts_with("C3P"));
        if (entry.path().extension() == ".txt" && asked &&
            (names.empty() || std::find(names.begin(), names.end(), name) != names.end()))
            files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    std::cout << (which == "opp" ? "name,label,answer,by,seconds,steps"
                                 : "name,optimum,cheap bound,bound,length,state,seconds,steps")
              << std::endl;
    bool right = true;
    for (const auto &file : files)
        right = (which == "opp" ? runOpp(read(file), seconds) : runStrip(read(file), seconds)) && right;
    return right ? 0 : 1;
}
