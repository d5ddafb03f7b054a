#pragma once

#include "core/base/kept.h"
#include "core/measure/turn.h"
#include "core/panel/panel.h"

#include <optional>
#include <string>
#include <vector>

namespace boltwright {

enum class CutState { Planned, Locked, Cut }; ///< locked stays where it is; cut is off the cloth

/// One piece of one copy of a panel, lying on the cloth. `x`, `y`: lower left corner of the bounding box of its cut
/// outline after turning, in the frame of the bolt or remnant.
struct Cut {
    std::string panel;
    int copy = 1, piece = 1, of = 1;
    std::optional<std::string> cloth; ///< none: the panel's
    std::optional<std::string> on;    ///< the remnant; none on a bolt
    Length x, y;
    Turn turn = Turn::Deg0;
    bool mirrored = false;
    EdgeLengths allow; ///< what was left on each edge; an edge without one (or all, when empty) has the panel's
    std::optional<Length> length; ///< a piece's cut length, `seam` at each joined end included; none for a whole cut
    CutState state = CutState::Planned;
    Kept kept;
    bool operator==(const Cut &) const = default;
};

/// What a layout uses of one cloth.
struct ClothUse {
    std::string id;
    std::optional<Length> length; ///< greatest y of any cut; bolt only
    std::optional<Length> bound;  ///< no layout with these concessions uses less
    bool proved = false;          ///< length equals bound
    Kept kept;
    bool operator==(const ClothUse &) const = default;
};

struct LeftOut {
    std::string panel;
    int copy = 1;
    Kept kept;
    bool operator==(const LeftOut &) const = default;
};

/// Something given up. Trims and stretchers name an edge and from what to what.
struct Concession {
    enum class Kind { Trim, Stretcher, Seam, Turn, Uncentre, OtherCloth };
    Kind kind = Kind::Trim;
    std::string panel;
    int copy = 1;
    std::optional<int> edge; ///< none for a trim: all edges alike
    std::optional<Length> from, to;
    Kept kept;
    bool operator==(const Concession &) const = default;
};

struct Layout {
    std::string name, madeBy;
    std::vector<ClothUse> cloths;
    std::vector<Cut> cuts;
    std::vector<LeftOut> leftOut;
    std::vector<Concession> conceded;
    /// In a file: the one that lay on the table when it was written, where that is not the last.
    bool onTable = false;
    Kept kept;
    bool operator==(const Layout &) const = default;
};

} // namespace boltwright
