#pragma once

#include "core/check/check.h"
#include "core/job/job.h"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

/// A small workroom for examples of the judge: cloths, panels and cuts in a line each, and what is found as text.
namespace workroom {

using namespace boltwright;
using namespace boltwright::literals;
using Kind = Finding::Kind;
using Kinds = std::vector<Kind>;

inline const Length hair = 0.0625_in; ///< a sixteenth of an inch
constexpr Length tick = Length::ticks(1);

/// A 54 in bolt without selvage, and nothing to lay yet.
inline Job emptyJob() {
    Cloth body;
    body.id = "body";
    body.name = "Body";
    body.bolt.emplace();
    body.bolt->width = 54_in;
    Job job;
    job.cloths = {body};
    return job;
}

/// The same with one remnant, A, 40 in by 30 in, in place of the bolt.
inline Job remnantJob() {
    Job job = emptyJob();
    job.cloths[0].bolt.reset();
    Remnant a;
    a.id = "A";
    a.outline = {{0_in, 0_in}, {40_in, 0_in}, {40_in, 30_in}, {0_in, 30_in}};
    job.cloths[0].remnants = {a};
    return job;
}

inline Pattern repeat(Length across, Length along, Length drop = {}) {
    Pattern pattern;
    if (across > Length{}) pattern.across = across;
    if (along > Length{}) pattern.along = along;
    pattern.drop = drop;
    return pattern;
}

inline Panel rectangle(const std::string &id, Length across, Length up) {
    Panel panel;
    panel.id = id;
    panel.name = id;
    panel.shape = Rectangle{across, up};
    return panel;
}

inline EdgeLengths allRound(Length allowance) { return EdgeLengths(4, allowance); }

inline Cut cut(const std::string &panel, Length x, Length y, int copy = 1, Turn turn = Turn::Deg0) {
    Cut one;
    one.panel = panel;
    one.copy = copy;
    one.x = x;
    one.y = y;
    one.turn = turn;
    return one;
}

inline Cut onRemnant(Cut one, const std::string &remnant = "A") {
    one.on = remnant;
    return one;
}

inline Cut piece(Cut one, int number, int of, Length length) {
    one.piece = number;
    one.of = of;
    one.length = length;
    return one;
}

inline Concession gaveUp(Concession::Kind kind, const std::string &panel, int copy = 1) {
    Concession given;
    given.kind = kind;
    given.panel = panel;
    given.copy = copy;
    return given;
}

inline Concession shortened(Concession::Kind kind, const std::string &panel, std::optional<int> edge, Length from,
                            Length to) {
    Concession given = gaveUp(kind, panel);
    given.edge = edge;
    given.from = from;
    given.to = to;
    return given;
}

/// A layout of these cuts with the length of the first cloth as told.
inline Layout layoutOf(std::vector<Cut> cuts, std::optional<Length> length = {}) {
    Layout layout;
    layout.cuts = std::move(cuts);
    if (length) {
        ClothUse use;
        use.id = "body";
        use.length = length;
        layout.cloths = {use};
    }
    return layout;
}

inline std::vector<std::string> texts(const Job &job, const Layout &layout) {
    std::vector<std::string> all;
    for (const Finding &finding : check(job, layout)) all.push_back(finding.text);
    return all;
}

inline Kinds kinds(const Job &job, const Layout &layout) {
    Kinds all;
    for (const Finding &finding : check(job, layout)) all.push_back(finding.kind);
    return all;
}

inline bool right(const Job &job, const Layout &layout) { return check(job, layout).empty(); }

} // namespace workroom
