#include "ui/models/ask_table_model.h"

#include "core/measure/length_text.h"
#include "ui/text/words.h"

#include <QApplication>
#include <QFont>
#include <QPalette>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

AskTableModel::AskTableModel(Unit unit, QObject *parent) : QAbstractTableModel(parent), m_unit(unit) {}

AskCloth AskTableModel::clothOf(Length width, const Kind &kind) {
    if (!kind.repeat) return {width, {}, {}, false};
    if (kind.stripes) return {width, kind.repeat, {}, false};
    // Woven and printed repeats divide the width (TRADE T3.8): the nearest whole number of columns.
    const std::int64_t columns = std::max<std::int64_t>(1, roundedQuotient(width.ticks(), kind.repeat->ticks()));
    return {width, Length::ticks(width.ticks() / columns), kind.repeat, kind.halfDrop};
}

Result<AskTableModel::Kind> AskTableModel::readKind(const QString &text, Unit unit) {
    QString rest = text.trimmed().toLower();
    Kind kind;
    if (rest == tr("plain")) return kind;
    for (const auto &[word, flag] : {std::pair{tr("stripes"), &kind.stripes}, {tr("half-drop"), &kind.halfDrop}}) {
        *flag = rest.contains(word);
        rest.remove(word);
    }
    const auto repeat = readLength(toCore(rest.trimmed()), unit, Spelling::Hand);
    if (!repeat || *repeat <= Length{} || (kind.stripes && kind.halfDrop))
        return fault(toCore(tr("%1 is no cloth: write plain, a repeat such as 13 1/2, 13 1/2 half-drop, or stripes 3")
                                .arg(text.trimmed())));
    kind.repeat = *repeat;
    return kind;
}

std::vector<AskCloth> AskTableModel::cloths() const {
    std::vector<AskCloth> all;
    for (const Kind &kind : m_kinds)
        for (Length width : m_widths) all.push_back(clothOf(width, kind));
    return all;
}

std::vector<std::optional<AskAnswer>> AskTableModel::answers() const {
    std::vector<std::optional<AskAnswer>> all;
    for (const auto &row : m_answers) all.insert(all.end(), row.begin(), row.end());
    return all;
}

void AskTableModel::setCloths(const std::vector<Length> &widths, const std::vector<Kind> &kinds) {
    beginResetModel();
    m_widths = widths;
    m_kinds = kinds;
    m_answers.assign(kinds.size(), std::vector<std::optional<AskAnswer>>(widths.size()));
    endResetModel();
}

void AskTableModel::setEighths(int eighths) {
    m_eighths = eighths;
    for (auto &row : m_answers)
        for (auto &answer : row)
            if (answer && answer->plan.kind == planner::Outcome::Kind::Fits)
                answer->buy = purchaseLength(answer->planned + answer->firstMotif + answer->reserve, m_unit, m_eighths);
    Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

void AskTableModel::setAnswer(int at, AskAnswer answer) {
    if (m_widths.empty() || at < 0 || at >= int(m_widths.size() * m_kinds.size())) return;
    const int row = at / int(m_widths.size()), column = at % int(m_widths.size());
    if (!(answer.cloth == clothOf(m_widths[std::size_t(column)], m_kinds[std::size_t(row)]))) return;
    slot(row, column) = std::move(answer);
    Q_EMIT dataChanged(index(row + 1, column + 1), index(row + 1, column + 1));
}

void AskTableModel::clearAnswers() {
    for (auto &row : m_answers)
        for (auto &answer : row) answer.reset();
    Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

std::optional<AskAnswer> &AskTableModel::slot(int row, int column) {
    return m_answers.at(std::size_t(row)).at(std::size_t(column));
}

const AskAnswer *AskTableModel::answerAt(const QModelIndex &index) const {
    const int row = index.row() - 1, column = index.column() - 1;
    if (row < 0 || column < 0 || row >= int(m_kinds.size()) || column >= int(m_widths.size())) return nullptr;
    const auto &answer = m_answers[std::size_t(row)][std::size_t(column)];
    return answer ? &*answer : nullptr;
}

int AskTableModel::rowCount(const QModelIndex &parent) const { return parent.isValid() ? 0 : int(m_kinds.size()) + 2; }
int AskTableModel::columnCount(const QModelIndex &parent) const {
    return parent.isValid() ? 0 : int(m_widths.size()) + 2;
}

QString AskTableModel::shownHead(const QModelIndex &index, bool forEditing) const {
    if (index.row() == 0 && index.column() == 0) return tr("repeat ↓   width →");
    if (index.row() == 0) {
        if (index.column() > int(m_widths.size())) return forEditing ? QString() : tr("+ width");
        const Length width = m_widths[std::size_t(index.column() - 1)];
        return forEditing ? fromCore(spoken(width, m_unit)) : shownLengthWithUnit(width, m_unit);
    }
    if (index.row() > int(m_kinds.size())) return forEditing ? QString() : tr("+ repeat");
    const Kind &kind = m_kinds[std::size_t(index.row() - 1)];
    if (!kind.repeat) return tr("plain");
    const QString length = forEditing ? fromCore(spoken(*kind.repeat, m_unit)) : shownLength(*kind.repeat, m_unit);
    if (kind.stripes) return tr("stripes") + u' ' + length;
    return kind.halfDrop ? length + u' ' + tr("half-drop") : length;
}

QString AskTableModel::shownAnswer(const QModelIndex &index) const {
    const AskAnswer *answer = answerAt(index);
    if (!answer) return {};
    if (answer->plan.kind == planner::Outcome::Kind::CannotFit) {
        const QString why = shownHindrance(*answer);
        return why.isEmpty() ? tr("cannot be") : tr("cannot be") + u'\n' + why;
    }
    if (answer->plan.kind != planner::Outcome::Kind::Fits) return tr("not found");
    const QString buy = withFractions(fromCore(spokenPurchase(answer->buy, m_unit, m_eighths)));
    const QString otherwise = shownOtherwise(*answer);
    return otherwise.isEmpty() ? buy : buy + u'\n' + otherwise;
}

QString AskTableModel::shownHindrance(const AskAnswer &answer) {
    QStringList wide;
    for (const std::string &id : widerAsOnePiece(answer))
        if (const Panel *panel = answer.job.panel(id))
            wide << tr("%1: wider than the cloth as one piece; join it and ask again")
                        .arg(fromCore(panel->name.empty() ? panel->id : panel->name));
    return wide.join(u'\n');
}

QString AskTableModel::shownOtherwise(const AskAnswer &answer) {
    bool between = false;
    int joins = 0;
    for (const OtherwiseLaid &o : answer.otherwise) {
        between = between || o.betweenMotifs;
        const Panel *panel = answer.job.panel(o.panel);
        joins += o.joins * (panel ? panel->count : 1);
    }
    QStringList said;
    if (between) said << tr("centred between two motifs");
    if (joins > 0) said << shownJoins(joins);
    return said.join(u", "_s);
}

QString AskTableModel::shownJoins(int joins) { return joins == 1 ? tr("one join") : tr("%n joins", nullptr, joins); }

QVariant AskTableModel::data(const QModelIndex &index, int role) const {
    const bool head = isHead(index);
    const bool extra = index.row() > int(m_kinds.size()) || index.column() > int(m_widths.size());
    switch (role) {
    case Qt::DisplayRole:
        return head ? shownHead(index, false) : shownAnswer(index);
    case NoteRole: {
        const AskAnswer *answer = answerAt(index);
        if (!answer) return {};
        if (answer->plan.kind == planner::Outcome::Kind::CannotFit) return shownHindrance(*answer);
        return answer->plan.kind == planner::Outcome::Kind::Fits ? shownOtherwise(*answer) : QString();
    }
    case Qt::EditRole:
        return head ? shownHead(index, true) : shownAnswer(index);
    case Qt::AccessibleTextRole: { // heard with its cloth, for a length alone says nothing
        if (head) return shownHead(index, false);
        const QString answer = shownAnswer(index);
        return tr("%1, %2: %3")
            .arg(shownHead(this->index(0, index.column()), false), shownHead(this->index(index.row(), 0), false),
                 answer.isEmpty() ? tr("not worked out yet") : answer);
    }
    case Qt::TextAlignmentRole:
        return index.column() == 0 ? int(Qt::AlignLeft | Qt::AlignVCenter) : int(Qt::AlignCenter);
    case Qt::FontRole: {
        QFont font = QApplication::font();
        font.setBold(!head || !extra);
        font.setItalic(head && extra);
        return font;
    }
    case Qt::ForegroundRole:
        return head && extra ? QVariant(QApplication::palette().brush(QPalette::PlaceholderText)) : QVariant();
    case Qt::BackgroundRole:
        return head ? QVariant(QApplication::palette().brush(QPalette::AlternateBase)) : QVariant();
    case Qt::ToolTipRole:
        if (index.row() == 0 && index.column() > 0)
            return tr("A width, edge to edge. Type over it; empty it to remove.");
        if (index.column() == 0 && index.row() > 0)
            return tr(
                "plain, a repeat such as 13 1/2, 13 1/2 half-drop, or stripes 3. A repeat up the roll is taken to "
                "be as wide as it is long, or near it, so that it divides the width.");
        return {};
    default:
        return {};
    }
}

Qt::ItemFlags AskTableModel::flags(const QModelIndex &index) const {
    const bool corner = index.row() == 0 && index.column() == 0;
    const Qt::ItemFlags seen = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    return isHead(index) && !corner ? seen | Qt::ItemIsEditable : seen;
}

bool AskTableModel::setData(const QModelIndex &index, const QVariant &value, int role) {
    if (role != Qt::EditRole || !isHead(index)) return false;
    const QString text = value.toString().trimmed();
    if (text == shownHead(index, true)) return false;
    return index.row() == 0 ? setWidth(index.column() - 1, text) : setKind(index.row() - 1, text);
}

bool AskTableModel::setWidth(int column, const QString &text) {
    std::vector<Length> widths = m_widths;
    if (text.isEmpty()) {
        if (column >= int(widths.size())) return false;
        widths.erase(widths.begin() + column);
    } else {
        const auto width = readLength(toCore(text), m_unit, Spelling::Hand);
        if (!width || *width <= Length{}) {
            Q_EMIT refused(tr("%1 is no width: write a length such as 54").arg(text));
            return false;
        }
        if (column < int(widths.size()))
            widths[std::size_t(column)] = *width;
        else
            widths.push_back(*width);
    }
    // What is known of the other columns stays.
    auto answers = m_answers;
    beginResetModel();
    for (auto &row : answers) {
        if (text.isEmpty())
            row.erase(row.begin() + column);
        else if (column < int(row.size()))
            row[std::size_t(column)].reset();
        else
            row.push_back({});
    }
    m_widths = std::move(widths);
    m_answers = std::move(answers);
    endResetModel();
    Q_EMIT asksChanged();
    return true;
}

bool AskTableModel::setKind(int row, const QString &text) {
    const bool there = row < int(m_kinds.size());
    if (text.isEmpty()) {
        if (!there) return false;
        beginResetModel();
        m_kinds.erase(m_kinds.begin() + row);
        m_answers.erase(m_answers.begin() + row);
        endResetModel();
        Q_EMIT asksChanged();
        return true;
    }
    const auto kind = readKind(text, m_unit);
    if (!kind) {
        Q_EMIT refused(fromCore(kind.error().text));
        return false;
    }
    beginResetModel();
    const std::vector<std::optional<AskAnswer>> nothing(m_widths.size());
    if (there) {
        m_kinds[std::size_t(row)] = *kind;
        m_answers[std::size_t(row)] = nothing;
    } else {
        m_kinds.push_back(*kind);
        m_answers.push_back(nothing);
    }
    endResetModel();
    Q_EMIT asksChanged();
    return true;
}

} // namespace boltwright::ui
