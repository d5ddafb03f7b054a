#pragma once

#include "core/planner/instance.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace boltwright::bench {

/// Something to solve whose best answer is known, or nearly.
struct Case {
    std::string name;
    std::string set; ///< means are taken over these
    planner::Instance instance;
    std::optional<Length> known;      ///< best length published, or the one the job was cut from
    std::optional<Length> knownBound; ///< no layout is shorter
    std::optional<bool> fits;         ///< remnants and bins: the published answer
};

/// The folder of open test sets and tools beside the checkout (or BOLTWRIGHT_SHARED); nothing where there is none.
std::optional<std::filesystem::path> sharedFolder();

/// A strip of the open sets: one unit is one millimetre.
Case stripCase(const std::filesystem::path &file, const std::string &set);
/// A bin of the orthogonal packing sets.
Case binCase(const std::filesystem::path &file);
/// The cases of a set by its name: C, N, BENG, NGCUT, CGCUT, GCUT, nt, bwmv, kr, zdf, opp.
std::vector<Case> casesOf(const std::string &set);

/// A job that planted.py makes. `shrink`: percent taken off both sides of every panel, so that there is no layout
/// without waste and the length the job was cut from is only near the best.
Case plantedCase(const std::string &family, int n, int seed, double slack, double shrink);

} // namespace boltwright::bench
