#include "core/base/language.h"
#include "core/check/faults.h"
#include "core/check/saying.h"

#include <algorithm>

namespace boltwright::judge {

namespace {

using Kind = Finding::Kind;

/// Where cuts may lie on a bolt: between the selvages, above the squared end, below the end of the cloth.
Bounds roomOnBolt(const Cloth &cloth) {
    const Bolt &bolt = *cloth.bolt;
    return {{ticksOf(cloth.selvage), ticksOf(bolt.square)},
            {ticksOf(bolt.width - cloth.selvage), ticksOf(bolt.length.value_or(Length::limit()))}};
}

Findings outsideBolt(const Scene &scene, const LaidCut &laid) {
    Findings findings;
    const Bounds room = roomOnBolt(*laid.cloth);
    const bool selvage = laid.cloth->selvage > Length{};
    const auto past = [&](double by, const std::string &what) {
        if (by > placeTolerance)
            findings.push_back(about(Kind::Edge, scene, *laid.cut,
                                     phrase("reaches %1 past %2 of %3", {amount(scene, by), what, sheetOf(laid)})));
    };
    past(room.low.x - laid.bounds.low.x, selvage ? phrase("the left selvage") : phrase("the left edge"));
    past(laid.bounds.high.x - room.high.x, selvage ? phrase("the right selvage") : phrase("the right edge"));
    past(room.low.y - laid.bounds.low.y,
         laid.cloth->bolt->square > Length{} ? phrase("the squared cut end") : phrase("the cut end"));
    past(laid.bounds.high.y - room.high.y, phrase("the end"));
    return findings;
}

Findings outsideRemnant(const Scene &scene, const LaidCut &laid) {
    const Outline room = counterClockwiseOutline(laid.remnant->outline);
    if (!liesIn(laid.outline, withEdgesMoved(room, placeTolerance)))
        return {about(Kind::Edge, scene, *laid.cut, phrase("reaches outside %1", {sheetOf(laid)}))};
    const double edge = ticksOf(laid.cloth->edge), distance = distanceOfEdges(laid.outline, room);
    if (edge == 0 || distance >= edge - gapTolerance) return {};
    return {about(Kind::Edge, scene, *laid.cut,
                  phrase("lies %1 from the outline of %2, and %3 must be kept",
                         {amount(scene, distance), sheetOf(laid), amount(scene, edge)}))};
}

bool boundsMeet(const Bounds &a, const Bounds &b, double apart) {
    return a.low.x - apart <= b.high.x && b.low.x - apart <= a.high.x && a.low.y - apart <= b.high.y &&
           b.low.y - apart <= a.high.y;
}

bool crosses(const LaidCut &laid, const Flaw &flaw) {
    const Outline outline = counterClockwiseOutline(flaw.outline);
    return boundsMeet(laid.bounds, boundsOf(outline), 0) &&
           insidesMeet(withEdgesMoved(laid.outline, -placeTolerance), outline);
}

/// Deeper in one another than the tolerance: they still meet when each is taken in by half of it.
bool overlap(const LaidCut &a, const LaidCut &b) {
    return insidesMeet(withEdgesMoved(a.outline, -placeTolerance / 2), withEdgesMoved(b.outline, -placeTolerance / 2));
}

std::optional<Finding> tooNear(const Scene &scene, const LaidCut &a, const LaidCut &b, double gap) {
    if (!boundsMeet(a.bounds, b.bounds, gap)) return std::nullopt;
    const std::string other = nameOf(scene, *b.cut);
    if (overlap(a, b)) return about(Kind::Overlap, scene, *a.cut, phrase("overlaps %1", {other}));
    const double distance = distanceOfEdges(a.outline, b.outline);
    if (gap == 0 || distance >= gap - gapTolerance) return std::nullopt;
    return about(Kind::Overlap, scene, *a.cut,
                 phrase("lies %1 from %2, and the gap is %3", {amount(scene, distance), other, amount(scene, gap)}));
}

} // namespace

Findings outsideCloth(const Scene &scene) {
    Findings findings;
    for (const LaidCut &laid : scene.laid) {
        const Findings found = laid.remnant ? outsideRemnant(scene, laid) : outsideBolt(scene, laid);
        findings.insert(findings.end(), found.begin(), found.end());
    }
    return findings;
}

Findings flawsCrossed(const Scene &scene) {
    Findings findings;
    for (const LaidCut &laid : scene.laid) {
        if (laid.panel->hidden) continue;
        for (const Flaw &flaw : laid.remnant ? laid.remnant->flaws : laid.cloth->bolt->flaws) {
            if (!crosses(laid, flaw)) continue;
            const std::string what = flaw.note.empty() ? phrase("a flaw") : phrase("a flaw (%1)", {flaw.note});
            findings.push_back(about(Kind::Flaw, scene, *laid.cut, phrase("crosses %1 in %2", {what, sheetOf(laid)})));
        }
    }
    return findings;
}

Findings gapsBroken(const Scene &scene) {
    // Up the roll, each with those that begin before it ends.
    std::vector<const LaidCut *> upwards;
    for (const LaidCut &laid : scene.laid) upwards.push_back(&laid);
    std::stable_sort(upwards.begin(), upwards.end(),
                     [](const LaidCut *a, const LaidCut *b) { return a->bounds.low.y < b->bounds.low.y; });
    const double gap = ticksOf(scene.job.gap);
    Findings findings;
    for (std::size_t i = 0; i < upwards.size(); ++i)
        for (std::size_t j = i + 1; j < upwards.size(); ++j) {
            const LaidCut &a = *upwards[i], &b = *upwards[j];
            if (b.bounds.low.y > a.bounds.high.y + gap) break;
            if (a.cloth != b.cloth || a.remnant != b.remnant) continue;
            if (const auto found = tooNear(scene, a, b, gap)) findings.push_back(*found);
        }
    return findings;
}

} // namespace boltwright::judge
