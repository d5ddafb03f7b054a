/// How good, how fast: the rectangle search over the open sets and planted jobs. See README.md beside this file.

#include "core/planner/solve.h"
#include "tests/bench/bench_instances.h"

#include <fmt/format.h>

#include <chrono>
#include <ctime>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

using namespace boltwright;
using namespace boltwright::bench;

namespace {

struct Options {
    std::vector<std::string> sets;
    double seconds = 1;
    std::int64_t steps = 0;
    int seeds = 1, threads = 2;
    std::vector<int> sizes = {12, 24, 40};
    double slack = 6, shrink = 0;
    std::string only, csv;
    bool quiet = false;
    bool cpu = false; ///< seconds of processor time for each thread, for a machine that others use as well
};

struct Row {
    std::string set, name;
    int seed = 0;
    double length = 0, known = 0, gap = 0, bound = 0, seconds = 0, found = 0;
    bool proved = false;
    std::string kind;
};

Options optionsFrom(int count, char **words) {
    Options o;
    for (int i = 1; i < count; ++i) {
        const std::string word = words[i];
        auto value = [&] { return std::string(i + 1 < count ? words[++i] : ""); };
        if (word == "--seconds")
            o.seconds = std::stod(value());
        else if (word == "--steps")
            o.steps = std::stoll(value());
        else if (word == "--seeds")
            o.seeds = std::stoi(value());
        else if (word == "--threads")
            o.threads = std::stoi(value());
        else if (word == "--slack")
            o.slack = std::stod(value());
        else if (word == "--shrink")
            o.shrink = std::stod(value());
        else if (word == "--only")
            o.only = value();
        else if (word == "--csv")
            o.csv = value();
        else if (word == "--quiet")
            o.quiet = true;
        else if (word == "--cpu")
            o.cpu = true;
        else if (word == "--sizes") {
            o.sizes.clear();
            std::istringstream in(value());
            for (std::string n; std::getline(in, n, ',');) o.sizes.push_back(std::stoi(n));
        } else
            o.sets.push_back(word);
    }
    return o;
}

std::string line(const Row &r) {
    return fmt::format("{},{},{},{},{:.3f},{:.3f},{:.4f},{:.3f},{},{:.2f},{:.2f}", r.set, r.name, r.seed, r.kind,
                       r.length, r.known, r.gap, r.bound, int(r.proved), r.seconds, r.found);
}

/// The rows an earlier run left in the file: not run again.
std::map<std::string, Row> rowsIn(const std::string &file) {
    std::map<std::string, Row> rows;
    std::ifstream in(file);
    for (std::string text; std::getline(in, text);) {
        std::istringstream words(text);
        std::vector<std::string> w;
        for (std::string word; std::getline(words, word, ',');) w.push_back(word);
        if (w.size() != 11 || w[0] == "set") continue;
        Row r{w[0],
              w[1],
              std::stoi(w[2]),
              std::stod(w[4]),
              std::stod(w[5]),
              std::stod(w[6]),
              std::stod(w[7]),
              std::stod(w[9]),
              std::stod(w[10]),
              w[8] == "1",
              w[3]};
        rows[w[0] + "/" + w[1] + "/" + w[2]] = r;
    }
    return rows;
}

Row run(const Case &c, int seed, const Options &o) {
    planner::Limits limits;
    if (o.steps > 0)
        limits.steps = o.steps;
    else
        limits.seconds = o.cpu ? o.seconds * 50 : o.seconds;
    limits.threads = o.threads;
    limits.seed = std::uint64_t(seed);
    const auto begin = std::chrono::steady_clock::now();
    const std::clock_t cpuBegin = std::clock();
    auto since = [&] {
        if (o.cpu) return double(std::clock() - cpuBegin) / CLOCKS_PER_SEC / o.threads;
        return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    };
    if (o.cpu) limits.stop = [&] { return since() >= o.seconds; };
    double foundAt = 0;
    Length last = Length::limit();
    limits.report = [&](const planner::Progress &p) {
        if (p.found && p.length < last) last = p.length, foundAt = since();
    };
    const planner::Outcome outcome = solve(c.instance, limits);
    Row r;
    r.set = c.set;
    r.name = c.name;
    r.seed = seed;
    r.seconds = since();
    r.found = foundAt;
    r.kind = outcome.kind == planner::Outcome::Kind::Fits        ? "fits"
             : outcome.kind == planner::Outcome::Kind::CannotFit ? "cannot"
                                                                 : "not-found";
    r.proved = outcome.proved;
    r.length = outcome.length.toMillimetres();
    r.bound = outcome.bound.toMillimetres();
    const Length known = c.known ? *c.known : c.knownBound ? *c.knownBound : Length{};
    r.known = known.toMillimetres();
    if (c.fits)
        r.gap = (outcome.kind == planner::Outcome::Kind::Fits) == *c.fits &&
                        outcome.kind != planner::Outcome::Kind::NotFound
                    ? 0
                    : 100;
    else if (r.known > 0)
        r.gap = (r.length / r.known - 1) * 100;
    if (outcome.kind == planner::Outcome::Kind::Fits && !holds(c.instance, outcome.placements)) r.kind = "WRONG";
    return r;
}

std::vector<Case> casesFor(const std::string &set, const Options &o) {
    static const std::set<std::string> families = {"plain", "turnable", "stripes", "drop", "remnant", "short"};
    if (!families.count(set)) return casesOf(set);
    std::vector<Case> cases;
    for (int n : o.sizes)
        for (int seed = 1; seed <= o.seeds; ++seed) cases.push_back(plantedCase(set, n, seed, o.slack, o.shrink));
    return cases;
}

/// Published mean lower bounds of the bwmv classes (rows 1 to 10) with 20, 40, 60, 80 and 100 panels: from memory, as
/// tabled by the papers on class 1 to 6 (Berkey & Wang 1987) and 7 to 10 (Martello & Vigo 1998) as strips; 34 of the 50
/// are also what cheap bounds of the files come to, none is below.
constexpr double publishedBounds[10][5] = {
    {60.3, 121.6, 187.4, 262.2, 304.4},       {19.7, 39.1, 60.1, 83.2, 100.5},
    {157.4, 328.8, 500.0, 701.7, 832.7},      {61.4, 123.9, 193.0, 267.2, 322.0},
    {512.2, 1053.8, 1614.0, 2268.4, 2617.4},  {159.9, 323.5, 505.1, 699.7, 843.8},
    {490.4, 1049.7, 1515.9, 2206.1, 2627.0},  {434.6, 922.0, 1360.9, 1909.3, 2362.8},
    {1106.8, 2189.2, 3410.4, 4588.1, 5434.9}, {337.8, 642.8, 911.1, 1177.6, 1476.5}};

/// Mean lengths of the groups of ten over the published mean bounds; nothing for a group that is not whole.
void printOverPublished(const std::vector<Row> &rows) {
    std::map<std::pair<int, int>, std::pair<double, int>> groups; // class and panels: sum of lengths, how many
    for (const Row &r : rows) {                                   // CLASS01_020_01
        auto &[sum, runs] = groups[{std::stoi(r.name.substr(5, 2)), std::stoi(r.name.substr(8, 3))}];
        sum += r.length;
        ++runs;
    }
    double gaps = 0;
    int whole = 0;
    for (const auto &[group, of] : groups) {
        if (of.second % 10 != 0) continue;
        gaps += (of.first / of.second / publishedBounds[group.first - 1][group.second / 20 - 1] - 1) * 100;
        ++whole;
    }
    if (whole > 0)
        fmt::print("bwmv over the published mean bounds, {} of 50 groups: {:.4f} %\n", whole, gaps / double(whole));
}

} // namespace

int main(int count, char **words) {
    const Options o = optionsFrom(count, words);
    std::map<std::string, Row> before = o.csv.empty() ? std::map<std::string, Row>{} : rowsIn(o.csv);
    std::ofstream csv;
    if (!o.csv.empty()) {
        csv.open(o.csv, std::ios::app);
        if (before.empty()) csv << "set,name,seed,kind,length,known,gap,bound,proved,seconds,found\n";
    }
    std::map<std::string, std::vector<Row>> bySet;
    for (const std::string &set : o.sets) {
        for (const Case &c : casesFor(set, o)) {
            if (!o.only.empty() && c.name.find(o.only) == std::string::npos) continue;
            const bool planted = c.name.find('-') != std::string::npos;
            for (int seed = 1; seed <= (planted ? 1 : o.seeds); ++seed) {
                const std::string key = c.set + "/" + c.name + "/" + std::to_string(seed);
                const bool known = before.count(key) > 0;
                const Row r = known ? before[key] : run(c, seed, o);
                if (!known && csv) csv << line(r) << std::endl;
                if (!o.quiet) fmt::print("{}\n", line(r)), std::fflush(stdout);
                bySet[c.set].push_back(r);
                const auto number = c.name.find_first_of("0123456789");
                if (set == "C" && number == 1) bySet[c.name.substr(0, 2)].push_back(r);
                if (planted) bySet[c.name.substr(0, c.name.rfind('-'))].push_back(r);
            }
        }
    }
    for (const auto &[set, rows] : bySet) {
        double gap = 0, seconds = 0, worst = 0;
        int proved = 0;
        for (const Row &r : rows)
            gap += r.gap, seconds += r.seconds, proved += r.proved, worst = std::max(worst, r.gap);
        fmt::print("{:14} {:4} runs, mean gap {:7.4f} %, worst {:6.3f} %, {:3} proved, {:.2f} s each\n", set,
                   rows.size(), gap / double(rows.size()), worst, proved, seconds / double(rows.size()));
        if (set == "bwmv") printOverPublished(rows);
    }
}
