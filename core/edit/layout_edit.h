#pragma once

#include "core/geometry/polygon.h"
#include "core/job/job.h"

#include <optional>
#include <string>
#include <vector>

/// What a person does to a layout by hand. Each takes a layout and gives the changed one, with its figures brought up
/// to date (see core/figures); none asks whether the outcome is right (see core/rules and core/check), since a panel
/// may lie wrong for a while.
namespace boltwright {

/// One copy of a panel.
struct CopyOf {
    std::string panel;
    int copy = 1;
    auto operator<=>(const CopyOf &) const = default;
};

/// Where something lies: a bolt, or one remnant of a cloth.
struct SheetOf {
    std::string cloth;
    std::optional<std::string> on;
    bool operator==(const SheetOf &) const = default;
};

SheetOf sheetOf(const Job &job, const Cut &cut);

/// The cut's outline as it lies, in the frame of its bolt or remnant.
ClothRing outlineOnCloth(const Job &job, const Layout &layout, const Cut &cut);
ClothBox boxOnCloth(const Job &job, const Layout &layout, const Cut &cut);

/// The copies that are not on the cloth, in the order of the job's panels.
std::vector<CopyOf> copiesPutAside(const Job &job, const Layout &layout);
/// How many copies of a panel lie on the cloth.
int copiesLaid(const Layout &layout, const std::string &panel);

Layout withCutMoved(const Job &job, Layout layout, int cut, const SheetOf &sheet, ClothPoint corner);
/// Turned about the middle of its box. A turn that is a concession is listed as one, or taken off the list.
Layout withCutTurned(const Job &job, Layout layout, int cut, Turn turn);
Layout withCutState(Layout layout, int cut, CutState state);
/// All pieces of the copy leave the cloth, and what was given up for it is forgotten. A copy that may be cut from some
/// other cloth is listed as left out.
Layout withCopyPutAside(const Job &job, Layout layout, const CopyOf &copy);
/// The copy whole, with full allowances, in the turn it likes best on that cloth, the middle of its box at `middle`.
/// Its cut is the last of the layout.
Layout withCopyLaid(const Job &job, Layout layout, const CopyOf &copy, const SheetOf &sheet, ClothPoint middle);

/// The turns a person may give the cut where it lies: without a concession first, then those its leave allows.
std::vector<Turn> turnsByHand(const Job &job, const Cut &cut);

enum class Heading { TowardsLeft, TowardsRight, UpTheRoll, DownTheRoll };

ClothPoint stepped(ClothPoint from, Heading heading, Length step);
/// What an arrow key moves by: 1/8 in, or 2 mm.
Length smallStep(Unit unit);

/// A small step that way, whatever it breaks.
ClothPoint oneNudge(const Job &job, const Cut &cut, Heading heading);

/// The nearest place straight ahead where the cut may lie; none before the cloth ends.
std::optional<ClothPoint> nextPlace(const Job &job, const Layout &layout, int cut, Heading heading);

} // namespace boltwright
