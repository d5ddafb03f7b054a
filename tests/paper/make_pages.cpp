// Writes jobs with layouts and everything that is made of them into a folder, for tests that measure the files.
// usage: paper_pages DIR pictures|sheets

#include "core/files/job_file.h"
#include "tests/core/paper/planted.h"
#include "ui/picture/picture.h"

#include <QGuiApplication>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <vector>

using namespace boltwright;

namespace {

struct Named {
    std::string name;
    Job job;
};

std::vector<Named> jobsFor(const std::string &what) {
    std::vector<Named> jobs = {{"chairs", planted::chairs()}, {"remnants", planted::footstools()}, {"pieces", planted::joinedBack()}};
    const int random = what == "pictures" ? 12 : 0;
    for (int seed = 1; seed <= random; ++seed) jobs.push_back({"random-" + std::to_string(seed), planted::anyJob(std::uint64_t(seed), 8)});
    for (Named &named : jobs)
        if (named.job.layouts.empty()) named.job.layouts = {planted::inRows(named.job)};
    return jobs;
}

bool said(const Result<void> &result) {
    if (!result) std::fprintf(stderr, "%s\n", result.error().text.c_str());
    return bool(result);
}

} // namespace

int main(int argc, char **argv) {
    if (argc < 3) return 2;
    QGuiApplication app(argc, argv);
    const std::filesystem::path folder = argv[1];
    const std::string what = argv[2];
    bool good = true;
    for (const Named &named : jobsFor(what)) {
        const auto file = [&](const char *ending) { return folder / (named.name + ending); };
        const Layout &layout = named.job.layouts.back();
        std::ofstream(file(".boltwright")) << writeJob(named.job);
        if (what != "pictures") continue;
        good = said(ui::writeSvg(named.job, layout, file(".svg"))) && good;
        good = said(ui::writePng(named.job, layout, file(".png"), 60)) && good;
    }
    return good ? 0 : 1;
}
