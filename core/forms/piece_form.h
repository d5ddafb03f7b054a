#pragma once

#include "core/measure/length.h"
#include "core/measure/unit.h"
#include "core/panel/panel.h"
#include "core/trimmings/edge_kind.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

/// What a piece of furniture is made of, before it is measured: data, so that a shop can write its own.
namespace boltwright {

/// The measures that a part may have.
enum class Measure {
    Up,        ///< up and down; on seats and decks front to back
    Across,    ///< side to side; on arms and wings front to back
    Top,       ///< side to side at the top, of a part that narrows
    Thickness, ///< of a cushion
    Side,      ///< of a skirt: along one side of the piece, where `Across` is its front
};
inline constexpr std::array<Measure, 5> allMeasures = {Measure::Up, Measure::Across, Measure::Top, Measure::Thickness,
                                                       Measure::Side};

/// Lengths by measure; zero where a part has none.
struct Sizes {
    std::array<Length, allMeasures.size()> lengths{};
    Length &operator[](Measure m) { return lengths[std::size_t(m)]; }
    Length operator[](Measure m) const { return lengths[std::size_t(m)]; }
    bool operator==(const Sizes &) const = default;
};

/// What a part becomes on the cloth.
enum class PartKind {
    Rectangle,
    Trapezoid,     ///< narrows to the top; leans to neither side
    OnPoint,       ///< a square standing on a corner inside the block that is measured, as a corner chair's seat
    BoxCushion,    ///< plates, boxing at front and sides, zipper bands at the back
    KnifeEdge,     ///< a cushion of two plates
    KickSkirt,     ///< four panels with kick pleats at the corners, lined with themselves
    FlatSkirt,     ///< four panels without pleats, hemmed
    BoxPleatSkirt, ///< the same, box-pleated all round
    GatheredSkirt, ///< the same, gathered
};

/// What is set on an edge once the piece is covered.
enum class EdgeTrim { Gimp, DoubleWelt, Cord, Nails };

/// One of the measures to take, in the order in which they are taken, and what to call it: "front to back".
struct PartMeasure {
    Measure measure = Measure::Up;
    std::string words;
    Length typical; ///< of an ordinary piece of this kind; our own figures
    bool operator==(const PartMeasure &) const = default;
};

struct FormPart {
    std::string id;   ///< within the form; the panel's id as well
    std::string mark; ///< chalked on the back: IB, OA ... (T6, names and marks)
    std::string name;
    PartKind kind = PartKind::Rectangle;
    std::vector<PartMeasure> measures; ///< up and down (or front to back) first, then side to side, then the rest
    int count = 1;
    bool mirror = false;             ///< the second of every two is the mirror image: left and right
    bool hidden = false;             ///< out of sight: may cross a flaw, be turned, or be cut from another cloth
    bool optional = false;           ///< not part of the ordinary piece: left out until it is asked for
    std::array<EdgeKind, 4> edges{}; ///< by `Edge`; what is added, and where the welt runs
    std::map<int, EdgeTrim> trims;   ///< by `Edge`
    std::optional<Centre> motif;     ///< on cloth with a pattern
    bool alike = false;
    int mostPieces = 1; ///< where cloth is too narrow; joins lie the same on both sides of the middle
    bool operator==(const FormPart &) const = default;

    const PartMeasure *measure(Measure m) const; ///< null: the part has none
};

/// The pattern runs on from one part to the next: down the back over the cushion to the front (T6.18). Between one part
/// and several side by side, each of those goes on from its share of the one. A cushion's front is `id` + "-front".
struct FormFlow {
    std::string from;
    int edge = Bottom;
    std::string to;
    int edgeTo = Top;
    bool operator==(const FormFlow &) const = default;
};

/// One upright block of the drawing of a piece, in whole inches or so: x to the right, y from front to back, z upwards.
/// Blocks do not reach into one another.
struct DrawnBlock {
    std::vector<std::array<int, 2>> foot; ///< corners seen from above, counter-clockwise, convex
    int low = 0, high = 0;
    std::vector<std::string> sides; ///< the part that covers each side, from foot[i] to the next; empty: bare frame
    std::string top;
    bool operator==(const DrawnBlock &) const = default;

    std::vector<std::string> parts() const; ///< all that are named, each once
};

struct PieceForm {
    std::string id, name;
    int place = 0; ///< in the list of forms
    std::vector<FormPart> parts;
    std::vector<FormFlow> flows;
    std::vector<DrawnBlock> drawing; ///< may name parts that are gone since
    bool operator==(const PieceForm &) const = default;

    const FormPart *part(const std::string &partId) const; ///< null: none of that id
};

/// Which measures a kind has, in the order in which they are taken.
std::vector<Measure> measuresOf(PartKind kind);
/// Whether a part is laid all round the foot of the piece.
bool isSkirt(PartKind kind);

/// What makes cloth run deeper than the flat measure.
struct Relief {
    bool channels = false; ///< up and down; otherwise tufts
    Length spacing, depth; ///< from button to button and how deep; a channel's width and how far it stands proud
    bool operator==(const Relief &) const = default;
};

/// What was measured of one part.
struct PartMeasured {
    bool there = true;
    int count = 1;
    Sizes sizes;
    std::optional<Sizes> twin;    ///< of a mirrored pair whose right one measures otherwise; none: the same
    bool motif = true;            ///< the form's wish for a motif holds
    bool twinMotif = true;        ///< the same for the right one, where it has measures of its own
    std::optional<Relief> relief; ///< of a part that is no cushion and no skirt: measured flat, cut larger
    bool operator==(const PartMeasured &) const = default;
};

/// What was measured of a piece, by the part's id.
using FormMeasures = std::map<std::string, PartMeasured>;

/// The form with its typical sizes, to begin with; in a metric workroom to the nearest centimetre. Optional parts are
/// not there.
FormMeasures typicalMeasures(const PieceForm &form, Unit unit);

} // namespace boltwright
