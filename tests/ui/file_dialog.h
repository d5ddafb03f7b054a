#pragma once

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

namespace boltwright::ui {

/// Types a file's name into the dialog that asks for one, and accepts it as a hand does. False: it was not taken.
inline bool typeName(QFileDialog &dialog, const QString &name) {
    auto *field = dialog.findChild<QLineEdit *>(QStringLiteral("fileNameEdit"));
    auto *buttons = dialog.findChild<QDialogButtonBox *>();
    if (!field || !buttons) return false;
    QTest::qWait(200);            // the folder has been read
    field->setCompleter(nullptr); // whose list would take what is typed for itself
    field->setFocus();
    field->selectAll();
    QTest::keyClicks(field, name);
    QPushButton *save = buttons->button(QDialogButtonBox::Save);
    if (!save || !save->isEnabled()) return false;
    QTest::mouseClick(save, Qt::LeftButton);
    return !dialog.isVisible();
}

} // namespace boltwright::ui
