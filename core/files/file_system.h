#pragma once

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <string_view>
#include <system_error>

namespace boltwright {

/// The few things asked of the disk, so that a test can make any of them fail. Each says why it failed by the system's
/// own code.
class FileSystem {
public:
    template <class T>
    using Answer = tl::expected<T, std::error_code>;
    using Path = std::filesystem::path;

    virtual ~FileSystem() = default;

    /// The whole file; fails with `file_too_large` beyond `most` bytes.
    virtual Answer<std::string> read(const Path &file, std::size_t most) = 0;

    /// The file itself, behind any symbolic links; it need not be there. Fails when it is there and write-protected.
    virtual Answer<Path> targetOf(const Path &file) = 0;
    /// A new, empty file in the folder of `target`, with its permissions where it is there; gives its name.
    virtual Answer<Path> createBeside(const Path &target) = 0;
    /// Writes the whole text into a file made by `createBeside`.
    virtual Answer<void> write(const Path &file, std::string_view text) = 0;
    /// Returns when the file's contents are on the disk.
    virtual Answer<void> sync(const Path &file) = 0;
    /// Puts `from` in the place of `to` in one step.
    virtual Answer<void> rename(const Path &from, const Path &to) = 0;
    /// Returns when what was renamed in the folder is on the disk.
    virtual Answer<void> syncFolder(const Path &folder) = 0;
    virtual Answer<void> remove(const Path &file) = 0;
};

/// The disk of this machine.
FileSystem &disk();

} // namespace boltwright
