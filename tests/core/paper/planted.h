#pragma once

#include "core/cloth/cloth_questions.h"
#include "core/job/job.h"
#include "core/rules/cut_shape.h"
#include "core/rules/rules.h"

#include <algorithm>
#include <random>

/// Jobs of our own invention with layouts, for tests of paper. Made by plain code, without the planner.
namespace boltwright::planted {

using namespace literals;

inline Panel rectangle(std::string id, std::string mark, std::string name, Length across, Length up, Length allow,
                       int count = 1) {
    Panel p;
    p.id = std::move(id);
    p.mark = std::move(mark);
    p.name = std::move(name);
    p.count = count;
    p.shape = Rectangle{across, up};
    p.allow.assign(4, allow);
    return p;
}

/// Lays every copy of every panel in rows up the roll, each as far left as its motif lets it. Right as far as cloth,
/// gaps and motifs go; wasteful.
inline Layout inRows(const Job &job) {
    Layout layout;
    const Cloth &cloth = job.cloths.front();
    Length x = cloth.selvage, y = cloth.bolt->square, top = y;
    for (const Panel &panel : job.panels) {
        for (int copy = 1; copy <= panel.count; ++copy) {
            Cut cut;
            cut.panel = panel.id;
            cut.copy = copy;
            cut.mirrored = panel.mirror && copy % 2 == 0;
            cut.turn = turnsOf(panel, cloth, cloth).front();
            const LaidCut laid = lay(panel, cut, layout);
            const ClothBox box = laid.box;
            const PlaceSet places = wishedPlaces(job, layout, laid);
            auto place = [&] {
                cut.x = places.nextX(x);
                cut.y = places.nextY(cut.x, y);
            };
            place();
            if (cut.x + box.width() > cloth.bolt->width - cloth.selvage) {
                x = cloth.selvage;
                y = top + job.gap;
                place();
            }
            x = cut.x + box.width() + job.gap;
            top = std::max(top, cut.y + box.height());
            layout.cuts.push_back(cut);
        }
    }
    ClothUse use;
    use.id = cloth.id;
    use.length = top;
    layout.cloths.push_back(use);
    return layout;
}

/// Two small armchairs in a figured cloth with a half-drop.
inline Job chairs() {
    Job job;
    job.card = {.title = "Two hearth chairs",
                .client = "The Ferrow Library",
                .piece = "Pair of hearth chairs",
                .notes = "",
                .date = "2026-11-25",
                .kept = {}};
    Cloth cloth;
    cloth.id = "body";
    cloth.name = "Fern damask";
    cloth.bolt = Bolt{.width = 54_in, .length = {}, .square = 1_in, .flaws = {}, .kept = {}};
    cloth.bolt->flaws.push_back({{{20_in, 40_in}, {23_in, 40_in}, {23_in, 41_in}, {20_in, 41_in}}, "slub", {}});
    cloth.selvage = 0.5_in;
    cloth.pattern = Pattern{.across = 13.5_in, .along = 18_in, .drop = 9_in, .motif = {6.75_in, 4_in}, .kept = {}};
    cloth.price = Price{"yd", 64, "USD", {}};
    job.cloths.push_back(cloth);
    job.gap = 0.25_in;
    Panel back = rectangle("inside-back", "IB", "Inside back", 22_in, 19.5_in, 1.5_in, 2);
    back.motif = MotifWish{Centre::Both, {}, {}};
    Panel seat = rectangle("seat", "ST", "Seat", 21_in, 20_in, 1_in, 2);
    seat.motif = MotifWish{Centre::Across, {}, {}};
    Panel arm = rectangle("outside-arm", "OA", "Outside arm", 24_in, 11_in, 0.75_in, 4);
    arm.shape = Trapezoid{24_in, 20_in, 11_in, 1_in};
    arm.mirror = true;
    Panel wing = rectangle("wing", "W", "Wing", 9_in, 12_in, 0.5_in, 4);
    wing.shape = PolygonShape{{{0_in, 0_in}, {9_in, 0_in}, {8_in, 7_in}, {4_in, 12_in}, {0_in, 10_in}}};
    wing.allow.assign(5, 0.5_in);
    wing.mirror = true;
    Panel welt = rectangle("welt", "WE", "Welt strip", 50_in, 1.5_in, 0_in, 3);
    Panel button = rectangle("button", "BT", "Button", 1.75_in, 1.75_in, 0_in, 8);
    button.run = Run::Either;
    job.panels = {back, seat, arm, wing, welt, button};
    return job;
}

/// Footstools from two remnants of different lots, one of them not square, some of it already cut.
inline Job footstools() {
    Job job;
    job.unit = Unit::Centimetre;
    job.card = {.title = "Four footstools",
                .client = "Hob & Sallow",
                .piece = "Footstools",
                .notes = "",
                .date = "2026-05-02",
                .kept = {}};
    Cloth cloth;
    cloth.id = "left-over";
    cloth.name = "Willow weave";
    cloth.edge = 1_cm;
    cloth.pattern = Pattern{.across = 20_cm, .along = 24_cm, .drop = {}, .motif = {10_cm, 5_cm}, .kept = {}};
    cloth.remnants.push_back({"A",
                              {{0_cm, 0_cm}, {120_cm, 0_cm}, {120_cm, 70_cm}, {60_cm, 90_cm}, {0_cm, 90_cm}},
                              {},
                              {},
                              "117",
                              {},
                              {},
                              {}});
    cloth.remnants.push_back({"B",
                              {{-10_cm, -5_cm}, {70_cm, -5_cm}, {70_cm, 60_cm}, {-10_cm, 60_cm}},
                              {},
                              {},
                              "118",
                              ClothPoint{5_cm, 4_cm},
                              {},
                              {}});
    cloth.remnants.back().flaws.push_back(
        {{{50_cm, 10_cm}, {60_cm, 10_cm}, {60_cm, 14_cm}, {50_cm, 14_cm}}, "hole", {}});
    job.cloths.push_back(cloth);
    job.gap = 0.5_cm;
    Panel top = rectangle("top", "T", "Footstool top", 38_cm, 32_cm, 2_cm, 3);
    top.motif = MotifWish{Centre::Both, {}, {}};
    top.may.uncentre = true;
    Panel band = rectangle("band", "B", "Band", 50_cm, 8_cm, 1.5_cm, 1);
    job.panels = {top, band};
    auto cut = [](const char *panel, int copy, const char *on, Length x, Length y, Turn turn = Turn::Deg0) {
        Cut c;
        c.panel = panel;
        c.copy = copy;
        c.on = on;
        c.x = x;
        c.y = y;
        c.turn = turn;
        return c;
    };
    Layout layout;
    layout.cuts = {cut("top", 1, "A", 9_cm, 11_cm), cut("top", 2, "A", 69_cm, 11_cm), cut("top", 3, "B", 4_cm, 10_cm),
                   cut("band", 1, "A", 5_cm, 50_cm)};
    layout.cuts[0].state = CutState::Cut;
    layout.cuts[1].state = CutState::Locked;
    Concession off;
    off.kind = Concession::Kind::Uncentre;
    off.panel = "top";
    off.copy = 3;
    layout.conceded = {off};
    job.layouts = {layout};
    return job;
}

/// A long back joined from three pieces, another on the bias, allowances trimmed.
inline Job joinedBack() {
    Job job;
    job.card = {.title = "Bench with a long back", .client = "", .piece = "Bench", .notes = "", .date = "", .kept = {}};
    Cloth cloth;
    cloth.id = "c";
    cloth.bolt = Bolt{.width = 48_in, .length = 120_in, .square = {}, .flaws = {}, .kept = {}};
    job.cloths.push_back(cloth);
    Panel back = rectangle("back", "LB", "Long back", 88_in, 20_in, 1_in);
    back.pieces = {
        .most = 3, .seam = 0.5_in, .shortest = 10_in, .match = false, .where = Pieces::Where::Any, .kept = {}};
    back.allowMin.assign(4, 0.5_in);
    Panel welt = rectangle("welt", "WE", "Bias strip", 20_in, 2_in, 0_in, 2);
    welt.run = Run::Bias;
    job.panels = {back, welt};
    Layout layout;
    const std::vector<Length> lengths = {24.5_in, 41_in,
                                         26.5_in}; // 24 + 40 + 26 make 90, and two halves of seam each join
    Length y;
    for (int piece = 1; piece <= 3; ++piece) {
        Cut c;
        c.panel = "back";
        c.piece = piece;
        c.of = 3;
        c.length = lengths[std::size_t(piece - 1)];
        c.allow = {1_in, 1_in, 0.75_in, 1_in};
        c.y = y;
        y += 21.75_in;
        layout.cuts.push_back(c);
    }
    for (int copy = 1; copy <= 2; ++copy) {
        Cut c;
        c.panel = "welt";
        c.copy = copy;
        c.turn = copy == 1 ? Turn::Deg45 : Turn::Deg315;
        c.x = copy == 1 ? 1_in : 24_in;
        c.y = y + 1_in;
        layout.cuts.push_back(c);
    }
    Concession seam, trim;
    seam.kind = Concession::Kind::Seam;
    seam.panel = trim.panel = "back";
    trim.kind = Concession::Kind::Trim;
    trim.edge = Top;
    trim.from = 1_in;
    trim.to = 0.75_in;
    layout.conceded = {seam, trim};
    job.layouts = {layout};
    return job;
}

inline std::int64_t draw(std::mt19937_64 &random, std::int64_t low, std::int64_t high) {
    return low + std::int64_t(random() % std::uint64_t(high - low + 1)); // the same on every machine
}

/// What goes with the panels, some of it and more as the seed chooses: trimmings of every kind, and answers about the
/// cloth.
inline Job dressed(Job job, std::uint64_t seed) {
    std::mt19937_64 random(seed * 77 + 5);
    const auto inches = [&](int low, int high) { return Length::ticks(draw(random, low * 2, high * 2) * 4064); };
    const int count = int(draw(random, 1, 9));
    for (int i = 0; i < count; ++i) {
        Trimming t;
        t.kind = Trimming::Kind((i + int(seed)) % 5);
        if (draw(random, 0, 1)) t.name = "round the seat, the inside back and both arms";
        t.edges = inches(20, 900);
        t.runs = int(draw(random, 1, 6));
        t.reserve = int(draw(random, 0, 2)) * 10;
        t.strip = Length::ticks(8128 * 3 / 2);
        t.run = StripRun(draw(random, 0, 2));
        t.from = StripsFrom(draw(random, 0, 2));
        t.shortest = inches(10, 20);
        t.head = Length::ticks(8128 * 7 / 16);
        if (draw(random, 0, 1)) t.pitch = inches(1, 3);
        job.trimmings.push_back(t);
    }
    for (Cloth &cloth : job.cloths) {
        cloth.bow = inches(0, 1);
        cloth.skew = inches(0, 1);
        for (const ClothQuestion &question : clothQuestions()) {
            if (draw(random, 0, 3) == 0) continue;
            ClothAnswer answer;
            answer.about = question.about;
            answer.said = ClothAnswer::Said(draw(random, 0, 2));
            if (draw(random, 0, 1))
                answer.note = "the mill was asked on the telephone and will send a cutting of this lot";
            cloth.asked.push_back(answer);
        }
    }
    return job;
}

/// Sixty panels in a row on a bolt, more than 40 m of it: each takes a width of its own.
inline Job sixtyPanels() {
    std::mt19937_64 random(60);
    Job job;
    job.unit = Unit::Centimetre;
    job.card = {.title = "Banquettes for a long room",
                .client = "Quill & Harrow",
                .piece = "Banquettes",
                .notes = "",
                .date = "2026-11-02",
                .kept = {}};
    Cloth cloth;
    cloth.id = "body";
    cloth.name = "Leaf trellis";
    cloth.bolt = Bolt{.width = 140_cm, .length = {}, .square = 2_cm, .flaws = {}, .kept = {}};
    cloth.selvage = 1_cm;
    cloth.pattern = Pattern{.across = 35_cm, .along = 32_cm, .drop = 16_cm, .motif = {17.5_cm, 4_cm}, .kept = {}};
    job.cloths.push_back(cloth);
    job.gap = 0.5_cm;
    for (int i = 0; i < 60; ++i) {
        Panel p =
            rectangle("p" + std::to_string(i), "B" + std::to_string(i + 1), "Back of a bay",
                      Length::ticks(draw(random, 720, 1000) * 320), Length::ticks(draw(random, 600, 660) * 320), 2_cm);
        p.motif = MotifWish{Centre::Both, {}, {}};
        if (i % 4 == 3) p.shape = Trapezoid{90_cm, 70_cm, 62_cm, 3_cm};
        job.panels.push_back(p);
    }
    return job;
}

/// A job of `panels` panels in a unit, a cloth and a pattern that the seed chooses.
inline Job anyJob(std::uint64_t seed, int panels) {
    std::mt19937_64 random(seed);
    Job job;
    const int kind = int(draw(random, 0, 2));
    job.unit = kind == 0 ? Unit::Inch : kind == 1 ? Unit::Centimetre : Unit::Millimetre;
    const Length step = kind == 0 ? Length::ticks(8128 / 4) : 5_mm;
    auto between = [&](int low, int high) {
        return Length::ticks(draw(random, low, high) * 320 / step.ticks() * step.ticks());
    };
    job.card = {.title = "Job " + std::to_string(seed),
                .client = "Marrow & Lisle",
                .piece = "Window seat",
                .notes = "",
                .date = "2026-03-01",
                .kept = {}};
    Cloth cloth;
    cloth.id = "cloth";
    cloth.name = "Plain weave";
    cloth.bolt = Bolt{.width = between(1200, 1600), .length = {}, .square = between(0, 30), .flaws = {}, .kept = {}};
    cloth.selvage = between(5, 15);
    cloth.way = draw(random, 0, 1) ? Way::One : Way::Two;
    const bool patterned = draw(random, 0, 2) > 0;
    if (patterned) {
        cloth.pattern = Pattern{.across = between(60, 500),
                                .along = between(60, 700),
                                .drop = {},
                                .motif = {between(0, 400), between(0, 400)},
                                .kept = {}};
        if (draw(random, 0, 1)) cloth.pattern->drop = Length::ticks(cloth.pattern->along->ticks() / 2);
        if (draw(random, 0, 4) == 0)
            cloth.pattern->along.reset();
        else if (draw(random, 0, 4) == 0)
            cloth.pattern->across.reset();
    }
    job.cloths.push_back(cloth);
    job.gap = between(0, 10);
    for (int i = 0; i < panels; ++i) {
        const bool small = draw(random, 0, 3) == 0;
        Panel p = rectangle("p" + std::to_string(i), std::string(1, char('A' + i % 26)) + std::to_string(i),
                            small ? "Small part" : "Part of the cover", between(small ? 40 : 150, small ? 150 : 700),
                            between(small ? 30 : 100, small ? 120 : 700), between(0, 40), int(draw(random, 1, 3)));
        for (auto &a : p.allow) a = between(0, 40);
        const int shape = int(draw(random, 0, 4));
        const auto [across, up] = std::get<Rectangle>(p.shape);
        if (shape == 1) p.shape = Trapezoid{across, Length::ticks(across.ticks() * 3 / 4), up, between(0, 20)};
        if (shape == 2) {
            const Length part = Length::ticks(across.ticks() / 3), half = Length::ticks(up.ticks() / 2);
            p.shape = PolygonShape{{{{}, {}}, {across, {}}, {across, half}, {part, up}, {{}, up}}};
            p.allow.assign(5, between(0, 30));
        }
        p.mirror = draw(random, 0, 2) == 0;
        if (patterned && draw(random, 0, 1)) {
            p.motif = MotifWish{Centre::Both, {}, {}};
            if (!cloth.pattern->along) p.motif->centre = Centre::Across;
            if (!cloth.pattern->across) p.motif->centre = Centre::Up;
        } else if (draw(random, 0, 3) == 0) {
            p.run = Run::Railroad;
        }
        job.panels.push_back(p);
    }
    return job;
}

} // namespace boltwright::planted
