#pragma once

#include "core/base/result.h"
#include "core/edit/layout_edit.h"

/// What a person gives up by hand at one cut: less at an edge, a join elsewhere. As with every change by hand it is
/// not asked whether the outcome is right (see core/rules); what is given up is listed.
namespace boltwright {

/// What is left at one edge of the copy that a cut belongs to; none: in full. The measured shape stays where it lies.
/// An error for less than nothing or more than the panel's full allowance.
Result<Layout> withLeftAtEdge(const Job &job, Layout layout, int cut, int edge, std::optional<Length> left);

/// How long one piece is cut, seams at its joins included; the piece after it (before it, for the last) takes or gives
/// the difference, so that together they are the panel still. The measured shape of each stays where it lies. An error
/// where one of them would be no longer than its seams, or the cut is no piece.
Result<Layout> withPieceLength(const Job &job, Layout layout, int cut, Length length);

} // namespace boltwright
