#pragma once

#include "core/edit/layout_edit.h"

#include <vector>

/// What happens at the table once cutting has begun. Each is a function from job to job; planning again is the next
/// step (see plan_again.h).
namespace boltwright {

/// Whether a cut may be moved, turned or put aside: one that is locked has to be unlocked first, and one that is off
/// the cloth lies where it lay.
bool mayMove(const Cut &cut);

/// A flaw shows up in the cloth: nothing is cut from there any more. Cuts locked in place that lie on it are unlocked,
/// since planning has to move them. What is cut already stays cut, on the flaw or not: whoever cut it says whether it
/// went wrong.
Job withFlawFound(Job job, const SheetOf &sheet, Flaw flaw);

/// The job's layouts once pieces of one of them were marked cut, or said not to be cut after all. What is cut is cut in
/// every layout: where another has the piece at the same place it is marked there too, and where it is said not to be
/// cut, no layout has it as cut any more. A layout that has it elsewhere stays as it is, and is no longer possible
/// (core/rules/cut_already.h).
std::vector<Layout> withCutsMarked(const Job &job, int layout, const std::vector<int> &cuts, CutState state);

/// A cut went wrong: its cloth is spoiled, which becomes a flaw of that cut's outline, and the piece has to be cut once
/// more. A copy of several pieces of which no other is cut yet is put aside whole, so that it may be joined anew; where
/// another piece is cut, the one that went wrong stays with its length, planned, for planning to lay it elsewhere.
/// In the job's other layouts too the cloth is gone, and the piece is not cut any more; what they cut there is planned
/// again.
Job withCutGoneWrong(const Job &job, int layout, int cut);

/// The cuts of a layout that lie on a flaw and may not: to be planned again before anybody cuts. What is cut already is
/// not among them.
std::vector<int> cutsOnFlaws(const Job &job, const Layout &layout);

} // namespace boltwright
