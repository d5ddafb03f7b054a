#include "core/check/check.h"

#include "core/check/faults.h"

namespace boltwright {

namespace {

using namespace judge;

constexpr Findings (*rules[])(const Scene &) = {
    copiesMissing, clothsWrong,  outsideCloth,  flawsCrossed, gapsBroken,      turnsWrong,  mirrorsWrong,
    motifsMissed,  copiesUnlike, matchesBroken, piecesWrong,  allowancesWrong, listedWrong, figuresWrong,
};

} // namespace

std::vector<Finding> check(const Job &job, const Layout &layout) {
    const Scene scene(job, layout);
    Findings all;
    for (const auto rule : rules) {
        const Findings found = rule(scene);
        all.insert(all.end(), found.begin(), found.end());
    }
    return all;
}

std::string whyNotToBeCut(const Job &job, const Layout &layout) {
    for (const Finding &found : check(job, layout))
        if (found.kind == Finding::Kind::Cloth || found.kind == Finding::Kind::Edge ||
            found.kind == Finding::Kind::Overlap)
            return found.text;
    return {};
}

} // namespace boltwright
