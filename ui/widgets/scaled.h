#pragma once

#include <QApplication>
#include <QFontInfo>

#include <algorithm>

namespace boltwright::ui {

/// A width in pixels that was chosen for letters of the usual size, for letters as large as they are now.
inline int scaled(int pixels) { return pixels * std::max(13, QFontInfo(QApplication::font()).pixelSize()) / 13; }

} // namespace boltwright::ui
