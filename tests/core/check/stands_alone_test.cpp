#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <regex>
#include <string>
#include <vector>

// The judge is worth something only while it shares nothing with the rules, the planner and what those decide with.

namespace {

namespace fs = std::filesystem;

const fs::path judge = fs::path(BOLTWRIGHT_SOURCE_DIR) / "core" / "check";

std::vector<fs::path> filesOfTheJudge() {
    std::vector<fs::path> files;
    for (const auto &entry : fs::recursive_directory_iterator(judge))
        if (entry.is_regular_file()) files.push_back(entry.path());
    return files;
}

std::string contentOf(const fs::path &file) {
    std::ifstream in(file);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// What the text includes or names that the judge must not, each as it stands there.
std::vector<std::string> notItsOwn(const std::string &text) {
    static const std::regex include(R"re(#include\s+"([^"]+)")re");
    static const std::regex allowed(
        "core/check/[a-z_]+[.]h|core/measure/[a-z_]+[.]h|core/base/[a-z_]+[.]h|core/geometry/(point|polygon)[.]h|"
        "core/cloth/(cloth|pattern)[.]h|core/panel/(panel|flow)[.]h|core/job/(job|layout)[.]h");
    static const std::regex shared(
        R"(\b(Lattice|PlaceSet|Laying)\b|\b(latticeOn|cutOutline|noFit|overlaps|inset|convexParts|distanceBetween|)"
        R"(measuredOutline|anchorOf|middleOfEdge|preferredAllowances|leastAllowance|faultsOfJob|turnsOf|breaches\w*)\()");
    std::vector<std::string> found;
    for (std::sregex_iterator it(text.begin(), text.end(), include), end; it != end; ++it)
        if (!std::regex_match((*it)[1].str(), allowed)) found.push_back((*it)[1]);
    for (std::sregex_iterator it(text.begin(), text.end(), shared), end; it != end; ++it) found.push_back(it->str());
    return found;
}

} // namespace

TEST_CASE("the judge includes and calls nothing that rules or planner decide with", "[check]") {
    const auto files = filesOfTheJudge();
    REQUIRE(files.size() > 10);
    for (const fs::path &file : files) {
        INFO(file.filename().string());
        CHECK(notItsOwn(contentOf(file)) == std::vector<std::string>{});
    }
}

TEST_CASE("what the judge must not touch would be noticed", "[check]") {
    CHECK(notItsOwn("#include \"core/rules/rules.h\"\n").size() == 1);
    CHECK(notItsOwn("#include \"core/planner/plan.h\"\n").size() == 1);
    CHECK(notItsOwn("#include \"core/cloth/place_set.h\"\n").size() == 1);
    CHECK(notItsOwn("#include \"core/geometry/shape_ops.h\"\n").size() == 1);
    CHECK(notItsOwn("const Lattice lattice = cloth.latticeOn(cut.on);").size() == 2);
}
