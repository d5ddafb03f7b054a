#include "core/edit/cloth_edit.h"

#include "core/edit/job_edit.h"
#include "core/edit/outline_edit.h"

#include <algorithm>

namespace boltwright {
namespace {

Cloth *clothOf(Job &job, const std::string &id) {
    const auto it = std::find_if(job.cloths.begin(), job.cloths.end(), [&](const Cloth &c) { return c.id == id; });
    return it == job.cloths.end() ? nullptr : &*it;
}

Remnant *remnantOf(Job &job, const SheetOf &sheet) {
    Cloth *cloth = clothOf(job, sheet.cloth);
    if (!cloth || !sheet.on) return nullptr;
    const auto it = std::find_if(cloth->remnants.begin(), cloth->remnants.end(),
                                 [&](const Remnant &r) { return r.id == *sheet.on; });
    return it == cloth->remnants.end() ? nullptr : &*it;
}

std::vector<Flaw> *flawsOf(Job &job, const SheetOf &sheet) {
    if (Remnant *remnant = remnantOf(job, sheet)) return &remnant->flaws;
    Cloth *cloth = clothOf(job, sheet.cloth);
    return cloth && cloth->bolt && !sheet.on ? &cloth->bolt->flaws : nullptr;
}

Flaw *flawOf(Job &job, const OutlineOf &which) {
    std::vector<Flaw> *flaws = flawsOf(job, which.sheet);
    if (!flaws || !which.flaw || *which.flaw < 0 || *which.flaw >= int(flaws->size())) return nullptr;
    return &(*flaws)[std::size_t(*which.flaw)];
}

ClothRing *outlineIn(Job &job, const OutlineOf &which) {
    if (which.flaw) {
        Flaw *flaw = flawOf(job, which);
        return flaw ? &flaw->outline : nullptr;
    }
    Remnant *remnant = remnantOf(job, which.sheet);
    return remnant ? &remnant->outline : nullptr;
}

bool isInUse(const Job &job, const std::string &cloth) {
    return std::any_of(job.layouts.begin(), job.layouts.end(), [&](const Layout &layout) {
        return std::any_of(layout.cuts.begin(), layout.cuts.end(),
                           [&](const Cut &cut) { return sheetOf(job, cut).cloth == cloth; });
    });
}

std::string freeId(const Cloth &cloth) {
    for (char letter = 'A'; letter <= 'Z'; ++letter)
        if (!cloth.remnant(std::string(1, letter))) return std::string(1, letter);
    for (int number = 1;; ++number)
        if (!cloth.remnant("R" + std::to_string(number))) return "R" + std::to_string(number);
}

/// The bolt's cloth once more, to come as remnants.
Cloth remnantsLike(const Job &job, const Cloth &bolt) {
    Cloth cloth = newCloth(job);
    cloth.name = bolt.name.empty() ? "" : bolt.name + ", remnants";
    cloth.way = bolt.way;
    cloth.up = bolt.up;
    cloth.pattern = bolt.pattern;
    return cloth;
}

Flaw newFlaw(ClothRing ring) {
    Flaw flaw;
    flaw.outline = std::move(ring);
    return flaw;
}

} // namespace

std::vector<OutlineOf> outlinesOf(const Job &job) {
    std::vector<OutlineOf> all;
    const auto flaws = [&](const SheetOf &sheet, const std::vector<Flaw> &list) {
        for (int i = 0; i < int(list.size()); ++i) all.push_back({sheet, i});
    };
    for (const Cloth &cloth : job.cloths) {
        if (cloth.bolt) flaws({cloth.id, {}}, cloth.bolt->flaws);
        for (const Remnant &remnant : cloth.remnants) {
            const SheetOf sheet{cloth.id, remnant.id};
            all.push_back({sheet, {}});
            flaws(sheet, remnant.flaws);
        }
    }
    return all;
}

const ClothRing *outlineOf(const Job &job, const OutlineOf &which) { return outlineIn(const_cast<Job &>(job), which); }
const Flaw *flawOf(const Job &job, const OutlineOf &which) { return flawOf(const_cast<Job &>(job), which); }
const Remnant *remnantOf(const Job &job, const SheetOf &sheet) { return remnantOf(const_cast<Job &>(job), sheet); }

Result<Job> withOutline(Job job, const OutlineOf &which, ClothRing ring) {
    if (const auto wrong = faultOfOutline(ring)) return fault(*wrong);
    if (ClothRing *own = outlineIn(job, which)) *own = std::move(ring);
    return job;
}

Result<Job> withoutOutline(Job job, const OutlineOf &which) {
    if (which.flaw) {
        if (flawOf(job, which)) {
            std::vector<Flaw> &flaws = *flawsOf(job, which.sheet);
            flaws.erase(flaws.begin() + *which.flaw);
        }
        return job;
    }
    if (!remnantOf(job, which.sheet)) return job;
    Cloth &cloth = *clothOf(job, which.sheet.cloth);
    if (cloth.remnants.size() < 2)
        return fault("it is the only remnant of its cloth; draw another first, or remove the cloth");
    std::erase_if(cloth.remnants, [&](const Remnant &r) { return r.id == which.sheet.on; });
    return job;
}

Result<JobWith> withFlaw(Job job, const SheetOf &sheet, ClothRing ring) {
    if (const auto wrong = faultOfOutline(ring)) return fault(*wrong);
    std::vector<Flaw> *flaws = flawsOf(job, sheet);
    if (!flaws) return fault("there is no cloth there to mark a flaw on");
    flaws->push_back(newFlaw(std::move(ring)));
    OutlineOf which{sheet, int(flaws->size()) - 1};
    return JobWith{std::move(job), std::move(which)};
}

Job withFlawNote(Job job, const OutlineOf &which, const std::string &note) {
    if (Flaw *flaw = flawOf(job, which)) flaw->note = note;
    return job;
}

Result<JobWith> withRemnant(Job job, const std::string &clothId, const ClothRing &ring) {
    if (const auto wrong = faultOfOutline(ring)) return fault(*wrong);
    Cloth *cloth = clothOf(job, clothId);
    if (!cloth) return fault("there is no such cloth");
    if (cloth->bolt && isInUse(job, clothId)) {
        job.cloths.push_back(remnantsLike(job, *cloth));
        cloth = &job.cloths.back();
    }
    cloth->bolt.reset();
    cloth->selvage = {};
    Remnant remnant;
    remnant.id = freeId(*cloth);
    remnant.outline = moved(ring, ClothPoint{} - boxOf(ring).low);
    OutlineOf which{{cloth->id, remnant.id}, {}};
    cloth->remnants.push_back(std::move(remnant));
    return JobWith{std::move(job), std::move(which)};
}

Job withLot(Job job, const SheetOf &sheet, const std::string &lot) {
    if (Remnant *remnant = remnantOf(job, sheet)) remnant->lot = lot;
    return job;
}

Job withMotif(Job job, const SheetOf &sheet, std::optional<ClothPoint> motif) {
    if (Remnant *remnant = remnantOf(job, sheet))
        remnant->motif = motif;
    else if (Cloth *cloth = clothOf(job, sheet.cloth); cloth && cloth->pattern && motif)
        cloth->pattern->motif = *motif;
    return job;
}

} // namespace boltwright
