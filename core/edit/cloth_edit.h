#pragma once

#include "core/base/result.h"
#include "core/edit/layout_edit.h"
#include "core/job/job.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

/// What a person does by hand to remnants and flaws. Each takes a job and gives the changed one; layouts are made to
/// follow by `withLayoutsFollowing` (core/edit/job_edit.h), as after every change of cloths.
namespace boltwright {

/// One outline of a job's cloths: a remnant's own (`flaw` none), or that of a flaw of a bolt or remnant.
struct OutlineOf {
    SheetOf sheet;
    std::optional<int> flaw; ///< its place in the sheet's list of flaws
    bool operator==(const OutlineOf &) const = default;
};

/// All there are, in the order of the cloths: each remnant, then its flaws; of a bolt its flaws.
std::vector<OutlineOf> outlinesOf(const Job &job);
const ClothRing *outlineOf(const Job &job, const OutlineOf &which); ///< null: there is none
const Flaw *flawOf(const Job &job, const OutlineOf &which);         ///< null: not of a flaw
const Remnant *remnantOf(const Job &job, const SheetOf &sheet);     ///< null: a bolt, or gone

/// An error says why the ring is no outline.
Result<Job> withOutline(Job job, const OutlineOf &which, ClothRing ring);
/// The flaw, or the whole remnant, is taken away; an error for the last remnant of a cloth.
Result<Job> withoutOutline(Job job, const OutlineOf &which);

/// The job and the new flaw's outline in it.
using JobWith = std::pair<Job, OutlineOf>;
Result<JobWith> withFlaw(Job job, const SheetOf &sheet, ClothRing ring);
Job withFlawNote(Job job, const OutlineOf &which, const std::string &note);

/// One more remnant, its frame set so that its lowest measures are 0. `cloth` names what it is a remnant of: where
/// that comes as remnants it joins them; a bolt that nothing is laid on becomes this remnant; beside a bolt that is
/// in use it is a cloth of its own with the same repeat and nap.
Result<JobWith> withRemnant(Job job, const std::string &cloth, const ClothRing &ring);
Job withLot(Job job, const SheetOf &sheet, const std::string &lot);
/// None: as the cloth's pattern says. Of a bolt it is the pattern's own.
Job withMotif(Job job, const SheetOf &sheet, std::optional<ClothPoint> motif);
/// Under another name, cuts and all. An error where it is empty or another remnant of the cloth has it.
Result<Job> withRemnantNamed(Job job, const SheetOf &sheet, const std::string &name);

/// The job, and what became of all that only one of two forms has: a line each, for the person who changed it.
struct JobAndWords {
    Job job;
    std::vector<std::string> told;
};
/// The bolt as one remnant of its own width, `length` long. Flaws, markings and cuts stay where they are; the strips
/// along the selvages and the end that is lost become flaws, for a remnant has neither and must not be cut from there.
JobAndWords boltAsRemnant(Job job, const std::string &cloth, Length length);
/// The first remnant as a bolt as wide and as long as it is at most. What `boltAsRemnant` made flaws of is what it was;
/// other flaws, markings and cuts stay where they are, and what a bolt cannot have is told.
JobAndWords remnantAsBolt(Job job, const std::string &cloth);

/// That cloth is the main one, the first of the job. Panels, strips and cuts stay with the cloths that they are of.
Job withMainCloth(Job job, const std::string &cloth);

} // namespace boltwright
