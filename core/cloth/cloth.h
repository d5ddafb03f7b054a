#pragma once

#include "core/cloth/pattern.h"
#include "core/cloth/picture.h"
#include "core/geometry/polygon.h"

#include <optional>
#include <string>
#include <vector>

namespace boltwright {

/// A place that must not be cut from; the outline is simple, either way round.
struct Flaw {
    ClothRing outline;
    std::string note;
    Kept kept;
    bool operator==(const Flaw &) const = default;
};

/// A line drawn on the cloth with chalk, from edge to edge: a help for the hand, no rule. Panels come to rest at it.
struct ChalkLine {
    enum class Runs { Across, Along }; ///< from selvage to selvage at a y, or up the roll at an x
    Runs runs = Runs::Across;
    Length at;
    Kept kept;
    bool operator==(const ChalkLine &) const = default;
};

/// A few words pinned to a place of the cloth, for whoever cuts it.
struct PinnedNote {
    ClothPoint at;
    std::string text;
    Kept kept;
    bool operator==(const PinnedNote &) const = default;
};

/// What a person drew on a bolt or remnant and pinned to it.
struct Markings {
    std::vector<ChalkLine> lines;
    std::vector<PinnedNote> notes;
    bool operator==(const Markings &) const = default;
};

/// Cloth off the roll: edge to edge, selvages included.
struct Bolt {
    Length width;
    std::optional<Length> length; ///< none: as much as it takes
    Length square;                ///< lost at the cut end to square it
    std::vector<Flaw> flaws;
    Markings markings;
    Kept kept;
    bool operator==(const Bolt &) const = default;
};

/// A piece left over, in a cloth frame of its own; the outline is simple, either way round.
struct Remnant {
    std::string id;
    ClothRing outline;
    std::vector<Flaw> flaws;
    Markings markings;
    std::string lot;                 ///< dye lot; empty: not told
    std::optional<ClothPoint> motif; ///< where a motif sits on this remnant; none: as the pattern says
    std::optional<RemnantPhoto> photo;
    Kept kept;
    bool operator==(const Remnant &) const = default;
};

struct Price {
    std::string per;   ///< "yd", "m"
    double amount = 0; ///< money, not a length
    std::string currency;
    Kept kept;
    bool operator==(const Price &) const = default;
};

enum class Way { One, Two };           ///< one: nap or print has a top; two: a panel may be turned by 180
enum class PatternUp { Roll, Across }; ///< where the pattern's top points: up the roll, or towards the left selvage

/// What was found out about a cloth before it is cut into (see cloth_questions.h for what is asked).
struct ClothAnswer {
    enum class Said { Open, Good, Doubt };
    std::string about; ///< the question's id
    Said said = Said::Open;
    std::string note;
    Kept kept;
    bool operator==(const ClothAnswer &) const = default;
};

/// One cloth of a job: a bolt, or one or more remnants, never both.
struct Cloth {
    std::string id, name;
    std::optional<Bolt> bolt;
    std::vector<Remnant> remnants;
    Length selvage; ///< along both selvages of a bolt, not cut from
    Length edge;    ///< kept from a remnant's outline
    Way way = Way::One;
    PatternUp up = PatternUp::Roll;
    std::optional<Pattern> pattern;
    std::optional<Price> price;
    /// How far the weft is off square over the whole width: the greatest distance of a curved yarn from the straight
    /// line between its ends, and how far the right end lies further up the roll than the left (less than zero: further
    /// down). Shown and warned of; cuts are laid as if the cloth were square.
    Length bow, skew;
    std::vector<ClothAnswer> asked;
    std::optional<ClothLook> look; ///< none: drawn in colours of the program's own
    Kept kept;
    bool operator==(const Cloth &) const = default;

    const Remnant *remnant(const std::string &remnantId) const; ///< null: none of that id
    /// The motifs of the bolt (`on` empty) or of a remnant; none for cloth without a pattern.
    std::optional<Lattice> latticeOn(const std::optional<std::string> &on) const;
};

} // namespace boltwright
