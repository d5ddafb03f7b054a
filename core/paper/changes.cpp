#include "core/paper/changes.h"

#include "core/base/language.h"
#include "core/paper/words.h"
#include "core/rules/cut_already.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace boltwright {
namespace {

constexpr Length chalkWidth = Length::ticks(160); // half a millimetre: the finest line that chalk draws

using PieceKey = std::tuple<std::string, int, int>;

struct Listed {
    ChalkRow row;
    std::string sheet;
    bool wentWrong = false; ///< its cloth is spoiled: it was cut there
};

std::map<PieceKey, Listed> listed(const Job &job, const Layout &layout, const std::vector<ChalkSheet> &list) {
    std::map<PieceKey, Listed> out;
    for (const ChalkSheet &sheet : list)
        for (const ChalkRow &row : sheet.rows) {
            const Cut &cut = layout.cuts[std::size_t(row.cut)];
            out[{cut.panel, cut.copy, cut.piece}] = {row, sheetName(job, sheet.cloth, sheet.on),
                                                     isSpoiled(job, layout, cut)};
        }
    return out;
}

bool near(Length a, Length b) { return abs(a - b) <= chalkWidth; }

bool liesAlike(const Listed &a, const Listed &b) {
    return a.sheet == b.sheet && a.row.turn == b.row.turn && a.row.of == b.row.of &&
           near(a.row.fromSelvage, b.row.fromSelvage) && near(a.row.fromEnd, b.row.fromEnd) &&
           near(a.row.cutAcross, b.row.cutAcross) && near(a.row.cutUp, b.row.cutUp);
}

PieceChange::Kind kindOf(const Listed &before, const Listed &now) {
    if ((before.row.alreadyCut || before.wentWrong) && !now.row.alreadyCut) return PieceChange::Kind::CutAgain;
    return liesAlike(before, now) ? PieceChange::Kind::Stays : PieceChange::Kind::Moved;
}

void addNewFlaws(LayoutChanges &changes, const Job &before, const Job &now) {
    for (const Cloth &cloth : now.cloths) {
        const Cloth *was = before.cloth(cloth.id);
        const auto add = [&](const std::optional<std::string> &on) {
            const bool had = was && (on ? was->remnant(*on) != nullptr : was->bolt.has_value());
            const std::vector<Flaw> known = had ? flawsOn(*was, on) : std::vector<Flaw>{};
            const ClothPoint corner = on ? boxOf(cloth.remnant(*on)->outline).low : ClothPoint{};
            for (const Flaw &flaw : flawsOn(cloth, on)) {
                if (std::any_of(known.begin(), known.end(), [&](const Flaw &k) { return k.outline == flaw.outline; }))
                    continue;
                const ClothBox box = boxOf(flaw.outline);
                changes.flaws.push_back({sheetName(now, cloth.id, on), box.low.x - corner.x, box.low.y - corner.y,
                                         box.width(), box.height(), flaw.note});
            }
        };
        if (cloth.bolt) add({});
        for (const Remnant &remnant : cloth.remnants) add(remnant.id);
    }
}

} // namespace

LayoutChanges changesBetween(const Job &jobBefore, const Layout &before, const Job &jobNow, const Layout &now) {
    LayoutChanges changes;
    auto were = listed(jobBefore, before, chalkList(jobBefore, before));
    for (const ChalkSheet &sheet : chalkList(jobNow, now))
        for (const ChalkRow &row : sheet.rows) {
            const Cut &cut = now.cuts[std::size_t(row.cut)];
            const Listed is{row, sheetName(jobNow, sheet.cloth, sheet.on), false};
            const auto was = were.find({cut.panel, cut.copy, cut.piece});
            PieceChange change{PieceChange::Kind::New, {}, row, {}, is.sheet};
            if (was != were.end()) {
                change.kind = kindOf(was->second, is);
                change.before = was->second.row;
                change.sheetBefore = was->second.sheet;
                were.erase(was);
            }
            (change.kind == PieceChange::Kind::Stays ? changes.stays : changes.changed).push_back(std::move(change));
        }
    for (auto &[key, gone] : were) changes.changed.push_back({PieceChange::Kind::Gone, gone.row, {}, gone.sheet, {}});
    addNewFlaws(changes, jobBefore, jobNow);
    return changes;
}

std::string changeWords(PieceChange::Kind kind) {
    switch (kind) {
    case PieceChange::Kind::Stays:
        return phrase("stays");
    case PieceChange::Kind::Moved:
        return phrase("moved");
    case PieceChange::Kind::New:
        return phrase("new");
    case PieceChange::Kind::CutAgain:
        return phrase("cut again");
    case PieceChange::Kind::Gone:
        return phrase("taken off");
    }
    return {};
}

} // namespace boltwright
