#pragma once

#include "core/base/result.h"
#include "core/cloth/cloth.h"
#include "core/measure/unit.h"

#include <QString>

#include <functional>

class QFormLayout;
class QWidget;

namespace boltwright::ui {

/// How the rows change their cloth: the step's name, and what becomes of the look. Not merged with other steps.
using ChangeLook = std::function<void(const QString &step, const std::function<void(ClothLook &)> &how)>;

/// Rows of the cloth's form that say what it looks like: its colours, and what is drawn on its repeat.
void addLookRows(QFormLayout *form, const Cloth &cloth, int clothIndex, Unit unit, const ChangeLook &change,
                 const std::function<void()> &swatchWanted);

/// Bands as they are typed, one a line: "-1/2, 1, #334455" (where its edge is from the motif's middle, how wide,
/// colour). Errors name the line.
Result<std::vector<Band>> readBands(const QString &text, Unit unit);
QString bandsText(const std::vector<Band> &bands, Unit unit);

} // namespace boltwright::ui
