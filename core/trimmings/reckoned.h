#pragma once

#include "core/job/job.h"
#include "core/trimmings/strips.h"

#include <vector>

namespace boltwright {

/// How much of a trimming is needed, and whether what there is suffices.
struct Reckoned {
    Length need;                     ///< edges, where each run begins and ends, and the reserve; nails: the edges
    std::int64_t pieces = 0;         ///< strips to cut, or nails to buy
    Length pieceLength;              ///< of one strip that is cut from the cloth
    Length cloth;                    ///< what strips across the cloth take of it, about
    std::optional<StripsLeft> found; ///< strips from scraps: all that the layout leaves room for
    std::vector<Strip> used;         ///< of those the longest until they are enough; all, where they never are
    Length made;                     ///< what those make, joined
    bool enough = true;
    bool operator==(const Reckoned &) const = default;
};

/// Reckons a trimming of the job. Strips are joined on the slant, each join costing a strip's width, as does the place
/// where a run begins and ends (T5.31). For strips from scraps `layout` is what leaves them; without cuts there are
/// none. What a trimming that stands before it in the job takes of the same scraps is not there a second time.
Reckoned reckoned(const Job &job, const Layout &layout, const Trimming &trimming);
/// All of the job's, in its order.
std::vector<Reckoned> reckonedAll(const Job &job, const Layout &layout);

/// The strips as a panel of the job, under an id that is free: as many as are needed, across the cloth, along it or on
/// the bias. None for what is not cut from a bolt, or where the cloth is too narrow for a join.
std::optional<Panel> stripPanel(const Job &job, const Trimming &trimming);

/// "welt", "double welt", "gimp", "cord", "nails".
std::string_view nameOf(Trimming::Kind kind);

/// One trimming in a sentence or two, for screen and paper.
std::string trimmingWords(const Job &job, const Layout &layout, const Trimming &trimming);
/// The same for what was reckoned already.
std::string trimmingWords(const Job &job, const Trimming &trimming, const Reckoned &figures);

} // namespace boltwright
