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

/// "motif 2 across, 3 up", "stripe 4 from the left selvage", "stripe 3 from the cut end"; counted from the first whole
/// one, those before it "1 before the first".
std::string seatWords(const MotifSeat &seat);

/// From where motifs are counted on this bolt or remnant: "Stripes are counted from the left selvage; the middle of the
/// first whole one lies 6 3/4 in from the edge." Empty without a pattern.
std::string countedWords(const ChalkSheet &sheet, Unit unit);

/// "all 1 1/2", "1 1/2, top 3/4", "top 3/4, bottom 1/2, left and right 1": allowances by edge, the commonest first.
std::string allowanceWords(const Panel &panel, const std::vector<Length> &allowances, Unit unit);

/// "top allowance 1 1/2 cut to 1", "made of 2 pieces", "off centre": what was given up, without whose it was.
std::string concessionWords(const Job &job, const Layout &layout, const Concession &concession);

/// What the length that is used of a bolt asks of who pays: "buy 3 1/4 yd"; or, where its length is known and nothing
/// is to be bought, "enough, 10 in left over", "just enough", "5 in short of the 2 1/2 yd there". Before everything
/// lies on it nobody knows whether it is enough: "10 in left over" so far.
std::string onHandWords(const Cloth &cloth, Length used, Unit unit, bool everythingLies);

/// "Harbour stripe", "Harbour stripe, remnant A": the cloth's name (its id where it has none).
std::string sheetName(const Job &job, const std::string &cloth, const std::optional<std::string> &on);

/// "2 of 3" for a copy, "2 of 3, piece 1 of 2"; empty for the only copy in one piece.
std::string copyWords(const ChalkRow &row);

/// The job with a name to stand on paper: where its card has no title, the name of its file (`fileStem`, without folder
/// and ending), or else the piece.
Job namedForPaper(Job job, const std::string &fileStem);

} // namespace boltwright
