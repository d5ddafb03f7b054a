#pragma once

#include <source_location>

namespace boltwright {

/// Stops the program when `holds` is false: a mistake of ours, never of the user's. Stays on in releases, since
/// a stop costs a restart (the job is kept beside its file) and a wrong cut cannot be undone.
void ensure(bool holds, const char *what, std::source_location where = std::source_location::current());

} // namespace boltwright
