#pragma once

#include "core/trimmings/ratio.h"

#include <array>
#include <optional>
#include <string_view>

namespace boltwright {

/// Published tables that estimate how much more a patterned or narrow cloth takes than plain 54 in cloth. They
/// contradict one another by design: "repeat" is in some the sum of both repeats, in some the larger. None is a rule of
/// cutting; a layout normally lands at or under them. Each names its source.
enum class SurchargeTable {
    SlipcoverShop,  ///< sum of both repeats, 54 and 50 to 52 in cloth (T3.1)
    Upholsterer,    ///< sum of both repeats (T3.2)
    FurnitureHouse, ///< larger repeat, width and direction (T3.3)
    MatchedOnly,    ///< larger repeat, matched patterns (T3.4)
    YieldChart,     ///< larger repeat and width (T3.5)
    CushionMaker,   ///< sum of both repeats (T3.6)
};
inline constexpr std::array<SurchargeTable, 6> surchargeTables = {
    SurchargeTable::SlipcoverShop, SurchargeTable::Upholsterer, SurchargeTable::FurnitureHouse,
    SurchargeTable::MatchedOnly,   SurchargeTable::YieldChart,  SurchargeTable::CushionMaker};

/// Who published it.
std::string_view sourceOf(SurchargeTable table);

/// The cloth and the way it is run. A repeat of zero: none that way.
struct ClothAsked {
    Length width, along, across;
    bool railroaded = true; ///< plain 54 in cloth so run is where FurnitureHouse starts counting
    bool flow = false;      ///< the pattern runs on from part to part (FurnitureHouse adds 15)
};

/// How many in the hundred the table adds; none where the table does not reach and its source asks to be asked. A width
/// between two rows counts as the narrower, a repeat between two columns as the larger (T3.2b: the sum goes up to
/// the whole inch).
std::optional<int> surchargePercent(SurchargeTable table, const ClothAsked &cloth);

/// `plain` and so many in the hundred more, rounded up to a tick.
constexpr Length surcharged(Length plain, int percent) { return timesUp(plain, {100 + percent, 100}); }

} // namespace boltwright
