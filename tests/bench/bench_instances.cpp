#include "tests/bench/bench_instances.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <memory>
#include <sstream>
#include <stdexcept>

namespace boltwright::bench {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using planner::Instance;

Length unit(std::int64_t n) { return Length::ticks(n * 320); }
Length inches(double v) { return Length::ticks(std::int64_t(std::llround(v * 8128))); }

ClothRing rectangle(Length width, Length height) { return ringOf(ClothBox{{}, {width, height}}); }

planner::Outline rectangleOutline(Length width, Length height) {
    return {rectangle(width, height), {rectangle(width, height)}, width, height, true, width * height};
}

void addRectangle(Instance &instance, Length width, Length height, const PlaceSet &places = {}) {
    planner::Item item;
    item.kind = int(instance.items.size());
    instance.outlines.push_back(rectangleOutline(width, height));
    item.options.push_back({0, Turn::Deg0, int(instance.outlines.size()) - 1, places, {}});
    instance.items.push_back(item);
}

std::string output(const std::string &command) {
    std::unique_ptr<FILE, int (*)(FILE *)> pipe(popen(command.c_str(), "r"), pclose);
    if (!pipe) throw std::runtime_error("cannot run " + command);
    std::string text;
    std::array<char, 4096> part;
    while (const std::size_t n = fread(part.data(), 1, part.size(), pipe.get())) text.append(part.data(), n);
    return text;
}

ClothRing ringFrom(const json &points) {
    ClothRing ring;
    for (const json &p : points) ring.push_back({inches(p[0]), inches(p[1])});
    return ring;
}

} // namespace

std::optional<fs::path> sharedFolder() {
    if (const char *set = std::getenv("BOLTWRIGHT_SHARED")) return fs::path(set);
    for (fs::path at = fs::current_path(); at.has_relative_path(); at = at.parent_path())
        if (fs::exists(at / "shared" / "bench")) return at / "shared";
    return std::nullopt;
}

Case stripCase(const fs::path &file, const std::string &set) {
    std::ifstream in(file);
    Case c;
    c.name = file.stem().string();
    c.set = set;
    planner::Sheet sheet;
    sheet.open = true;
    std::string line;
    while (std::getline(in, line)) {
        if (line.empty() || line[0] == '#') continue;
        std::istringstream words(line);
        std::string first;
        std::int64_t value = 0;
        words >> first >> value;
        if (first == "strip_width")
            sheet.room = rectangle(unit(value), Length::limit());
        else if (first == "optimal_height")
            c.known = c.knownBound = unit(value);
        else if (first == "best_height")
            c.known = unit(value);
        else if (first == "lower_bound")
            c.knownBound = unit(value);
        else
            addRectangle(c.instance, unit(std::stoll(first)), unit(value));
    }
    c.instance.sheets.push_back(sheet);
    return c;
}

Case binCase(const fs::path &file) {
    std::ifstream in(file);
    Case c;
    c.name = file.stem().string();
    c.set = "opp";
    std::string line;
    planner::Sheet sheet;
    while (std::getline(in, line)) {
        if (line.empty() || line[0] == '#') continue;
        std::istringstream words(line);
        std::string first, second;
        std::int64_t third = 0;
        words >> first >> second >> third;
        if (first == "bin")
            sheet.room = rectangle(unit(std::stoll(second)), unit(third));
        else if (first == "label")
            c.fits = second == "feasible";
        else
            addRectangle(c.instance, unit(std::stoll(first)), unit(std::stoll(second)));
    }
    c.instance.sheets.push_back(sheet);
    return c;
}

std::vector<Case> casesOf(const std::string &set) {
    const auto shared = sharedFolder();
    if (!shared) throw std::runtime_error("no shared folder beside the checkout");
    const bool folder = fs::exists(*shared / "bench" / "rect" / set);
    const fs::path from = set == "opp" ? *shared / "bench" / "opp"
                          : folder     ? *shared / "bench" / "rect" / set
                                       : *shared / "bench" / "rect";
    std::vector<fs::path> files;
    for (const auto &entry : fs::directory_iterator(from)) {
        const std::string name = entry.path().stem().string();
        const bool member = folder || set == "opp" ||
                            (name.rfind(set, 0) == 0 && name.size() > set.size() && std::isdigit(name[set.size()]));
        if (entry.path().extension() == ".txt" && member) files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    std::vector<Case> cases;
    for (const fs::path &file : files) cases.push_back(set == "opp" ? binCase(file) : stripCase(file, set));
    return cases;
}

Case plantedCase(const std::string &family, int n, int seed, double slack, double shrink) {
    const auto shared = sharedFolder();
    if (!shared) throw std::runtime_error("no shared folder beside the checkout");
    std::ostringstream command;
    command << "python3 '" << (*shared / "tools" / "planted.py").string() << "' " << family << ' ' << n << ' ' << seed
            << " --slack " << slack << " --answer /dev/stderr 2>&1 >/dev/null";
    const json answer = json::parse(output(command.str()));
    command.str("");
    command << "python3 '" << (*shared / "tools" / "planted.py").string() << "' " << family << ' ' << n << ' ' << seed
            << " --slack " << slack << " --answer /dev/null";
    const json job = json::parse(output(command.str()));
    Case c;
    c.name = family + "-" + std::to_string(n) + "-" + std::to_string(seed);
    c.set = family + (family == "remnant" ? "-" + std::to_string(int(slack)) : "") + (shrink > 0 ? "-shrunk" : "");
    if (answer.contains("length")) c.known = inches(answer["length"]);
    if (answer.contains("fits")) c.fits = answer["fits"];
    const json &cloth = job["cloths"][0];
    planner::Sheet sheet;
    if (cloth.contains("bolt")) {
        sheet.open = true;
        sheet.room = rectangle(inches(cloth["bolt"]["width"]), Length::limit());
    } else {
        sheet.room = ringFrom(cloth["remnants"][0]["outline"]);
        for (const json &flaw : cloth["remnants"][0].value("flaws", json::array()))
            sheet.flaws.push_back(ringFrom(flaw["outline"]));
    }
    Pattern pattern;
    if (cloth.contains("pattern")) {
        const json &p = cloth["pattern"];
        pattern.across = inches(p["across"]);
        if (p.contains("along")) pattern.along = inches(p["along"]);
        if (p.contains("drop")) pattern.drop = inches(p["drop"]);
        pattern.motif = {inches(p["motif"][0]), inches(p["motif"][1])};
        sheet.lattice = Lattice(pattern, pattern.motif);
    }
    c.instance.sheets.push_back(sheet);
    for (const json &panel : job["panels"]) {
        auto less = [&](double v) { return inches(std::floor(v * (100 - shrink) / 100 * 8) / 8); };
        const Length w = less(panel["shape"]["across"]), h = less(panel["shape"]["up"]);
        PlaceSet places;
        if (panel.contains("motif")) {
            const json &motif = panel["motif"];
            const Length u = inches(motif["at"][0]), v = inches(motif["at"][1]);
            places.xStep = *pattern.across;
            places.x0 = pattern.motif.x - u;
            if (motif["centre"] == "both") {
                places.yStep = *pattern.along;
                places.y0 = pattern.motif.y - v;
                places.riseNumerator = sheet.lattice->dropNumerator();
                places.riseDenominator = sheet.lattice->dropDenominator();
            }
        }
        addRectangle(c.instance, w, h, places);
        if (panel.contains("run") && panel["run"] == "either") {
            c.instance.outlines.push_back(rectangleOutline(h, w));
            c.instance.items.back().options.push_back({0, Turn::Deg90, int(c.instance.outlines.size()) - 1, {}, {}});
        }
    }
    return c;
}

} // namespace boltwright::bench
