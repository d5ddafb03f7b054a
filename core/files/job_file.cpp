#include "core/files/job_file.h"

#include "core/files/replace_file.h"
#include "core/job/pictures.h"

namespace boltwright {
namespace {

// A job of ten thousand copies and a hundred layouts stays well below.
constexpr std::size_t mostBytes = 256u << 20;

} // namespace

Result<Job> loadJob(const std::filesystem::path &file) {
    const auto text = disk().read(file, mostBytes);
    if (!text) return fault(Fault{"not read: " + reasonOf(text.error())}.at(file.string()));
    auto job = readJob(*text);
    if (!job) return fault(job.error().at(file.string()));
    beginPicturesAt(*job, std::filesystem::absolute(file).parent_path());
    return job;
}

std::optional<Refused> whyFileRefused(const std::filesystem::path &file) {
    const auto text = disk().read(file, mostBytes);
    return text ? whyRefused(*text) : std::nullopt;
}

Result<void> saveJob(const Job &job, const std::filesystem::path &file) {
    Job moved = job;
    movePictures(moved, std::filesystem::absolute(file).parent_path());
    auto saved = replaceFile(file, writeJob(moved));
    if (!saved) return fault(saved.error().at(file.string()));
    return saved;
}

} // namespace boltwright
