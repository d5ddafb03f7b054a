// How well polygons are laid, against the open sets' best known lengths (see the sources named in each file).
// usage: polygon_bench [--seconds S] [--cpu] [--seed N] [--threads N] [--trace] FILE...
// --cpu: seconds of processor time for each thread, for a machine that others use as well.
// FILE is a set of shared/bench/poly, or a job of plain rectangles and trapezoids without allowances. Nothing here is
// a test: figures depend on the machine.

#include "core/geometry/shape_ops.h"
#include "core/panel/panel.h"
#include "core/planner/polygon_search.h"

#include <nlohmann/json.hpp>

#include <chrono>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <fstream>
#include <string>
#include <vector>

using namespace boltwright;
using namespace boltwright::planner;
using nlohmann::json;

namespace {

struct Case {
    Instance instance;
    double unit = 1;      ///< ticks to one unit of the file
    double bestKnown = 0; ///< in that unit
};

int outlineIn(Instance &instance, const ClothRing &ring) {
    for (std::size_t i = 0; i < instance.outlines.size(); ++i)
        if (instance.outlines[i].ring == makeOutline(ring).ring) return int(i);
    instance.outlines.push_back(makeOutline(ring));
    return int(instance.outlines.size()) - 1;
}

void openBolt(Instance &instance, Length width) {
    Sheet sheet;
    sheet.open = true;
    sheet.room = ringOf(ClothBox{{}, {width, Length::limit()}});
    instance.sheets.push_back(sheet);
}

/// The sets' strip runs along x and is `strip_width` in y; ours runs along y. Mirrored over the diagonal.
Case readSet(const json &file) {
    Case c;
    double largest = file["strip_width"].get<double>();
    c.unit = std::min(8128., std::floor(20'000'000 / largest));
    auto ticks = [&](double v) { return Length::ticks(std::llround(v * c.unit)); };
    openBolt(c.instance, ticks(largest));
    for (const json &item : file["items"])
        for (int k = 0; k < item["demand"].get<int>(); ++k) {
            PanelRing ring;
            for (const json &p : item["points"]) ring.push_back({ticks(p[1].get<double>()), ticks(p[0].get<double>())});
            Item out;
            for (const json &turn : file["allowed_rotations"]) {
                Option o;
                o.turn = *turnOf(int(turn.get<double>()));
                o.outline = outlineIn(c.instance, counterClockwise(laid(ring, o.turn, false)));
                out.options.push_back(o);
            }
            c.instance.items.push_back(out);
        }
    c.bestKnown = file.value("best_known_length", 0.);
    return c;
}

Case readJob(const json &file, const std::string &path) {
    Case c;
    c.unit = 8128;
    auto ticks = [](const json &v) { return Length::ticks(std::llround(v.get<double>() * 8128)); };
    openBolt(c.instance, ticks(file["cloths"][0]["bolt"]["width"]));
    for (const json &panel : file["panels"]) {
        const json &s = panel["shape"];
        const Shape shape =
            s["kind"] == "rectangle"
                ? Shape(Rectangle{ticks(s["across"]), ticks(s["up"])})
                : Shape(Trapezoid{ticks(s["bottom"]), ticks(s["top"]), ticks(s["up"]), ticks(s.value("shift", 0.))});
        Item item;
        Option o;
        o.outline = outlineIn(c.instance, laid(measuredOutline(shape), Turn::Deg0, false));
        item.options.push_back(o);
        c.instance.items.push_back(item);
    }
    std::ifstream answer(path + ".answer");
    if (answer) c.bestKnown = json::parse(answer).value("length", 0.);
    return c;
}

} // namespace

int main(int argc, char **argv) {
    Limits limits;
    limits.threads = 2;
    bool trace = false, cpu = false;
    double allowed = 10;
    double sum = 0;
    int count = 0;
    for (int i = 1; i < argc; ++i) {
        const std::string a = argv[i];
        if (a == "--seconds") {
            allowed = std::stod(argv[++i]);
            continue;
        }
        if (a == "--steps") {
            limits.steps = std::stoll(argv[++i]);
            continue;
        }
        if (a == "--seed") {
            limits.seed = std::stoull(argv[++i]);
            continue;
        }
        if (a == "--threads") {
            limits.threads = std::stoi(argv[++i]);
            continue;
        }
        if (a == "--cpu") {
            cpu = true;
            continue;
        }
        if (a == "--trace") {
            trace = true;
            continue;
        }
        std::ifstream in(a);
        const json file = json::parse(in);
        const Case c = file.contains("items") ? readSet(file) : readJob(file, a);
        Area area = 0;
        for (const Item &item : c.instance.items)
            area += c.instance.outlines[std::size_t(item.options[0].outline)].area;
        const Length bound = Length::ticks(area / boxOf(c.instance.sheets[0].room).width().ticks());
        const auto begin = std::chrono::steady_clock::now();
        const std::clock_t cpuBegin = std::clock();
        auto seconds = [&] {
            if (cpu) return double(std::clock() - cpuBegin) / CLOCKS_PER_SEC / limits.threads;
            return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
        };
        limits.seconds = allowed;
        double first = 0, last = 0;
        Length at;
        limits.report = [&](const Progress &p) {
            if (!p.found || p.length == at) return;
            at = p.length;
            last = seconds();
            if (first == 0) first = last;
            if (trace) std::printf("  %7.3f s  %.4f\n", last, double(p.length.ticks()) / c.unit);
        };
        const Outcome out = searchPolygons(c.instance, limits, bound, seconds);
        const double length = double(out.length.ticks()) / c.unit,
                     density = double(bound.ticks()) / double(out.length.ticks());
        std::printf(
            "%-28s n %3zu length %10.4f known %10.4f ratio %.4f density %.2f%% first %.3f last %.2f s, %lld moves%s\n",
            a.substr(a.rfind('/') + 1).c_str(), c.instance.items.size(), length, c.bestKnown,
            c.bestKnown > 0 ? length / c.bestKnown : 0, 100 * density, first, last, static_cast<long long>(out.steps),
            out.kind == Outcome::Kind::Fits && holds(c.instance, out.placements) ? "" : " NOT RIGHT");
        std::fflush(stdout);
        if (c.bestKnown > 0) sum += length / c.bestKnown, ++count;
    }
    if (count > 1) std::printf("mean ratio %.4f over %d\n", sum / count, count);
    return 0;
}
