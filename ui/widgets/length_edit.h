#pragma once

#include "core/base/result.h"
#include "core/measure/length.h"
#include "core/measure/unit.h"

#include <QLineEdit>

#include <optional>

namespace boltwright::ui {

/// What a length may be where it is asked for.
enum class LengthRange { AboveZero, ZeroOrMore, Any };

/// Reads what was typed as a length of that range; the fault says what would be right.
Result<Length> typedLength(const QString &text, Unit unit, LengthRange range);

/// What would be typed for a length, exactly: "36 1/2", or decimals where no fraction of the trade says it. What is
/// shown in a field is this: rounding there would change a measure by looking at it.
QString typedAs(Length length, Unit unit);

/// One widget for a length, in all forms: takes 36 1/2, 92,5 and 3' 2", shows fractions as spoken, steps with the
/// arrow keys, and refuses with a reason, which stands in place of its tooltip and is read out until it is put right.
class LengthEdit : public QLineEdit {
    Q_OBJECT
public:
    LengthEdit(Unit unit, LengthRange range, QWidget *parent = nullptr);
    /// May be left empty, which then means "none".
    void setOptional(const QString &meaning);

    void setUnit(Unit unit);
    void setLength(std::optional<Length> length);
    std::optional<Length> length() const { return m_length; }
    QString refusal() const { return m_refusal; } ///< empty: what stands there is a length

Q_SIGNALS:
    void lengthChanged(std::optional<boltwright::Length> length); ///< by hand, and accepted

protected:
    bool event(QEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void focusOutEvent(QFocusEvent *event) override;

private:
    void accept();
    void show(std::optional<Length> length);
    void refuse(const QString &reason);

    Unit m_unit;
    LengthRange m_range;
    bool m_optional = false;
    std::optional<Length> m_length;
    QString m_refusal;
};

} // namespace boltwright::ui
