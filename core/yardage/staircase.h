#pragma once

#include "core/planner/plan.h"

#include <optional>
#include <string>
#include <vector>

/// Why a job needs the cloth it needs.
namespace boltwright {

/// What makes a length longer, in the order in which it is told. Each kind's step is what the length grows by when
/// that kind's rules come back while all later ones are still relaxed.
enum class StairKind {
    BareArea,    ///< the measured shapes, as if cloth could be poured: area ÷ full width
    Allowances,  ///< seams, pulls and tucks: cut area ÷ full width
    Width,       ///< rectangles do not fill a width: planned, free to turn, no repeat, no gap, no selvage
    Direction,   ///< nap, print and run
    Motif,       ///< motifs in the middle of panels
    Flow,        ///< the pattern runs on, copies alike
    SelvageGaps, ///< selvages, squared end, gaps and flaws
    Rounding,    ///< up to what a shop sells
};

struct Stair {
    StairKind kind = StairKind::BareArea;
    Length step;        ///< what this kind adds; the steps add up exactly to the staircase's `buy`
    Length length;      ///< reached with this step
    bool upTo = false;  ///< the step is smaller than what its two layouts may still be above their bounds
    Layout layout;      ///< the layout behind the length; no cuts for areas and rounding
    std::string advice; ///< what the client could do about it, a sentence; empty: nothing
};

struct Staircase {
    std::string cloth;
    Length needed;             ///< the planned length
    Length buy;                ///< rounded up
    std::vector<Stair> stairs; ///< one a kind, in order; no step is negative
    bool onHand = false;       ///< of a bolt of a known length: nothing is to be bought
};

struct StaircaseOptions {
    PlanOptions
        plan; ///< seconds or steps are for the whole staircase; `from` is the layout to explain, where there is one
    int eighths = 2; ///< the shop's step: eighths of a yard, or tenths of a metre where the job is metric
    std::function<void(double share)> progress; ///< after each landing, from the calling thread
};

/// The staircase of one bolt of the job; an error when the job cannot be laid on it at all.
Result<Staircase> staircaseOf(const Job &job, const std::string &cloth, const StaircaseOptions &options);

/// The name of a step on screen and paper: "bare measured area", "nap or direction", ...
std::string nameOf(StairKind kind);

} // namespace boltwright
