#pragma once

#include "core/edit/layout_edit.h"

#include <optional>
#include <string>
#include <vector>

/// What a hand does with several panels at once. Cuts are named by their index; those that are locked or already cut
/// stay where they are.
namespace boltwright {

/// What came of a move that was asked for.
struct Moved {
    std::optional<Layout> layout; ///< none: it cannot be done
    std::string why;              ///< then: in a few words, why not
};

/// The cut is neither locked nor already cut.
bool mayMove(const Layout &layout, int cut);
std::vector<int> thoseThatMayMove(const Layout &layout, std::vector<int> cuts);

/// All of them that far, each on its own sheet. Those that may not move stay.
Layout withCutsMoved(const Job &job, Layout layout, const std::vector<int> &cuts, Vector by);
/// All copies that the cuts belong to leave the cloth; those with a piece already cut stay.
Layout withCutsPutAside(const Job &job, Layout layout, const std::vector<int> &cuts);

/// The two change places: each with its box's corner where the other's was, or, where that may not be, at the nearest
/// place that still covers some of it.
Moved withCutsSwapped(const Job &job, const Layout &layout, int a, int b);

/// The cut that `cut` makes a pair with: the nearest other copy of its panel on the same sheet; none where it is alone.
std::optional<int> pairOf(const Job &job, const Layout &layout, int cut);
/// `cut` lies head to foot against `pair`: turned half round from it, and as near to it as the gap and all rules allow,
/// on the side where the cloth used is shortest and, among equals, the way is.
Moved withHeadToFoot(const Job &job, const Layout &layout, int cut, int pair);

/// Every cut among `cuts` goes towards the cut end as far as rules allow, in its own column and without passing
/// another. No cut goes up, and one that lay right lies right.
Layout withCutsPushed(const Job &job, Layout layout, const std::vector<int> &cuts);

} // namespace boltwright
