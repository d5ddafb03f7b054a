#pragma once

#include "core/job/job.h"

#include <QString>

namespace boltwright::ui {

/// The layout's own name, or "Layout 2" by its place among the job's.
QString nameOfLayout(const Job &job, int index);

/// What a layout comes to, in short.
struct LayoutWords {
    QString figure;    ///< "3 yd 8 in", or on remnants "waste 17 %"; empty: nothing lies on the cloth
    QString beside;    ///< "waste 17 %" beside a length
    QString givenUp;   ///< "nothing given up", "2 from pieces, 1 off centre"
    QString inFull;    ///< every single thing given up, line by line; empty: nothing
    bool right = true; ///< false: some rule does not hold
};
LayoutWords wordsOf(const Job &job, const Layout &layout);

} // namespace boltwright::ui
