#pragma once

#include "core/base/result.h"
#include "core/files/file_system.h"

namespace boltwright {

/// Replaces the file by one that holds `text`, in one step: writes beside it, brings that to the disk, and puts it in
/// its place. Whatever fails, and wherever the machine stops, either the old or the new file is there, whole. Keeps the
/// permissions of a file that was there, and replaces what a symbolic link points to. Errors say why, without the name.
Result<void> replaceFile(const std::filesystem::path &file, std::string_view text, FileSystem &files = disk());

/// Why the disk refused, in a few words: "the disk is full".
std::string reasonOf(const std::error_code &code);

} // namespace boltwright
