#include "ui/widgets/length_edit.h"

#include "core/measure/length_text.h"
#include "ui/drawing/colours.h"
#include "ui/text/words.h"

#include <QGuiApplication>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QToolTip>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

Result<Length> typedLength(const QString &text, Unit unit, LengthRange range) {
    auto length = readLength(toCore(text.trimmed()), unit, Spelling::Hand);
    if (!length) return length;
    if (range == LengthRange::AboveZero && *length <= Length{})
        return fault(toCore(QObject::tr("It must be more than nothing.")));
    if (range == LengthRange::ZeroOrMore && *length < Length{})
        return fault(toCore(QObject::tr("It cannot be less than nothing.")));
    return length;
}

QString typedAs(Length length, Unit unit) {
    const std::string text = spoken(length, unit);
    const auto back = readLength(text, unit, Spelling::Hand);
    return fromCore(back && *back == length ? text : writeDecimal(length, unit));
}

LengthEdit::LengthEdit(Unit unit, LengthRange range, QWidget *parent)
    : QLineEdit(parent), m_unit(unit), m_range(range) {
    setAlignment(Qt::AlignRight);
    connect(this, &QLineEdit::returnPressed, this, &LengthEdit::accept);
    connect(this, &QLineEdit::textEdited, this, [this] { refuse({}); });
}

void LengthEdit::setOptional(const QString &meaning) {
    m_optional = true;
    setPlaceholderText(meaning);
}

void LengthEdit::setUnit(Unit unit) {
    m_unit = unit;
    show(m_length);
}

void LengthEdit::setLength(std::optional<Length> length) {
    m_length = length;
    refuse({});
    show(length);
}

void LengthEdit::show(std::optional<Length> length) { setText(length ? typedAs(*length, m_unit) : QString()); }

void LengthEdit::accept() {
    const QString typed = text().trimmed();
    std::optional<Length> length;
    if (!typed.isEmpty() || !m_optional) {
        const auto read = typedLength(typed, m_unit, m_range);
        if (!read) {
            refuse(withFractions(fromCore(read.error().text)));
            QToolTip::showText(mapToGlobal(QPoint(0, height())), m_refusal, this);
            return;
        }
        length = *read;
    }
    refuse({});
    const bool changed = length != m_length;
    m_length = length;
    show(length);
    if (changed) Q_EMIT lengthChanged(length);
}

void LengthEdit::refuse(const QString &reason) {
    m_refusal = reason;
    setAccessibleDescription(reason);
    QPalette p;
    if (!reason.isEmpty()) p.setColor(QPalette::Text, coloursOf(QGuiApplication::palette()).broken);
    setPalette(p);
}

bool LengthEdit::event(QEvent *event) {
    // What is wrong comes before what the field is for.
    if (event->type() != QEvent::ToolTip || m_refusal.isEmpty()) return QLineEdit::event(event);
    QToolTip::showText(static_cast<QHelpEvent *>(event)->globalPos(), m_refusal, this);
    return true;
}

void LengthEdit::keyPressEvent(QKeyEvent *event) {
    if (event->key() != Qt::Key_Up && event->key() != Qt::Key_Down) {
        QLineEdit::keyPressEvent(event);
        return;
    }
    accept();
    if (!m_refusal.isEmpty() || !m_length) return;
    const std::int64_t step = m_unit == Unit::Inch ? ticksIn(Unit::Inch) / 8 : ticksIn(Unit::Millimetre);
    const auto stepped = typedLength(
        fromCore(writeDecimal(Length::ticks(m_length->ticks() + (event->key() == Qt::Key_Up ? step : -step)), m_unit)),
        m_unit, m_range);
    if (!stepped) return;
    m_length = *stepped;
    show(m_length);
    Q_EMIT lengthChanged(m_length);
}

void LengthEdit::focusOutEvent(QFocusEvent *event) {
    accept();
    QLineEdit::focusOutEvent(event);
}

} // namespace boltwright::ui
