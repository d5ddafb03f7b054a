#pragma once

#include <QCoreApplication>
#include <QLabel>
#include <QString>

namespace boltwright::ui {

/// What is said of pictures, in the reader's language.
inline QString aboutPictures(const char *text) { return QCoreApplication::translate("Pictures", text); }

/// A paragraph that breaks where its page ends.
inline QLabel *paragraphOf(const QString &text) {
    auto *label = new QLabel(text);
    label->setWordWrap(true);
    return label;
}

} // namespace boltwright::ui
