#pragma once

#include <memory>

namespace boltwright {

/// What a part of a job looked like in the file it was read from, unknown keys included. Opaque to all but the job
/// file's reader and writer: carried along by copies of the part, so that what this program does not know is written
/// back in its place. Says nothing about the part, so two parts are equal whatever they keep.
class Kept {
public:
    struct Source; ///< defined by the job file's reader

    Kept() = default;
    explicit Kept(std::shared_ptr<const Source> source) : m_source(std::move(source)) {}
    const Source *source() const { return m_source.get(); } ///< null for a part that was not read from a file

    friend bool operator==(const Kept &, const Kept &) { return true; }

private:
    std::shared_ptr<const Source> m_source;
};

} // namespace boltwright
