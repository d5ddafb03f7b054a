#pragma once

#include "core/job/job.h"

#include <boost/random/mersenne_twister.hpp>
#include <boost/random/uniform_int_distribution.hpp>

#include <algorithm>

/// A random job that keeps the input rules and between its seeds uses every key of a job file.
namespace boltwright::test {

class RandomJob {
public:
    explicit RandomJob(unsigned seed) : m_random(seed) {}

    Job make() {
        Job job;
        job.unit = one({Unit::Inch, Unit::Centimetre, Unit::Millimetre});
        job.card = {text(), text(), text(), text(), one<std::string>({"", "2026-11-25"}), {}};
        job.gap = maybeLength(0, 5'000);
        for (int i = 0, n = whole(1, 3); i < n; ++i) job.cloths.push_back(cloth("cloth " + std::to_string(i)));
        for (int i = 0, n = whole(0, 5); i < n; ++i) job.panels.push_back(panel("panel " + std::to_string(i), job));
        for (int i = 0, n = job.panels.empty() ? 0 : whole(0, 2); i < n; ++i) addFlow(job);
        for (int i = 0, n = whole(0, 2); i < n; ++i) job.trimmings.push_back(trimming(job));
        for (int i = 0, n = whole(0, 2); i < n; ++i) job.layouts.push_back(layout(job));
        return job;
    }

    int whole(int least, int most) { return boost::random::uniform_int_distribution<int>(least, most)(m_random); }

private:
    bool sometimes() { return whole(0, 1) == 0; }
    template <class T>
    T one(const std::vector<T> &all) {
        return all[std::size_t(whole(0, int(all.size()) - 1))];
    }
    template <class T>
    T one(std::initializer_list<T> all) {
        return one(std::vector<T>(all));
    }
    Length length(int least, int most) { return Length::ticks(whole(least, most)); }
    Length maybeLength(int least, int most) { return sometimes() ? length(least, most) : Length{}; }
    std::string text() {
        return one<std::string>({"", "plain", "a \"quoted\" one\n", "Möbel ½", std::string("\0\x1f", 2)});
    }

    template <class Frame>
    PointIn<Frame> point() {
        return {length(-300'000, 300'000), length(-300'000, 300'000)};
    }
    template <class Frame>
    RingIn<Frame> ring() {
        const auto p = point<Frame>();
        const Length w = length(10'000, 400'000), h = length(10'000, 400'000);
        return sometimes() ? RingIn<Frame>{p, p + Vector{w, {}}, p + Vector{w, h}, p + Vector{{}, h}}
                           : RingIn<Frame>{p, p + Vector{w, {}}, p + Vector{length(0, 400'000), h}};
    }

    Cloth cloth(const std::string &id) {
        Cloth cloth;
        cloth.id = id;
        cloth.name = text();
        if (sometimes()) {
            cloth.bolt = Bolt{length(400'000, 500'000), {}, maybeLength(0, 9'000), flaws(), markings(), {}};
            if (sometimes()) cloth.bolt->length = length(1, 9'000'000);
        } else {
            for (int i = 0, n = whole(1, 2); i < n; ++i) {
                cloth.remnants.push_back(
                    {"remnant " + std::to_string(i), ring<ClothFrame>(), flaws(), markings(), text(), {}, {}});
                if (sometimes()) cloth.remnants.back().motif = point<ClothFrame>();
            }
        }
        cloth.selvage = maybeLength(0, 9'000);
        cloth.edge = maybeLength(0, 9'000);
        cloth.way = one({Way::One, Way::Two});
        cloth.up = one({PatternUp::Roll, PatternUp::Across});
        if (sometimes()) {
            Pattern pattern;
            const int axes = whole(1, 3);
            if (axes & 1) pattern.across = length(1, 200'000);
            if (axes & 2) pattern.along = length(1, 200'000);
            pattern.drop = maybeLength(0, 100'000);
            pattern.motif = sometimes() ? point<ClothFrame>() : ClothPoint{};
            cloth.pattern = pattern;
        }
        cloth.bow = maybeLength(0, 9'000);
        cloth.skew = maybeLength(-9'000, 9'000);
        while (whole(0, 2) == 0)
            cloth.asked.push_back({text(),
                                   one({ClothAnswer::Said::Open, ClothAnswer::Said::Good, ClothAnswer::Said::Doubt}),
                                   text(),
                                   {}});
        if (sometimes()) cloth.price = Price{one<std::string>({"yd", "m"}), whole(0, 9'999) / 100.0, text(), {}};
        return cloth;
    }
    std::vector<Flaw> flaws() {
        std::vector<Flaw> all;
        while (whole(0, 2) == 0) all.push_back({ring<ClothFrame>(), text(), {}});
        return all;
    }

    Markings markings() {
        Markings m;
        while (whole(0, 2) == 0)
            m.lines.push_back({one({ChalkLine::Runs::Across, ChalkLine::Runs::Along}), maybeLength(-9'000, 9'000), {}});
        while (whole(0, 2) == 0) m.notes.push_back({point<ClothFrame>(), text(), {}});
        return m;
    }

    Panel panel(const std::string &id, const Job &job) {
        Panel panel;
        panel.id = id;
        panel.mark = text();
        panel.name = text();
        panel.count = whole(1, 3);
        if (sometimes()) panel.cloth = one(job.cloths).id;
        const int kind = whole(0, 2);
        if (kind == 0)
            panel.shape = Rectangle{length(1, 400'000), length(1, 400'000)};
        else if (kind == 1)
            panel.shape = Trapezoid{length(90'000, 200'000), length(90'000, 200'000), length(90'000, 200'000),
                                    maybeLength(-9'000, 9'000)};
        else
            panel.shape = PolygonShape{ring<PanelFrame>()};
        const int edges = int(edgeCount(panel.shape));
        panel.allow = edgeLengths(edges, 5'000, 9'000);
        if (std::all_of(panel.allow.begin(), panel.allow.end(), [](const auto &l) { return l.has_value(); }) &&
            !panel.allow.empty())
            panel.allowMin = edgeLengths(edges, 0, 5'000);
        if (sometimes()) panel.run = one({Run::UpRoll, Run::DownRoll, Run::Railroad, Run::Either});
        const auto &pattern = job.clothOf(panel).pattern;
        if (pattern && pattern->across && pattern->along && sometimes()) {
            panel.motif = MotifWish{one({Centre::Across, Centre::Up, Centre::Both}), {}, {}};
            if (sometimes()) panel.motif->at = point<PanelFrame>();
        }
        panel.alike = sometimes();
        panel.mirror = sometimes();
        panel.hidden = sometimes();
        if (sometimes())
            panel.pieces = {kind == 0 ? whole(1, 4) : 1,
                            maybeLength(0, 9'000),
                            maybeLength(0, 90'000),
                            sometimes(),
                            one({Pieces::Where::Any, Pieces::Where::Balanced}),
                            {}};
        if (sometimes()) {
            panel.may.turn = sometimes();
            panel.may.uncentre = sometimes();
            panel.may.otherCloth = one<OtherCloth>({{}, {true, ""}, {false, job.cloths[0].id}});
            while (sometimes()) panel.may.stretcher[whole(0, edges - 1)] = length(0, 9'000);
        }
        return panel;
    }
    EdgeLengths edgeLengths(int edges, int least, int most) {
        EdgeLengths lengths;
        if (sometimes()) return lengths;
        const Length same = length(least, most);
        const int manner = whole(0, 2); // all alike, each its own, some left out
        for (int i = 0; i < edges; ++i) lengths.push_back(manner == 0 ? same : length(least, most));
        if (manner == 2) lengths[std::size_t(whole(1, edges - 1))].reset();
        return lengths;
    }

    Trimming trimming(const Job &job) {
        using Kind = Trimming::Kind;
        Trimming t;
        t.kind = one({Kind::Welt, Kind::DoubleWelt, Kind::Gimp, Kind::Cord, Kind::Nails});
        t.name = text();
        t.edges = length(1, 9'000'000);
        t.runs = whole(1, 9);
        t.reserve = whole(0, 100);
        if (sometimes()) t.cloth = one(job.cloths).id;
        t.strip = length(1, 30'000);
        t.run = one({StripRun::UpRoll, StripRun::Across, StripRun::Bias});
        t.from = one({StripsFrom::Cloth, StripsFrom::Scraps, StripsFrom::Bought});
        t.shortest = length(1, 300'000);
        t.head = length(1, 9'000);
        t.pitch = maybeLength(0, 30'000);
        t.panel = text();
        return t;
    }

    void addFlow(Job &job) {
        const Panel &from = one(job.panels), &to = one(job.panels);
        if (from.id == to.id && from.count == 1) return;
        Flow flow{end(from), end(to), {}, {}};
        if (from.id == to.id) flow.from.copy = 1, flow.to.copy = 2;
        if (flow.from.edge) flow.lost = maybeLength(0, 9'000);
        job.flows.push_back(flow);
    }
    FlowEnd end(const Panel &panel) {
        FlowEnd end{panel.id, {}, {}, {}};
        if (sometimes()) end.edge = whole(0, int(edgeCount(panel.shape)) - 1);
        if (!end.edge || sometimes()) end.at = point<PanelFrame>();
        if (sometimes()) end.copy = whole(1, panel.count);
        return end;
    }

    Layout layout(const Job &job) {
        Layout layout{text(), text(), {}, {}, {}, {}, {}};
        for (const Cloth &cloth : job.cloths) {
            layout.cloths.push_back({cloth.id, {}, {}, sometimes(), {}});
            if (sometimes()) layout.cloths.back().length = length(0, 90'000'000);
            if (sometimes()) layout.cloths.back().bound = length(0, 90'000'000);
        }
        // A panel that is gone since the layout was made is named as well.
        std::vector<std::pair<std::string, int>> panels = {{"gone", 4}};
        for (const Panel &panel : job.panels) panels.push_back({panel.id, int(edgeCount(panel.shape))});
        for (const auto &[id, edges] : panels) {
            layout.cuts.push_back(cut(id, edges, job));
            if (sometimes()) layout.leftOut.push_back({id, whole(1, 3), {}});
            if (sometimes()) layout.conceded.push_back(concession(id, edges));
        }
        return layout;
    }
    Cut cut(const std::string &panel, int edges, const Job &job) {
        Cut cut;
        cut.panel = panel;
        cut.copy = whole(1, 3);
        cut.of = whole(1, 3);
        cut.piece = whole(1, cut.of);
        if (sometimes()) cut.cloth = one(job.cloths).id;
        if (sometimes()) cut.on = text();
        const auto corner = point<ClothFrame>();
        cut.x = corner.x, cut.y = corner.y;
        cut.turn = one(std::vector<Turn>(allTurns.begin(), allTurns.end()));
        cut.mirrored = sometimes();
        cut.allow = edgeLengths(edges, 0, 9'000);
        if (sometimes()) cut.length = length(1, 9'000'000);
        cut.state = one({CutState::Planned, CutState::Locked, CutState::Cut});
        return cut;
    }
    Concession concession(const std::string &panel, int edges) {
        using Kind = Concession::Kind;
        Concession concession;
        concession.kind = one({Kind::Trim, Kind::Stretcher, Kind::Seam, Kind::Turn, Kind::Uncentre, Kind::OtherCloth});
        concession.panel = panel;
        concession.copy = whole(1, 3);
        if (concession.kind == Kind::Trim || concession.kind == Kind::Stretcher) {
            if (concession.kind == Kind::Stretcher || sometimes()) concession.edge = whole(0, edges - 1);
            concession.from = length(0, 9'000);
            concession.to = length(0, 9'000);
        }
        return concession;
    }

    boost::random::mt19937 m_random;
};

} // namespace boltwright::test
