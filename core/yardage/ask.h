#pragma once

#include "core/planner/plan.h"
#include "core/yardage/on_cloth.h"

#include <optional>
#include <string>
#include <vector>

/// How much to ask for: cloth that is not bought yet, and cloth that is short.
namespace boltwright {

struct AskAnswer;

struct AskOptions {
    PlanOptions plan; ///< seconds or steps for each cloth; threads are shared out over the table
    Length reserve;   ///< for flaws and mistakes, on top
    int eighths = 2;  ///< the shop's step
    /// Called after each answer, from any thread, one call at a time.
    std::function<void(int done, int of)> progress;
    /// Hands over each answer as it comes, before `progress`; `index` is its place among the cloths.
    std::function<void(std::size_t index, const AskAnswer &answer)> found;
};

struct AskAnswer {
    AskCloth cloth;
    Plan plan;                            ///< of the job on that cloth, its motif where the job says
    Job job;                              ///< the job on that cloth
    std::vector<OtherwiseLaid> otherwise; ///< parts that this cloth does not hold as wished, and what is done instead
    Length planned;                       ///< length of that layout; with a repeat up the roll, from its first cut
    Length firstMotif; ///< extra because the first motif of a bolt may lie anywhere: up to one repeat
    Length reserve;
    Length buy; ///< all of these, rounded up to the shop's step
};

/// One answer a cloth, in their order. Stops early when the plan options' `stop` says so, with what it has: a cloth for
/// which nothing was found by then has no answer.
std::vector<AskAnswer> askFor(const Job &job, const std::vector<AskCloth> &cloths, const AskOptions &options);

/// The parts with slanted edges, by id, that are wider than the cloth in every way they may lie: only rectangles are
/// made of pieces of themselves; where another shape is joined is for who draws it to say.
std::vector<std::string> widerAsOnePiece(const AskAnswer &answer);

/// For cloth that is short: the least extra length of the same cloth, added at the far end of the bolt or of this one
/// remnant, with which all panels were laid, on this remnant and on the cloth's others as they are.
struct ExtraLength {
    std::string cloth;
    std::optional<std::string> remnant; ///< none: the bolt
    Length extra;                       ///< found by planning; zero: it does as it is
    Length atLeast;                     ///< proved: less will not do
    Plan plan;                          ///< on the longer piece; what an outline lacks of its box is a flaw there
    Job job;
};
/// Whether there is only so much of the cloth: remnants, or a bolt of a known length.
bool isLimited(const Cloth &cloth);
/// The bolt, or every remnant of the cloth; the smallest first. Empty when no length would do (a panel too wide), and
/// for a bolt that is as long as it takes. On a bolt, what is locked or cut already in `options.from` stays where it
/// lies; of remnants on which something stays nothing is said.
std::vector<ExtraLength> extraLengths(const Job &job, const std::string &cloth, const PlanOptions &options);
/// The same of every cloth of the job of which there is only so much and from which something is cut. The time or the
/// steps of `options` are shared out.
std::vector<ExtraLength> extraLengths(const Job &job, const PlanOptions &options);

/// "The bolt would do if it were 17 1/2 in longer, and less will not do: this is proved. Ask for 1/2 yd more, in one
/// length with it." In the job's unit, rounded up to the shop's step (`eighths` as for `spokenPurchase`).
std::string extraInWords(const Job &job, const ExtraLength &extra, int eighths = 2);

} // namespace boltwright
