#pragma once

namespace boltwright {

/// Stops the program when `holds` is false: a mistake of ours, never of the user's. Stays on in releases, since
/// a stop costs a restart (the job is kept beside its file) and a wrong cut cannot be undone. File and line are the
/// caller's; by builtins, since the clang that inspects the code has no std::source_location for this library.
void ensure(bool holds, const char *what, const char *file = __builtin_FILE(), int line = __builtin_LINE());

} // namespace boltwright
