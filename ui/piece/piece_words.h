#pragma once

#include "core/piece/covered_piece.h"

#include <QStringList>

namespace boltwright::ui {

/// "Seat", or "Seat 2" where there are several.
QString nameOfCopy(const Job &job, const CopyOf &copy);

/// What the join's torn line says: "Front band: stripes miss the seat by 1 ½ in". Empty where the pattern runs on.
QString missWords(const Job &job, const CoveredPiece &piece, const CoveredJoin &join);
/// One sentence for every join where the pattern does not run on.
QStringList missWords(const Job &job, const CoveredPiece &piece);

/// "Out of sight: Deck, Buttons"; empty: everything is shown.
QString outOfSightWords(const Job &job, const CoveredPiece &piece);

/// Panel, size, whether it lies on the cloth, and what its joins miss: for a tooltip, line by line.
QStringList panelWords(const Job &job, const CoveredPiece &piece, const CoveredPanel &panel);

} // namespace boltwright::ui
