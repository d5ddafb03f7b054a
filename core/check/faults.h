#pragma once

#include "core/check/check.h"
#include "core/check/laid_cut.h"

#include <vector>

/// The rules of the contract, one function a rule; each names every way in which the layout breaks it.
namespace boltwright::judge {

using Findings = std::vector<Finding>;

/// Every copy of every panel is there once, whole or in all its pieces, or is left out and may be.
Findings copiesMissing(const Scene &scene);
/// Every cut lies on a cloth and sheet that the job has, and on another cloth than its own only with leave.
Findings clothsWrong(const Scene &scene);
/// Every cut lies inside the cloth, less selvage, square or edge.
Findings outsideCloth(const Scene &scene);
/// No cut crosses a flaw, unless it is out of sight.
Findings flawsCrossed(const Scene &scene);
/// Neighbouring cuts keep the job's gap; to lie at exactly the gap is right.
Findings gapsBroken(const Scene &scene);
/// Every cut lies in a turn that nap and direction allow it.
Findings turnsWrong(const Scene &scene);
/// Every second copy of a mirrored panel is the mirror image, and nothing else is.
Findings mirrorsWrong(const Scene &scene);
/// What each panel centres on a motif is there.
Findings motifsMissed(const Scene &scene);
/// Copies that are to be alike show the same part of the repeat.
Findings copiesUnlike(const Scene &scene);
/// The pattern runs on over every join between panels.
Findings matchesBroken(const Scene &scene);
/// Pieces make up their panel as it allows, and match where they must.
Findings piecesWrong(const Scene &scene);
/// What is left on every edge is what the panel has, or less with leave.
Findings allowancesWrong(const Scene &scene);
/// What was given up is listed, each once, and nothing that was not.
Findings listedWrong(const Scene &scene);
/// Lengths used, the least it can take and what is proved agree with the cuts.
Findings figuresWrong(const Scene &scene);

} // namespace boltwright::judge
