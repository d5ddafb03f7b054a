#include "core/files/job_file.h"
#include "core/yardage/staircase.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>

using namespace boltwright;

namespace {

std::vector<std::filesystem::path> sampleFiles() {
    std::vector<std::filesystem::path> files;
    for (const auto &entry :
         std::filesystem::directory_iterator(std::filesystem::path(BOLTWRIGHT_SOURCE_DIR) / "samples"))
        if (entry.path().extension() == ".boltwright") files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    return files;
}

/// How far a step's layout may still be above the least its own cloth can take.
Length excessOf(const Stair &stair, const std::string &cloth) {
    for (const ClothUse &use : stair.layout.cloths)
        if (use.id == cloth) return stair.length - std::min(stair.length, use.bound.value_or(Length{}));
    return {};
}

void checkStaircase(const Staircase &s) {
    Length sum, excessBelow;
    for (const Stair &stair : s.stairs) {
        INFO(nameOf(stair.kind));
        CHECK(stair.step >= Length{});
        sum += stair.step;
        CHECK(stair.length == sum);
        if (stair.step > Length{}) CHECK_FALSE(stair.advice.empty());
        // A step that is told as a fact is larger than what its two layouts may still lose.
        if (!stair.upTo && stair.kind != StairKind::Rounding && !stair.layout.cuts.empty() && stair.step > Length{})
            CHECK(stair.step >= excessOf(stair, s.cloth) + excessBelow);
        excessBelow = excessOf(stair, s.cloth);
    }
    CHECK(sum == s.buy);
    CHECK(s.buy >= s.needed);
}

} // namespace

TEST_CASE("the staircase of every sample adds up, and no step is negative", "[staircase]") {
    int explained = 0, told = 0;
    for (const auto &file : sampleFiles()) {
        const auto job = loadJob(file);
        REQUIRE(job);
        for (const Cloth &cloth : job->cloths) {
            if (!cloth.bolt) continue;
            INFO(file.filename().string() << ", " << cloth.id);
            StaircaseOptions o;
            o.plan.seconds.reset();
            o.plan.steps = 1000;
            const auto stairs = staircaseOf(*job, cloth.id, o);
            if (!stairs) {
                // Only a cloth that nothing is cut from has none.
                CHECK(stairs.error().text == "nothing is cut from this cloth");
                continue;
            }
            ++explained;
            for (const Stair &stair : stairs->stairs) told += stair.upTo;
            checkStaircase(*stairs);
        }
    }
    CHECK(explained >= 7);
    CHECK(told > 0); // with so few steps, some of it is noise, and said to be
}
