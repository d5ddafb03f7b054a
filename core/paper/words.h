#pragma once

#include "core/job/job.h"
#include "core/paper/chalk_list.h"

#include <string>

/// What paper says about cloth, in the trade's words. One place, so that sheet, list and picture say the same.
/// Fractions stand as `spoken` writes them; whoever sets them in type makes them pretty.
namespace boltwright {

/// "24 × 17": side to side, then up, as the trade writes it.
std::string spokenSize(Length across, Length up, Unit unit);

/// "top up the roll", "top to the left selvage", "bias: top up the roll, leaning left".
std::string turnWords(Turn turn);

/// "motif 2 across, 3 up", "stripe 4 from the left selvage", "stripe 3 from the cut end".
std::string seatWords(const MotifSeat &seat);

/// "all 1 1/2", "1 1/2, top 3/4", "top 3/4, bottom 1/2, left and right 1": allowances by edge, the commonest first.
std::string allowanceWords(const Panel &panel, const std::vector<Length> &allowances, Unit unit);

/// "top allowance 1 1/2 cut to 1", "made of 2 pieces", "off centre": what was given up, without whose it was.
std::string concessionWords(const Job &job, const Layout &layout, const Concession &concession);

/// "Harbour stripe", "Harbour stripe, remnant A": the cloth's name (its id where it has none).
std::string sheetName(const Job &job, const std::string &cloth, const std::optional<std::string> &on);

/// "2 of 3" for a copy, "2 of 3, piece 1 of 2"; empty for the only copy in one piece.
std::string copyWords(const ChalkRow &row);

} // namespace boltwright
