#include "core/files/job_file.h"
#include "core/files/replace_file.h"
#include "tests/core/files/job_folder.h"

#include <catch2/catch.hpp>

#include <cerrno>
#include <csignal>
#include <set>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace boltwright;
using test::textOf;
namespace fs = std::filesystem;

namespace {

/// An empty folder that goes with the test.
class Folder {
public:
    Folder() {
        std::string name = (fs::temp_directory_path() / "boltwright-test-XXXXXX").string();
        REQUIRE(::mkdtemp(name.data()) != nullptr);
        m_path = name;
    }
    ~Folder() { fs::remove_all(m_path); }
    Folder(const Folder &) = delete;
    Folder &operator=(const Folder &) = delete;
    fs::path operator/(const std::string &name) const { return m_path / name; }
    const fs::path &path() const { return m_path; }
    std::set<std::string> names() const {
        std::set<std::string> all;
        for (const auto &entry : fs::directory_iterator(m_path)) all.insert(entry.path().filename().string());
        return all;
    }

private:
    fs::path m_path;
};

void put(const fs::path &file, const std::string &text) { std::ofstream(file, std::ios::binary) << text; }

/// A disk on which the call of that number fails, and which dies there if asked to.
class FailingDisk : public FileSystem {
public:
    enum class End { Error, Killed };
    explicit FailingDisk(int failing, End end = End::Error) : m_failing(failing), m_end(end) {}

    int calls() const { return m_calls; }

    Answer<std::string> read(const Path &f, std::size_t most) override {
        return call([&] { return disk().read(f, most); });
    }
    Answer<Path> targetOf(const Path &f) override {
        return call([&] { return disk().targetOf(f); });
    }
    Answer<Path> createBeside(const Path &f) override {
        return call([&] { return disk().createBeside(f); });
    }
    Answer<void> write(const Path &f, std::string_view text) override {
        // Half of it is written before the disk is full.
        if (m_calls + 1 == m_failing) (void)disk().write(f, text.substr(0, text.size() / 2));
        return call([&] { return disk().write(f, text); });
    }
    Answer<void> sync(const Path &f) override {
        return call([&] { return disk().sync(f); });
    }
    Answer<void> rename(const Path &a, const Path &b) override {
        return call([&] { return disk().rename(a, b); });
    }
    Answer<void> syncFolder(const Path &f) override {
        return call([&] { return disk().syncFolder(f); });
    }
    Answer<void> remove(const Path &f) override {
        return call([&] { return disk().remove(f); });
    }

private:
    template <class Call>
    auto call(const Call &make) -> decltype(make()) {
        if (++m_calls != m_failing) return make();
        if (m_end == End::Killed) ::kill(::getpid(), SIGKILL);
        return tl::unexpected(std::error_code(ENOSPC, std::generic_category()));
    }
    int m_failing, m_calls = 0;
    End m_end;
};

constexpr int stepsOfASave = 6; // target, create, write, sync, rename, sync of the folder

} // namespace

TEST_CASE("a file is made, and replaced, without anything left beside it", "[replace file]") {
    const Folder folder;
    CHECK(replaceFile(folder / "sofa.boltwright", "first"));
    CHECK(textOf(folder / "sofa.boltwright") == "first");
    CHECK(replaceFile(folder / "sofa.boltwright", "second"));
    CHECK(textOf(folder / "sofa.boltwright") == "second");
    CHECK(folder.names() == std::set<std::string>{"sofa.boltwright"});
}

TEST_CASE("whichever step fails, the old file or the new one is there whole, and the sentence says why",
          "[replace file]") {
    for (int failing = 1; failing <= stepsOfASave; ++failing) {
        INFO("step " << failing);
        const Folder folder;
        const auto file = folder / "sofa.boltwright";
        put(file, "old");
        FailingDisk files(failing);
        const auto done = replaceFile(file, "new and longer", files);
        REQUIRE_FALSE(done);
        const bool replaced = failing == stepsOfASave;
        CHECK(textOf(file) == (replaced ? "new and longer" : "old"));
        CHECK(done.error().text ==
              (replaced ? "saved, but the disk does not say that it will last: the disk is full; save a copy elsewhere"
                        : "not saved: the disk is full"));
        CHECK(folder.names() == std::set<std::string>{"sofa.boltwright"});
    }
    const Folder folder;
    FailingDisk files(0);
    CHECK(replaceFile(folder / "sofa.boltwright", "new", files));
    CHECK(files.calls() == stepsOfASave); // so that the steps above are all there are
}

TEST_CASE("a program killed at any step leaves the old file or the new one, whole", "[replace file]") {
    for (int step = 1; step <= stepsOfASave; ++step) {
        INFO("step " << step);
        const Folder folder;
        const auto file = folder / "sofa.boltwright";
        put(file, "old");
        const pid_t child = ::fork();
        if (child == 0) {
            FailingDisk files(step, FailingDisk::End::Killed);
            const auto done = replaceFile(file, "new and longer", files);
            ::_exit(done ? 1 : 2);
        }
        int status = 0;
        REQUIRE(::waitpid(child, &status, 0) == child);
        REQUIRE(WIFSIGNALED(status));
        CHECK(textOf(file) == (step == stepsOfASave ? "new and longer" : "old"));
        // What the killed one left is no obstacle to the next.
        CHECK(replaceFile(file, "next"));
        CHECK(textOf(file) == "next");
    }
}

TEST_CASE("a file that the system cuts short is not put in the place of the old one", "[replace file]") {
    const Folder folder;
    const auto file = folder / "sofa.boltwright";
    put(file, "old");
    const pid_t child = ::fork();
    if (child == 0) {
        // The system itself refuses to write more than 4096 bytes.
        ::signal(SIGXFSZ, SIG_IGN);
        const rlimit limit{4096, 4096};
        ::setrlimit(RLIMIT_FSIZE, &limit);
        const auto done = replaceFile(file, std::string(10'000, 'x'));
        ::_exit(!done && done.error().text == "not saved: it is too large" ? 0 : 1);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    CHECK(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 0);
    CHECK(textOf(file) == "old");
    CHECK(folder.names() == std::set<std::string>{"sofa.boltwright"});
}

TEST_CASE("a replaced file keeps its permissions, and a new one follows the user's habit", "[replace file]") {
    const Folder folder;
    const auto file = folder / "sofa.boltwright";
    put(file, "old");
    fs::permissions(file, fs::perms(0640));
    CHECK(replaceFile(file, "new"));
    CHECK(fs::status(file).permissions() == fs::perms(0640));
    const mode_t habit = ::umask(027);
    CHECK(replaceFile(folder / "fresh.boltwright", "new"));
    ::umask(habit);
    CHECK(fs::status(folder / "fresh.boltwright").permissions() == fs::perms(0640));
}

TEST_CASE("a symbolic link stays, and what it points to is replaced", "[replace file]") {
    const Folder folder;
    fs::create_directory(folder / "jobs");
    put(folder / "jobs/sofa.boltwright", "old");
    fs::create_symlink("jobs/sofa.boltwright", folder / "today.boltwright");
    fs::create_symlink("today.boltwright", folder / "now.boltwright");
    CHECK(replaceFile(folder / "now.boltwright", "new"));
    CHECK(fs::is_symlink(folder / "now.boltwright"));
    CHECK(fs::is_symlink(folder / "today.boltwright"));
    CHECK(textOf(folder / "jobs/sofa.boltwright") == "new");
    fs::create_symlink("round.boltwright", folder / "round.boltwright");
    CHECK_FALSE(replaceFile(folder / "round.boltwright", "new"));
}

TEST_CASE("a place that cannot be written to is refused with its reason", "[replace file]") {
    const Folder folder;
    CHECK(replaceFile(folder / "none/sofa.boltwright", "x").error().text ==
          "not saved: there is no such file or folder");
    CHECK(replaceFile(folder.path(), "x").error().text == "not saved: it is a folder, not a file");
    put(folder / "file", "");
    CHECK(replaceFile(folder / "file/sofa.boltwright", "x").error().text ==
          "not saved: a part of its path is no folder");
    CHECK(replaceFile(folder / std::string(300, 'x'), "x").error().text == "not saved: its name is too long");
    // The longest name a folder takes is still saved.
    CHECK(replaceFile(folder / std::string(255, 'x'), "x"));
}

TEST_CASE("a file that is protected from writing is not replaced, though its folder is not", "[replace file]") {
    const Folder folder;
    const auto file = folder / "kept.boltwright";
    put(file, "old");
    fs::permissions(file, fs::perms(0444));
    fs::permissions(folder.path(), fs::perms(0777));
    const pid_t child = ::fork();
    if (child == 0) {
        // Protection does not bind the administrator, so that one tries it as nobody.
        if (::geteuid() == 0 && ::setuid(65534) != 0) ::_exit(2);
        const auto done = replaceFile(file, "new");
        ::_exit(!done && done.error().text == "not saved: there is no permission for it" ? 0 : 1);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    CHECK(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 0);
    CHECK(textOf(file) == "old");
}

TEST_CASE("a job is saved and loaded, and each error begins with the file", "[replace file]") {
    const Folder folder;
    const auto file = folder / "chairs.boltwright";
    const auto sample = test::projectFolder() / "tests/jobs/easy-chairs.boltwright";
    const auto job = loadJob(sample);
    REQUIRE(job);
    CHECK(saveJob(*job, file));
    CHECK(loadJob(file) == *job);
    CHECK(textOf(file) == writeJob(*job));

    CHECK(loadJob(folder / "none.boltwright").error().text ==
          (folder / "none.boltwright").string() + ": not read: there is no such file or folder");
    CHECK(loadJob(folder.path()).error().text == folder.path().string() + ": not read: it is a folder, not a file");
    put(file, "{}");
    CHECK(loadJob(file).error().text == file.string() + ": boltwright: this key is missing");
    CHECK(saveJob(*job, folder / "none/a.boltwright").error().text ==
          (folder / "none/a.boltwright").string() + ": not saved: there is no such file or folder");
    CHECK(loadJob("/dev/zero").error().text == "/dev/zero: not read: it is too large");
}
