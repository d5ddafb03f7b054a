#pragma once

#include "core/edit/job_edit.h"
#include "core/edit/markings.h"
#include "core/files/job_file.h"
#include "tests/core/support/jobs.h"
#include "tests/ui/window_fixture.h"
#include "ui/canvas/canvas.h"
#include "ui/document/standing.h"
#include "ui/drawing/table_frame.h"
#include "ui/panes/ledge.h"

#include <catch2/catch.hpp>

namespace boltwright::ui {

/// A window with a job on its table, and a hand with fingers.
class Hand {
public:
    explicit Hand(const Job &job) : m_window(m_fixture.show()) {
        const QString name = m_fixture.folder() + QStringLiteral("/job.boltwright");
        REQUIRE(saveJob(job, name.toStdString()));
        REQUIRE(m_window.openFile(name));
        canvas().setFocus();
    }
    ~Hand() { m_fixture.leave(); }

    MainWindow &window() { return m_window; }
    JobDocument &document() { return m_window.document(); }
    Canvas &canvas() { return m_window.canvas(); }
    const Cut &cut(int i) { return document().layout().cuts.at(std::size_t(i)); }
    ClothPoint cornerOf(int i) { return {cut(i).x, cut(i).y}; }
    QPoint middleOf(int i) { return canvas().cutRect(i).center().toPoint(); }
    /// A place on the cloth, in pixels of the view.
    QPoint at(Length x, Length y) { return canvas().toViewport(0).map(onTable(ClothPoint{x, y})).toPoint(); }
    int steps() { return document().history()->count(); }
    bool broken(int i) { return m_window.standing().isBroken(i); }

    void press(QPoint p, Qt::KeyboardModifiers keys = {}) {
        m_at = p;
        QTest::mousePress(canvas().viewport(), Qt::LeftButton, keys, p);
    }
    void move(QPoint to, Qt::KeyboardModifiers keys = {}) {
        for (int i = 1; i <= 5; ++i) moveMouse(canvas().viewport(), m_at + (to - m_at) * i / 5, keys);
        m_at = to;
    }
    void release(Qt::KeyboardModifiers keys = {}) {
        QTest::mouseRelease(canvas().viewport(), Qt::LeftButton, keys, m_at);
    }
    void drag(QPoint from, QPoint to, Qt::KeyboardModifiers keys = {}) {
        press(from, keys);
        move(to, keys);
        release(keys);
    }
    void click(QPoint p, Qt::KeyboardModifiers keys = {}) {
        press(p, keys);
        release(keys);
    }
    void key(Qt::Key k, Qt::KeyboardModifiers keys = {}) { QTest::keyClick(&canvas(), k, keys); }
    void undo() { m_window.actions()[ActionId::Undo]->trigger(); }
    bool isOn(ActionId id) { return m_window.actions()[id]->isChecked(); }

private:
    WindowFixture m_fixture;
    MainWindow &m_window;
    QPoint m_at;
};

/// Four seats in a row across a plain bolt that may be cut head to foot, 2 in up from the cut end and apart.
inline Job fourSeats() {
    using namespace boltwright::literals;
    using namespace boltwright::test;
    Cloth cloth = bolt(54_in);
    cloth.way = Way::Two;
    Panel seat = rectangle("seat", 10_in, 12_in, 4);
    seat.name = "Seat";
    seat.mark = "ST";
    Job job = jobOf(cloth, {seat}, 0.25_in);
    Layout layout;
    for (int copy = 1; copy <= 4; ++copy)
        layout.cuts.push_back(cutAt("seat", (copy - 1) * 13_in + 1_in, 2_in, Turn::Deg0, copy));
    job.layouts = {layout};
    return job;
}

} // namespace boltwright::ui
