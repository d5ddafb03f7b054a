#pragma once

#include "core/planner/exact/box_problem.h"

namespace boltwright::planner {

/// Fills the xs and ys of every mode: all that the lattice allows where it asks for something, and otherwise those at
/// which an item comes to rest when everything is pushed towards one side, and beyond some line, chosen so that they
/// are few, towards the other. Whatever can be laid can be laid there. False: too many to count.
///
/// Sources: normal patterns, Christofides & Whitlock 1977; pushed from both sides, Côté & Iori 2018, "The
/// meet-in-the-middle principle for cutting and packing problems" (from memory). With motif places: those items stay
/// where they are while the free ones are pushed, and what is pushed may come to rest against them.
bool findPlaces(BoxProblem &problem);

} // namespace boltwright::planner
