#include "core/files/cut_list_csv.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

/// A folder that goes away with the test.
class Folder {
public:
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "cut-list-XXXXXX").string();
        m_path = mkdtemp(name.data());
    }
    ~Folder() { std::filesystem::remove_all(m_path); }
    Folder(const Folder &) = delete;
    const std::filesystem::path &path() const { return m_path; }

private:
    std::filesystem::path m_path;
};

/// `from`: how Calc is to read it, where that is not plain. 44,34,76: commas, quotes, UTF-8.
bool convert(const std::filesystem::path &folder, const std::string &file, const std::string &to,
             const std::string &from = {}) {
    const std::string quiet = " >/dev/null 2>&1";
    const std::string command = "cd '" + folder.string() + "' && soffice --headless '-env:UserInstallation=file://" +
                                folder.string() + "/profile' --convert-to '" + to + "' " + from + " " + file + quiet;
    return std::system(command.c_str()) == 0;
}

} // namespace

TEST_CASE("a cut list goes through LibreOffice Calc and back", "[cut list]") {
    if (std::system("command -v soffice >/dev/null 2>&1") != 0) {
        WARN("soffice is not here: only the lists that Calc saved earlier are read (cut_list_csv_test.cpp)");
        return;
    }
    const Folder folder;
    Panel back = rectangle("inside-back", 24_in, 17.5_in);
    back.mark = "IB";
    back.name = "Inside back, \"tall\"";
    back.allow = {2_in, 1.5_in, 2_in, 1.5_in};
    Panel arm = rectangle("inside-arm", 20.125_in, 27_in, 2);
    arm.mark = "IA";
    arm.name = "Möbelarm";
    arm.allow.assign(4, 2_in);
    arm.mirror = true;
    const std::vector<Panel> panels = {back, arm};
    std::ofstream(folder.path() / "list.csv", std::ios::binary) << writeCutList(panels, Unit::Inch);
    REQUIRE(convert(folder.path(), "list.csv", "ods", "'--infilter=CSV:44,34,76'"));
    std::filesystem::remove(folder.path() / "list.csv");
    REQUIRE(convert(folder.path(), "list.ods", "csv:Text - txt - csv (StarCalc):44,34,76"));
    std::ifstream in(folder.path() / "list.csv", std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    const auto list = readCutList(text.str(), Unit::Inch);
    CAPTURE(text.str(), (list ? "" : list.error().text));
    REQUIRE(list);
    CHECK(list->panels == panels);
}
