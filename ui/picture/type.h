#pragma once

#include <QFont>
#include <QString>
#include <QStringList>

/// Type on paper: sizes are what they measure, not what a screen makes of them.
namespace boltwright::ui {

/// The system's own sans serif, `size` drawing units high, rounded down to a whole number so that no words outgrow
/// their room.
QFont paperFont(double size, bool bold);

/// How wide words are and how far they reach above and below the baseline, for type of size 1.
double wordsWidth(const QString &text, bool bold);
double typeAscent(bool bold);
double typeDescent(bool bold);

/// The text broken into lines no wider than `width` (for type of size 1), at spaces; a word that is wider alone is
/// broken inside. At least one line.
QStringList brokenIntoLines(const QString &text, double width, bool bold);
/// The text, or as much of it as fits with an ellipsis behind.
QString shortened(const QString &text, double width, bool bold);

} // namespace boltwright::ui
