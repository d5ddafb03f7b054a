#pragma once

#include "core/job/job.h"

/// What a person does to a job's cloths and panels by hand.
namespace boltwright {

/// A job to begin with: one bolt of the usual width, 54 in with half an inch of selvage (common practice, no source),
/// or 137 cm, no panels.
Job newJob(Unit unit);

/// A rectangle to begin with, with an id and a mark that the job has not yet.
Panel newPanel(const Job &job);
/// The same panel once more, under an id and a mark of its own.
Panel copyOfPanel(const Job &job, const Panel &panel);
/// The least that is left on the edges, as one length for all that have an allowance. `differs`: it is not one length.
struct LeastAtEdges {
    std::optional<Length> least; ///< none: in full, or it differs
    bool differs = false;
    bool operator==(const LeastAtEdges &) const = default;
};
LeastAtEdges leastAtEdges(const Panel &panel);
/// Where an edge has no more than that, it stays in full; none: all edges do.
Panel withLeastAtEdges(Panel panel, std::optional<Length> least);
/// What is added at one edge; the least that is left there, and under a strip, is never more.
Panel withAllowanceAt(Panel panel, int edge, Length allowance);
/// The least that is left at one edge; none: it stays in full.
Panel withLeastAt(Panel panel, int edge, std::optional<Length> least);
/// What of the face cloth is left at an edge where a strip of other cloth may be sewn on; none: no strip there.
Panel withStripAt(Panel panel, int edge, std::optional<Length> left);
/// The panel in another shape. An edge that is still there (`edgeThatBecame`) keeps what is added and what may be given
/// up there; one that is new has what the first one had, in full. Only a rectangle may be made of pieces.
Panel withShape(Panel panel, Shape shape);
/// A bolt to begin with, under an id of its own.
Cloth newCloth(const Job &job);

/// The job after anything was changed by hand. Where panels, joins, gap and cloths are to the planner what they were,
/// its layouts stay as they are. Otherwise they are made to follow: cuts, concessions and copies left out of panels,
/// copies or sheets that are gone are dropped, and so are joins whose panel, copy or edge is gone (`matchesDropped`
/// says which); a panel whose cloth is gone wants the first; a cut whose panel's allowances changed takes the new ones
/// unless it was trimmed; bounds are forgotten, since they were found for another job; lengths are brought up to date.
Job withLayoutsFollowing(const Job &before, Job after);

} // namespace boltwright
