#include "core/files/file_system.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace boltwright {
namespace {

using Path = FileSystem::Path;
template <class T>
using Answer = FileSystem::Answer<T>;

tl::unexpected<std::error_code> failed(int code = errno) {
    return tl::unexpected(std::error_code(code, std::generic_category()));
}

/// An open file, closed when it goes.
class Open {
public:
    Open(const Path &file, int flags, mode_t mode = 0) : m_handle(::open(file.c_str(), flags | O_CLOEXEC, mode)) {}
    ~Open() {
        if (m_handle >= 0) ::close(m_handle);
    }
    Open(const Open &) = delete;
    Open &operator=(const Open &) = delete;

    explicit operator bool() const { return m_handle >= 0; }
    int handle() const { return m_handle; }

private:
    int m_handle;
};

Answer<void> syncAt(const Path &path, int flags) {
    const Open file(path, flags);
    if (!file) return failed();
    if (::fsync(file.handle()) != 0) return failed();
    return {};
}

class Disk : public FileSystem {
public:
    Answer<std::string> read(const Path &path, std::size_t most) override {
        const Open file(path, O_RDONLY);
        if (!file) return failed();
        std::string text;
        char block[65536];
        while (true) {
            const ssize_t count = ::read(file.handle(), block, sizeof block);
            if (count < 0 && errno == EINTR) continue;
            if (count < 0) return failed();
            if (count == 0) return text;
            text.append(block, std::size_t(count));
            if (text.size() > most) return failed(EFBIG);
        }
    }

    Answer<Path> targetOf(const Path &file) override {
        Path target = file;
        std::error_code error;
        for (int links = 0; std::filesystem::is_symlink(target, error); ++links) {
            if (links == 40) return failed(ELOOP);
            const Path next = std::filesystem::read_symlink(target, error);
            if (error) return tl::unexpected(error);
            target = target.parent_path() / next; // an absolute `next` replaces the folder
        }
        struct stat there {};
        if (::stat(target.c_str(), &there) != 0) return errno == ENOENT ? Answer<Path>(target) : failed();
        if (S_ISDIR(there.st_mode)) return failed(EISDIR);
        // A rename would put a file in the place of a device, and whoever needs it would be without.
        if (!S_ISREG(there.st_mode)) return failed(ENODEV);
        // To replace it only its folder need be writable, but who protects a file does not want it replaced.
        if (::faccessat(AT_FDCWD, target.c_str(), W_OK, AT_EACCESS) != 0) return failed();
        return target;
    }

    Answer<Path> createBeside(const Path &target) override {
        struct stat there {};
        const bool replaces = ::stat(target.c_str(), &there) == 0;
        for (int attempt = 0; attempt < 1000; ++attempt) {
            // Hidden, and short: the longest name a folder takes leaves no room for a longer one.
            const Path path =
                target.parent_path() / (".boltwright-" + std::to_string(::getpid()) + "-" + std::to_string(attempt));
            const Open file(path, O_WRONLY | O_CREAT | O_EXCL, replaces ? 0600 : 0666);
            if (!file && errno == EEXIST) continue;
            if (!file) return failed();
            if (replaces && !takePermissions(file.handle(), there)) {
                const auto why = failed();
                ::unlink(path.c_str());
                return why;
            }
            return path;
        }
        return failed(EEXIST);
    }

    Answer<void> write(const Path &path, std::string_view text) override {
        const Open file(path, O_WRONLY | O_TRUNC);
        if (!file) return failed();
        while (!text.empty()) {
            const ssize_t count = ::write(file.handle(), text.data(), text.size());
            if (count < 0 && errno == EINTR) continue;
            if (count < 0) return failed();
            text.remove_prefix(std::size_t(count));
        }
        return {};
    }

    Answer<void> sync(const Path &file) override { return syncAt(file, O_WRONLY); }

    Answer<void> rename(const Path &from, const Path &to) override {
        if (::rename(from.c_str(), to.c_str()) != 0) return failed();
        return {};
    }

    Answer<void> syncFolder(const Path &folder) override {
        auto done = syncAt(folder.empty() ? Path(".") : folder, O_RDONLY | O_DIRECTORY);
        // Some file systems cannot sync a folder, and some folders may be written and not read.
        if (!done && (done.error().value() == EINVAL || done.error().value() == EACCES)) return {};
        return done;
    }

    Answer<void> remove(const Path &file) override {
        if (::unlink(file.c_str()) != 0) return failed();
        return {};
    }

private:
    static bool takePermissions(int handle, const struct stat &from) {
        // The group can only be kept by one of its members; the file's own permissions always can.
        [[maybe_unused]] const int groupKept = ::fchown(handle, uid_t(-1), from.st_gid);
        return ::fchmod(handle, from.st_mode & 07777) == 0;
    }
};

} // namespace

FileSystem &disk() {
    static Disk theDisk;
    return theDisk;
}

} // namespace boltwright
