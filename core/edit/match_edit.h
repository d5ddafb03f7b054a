#pragma once

#include "core/base/result.h"
#include "core/job/job.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// Where the pattern runs on from one panel to the next ("flow" in the file): what a person does to such a match by
/// hand. A match that can't be is refused in one line, so that whatever is taken can be written and read again.
namespace boltwright {

/// "Inside back, bottom edge → Seat, top edge; 1 1/2 in lost in the join".
std::string matchInWords(const Job &job, const Flow &match);
/// The panel as a person knows it, with its mark where another panel has the same name.
std::string panelInWords(const Job &job, const Panel &panel);

/// The job with one match more, the last of them. Refused where an end is not there, the panels are cut from different
/// cloths or can't lie the same way, the cloth has no repeat, the two are matched there already, or no place of the
/// pattern suits all matches at once.
Result<Job> withMatch(Job job, Flow match);
/// The job with another match in place of one. What could not be before is no reason to refuse: a job as its file
/// brings it can be put right step by step.
Result<Job> withMatchChanged(Job job, std::size_t index, Flow match);
Job withoutMatch(Job job, std::size_t index);

/// A match to begin with, that can be: from the bottom edge of a panel to the top edge of one that it is not matched
/// with yet. Of all pairs the one that names, widths and the order of the panels make likeliest (inside back to seat,
/// seat to front border), and sooner one with `first`. Refused with the reason why there is none.
Result<Flow> newMatch(const Job &job, const std::string &first);

enum class MatchSide { From, To };
/// The match with one of its ends on another panel: at the edge of the same name, or its first; at no point, and of no
/// copy that is not there. Where the other end is on that panel already, the two change places; where there are several
/// of it, the match joins the first to the second. Told from below upwards (border to seat), bottom and top edges are
/// exchanged, where names tell which is which.
Flow withEndOn(const Job &job, Flow match, MatchSide side, const std::string &panel);

/// What is worth a second look: panels that can't all lie on their motif and run on from each other. One line each;
/// empty where nothing is, or where a leave to lie off centre solves it.
std::vector<std::string> matchDoubts(const Job &job);

/// A match after its panels were changed: at the edges that its own have become. None: a panel, a copy or an edge that
/// it needs is gone.
std::optional<Flow> matchFollowing(const Job &before, const Job &after, const Flow &match);
/// The matches of `after` that the change leaves without a panel, a copy or an edge, in words.
std::vector<std::string> matchesDropped(const Job &before, const Job &after);

} // namespace boltwright
