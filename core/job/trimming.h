#pragma once

#include "core/base/kept.h"
#include "core/measure/length.h"

#include <optional>
#include <string>

namespace boltwright {

/// How strips for welt lie on the cloth.
enum class StripRun {
    UpRoll, ///< along the selvage
    Across, ///< from selvage to selvage
    Bias,   ///< at 45 degrees, rising to either side
};

/// Where strips for welt come from.
enum class StripsFrom {
    Cloth,  ///< cut from the bolt, as panels of the job
    Scraps, ///< from what the layout leaves over
    Bought, ///< ready made
};

/// What is set on edges once the piece is covered, and how much of it. Holds all that its figures are reckoned from, so
/// that a page printed later says the same.
struct Trimming {
    enum class Kind { Welt, DoubleWelt, Gimp, Cord, Nails };

    Kind kind = Kind::Welt;
    std::string name;                 ///< what it is for; may be empty
    Length edges;                     ///< the edges that carry it, together
    int runs = 1;                     ///< separate lengths, each with a beginning and an end that take a join
    int reserve = 0;                  ///< ordered beyond what is needed, in the hundred
    std::optional<std::string> cloth; ///< strips: none is the job's first
    Length strip;                     ///< strips: how wide they are cut
    StripRun run = StripRun::Across;
    StripsFrom from = StripsFrom::Cloth;
    Length shortest;   ///< strips from scraps: a shorter piece serves for nothing
    Length head;       ///< nails: across the head
    Length pitch;      ///< nails: from centre to centre; zero: head to head
    std::string panel; ///< strips cut from the cloth: the panel they are cut as; empty, or gone since: none
    Kept kept;
    bool operator==(const Trimming &) const = default;

    /// Made of strips of cloth.
    bool isStrip() const { return (kind == Kind::Welt || kind == Kind::DoubleWelt) && from != StripsFrom::Bought; }
};

} // namespace boltwright
