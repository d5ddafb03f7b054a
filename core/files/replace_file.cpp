#include "core/files/replace_file.h"

#include <cerrno>

namespace boltwright {
namespace {

using Path = std::filesystem::path;

FileSystem::Answer<void> fill(FileSystem &files, const Path &file, std::string_view text, const Path &target) {
    if (auto done = files.write(file, text); !done) return done;
    if (auto done = files.sync(file); !done) return done;
    return files.rename(file, target);
}

} // namespace

std::string reasonOf(const std::error_code &code) {
    if (code == std::errc::no_space_on_device) return "the disk is full";
    if (code.value() == EDQUOT) return "the space allowed to you on this disk is used up";
    if (code == std::errc::permission_denied || code == std::errc::operation_not_permitted)
        return "there is no permission for it";
    if (code == std::errc::read_only_file_system) return "the disk may only be read";
    if (code == std::errc::no_such_file_or_directory) return "there is no such file or folder";
    if (code == std::errc::not_a_directory) return "a part of its path is no folder";
    if (code == std::errc::is_a_directory) return "it is a folder, not a file";
    if (code == std::errc::no_such_device) return "it is a device or a pipe, not a file";
    if (code == std::errc::filename_too_long) return "its name is too long";
    if (code == std::errc::file_too_large) return "it is too large";
    return code.message();
}

Result<void> replaceFile(const Path &file, std::string_view text, FileSystem &files) {
    const auto notSaved = [](const std::error_code &code) { return fault("not saved: " + reasonOf(code)); };
    const auto target = files.targetOf(file);
    if (!target) return notSaved(target.error());
    const auto fresh = files.createBeside(*target);
    if (!fresh) return notSaved(fresh.error());
    if (const auto done = fill(files, *fresh, text, *target); !done) {
        const auto removed = files.remove(*fresh);
        if (removed) return notSaved(done.error());
        return fault("not saved: " + reasonOf(done.error()) + "; " + fresh->filename().string() +
                     " is left beside it and may be deleted");
    }
    if (const auto done = files.syncFolder(target->parent_path()); !done)
        return fault("saved, but the disk does not say that it will last: " + reasonOf(done.error()) +
                     "; save a copy elsewhere");
    return {};
}

} // namespace boltwright
