#pragma once

#include <tl/expected.hpp>

#include <string>
#include <utility>

namespace boltwright {

/// A sentence for the person at the screen: what is wrong, and what would be right.
struct Fault {
    std::string text;

    /// The same fault with the place where it was met in front: a key, a panel, a file.
    Fault at(const std::string &place) const { return {place + ": " + text}; }
    bool operator==(const Fault &) const = default;
};

/// A value, or the sentence that says why there is none. For what somebody will read;
/// "there is none" without a reason is std::optional.
template <class T>
using Result = tl::expected<T, Fault>;

inline tl::unexpected<Fault> fault(std::string text) { return tl::unexpected<Fault>(Fault{std::move(text)}); }
inline tl::unexpected<Fault> fault(Fault f) { return tl::unexpected<Fault>(std::move(f)); }

} // namespace boltwright
