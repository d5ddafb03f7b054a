#include "core/edit/job_edit.h"
#include "ui/document/job_document.h"

#include <QTemporaryDir>

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

Layout named(const std::string &name) {
    Layout layout;
    layout.name = name;
    return layout;
}

Job jobWith(std::vector<std::string> names) {
    Job job;
    for (const std::string &name : names) job.layouts.push_back(named(name));
    return job;
}

std::vector<std::string> namesOf(const JobDocument &document) {
    std::vector<std::string> names;
    for (const Layout &layout : document.job().layouts) names.push_back(layout.name);
    return names;
}

using Names = std::vector<std::string>;

} // namespace

TEST_CASE("to lay another layout changes nothing of the job", "[document]") {
    JobDocument document;
    document.startWith(jobWith({"bands up the roll", "shortest"}));
    CHECK(document.layoutIndex() == 1);
    const auto before = document.revision();
    document.setLayoutIndex(0);
    CHECK(document.laidLayout().name == "bands up the roll");
    CHECK(document.revision() != before); // a verdict on the other layout comes too late
    CHECK_FALSE(document.isUnsaved());
    CHECK_FALSE(document.history()->canUndo());
    document.setLayoutIndex(7);
    CHECK(document.layoutIndex() == 0);
}

TEST_CASE("a kept copy stands before the layout laid, and work goes on on that one", "[document]") {
    JobDocument document;
    document.startWith(jobWith({"first", "this one"}));
    document.keepLayout(u"as it was on Monday"_s);
    CHECK(namesOf(document) == Names{"first", "as it was on Monday", "this one"});
    CHECK(document.laidLayout().name == "this one");
    document.history()->undo();
    CHECK(namesOf(document) == Names{"first", "this one"});
    CHECK(document.laidLayout().name == "this one");
    document.history()->redo();
    CHECK(document.laidLayout().name == "this one");
    CHECK(document.job().layouts.size() == 3);
}

TEST_CASE("a layout dropped by mistake comes back where it was", "[document]") {
    JobDocument document;
    document.startWith(jobWith({"a", "b", "c"}));
    document.setLayoutIndex(1);
    document.dropLayout(1);
    CHECK(namesOf(document) == Names{"a", "c"});
    CHECK(document.laidLayout().name == "c");
    document.dropLayout(0);
    CHECK(document.laidLayout().name == "c");
    document.dropLayout(0);
    CHECK(document.job().layouts.empty());
    CHECK(document.laidLayout() == Layout{});
    for (int i = 0; i < 3; ++i) document.history()->undo();
    CHECK(namesOf(document) == Names{"a", "b", "c"});
    CHECK(document.laidLayout().name == "b");
    CHECK_FALSE(document.isUnsaved());
}

TEST_CASE("a layout takes another name, and its old one back", "[document]") {
    JobDocument document;
    document.startWith(jobWith({"a", "b"}));
    document.renameLayout(0, u"bands railroaded"_s);
    document.renameLayout(0, u"bands railroaded"_s); // nothing new, no step
    CHECK(document.history()->count() == 1);
    CHECK(namesOf(document) == Names{"bands railroaded", "b"});
    CHECK(document.layoutIndex() == 1);
    document.history()->undo();
    CHECK(namesOf(document) == Names{"a", "b"});
}

TEST_CASE("undo shows the layout that the step was done to", "[document]") {
    JobDocument document;
    document.startWith(jobWith({"a", "b"}));
    Layout changed = document.laidLayout();
    changed.madeBy = "hand";
    document.changeLayout(changed, u"Move"_s);
    document.setLayoutIndex(0);
    document.history()->undo();
    CHECK(document.layoutIndex() == 1);
    CHECK(document.laidLayout().madeBy.empty());
}

TEST_CASE("the layout that lay on the table when the job was saved lies there again", "[document]") {
    QTemporaryDir folder;
    const QString file = folder.filePath(u"job.boltwright"_s);
    JobDocument document;
    Job job = newJob(Unit::Inch);
    job.layouts = jobWith({"bands up the roll", "railroaded", "shortest"}).layouts;
    document.startWith(job);
    document.setLayoutIndex(1);
    REQUIRE(document.saveAs(file));
    JobDocument again;
    REQUIRE(again.open(file));
    CHECK(again.laidLayout().name == "railroaded");
    CHECK(again.job() == job); // the mark is the file's, and no part of a layout
    again.setLayoutIndex(2);
    REQUIRE(again.save());
    JobDocument last;
    REQUIRE(last.open(file));
    CHECK(last.laidLayout().name == "shortest");
}
