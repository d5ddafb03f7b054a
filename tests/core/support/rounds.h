#pragma once

namespace boltwright::test {

/// How many of so many cases a long test takes: all, and a fifth where sanitizers watch every access. They look for
/// faults on the ways through the code, and the rare cases, for which the number is meant, are judged without them.
constexpr int rounds(int count) {
#ifdef __SANITIZE_ADDRESS__
    return count / 5;
#else
    return count;
#endif
}

} // namespace boltwright::test
