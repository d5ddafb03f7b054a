#include "core/rules/cut_already.h"

#include "core/base/language.h"
#include "core/rules/rules.h"

#include <algorithm>

namespace boltwright {
namespace {

constexpr Length rounding = Length::ticks(4);

bool isSamePiece(const Cut &a, const Cut &b) { return a.panel == b.panel && a.copy == b.copy && a.piece == b.piece; }

bool near(ClothPoint a, ClothPoint b) { return abs(a.x - b.x) <= rounding && abs(a.y - b.y) <= rounding; }

bool isSameRing(const ClothRing &a, const ClothRing &b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), near);
}

/// Told apart without laying anything: most layouts of a job are copies of each other.
bool isWrittenTheSame(const Cut &a, const Cut &b) {
    return a.x == b.x && a.y == b.y && a.of == b.of && a.turn == b.turn && a.mirrored == b.mirrored &&
           a.cloth == b.cloth && a.on == b.on && a.allow == b.allow && a.length == b.length;
}

const Cut *pieceIn(const Layout &layout, const Cut &cut) {
    for (const Cut &own : layout.cuts)
        if (isSamePiece(own, cut)) return &own;
    return nullptr;
}

std::string labelOf(const Panel &panel, const Cut &cut) {
    const std::string &name = !panel.mark.empty() ? panel.mark : !panel.name.empty() ? panel.name : panel.id;
    return panel.count > 1 ? name + " " + std::to_string(cut.copy) : name;
}

} // namespace

bool isSameCut(const Job &job, const Layout &a, const Cut &inA, const Layout &b, const Cut &inB) {
    if (!isSamePiece(inA, inB)) return false;
    if (isWrittenTheSame(inA, inB) && (inA.of == 1 || &a == &b)) return true;
    const Panel *panel = job.panel(inA.panel);
    return panel && inA.of == inB.of && inA.on == inB.on && &job.clothOf(inA) == &job.clothOf(inB) &&
           inA.turn == inB.turn && inA.mirrored == inB.mirrored &&
           isSameRing(lay(*panel, inA, a).ring, lay(*panel, inB, b).ring);
}

bool isSpoiled(const Job &job, const Layout &layout, const Cut &cut) {
    const Panel *panel = job.panel(cut.panel);
    if (!panel) return false;
    const auto &flaws = flawsOn(job.clothOf(cut), cut.on);
    if (flaws.empty()) return false;
    const ClothRing ring = lay(*panel, cut, layout).ring;
    return std::any_of(flaws.begin(), flaws.end(),
                       [&](const Flaw &flaw) { return isSameRing(counterClockwise(flaw.outline), ring); });
}

std::vector<LaidCut> cutElsewhere(const Job &job, const Layout &layout) {
    std::vector<LaidCut> gone;
    for (const Layout &other : job.layouts)
        for (const Cut &cut : other.cuts) {
            if (cut.state != CutState::Cut) continue;
            const Panel *panel = job.panel(cut.panel);
            const Cut *own = pieceIn(layout, cut);
            if (!panel || (own && isSameCut(job, layout, *own, other, cut)) || isSpoiled(job, other, cut)) continue;
            LaidCut laid = lay(*panel, cut, other);
            const bool known = std::any_of(gone.begin(), gone.end(), [&](const LaidCut &g) {
                return isSamePiece(*g.cut, cut) && g.cut->on == cut.on && isSameRing(g.ring, laid.ring);
            });
            if (!known) gone.push_back(std::move(laid));
        }
    return gone;
}

std::optional<std::string> noLongerPossible(const Job &job, const Layout &layout) {
    const auto gone = cutElsewhere(job, layout);
    if (gone.empty()) return std::nullopt;
    for (const LaidCut &piece : gone)
        if (pieceIn(layout, *piece.cut))
            return phrase("%1 is already cut, and lay elsewhere", {labelOf(*piece.panel, *piece.cut)});
    for (const Breach &breach : breaches(job, layout))
        if (breach.kind == Breach::Kind::AlreadyCut) {
            const Cut &cut = layout.cuts[std::size_t(breach.cut)];
            return phrase("%1: %2", {labelOf(*job.panel(cut.panel), cut), breach.text});
        }
    return std::nullopt;
}

} // namespace boltwright
