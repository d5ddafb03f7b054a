#pragma once

#include "core/base/result.h"
#include "core/job/job.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace boltwright {

/// Reads a job from JSON text (format version 1). Errors name the key's path, its value and what would be right:
/// "panels[2] 'inside-back', shape.across: \"2o 1/2\": \"o\" is no unit; write in, ft, yd, mm, cm or m".
/// Keys that are not known are kept, in their place. Allowances that are left out are read as an empty list.
Result<Job> readJob(std::string_view text);

/// Why a text is refused, as somebody at the window reads it.
struct Refused {
    std::string inWords; ///< in the trade's words: "Inside back, across: \"2o 1/2\": ..."
    std::string where;   ///< to be found in the file: "panels[2] 'inside-back', shape.across"
};
/// None for a text that `readJob` takes.
std::optional<Refused> whyRefused(std::string_view text);
/// The same of a file; none where it cannot be read at all.
std::optional<Refused> whyFileRefused(const std::filesystem::path &file);

/// The job as JSON text. What was read and has not changed keeps its keys, their order and values; a text that this
/// function wrote comes back byte for byte. New parts are written with the keys that differ from "left out".
std::string writeJob(const Job &job);

/// The same from a file; the error names the file first.
Result<Job> loadJob(const std::filesystem::path &file);

/// Names of picture files are written as seen from the job's folder where they lie in or below it, else whole.
/// Replaces the file in one step: whatever happens, either the old or the new file is there, whole. Does not ask
/// whether the job is right as input: nothing is lost because of a fault in it. Errors name the file and say why.
Result<void> saveJob(const Job &job, const std::filesystem::path &file);

} // namespace boltwright
