#include "core/base/language.h"
#include "core/files/job_file.h"
#include "core/files/part_reader.h"
#include "core/files/part_writer.h"
#include "core/job/fault_words.h"

#include <algorithm>

namespace boltwright {

namespace {

/// Reads all keys into the job; what stopped it stands in the reading.
Reading readInto(Job &job, const Json &json) {
    Reading reading{job, std::nullopt};
    PartReader(json, {}, reading).readPart(json, {}, job, [](PartReader &in, Job &j) { keysOf(in, j); });
    return reading;
}

bool endsWith(const std::string &text, std::string_view end) {
    return text.size() >= end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
}

/// The reason without what only somebody who writes the file by hand can use.
std::string reasonInWords(const std::string &reason) {
    if (reason == missingKey) return phrase("it is not told");
    if (endsWith(reason, notAList) || endsWith(reason, notAnObjectWords)) return phrase("it cannot be read");
    return reason;
}

} // namespace

std::optional<Refused> whyRefused(std::string_view text) {
    const auto json = readJson(text);
    if (!json) return Refused{phrase("it is damaged, or no job file"), json.error().text};
    Job job;
    const Reading reading = readInto(job, *json);
    if (reading.fault) {
        const std::string place = placeInWords(job, reading.place), reason = reasonInWords(reading.reason);
        // What stands behind the key as well: which of a list's values, say.
        const std::string full = reading.fault->text,
                          where = full.substr(0, full.size() - std::min(full.size(), reading.reason.size() + 2));
        return Refused{place.empty() ? reason : place + ": " + reason, where};
    }
    const auto faults = faultsInWords(job), places = placesOfFaults(job);
    if (faults.empty()) return std::nullopt;
    return Refused{faults.front(), places.front()};
}

Result<Job> readJob(std::string_view text) {
    const auto json = readJson(text);
    if (!json) return fault(json.error());
    Job job;
    if (const Reading reading = readInto(job, *json); reading.fault) return fault(*reading.fault);
    if (const auto faults = faultsOfJob(job); !faults.empty()) return fault(faults.front());
    return job;
}

std::string writeJob(const Job &job) {
    Job copy = job;
    PartWriter writer(nullptr, copy);
    return writeJson(writer.writtenPart(nullptr, copy, [](PartWriter &out, Job &j) { keysOf(out, j); }));
}

} // namespace boltwright
