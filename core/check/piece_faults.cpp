#include "core/base/language.h"
#include "core/check/faults.h"
#include "core/check/saying.h"

#include <algorithm>
#include <cmath>

namespace boltwright::judge {

namespace {

using Kind = Finding::Kind;

int joinsOf(const Cut &piece) { return (piece.piece > 1) + (piece.piece < piece.of); }

/// What each piece shows, its seams left out.
std::vector<double> shown(const Copy &copy) {
    std::vector<double> lengths;
    for (const Cut *piece : copy.cuts)
        lengths.push_back(ticksOf(*piece->length) - joinsOf(*piece) * ticksOf(copy.panel->pieces.seam));
    return lengths;
}

double longerCutSide(const Copy &copy) {
    const Bounds whole = boundsOf(wholeCutOutline(*copy.panel, *copy.cuts.front()));
    return std::max(whole.high.x - whole.low.x, whole.high.y - whole.low.y);
}

bool leaveAlike(const Panel &panel, const Cut &a, const Cut &b) {
    for (std::size_t edge = 0; edge < 4; ++edge)
        if (allowanceLeft(panel, a, edge) != allowanceLeft(panel, b, edge)) return false;
    return true;
}

bool isBalanced(const std::vector<double> &lengths) {
    // Each of two joins may be off by a place's tolerance.
    for (std::size_t k = 0; k < lengths.size(); ++k)
        if (std::abs(lengths[k] - lengths[lengths.size() - 1 - k]) > 2 * placeTolerance) return false;
    return true;
}

void lengthFaults(const Scene &scene, const Copy &copy, Findings &findings) {
    const Panel &panel = *copy.panel;
    const auto say = [&](const std::string &does) {
        findings.push_back(about(Kind::Pieces, panel, copy.number, does));
    };
    const auto lengths = shown(copy);
    double sum = 0;
    for (const double length : lengths) sum += length;
    const double whole = longerCutSide(copy);
    if (std::abs(sum - whole) > placeTolerance * double(lengths.size()))
        say(phrase("is %1 long in its pieces, and %2 are needed", {amount(scene, sum), amount(scene, whole)}));
    if (std::any_of(lengths.begin(), lengths.end(), [](double length) { return length <= 0; }))
        say(phrase("has a piece that is nothing but its seams"));
    for (const Cut *piece : copy.cuts)
        if (ticksOf(*piece->length) < ticksOf(panel.pieces.shortest) - placeTolerance)
            say(phrase("has a piece of %1, and none may be shorter than %2",
                       {amount(scene, *piece->length), amount(scene, panel.pieces.shortest)}));
    if (panel.pieces.where == Pieces::Where::Balanced && !isBalanced(lengths))
        say(phrase("has joins that are not the same on both sides of its middle"));
}

void pieceFaults(const Scene &scene, const Copy &copy, Findings &findings) {
    const Panel &panel = *copy.panel;
    const auto say = [&](const std::string &does) {
        findings.push_back(about(Kind::Pieces, panel, copy.number, does));
    };
    const int of = copy.cuts.front()->of;
    if (of > panel.pieces.most)
        say(panel.pieces.most > 1 ? phrase("is made of %1 pieces, and at most %2 are allowed",
                                           {std::to_string(of), std::to_string(panel.pieces.most)})
                                  : phrase("is made of %1 pieces, and it must be whole", {std::to_string(of)}));
    if (!std::holds_alternative<Rectangle>(panel.shape)) {
        say(phrase("is made of pieces, and only a rectangle may be"));
        return;
    }
    if (!std::all_of(copy.cuts.begin(), copy.cuts.end(), [](const Cut *cut) { return cut->length.has_value(); })) {
        say(phrase("has a piece whose length is not told"));
        return;
    }
    if (!std::all_of(copy.cuts.begin(), copy.cuts.end(),
                     [&](const Cut *cut) { return leaveAlike(panel, *copy.cuts.front(), *cut); })) {
        say(phrase("has pieces that do not leave the same on its edges"));
        return;
    }
    lengthFaults(scene, copy, findings);
}

/// The pieces of one copy in order; fewer where one could not be laid.
std::vector<const LaidCut *> laidPieces(const Scene &scene, const Copy &copy) {
    std::vector<const LaidCut *> pieces;
    for (const Cut *cut : copy.cuts)
        for (const LaidCut &laid : scene.laid)
            if (laid.cut == cut) pieces.push_back(&laid);
    return pieces;
}

bool runsOn(const LaidCut &one, const LaidCut &next) {
    if (!one.grid && !next.grid) return true;
    if (one.cloth != next.cloth || one.cut->turn != next.cut->turn) return false;
    const Spot corner = one.measured.front();
    const Spot join = one.share->upwards ? Spot{corner.x, one.share->to} : Spot{one.share->to, corner.y};
    const Spot step = one.grid->phase(one.at(join)) - next.grid->phase(next.at(join));
    return one.grid->offStep(step) <= placeTolerance;
}

void matchFaults(const Scene &scene, const Copy &copy, Findings &findings) {
    if (!copy.panel->pieces.match) return;
    const auto pieces = laidPieces(scene, copy);
    for (std::size_t k = 1; k < pieces.size(); ++k)
        if (pieces[k - 1]->share && pieces[k]->share && !runsOn(*pieces[k - 1], *pieces[k]))
            findings.push_back(
                about(Kind::Pieces, scene, *pieces[k]->cut, phrase("does not carry the pattern on over its join")));
}

} // namespace

Findings piecesWrong(const Scene &scene) {
    Findings findings;
    for (const auto &[key, copy] : scene.copies) {
        if (!copy.whole || !copy.pieced()) continue;
        pieceFaults(scene, copy, findings);
        matchFaults(scene, copy, findings);
    }
    return findings;
}

} // namespace boltwright::judge
