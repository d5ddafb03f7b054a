#include "core/base/ensure.h"

#include <cstdio>
#include <cstdlib>

namespace boltwright {

void ensure(bool holds, const char *what, const char *file, int line) {
    if (holds) return;
    std::fprintf(stderr, "boltwright: internal fault: %s (%s:%d)\n", what, file, line);
    std::abort();
}

} // namespace boltwright
