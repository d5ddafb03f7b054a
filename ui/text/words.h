#pragma once

#include "core/measure/length.h"
#include "core/measure/unit.h"

#include <QString>

#include <string>

/// Core's texts and lengths as they stand on the screen. Core writes fractions in plain characters, as files do; the
/// screen has room for better.
namespace boltwright::ui {

QString fromCore(const std::string &text);
std::string toCore(const QString &text);

/// "6 1/2" as "6 ½", "3 5/16" as "3 ⁵⁄₁₆"; everything else stays.
QString withFractions(const QString &text);

QString shownLength(Length length, Unit unit);         ///< "36 ½", without the unit
QString shownLengthWithUnit(Length length, Unit unit); ///< "36 ½ in"
QString shownAlongRoll(Length length, Unit unit);      ///< "4 yd 7 in"
QString shownPurchase(Length length, Unit unit);       ///< "3 ¼ yd": what to buy
/// Width first, as the trade writes it: "51 × 23".
QString shownSize(Length across, Length up, Unit unit);
/// A share as whole percent: "17 %".
QString shownPercent(double share);

} // namespace boltwright::ui
