#include "core/cloth/cloth_questions.h"
#include "core/files/job_file.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

TEST_CASE("the list asks for what a workroom asks, and says where advice is from", "[cloth questions]") {
    std::vector<std::string_view> asked;
    for (const ClothQuestion &q : clothQuestions()) {
        asked.push_back(q.about);
        CHECK_FALSE(q.source.empty());
        CHECK_FALSE(q.advice.empty());
    }
    for (const char *about : {"width", "repeat", "way", "weight", "stretch", "flaws", "fire"})
        CHECK(std::find(asked.begin(), asked.end(), about) != asked.end());
}

TEST_CASE("advice on fire defers to the label and to the law of the place", "[cloth questions]") {
    const auto &list = clothQuestions();
    const auto fire = std::find_if(list.begin(), list.end(), [](const ClothQuestion &q) { return q.about == "fire"; });
    CHECK(fire->advice.find("local rules") != std::string_view::npos);
    CHECK(fire->advice.find("label") != std::string_view::npos);
}

TEST_CASE("an answer stands until it is taken back, and in the file", "[cloth questions]") {
    Job job = jobOf(bolt(54_in), {});
    ClothAnswer answer;
    answer.about = "fire";
    CHECK(answerTo(job.cloths[0], "fire") == answer);
    answer.said = ClothAnswer::Said::Doubt;
    answer.note = "label asked for";
    job.cloths[0] = withAnswer(job.cloths[0], answer);
    CHECK(answerTo(job.cloths[0], "fire") == answer);
    const auto again = readJob(writeJob(job));
    REQUIRE(again);
    CHECK(again->cloths[0].asked == job.cloths[0].asked);
    answer.said = ClothAnswer::Said::Open;
    answer.note.clear();
    CHECK(withAnswer(job.cloths[0], answer).asked.empty());
}

TEST_CASE("what the job knows of the cloth stands beside the question", "[cloth questions]") {
    Cloth cloth = bolt(54_in);
    cloth.selvage = 0.5_in;
    CHECK(knownOf(cloth, "width", Unit::Inch) == "53 in between the selvages, 54 in edge to edge");
    CHECK(knownOf(cloth, "repeat", Unit::Inch) == "plain in this job");
    cloth.pattern = motifs(13.5_in, 27_in);
    CHECK(knownOf(cloth, "repeat", Unit::Inch) == "27 in along, 13 1/2 in across");
    CHECK(knownOf(cloth, "square", Unit::Inch).empty());
    cloth.skew = -1_in;
    CHECK(knownOf(cloth, "square", Unit::Inch) == "bow 0 in, skew 1 in over the width");
}
