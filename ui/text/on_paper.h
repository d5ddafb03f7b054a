#pragma once

#include <QCoreApplication>
#include <QString>

namespace boltwright::ui {

/// What a printed page says, in the reader's language.
inline QString onPaper(const char *text) { return QCoreApplication::translate("Paper", text); }

} // namespace boltwright::ui
