// Judges many job files in one run, for comparing the judge with one that shares no code with it.
//
// usage: judge FILE...  (or the names one a line on standard input, with -)
// Prints a line a file: its exit code as `boltwright check` would have it (0 right, 1 wrong, 2 breaks the format), a
// tab, and the findings, " | " between them.

#include "core/check/check.h"
#include "core/files/job_file.h"

#include <iostream>
#include <string>
#include <vector>

namespace {

using namespace boltwright;

struct Verdict {
    int code = 0;
    std::string text;
};

Verdict verdictOn(const std::string &file) {
    const auto job = loadJob(file);
    if (!job) return {2, job.error().text};
    if (job->layouts.empty()) return {1, "The job holds no layout."};
    Verdict verdict;
    for (const Finding &finding : check(*job, job->layouts.back())) {
        verdict.text += (verdict.code ? " | " : "") + finding.text;
        verdict.code = 1;
    }
    return verdict;
}

std::vector<std::string> filesNamed(int count, char **words) {
    std::vector<std::string> files(words + 1, words + count);
    if (files != std::vector<std::string>{"-"}) return files;
    files.clear();
    for (std::string line; std::getline(std::cin, line);) files.push_back(line);
    return files;
}

} // namespace

int main(int count, char **words) {
    for (const std::string &file : filesNamed(count, words)) {
        const Verdict verdict = verdictOn(file);
        std::cout << verdict.code << '\t' << verdict.text << '\n';
    }
}
