#pragma once

#include "core/files/job_file.h"
#include "tests/core/support/jobs.h"
#include "tests/ui/window_fixture.h"
#include "ui/widgets/length_edit.h"
#include "ui/window/notice_bar.h"
#include "ui/window/over_sheet.h"

#include <QAbstractButton>
#include <QApplication>
#include <QComboBox>
#include <QSpinBox>

#include <catch2/catch.hpp>

namespace boltwright::ui {

/// A window with a job open, and fingers on its keys. What a field is called for those who listen finds it here.
class Desk {
public:
    explicit Desk(const Job &job, QSize size = {1400, 900}) : m_window(m_fixture.show(size)) {
        const QString name = m_fixture.folder() + QStringLiteral("/job.boltwright");
        QApplication::setKeyboardInputInterval(10); // letters typed after each other each begin anew
        REQUIRE(saveJob(job, name.toStdString()));
        REQUIRE(m_window.openFile(name));
    }
    ~Desk() { m_fixture.leave(); }

    MainWindow &window() { return m_window; }
    const Job &job() { return m_window.document().job(); }
    /// As the file would have it: what stands there can be read again.
    Job read() {
        const auto again = readJob(writeJob(job()));
        INFO((again ? "" : again.error().text));
        REQUIRE(again.has_value());
        return *again;
    }
    void undo() { m_window.actions()[ActionId::Undo]->trigger(); }
    QString notice() { return m_window.findChild<NoticeBar *>()->sentence(); }

    template <class Page>
    Page *open(ActionId action) {
        m_window.actions()[action]->trigger();
        QTest::qWait(20);
        auto *page = qobject_cast<Page *>(m_window.sheet().content());
        REQUIRE(page);
        return page;
    }
    template <class Field>
    Field *field(const char *called) {
        for (Field *f : m_window.sheet().findChildren<Field *>())
            if (f->accessibleName() == QLatin1String(called)) return f;
        FAIL("no field called " << called);
        return nullptr;
    }
    void press(const QString &button) {
        for (auto *b : m_window.sheet().findChildren<QAbstractButton *>())
            if (b->text().remove(QLatin1Char('&')) == button) {
                QTest::mouseClick(b, Qt::LeftButton);
                return;
            }
        FAIL("no button " << button.toStdString());
    }
    /// By the keyboard: its first letter.
    void choose(const char *called, const QString &choice) {
        auto *box = field<QComboBox>(called);
        REQUIRE(box->isEnabled());
        const int to = box->findText(choice);
        INFO(choice.toStdString());
        REQUIRE(to >= 0);
        box->setFocus();
        QTest::qWait(QApplication::keyboardInputInterval() + 5);
        QTest::keyClick(box, choice[0].toLower().toLatin1());
    }
    void type(const char *called, const QString &text) {
        auto *edit = field<LengthEdit>(called);
        REQUIRE(edit->isEnabled());
        edit->setFocus();
        edit->selectAll();
        if (text.isEmpty()) QTest::keyClick(edit, Qt::Key_Delete);
        QTest::keyClicks(edit, text);
        QTest::keyClick(edit, Qt::Key_Return);
    }

private:
    WindowFixture m_fixture;
    MainWindow &m_window;
};

} // namespace boltwright::ui
