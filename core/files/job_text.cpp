#include "core/files/job_file.h"
#include "core/files/part_reader.h"
#include "core/files/part_writer.h"

namespace boltwright {

Result<Job> readJob(std::string_view text) {
    const auto json = readJson(text);
    if (!json) return fault(json.error());
    Job job;
    Reading reading{job, std::nullopt};
    PartReader(*json, {}, reading).readPart(*json, {}, job, [](PartReader &in, Job &j) { keysOf(in, j); });
    if (reading.fault) return fault(*reading.fault);
    if (const auto faults = faultsOfJob(job); !faults.empty()) return fault(faults.front());
    return job;
}

std::string writeJob(const Job &job) {
    Job copy = job;
    PartWriter writer(nullptr, copy);
    return writeJson(writer.writtenPart(nullptr, copy, [](PartWriter &out, Job &j) { keysOf(out, j); }));
}

} // namespace boltwright
