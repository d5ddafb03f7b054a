#pragma once

#include "tests/core/support/jobs.h"

/// Lists of parts as a workroom cuts them, cut sizes, on 54 in cloth with a top.
namespace boltwright::test {

inline Panel seen(std::string id, Length across, Length up, int count = 1) {
    return centred(rectangle(std::move(id), across, up, count), Centre::Both);
}
inline Panel hiddenPart(std::string id, Length across, Length up, int count = 1) {
    Panel p = rectangle(std::move(id), across, up, count);
    p.hidden = true;
    return p;
}
inline Panel pieced(Panel p, int most, Length seam = {}) {
    p.pieces.most = most;
    p.pieces.seam = seam;
    return p;
}

/// TRADE T6.20 (a published worked chair): 274 in on plain 54 in cloth by the source's rows. Its deck, which the source
/// pieces together from off-cuts, is left out.
inline std::vector<Panel> workedChair() {
    using namespace literals;
    return {seen("Inside back", 36_in, 32_in),
            seen("Inside arm", 32_in, 27_in, 2),
            seen("Outside back", 30_in, 30_in),
            seen("Outside arm", 27_in, 18_in, 2),
            seen("Seat edge", 47_in, 18_in),
            seen("Seat cushion", 31_in, 29_in, 2),
            pieced(hiddenPart("Border", 108_in, 8_in), 3),
            seen("Back cushion", 36_in, 24_in, 2)};
}

/// A settee of our own with two loose cushions.
inline std::vector<Panel> settee() {
    using namespace literals;
    return {seen("Inside back", 50_in, 34_in),   seen("Outside back", 50_in, 32_in),
            seen("Inside arm", 30_in, 26_in, 2), seen("Outside arm", 28_in, 22_in, 2),
            seen("Arm front", 8_in, 24_in, 2),   seen("Front band", 50_in, 9_in),
            seen("Cushion", 25_in, 26_in, 4),    pieced(hiddenPart("Boxing", 96_in, 5_in, 2), 3),
            hiddenPart("Deck", 50_in, 26_in)};
}

/// Six slip seats, 23 in square.
inline std::vector<Panel> sixSeats() {
    using namespace literals;
    return {seen("Seat", 23_in, 23_in, 6)};
}

} // namespace boltwright::test
