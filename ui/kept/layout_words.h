#pragma once

#include "core/job/job.h"

#include <QString>

namespace boltwright::ui {

/// The layout's own name, or "Layout 2" by its place among the job's.
QString nameOfLayout(const Job &job, int index);

/// What a layout comes to, in short.
struct LayoutWords {
    QString figure;  ///< "3 yd 8 in", or on remnants "waste 17 %"; empty: nothing lies on the cloth
    QString beside;  ///< "waste 17 %" beside a length
    QString givenUp; ///< "nothing given up", "2 from pieces, 1 off centre"
    QString inFull;  ///< every single thing given up, line by line; empty: nothing
    QString gone;    ///< why it is no longer possible, since pieces are cut elsewhere; empty: it is
    QString wrong;   ///< what does not hold, the first of it: "ST lies over Back, and 2 more"; empty: all rules hold
};
/// Of one of the job's layouts, or of one that is not among them; what is cut in any of the job's is cut.
LayoutWords wordsOf(const Job &job, const Layout &layout);

} // namespace boltwright::ui
