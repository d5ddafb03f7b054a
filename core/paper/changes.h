#pragma once

#include "core/paper/chalk_list.h"

#include <optional>
#include <string>
#include <vector>

namespace boltwright {

/// What became of one piece between two layouts of a job.
struct PieceChange {
    enum class Kind {
        Stays,    ///< lies as it lay (by less than chalk is wide)
        Moved,    ///< lies elsewhere, turned, or with another size
        New,      ///< was not on the cloth before
        CutAgain, ///< had been cut, and has to be cut once more
        Gone,     ///< lies on the cloth no more
    };
    Kind kind = Kind::Stays;
    std::optional<ChalkRow> before, now; ///< none: it was, or is, not on the cloth
    std::string sheetBefore, sheetNow;   ///< names of bolt or remnant; empty with the row
};

/// A flaw that was not known before.
struct NewFlaw {
    std::string sheet;
    Length fromSelvage, fromEnd, across, along; ///< of the box around it
    std::string note;
};

struct LayoutChanges {
    std::vector<PieceChange> changed; ///< in the cutting order of now, then what is gone
    std::vector<PieceChange> stays;   ///< in the cutting order of now; what is already cut first
    std::vector<NewFlaw> flaws;
    bool isEmpty() const { return changed.empty() && flaws.empty(); }
};

/// What a fresh sheet must tell somebody who has the old one on the table. Pieces are the same by panel, copy and
/// piece.
LayoutChanges changesBetween(const Job &jobBefore, const Layout &before, const Job &jobNow, const Layout &now);

/// "moved", "new", "cut again", "taken off", "stays".
std::string changeWords(PieceChange::Kind kind);

} // namespace boltwright
