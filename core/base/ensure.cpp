#include "core/base/ensure.h"

#include <cstdio>
#include <cstdlib>

namespace boltwright {

void ensure(bool holds, const char *what, std::source_location where) {
    if (holds) return;
    std::fprintf(stderr, "boltwright: internal fault: %s (%s:%u)\n", what, where.file_name(), unsigned(where.line()));
    std::abort();
}

} // namespace boltwright
