#include "core/files/job_file.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

std::filesystem::path projectFolder() { return std::filesystem::path(__FILE__).parent_path() / "../../.."; }

std::string textOf(const std::filesystem::path &file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

Job jobFrom(const std::string &text) {
    const auto job = readJob(text);
    INFO((job ? "" : job.error().text));
    REQUIRE(job);
    return *job;
}

} // namespace

TEST_CASE("every sample is read, and what is written of it is written again byte for byte", "[job file]") {
    for (const auto &entry : std::filesystem::directory_iterator(projectFolder() / "samples")) {
        if (entry.path().extension() != ".boltwright") continue;
        INFO(entry.path().filename());
        const Job job = jobFrom(textOf(entry.path()));
        const std::string written = writeJob(job);
        const Job again = jobFrom(written);
        CHECK(again == job);
        CHECK(writeJob(again) == written);
    }
}
