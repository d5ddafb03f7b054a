#include "core/edit/cloth_edit.h"

#include "core/base/language.h"
#include "core/edit/job_edit.h"
#include "core/edit/outline_edit.h"
#include "core/geometry/laying.h"
#include "core/measure/length_text.h"

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

Result<Job> withRemnantNamed(Job job, const SheetOf &sheet, const std::string &name) {
    if (name.empty()) return fault(phrase("A remnant needs a name: a letter will do."));
    Remnant *remnant = remnantOf(job, sheet);
    if (!remnant || remnant->id == name) return job;
    if (job.cloth(sheet.cloth)->remnant(name))
        return fault(phrase("There is a remnant %1 of this cloth already.", {name}));
    for (Layout &layout : job.layouts)
        for (Cut &cut : layout.cuts)
            if (sheetOf(job, cut) == sheet) cut.on = name;
    remnant->id = name;
    return job;
}

namespace {

constexpr const char *selvageNote = "selvage", *endNote = "lost to square the end";

std::string toldLength(Length length, Unit unit) { return localised(spokenWithUnit(length, unit)); }

/// Every cut of a sheet lies on another one of the same cloth, that far from where it was.
void moveCuts(Job &job, const SheetOf &from, const std::optional<std::string> &to, Vector by) {
    for (Layout &layout : job.layouts)
        for (Cut &cut : layout.cuts) {
            if (!(sheetOf(job, cut) == from)) continue;
            cut.on = to;
            cut.x = cut.x + by.x;
            cut.y = cut.y + by.y;
        }
}

void moveMarkings(Markings &markings, Vector by) {
    for (ChalkLine &line : markings.lines) line.at = line.at + (line.runs == ChalkLine::Runs::Across ? by.y : by.x);
    for (PinnedNote &note : markings.notes) note.at = note.at + by;
}

bool isBox(const ClothRing &ring) { return ring.size() == 4 && isUprightRectangle(counterClockwise(ring)); }

/// The selvage, where both edges of the piece carry a strip of the same width that was marked as one; those flaws go.
Length takeSelvages(std::vector<Flaw> &flaws, const ClothBox &piece) {
    int left = -1, right = -1;
    for (int i = 0; i < int(flaws.size()); ++i) {
        const Flaw &flaw = flaws[std::size_t(i)];
        const ClothBox box = boxOf(flaw.outline);
        if (flaw.note != selvageNote || !isBox(flaw.outline) || box.height() != piece.height()) continue;
        if (box.low.x == piece.low.x) left = i;
        if (box.high.x == piece.high.x) right = i;
    }
    if (left < 0 || right < 0 || left == right) return {};
    const Length width = boxOf(flaws[std::size_t(left)].outline).width();
    if (boxOf(flaws[std::size_t(right)].outline).width() != width) return {};
    flaws.erase(flaws.begin() + std::max(left, right));
    flaws.erase(flaws.begin() + std::min(left, right));
    return width;
}

Length takeLostEnd(std::vector<Flaw> &flaws, const ClothBox &piece) {
    for (auto flaw = flaws.begin(); flaw != flaws.end(); ++flaw) {
        const ClothBox box = boxOf(flaw->outline);
        if (flaw->note != endNote || !isBox(flaw->outline) || box.low != piece.low || box.width() != piece.width())
            continue;
        flaws.erase(flaw);
        return box.height();
    }
    return {};
}

} // namespace

JobAndWords boltAsRemnant(Job job, const std::string &clothId, Length length) {
    JobAndWords result{std::move(job), {}};
    Cloth *cloth = clothOf(result.job, clothId);
    if (!cloth || !cloth->bolt) return result;
    const Bolt bolt = *cloth->bolt;
    const Unit unit = result.job.unit;
    Remnant remnant;
    remnant.id = "A";
    remnant.outline = ringOf(ClothBox{{}, {bolt.width, length}});
    remnant.flaws = bolt.flaws;
    remnant.markings = bolt.markings;
    const auto strip = [&](ClothBox box, const char *note) {
        Flaw flaw = newFlaw(ringOf(box));
        flaw.note = note;
        remnant.flaws.push_back(std::move(flaw));
    };
    const Length selvage = cloth->selvage;
    result.told.push_back(phrase("Remnant %1 is %2 wide and %3 long, as the bolt was.",
                                 {remnant.id, toldLength(bolt.width, unit), toldLength(length, unit)}));
    if (selvage > Length{} && selvage * 2 < bolt.width) {
        strip({{}, {selvage, length}}, selvageNote);
        strip({{bolt.width - selvage, {}}, {bolt.width, length}}, selvageNote);
        result.told.push_back(
            phrase("Its selvages, %1 wide, are marked as flaws now, so that nothing is cut from them; "
                   "a panel out of sight may still cross a flaw.",
                   {toldLength(selvage, unit)}));
    }
    if (bolt.square > Length{} && bolt.square < length) {
        strip({{}, {bolt.width, bolt.square}}, endNote);
        result.told.push_back(
            phrase("The %1 lost to square the end is marked as a flaw too.", {toldLength(bolt.square, unit)}));
    }
    if (cloth->bow != Length{} || cloth->skew != Length{})
        result.told.push_back(phrase("Bow and skew stay with the cloth, and are asked for on bolts alone."));
    moveCuts(result.job, {clothId, {}}, remnant.id, {});
    cloth->bolt.reset();
    cloth->selvage = {};
    cloth->remnants = {std::move(remnant)};
    return result;
}

JobAndWords remnantAsBolt(Job job, const std::string &clothId) {
    JobAndWords result{std::move(job), {}};
    Cloth *cloth = clothOf(result.job, clothId);
    if (!cloth || cloth->bolt || cloth->remnants.empty()) return result;
    const Remnant remnant = cloth->remnants.front();
    const Unit unit = result.job.unit;
    const ClothBox box = boxOf(remnant.outline);
    const Vector by = ClothPoint{} - box.low;
    Bolt bolt;
    bolt.width = box.width();
    bolt.length = box.height();
    bolt.flaws = remnant.flaws;
    bolt.markings = remnant.markings;
    const Length selvage = takeSelvages(bolt.flaws, box), lost = takeLostEnd(bolt.flaws, box);
    bolt.square = lost;
    for (Flaw &flaw : bolt.flaws) flaw.outline = moved(flaw.outline, by);
    moveMarkings(bolt.markings, by);
    result.told.push_back(phrase("The bolt is %1 wide and %2 long, as remnant %3 was.",
                                 {toldLength(bolt.width, unit), toldLength(*bolt.length, unit), remnant.id}));
    if (!isBox(remnant.outline))
        result.told.push_back(phrase("A bolt has all four corners: those that the remnant lacks have to be marked as "
                                     "flaws."));
    if (cloth->remnants.size() > 1)
        result.told.push_back(cloth->remnants.size() == 2
                                  ? phrase("The other remnant is gone, with what was laid on it.")
                                  : phrase("The other %1 remnants are gone, with what was laid on them.",
                                           {std::to_string(cloth->remnants.size() - 1)}));
    if (selvage == Length{}) result.told.push_back(phrase("Its selvage is 0 now: say how wide it is."));
    if (cloth->edge > Length{})
        result.told.push_back(phrase("A bolt's panels keep from its selvages; the %1 kept from the edge is no more.",
                                     {toldLength(cloth->edge, unit)}));
    if (remnant.photo) result.told.push_back(phrase("Its photograph is not shown on a bolt."));
    if (!remnant.lot.empty())
        result.told.push_back(
            phrase("Its dye lot was %1: a bolt is of one lot, and none is written down.", {remnant.lot}));
    if (cloth->pattern && remnant.motif) cloth->pattern->motif = *remnant.motif + by;
    moveCuts(result.job, {clothId, remnant.id}, std::nullopt, by);
    cloth->selvage = selvage;
    cloth->edge = {};
    cloth->remnants.clear();
    cloth->bolt = std::move(bolt);
    return result;
}

Job withMainCloth(Job job, const std::string &clothId) {
    const auto it = std::find_if(job.cloths.begin(), job.cloths.end(), [&](const Cloth &c) { return c.id == clothId; });
    if (it == job.cloths.end() || it == job.cloths.begin()) return job;
    const std::string was = job.cloths.front().id;
    // No name stands for the main cloth: what is of the one that was now says so.
    const auto follow = [&](std::optional<std::string> &own) {
        if (!own)
            own = was;
        else if (*own == clothId)
            own.reset();
    };
    for (Panel &panel : job.panels) follow(panel.cloth);
    for (Trimming &trimming : job.trimmings)
        if (trimming.isStrip()) follow(trimming.cloth);
    std::rotate(job.cloths.begin(), it, it + 1);
    return job;
}

} // namespace boltwright
