#pragma once

#include "core/yardage/ask.h"

#include <QAbstractTableModel>

namespace boltwright::ui {

/// What the job takes, by width and repeat: widths along the top, kinds of cloth down the left, both to be typed over;
/// the last of each is empty and takes one more, and one that is emptied goes. In between stand the answers, which
/// come one by one and are forgotten where their width or repeat changes.
class AskTableModel : public QAbstractTableModel {
    Q_OBJECT
public:
    /// A row: plain cloth, stripes up the roll, or a repeat, straight or half-drop.
    struct Kind {
        std::optional<Length> repeat; ///< none: plain
        bool stripes = false, halfDrop = false;
        bool operator==(const Kind &) const = default;
    };

    explicit AskTableModel(Unit unit, QObject *parent = nullptr);
    static AskCloth clothOf(Length width, const Kind &kind);
    /// "plain", "13 1/2", "13 1/2 half-drop", "stripes 3"; an error says what would be right.
    static Result<Kind> readKind(const QString &text, Unit unit);

    std::vector<AskCloth> cloths() const; ///< row by row
    const std::vector<Length> &widths() const { return m_widths; }
    const std::vector<Kind> &kinds() const { return m_kinds; }
    std::vector<std::optional<AskAnswer>> answers() const; ///< row by row, as `cloths()`
    void setCloths(const std::vector<Length> &widths, const std::vector<Kind> &kinds);
    void setEighths(int eighths);
    void setAnswer(int index, AskAnswer answer); ///< of `cloths()`
    void clearAnswers();
    const AskAnswer *answerAt(const QModelIndex &index) const; ///< null: a head, or not known
    /// Of a field: what is done otherwise than wished, in few words; stands below the length.
    static constexpr int NoteRole = Qt::UserRole + 1;
    /// What is done otherwise than wished in a field, in few words; empty: nothing.
    static QString shownOtherwise(const AskAnswer &answer);
    static QString shownJoins(int joins);
    /// Why a cloth cannot be, in a few words: which part is wider than it and is not joined of itself, having slanted
    /// edges. Empty where it is something else.
    static QString shownHindrance(const AskAnswer &answer);
    bool isHead(const QModelIndex &index) const { return index.row() == 0 || index.column() == 0; }

    int rowCount(const QModelIndex &parent = {}) const override;
    int columnCount(const QModelIndex &parent = {}) const override;
    QVariant data(const QModelIndex &index, int role) const override;
    bool setData(const QModelIndex &index, const QVariant &value, int role) override;
    Qt::ItemFlags flags(const QModelIndex &index) const override;

Q_SIGNALS:
    void refused(const QString &sentence);
    void asksChanged(); ///< a width or repeat was typed

private:
    bool setWidth(int column, const QString &text);
    bool setKind(int row, const QString &text);
    QString shownHead(const QModelIndex &index, bool forEditing) const;
    QString shownAnswer(const QModelIndex &index) const;
    std::optional<AskAnswer> &slot(int row, int column);

    Unit m_unit;
    int m_eighths = 2;
    std::vector<Length> m_widths;
    std::vector<Kind> m_kinds;
    std::vector<std::vector<std::optional<AskAnswer>>> m_answers; ///< by kind, then width
};

} // namespace boltwright::ui
