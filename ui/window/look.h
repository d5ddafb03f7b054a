#pragma once

#include "ui/settings/preferences.h"

class QApplication;

namespace boltwright::ui {

/// Gives the whole program its colours, text size and the shape of its controls.
void applyLook(QApplication &application, Preferences::Look look, int textPercent);

} // namespace boltwright::ui
