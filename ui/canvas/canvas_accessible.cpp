#include "ui/canvas/canvas_accessible.h"

#include "ui/canvas/canvas.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <QHash>

namespace boltwright::ui {

namespace {

class AccessiblePanel : public QAccessibleInterface {
public:
    AccessiblePanel(Canvas &canvas, int cut) : m_canvas(canvas), m_cut(cut) {}

    bool isValid() const override { return m_cut < m_canvas.table().panels().size(); }
    QObject *object() const override { return nullptr; }
    QAccessibleInterface *parent() const override { return QAccessible::queryAccessibleInterface(&m_canvas); }
    QAccessibleInterface *child(int) const override { return nullptr; }
    QAccessibleInterface *childAt(int, int) const override { return nullptr; }
    int childCount() const override { return 0; }
    int indexOfChild(const QAccessibleInterface *) const override { return -1; }
    QAccessible::Role role() const override { return QAccessible::ListItem; }
    void setText(QAccessible::Text, const QString &) override {}

    QString text(QAccessible::Text kind) const override {
        if (!isValid()) return {};
        const QString sentence = m_canvas.describe(m_cut);
        const qsizetype cutAt = sentence.indexOf(u'\n');
        if (kind == QAccessible::Name) return sentence.left(cutAt);
        if (kind == QAccessible::Description) return sentence.mid(cutAt + 1).replace(u'\n', u' ');
        return {};
    }

    QRect rect() const override {
        if (!isValid()) return {};
        const QRect r = m_canvas.cutRect(m_cut).toRect();
        return {m_canvas.viewport()->mapToGlobal(r.topLeft()), r.size()};
    }

    QAccessible::State state() const override {
        QAccessible::State state;
        state.focusable = state.selectable = true;
        state.invalid = !isValid();
        state.selected = isValid() && m_canvas.document().selectedCut() == m_cut;
        state.focused = state.selected && m_canvas.hasFocus();
        return state;
    }

private:
    Canvas &m_canvas;
    int m_cut;
};

class AccessibleCanvas : public QAccessibleWidget {
public:
    explicit AccessibleCanvas(Canvas *canvas) : QAccessibleWidget(canvas, QAccessible::List), m_canvas(*canvas) {}
    ~AccessibleCanvas() override {
        for (QAccessible::Id id : m_ids) QAccessible::deleteAccessibleInterface(id);
    }

    int childCount() const override { return int(m_canvas.table().panels().size()); }
    QAccessibleInterface *child(int index) const override {
        if (index < 0 || index >= childCount()) return nullptr;
        auto id = m_ids.constFind(index);
        if (id == m_ids.constEnd())
            id = m_ids.insert(index, QAccessible::registerAccessibleInterface(new AccessiblePanel(m_canvas, index)));
        return QAccessible::accessibleInterface(*id);
    }
    int indexOfChild(const QAccessibleInterface *child) const override {
        for (auto it = m_ids.constBegin(); it != m_ids.constEnd(); ++it)
            if (QAccessible::accessibleInterface(it.value()) == child) return it.key();
        return -1;
    }
    QAccessibleInterface *focusChild() const override {
        return m_canvas.hasFocus() ? child(m_canvas.document().selectedCut()) : nullptr;
    }

private:
    Canvas &m_canvas;
    mutable QHash<int, QAccessible::Id> m_ids;
};

QAccessibleInterface *make(const QString &, QObject *object) {
    auto *canvas = qobject_cast<Canvas *>(object);
    return canvas ? new AccessibleCanvas(canvas) : nullptr;
}

} // namespace

void installCanvasAccessibility() {
    static bool installed = false; // Qt keeps one list of factories for the program
    if (!installed) QAccessible::installFactory(make);
    installed = true;
}

void announceSelection(Canvas &canvas) {
    const int cut = canvas.document().selectedCut();
    if (!QAccessible::isActive() || cut < 0) return;
    QAccessibleEvent event(&canvas, QAccessible::Focus);
    event.setChild(cut);
    QAccessible::updateAccessibility(&event);
}

} // namespace boltwright::ui
