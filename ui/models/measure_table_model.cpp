#include "ui/models/measure_table_model.h"

#include "ui/drawing/colours.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"

#include <QFont>
#include <QGuiApplication>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

MeasureTableModel::MeasureTableModel(QObject *parent) : QAbstractTableModel(parent) {}

void MeasureTableModel::begin(PieceForm form, Unit unit) {
    m_form = std::move(form);
    m_unit = unit;
    m_measures = typicalMeasures(m_form, unit);
    m_taken.clear();
    m_doubts.clear();
    rebuild();
}

void MeasureTableModel::changeForm(PieceForm form) {
    FormMeasures measures = typicalMeasures(form, m_unit);
    for (auto &[id, measured] : measures)
        if (const auto old = m_measures.find(id); old != m_measures.end()) {
            Sizes usual = measured.sizes;
            measured = old->second;
            for (Measure m : allMeasures)
                if (measured.sizes[m] == Length{}) measured.sizes[m] = usual[m];
        }
    m_form = std::move(form);
    m_measures = std::move(measures);
    rebuild();
}

void MeasureTableModel::setMeasured(const std::string &part, PartMeasured measured) {
    m_measures[part] = measured;
    rebuild();
}

void MeasureTableModel::setDoubts(const std::vector<Doubt> &doubts) {
    if (doubts == m_doubts) return;
    m_doubts = doubts;
    if (rowCount() > 0) Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
}

std::vector<MeasureTableModel::Row> MeasureTableModel::rowsNow() const {
    std::vector<Row> rows;
    for (std::size_t i = 0; i < m_form.parts.size(); ++i) {
        rows.push_back({i, false});
        const auto measured = m_measures.find(m_form.parts[i].id);
        if (measured != m_measures.end() && measured->second.twin) rows.push_back({i, true});
    }
    return rows;
}

void MeasureTableModel::rebuild() {
    const auto rows = rowsNow();
    if (rows == m_rows) {
        if (rowCount() > 0) Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
    } else {
        beginResetModel();
        m_rows = rows;
        endResetModel();
    }
    Q_EMIT measured();
}

int MeasureTableModel::notMeasured() const {
    int count = 0;
    for (const Row &row : m_rows)
        if (measuredOf(row).there)
            for (const PartMeasure &p : part(row).measures)
                if (!m_taken.contains({part(row).id, row.twin, p.measure})) ++count;
    return count;
}

const FormPart *MeasureTableModel::partOf(int row) const {
    return row >= 0 && row < int(m_rows.size()) ? &part(m_rows[std::size_t(row)]) : nullptr;
}

bool MeasureTableModel::isTwin(int row) const {
    return row >= 0 && row < int(m_rows.size()) && m_rows[std::size_t(row)].twin;
}

int MeasureTableModel::rowOf(const std::string &id) const {
    for (int row = 0; row < int(m_rows.size()); ++row)
        if (partOf(row)->id == id) return row;
    return -1;
}

std::optional<Measure> MeasureTableModel::measureOf(const QModelIndex &index) const {
    const FormPart *p = index.isValid() ? partOf(index.row()) : nullptr;
    const int number = index.column() - First;
    if (!p || number < 0 || number > 2 || number >= int(p->measures.size())) return std::nullopt;
    return p->measures[std::size_t(number)].measure;
}

int MeasureTableModel::rowCount(const QModelIndex &parent) const { return parent.isValid() ? 0 : int(m_rows.size()); }
int MeasureTableModel::columnCount(const QModelIndex &parent) const { return parent.isValid() ? 0 : ColumnCount; }

QVariant MeasureTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    const QStringList titles = {tr("Part"),
                                tr("There"),
                                tr("Count"),
                                tr("1  up and down,\nor front to back"),
                                tr("2  side to side"),
                                tr("3  top, thickness\nor one side"),
                                tr("Motif")};
    const QStringList sentences = {tr("Its mark and name; press F2 to change them."),
                                   tr("Whether this piece has it. Space changes it."),
                                   tr("How many are cut."),
                                   tr("The first measure, as the picture shows it."),
                                   tr("The second measure, as the picture shows it."),
                                   tr("The third measure, where a part has one."),
                                   tr("Whether a motif is set on it. Space changes it.")};
    if (role == Qt::DisplayRole) return titles.value(section);
    if (role == Qt::ToolTipRole) return sentences.value(section);
    return {};
}

Length MeasureTableModel::lengthAt(const Row &row, Measure measure) const {
    const PartMeasured &m = measuredOf(row);
    return row.twin ? m.twin.value_or(Sizes{})[measure] : m.sizes[measure];
}

QVariant MeasureTableModel::data(const QModelIndex &index, int role) const {
    if (!index.isValid() || index.row() >= int(m_rows.size())) return {};
    const Row &row = m_rows[std::size_t(index.row())];
    const FormPart &p = part(row);
    const PartMeasured &m = measuredOf(row);
    const auto measure = measureOf(index);
    const int column = index.column();
    if (role == Qt::CheckStateRole) {
        if (column == There && !row.twin) return m.there ? Qt::Checked : Qt::Unchecked;
        if (column == Motif && p.motif && m.there)
            return (row.twin ? m.twinMotif : m.motif) ? Qt::Checked : Qt::Unchecked;
        return {};
    }
    const auto doubt = [&]() -> const Doubt * {
        if (row.twin) return nullptr;
        for (const Doubt &d : m_doubts)
            if (d.part == p.id && (measure ? d.measure == measure : column == Part && !d.measure)) return &d;
        return nullptr;
    };
    if (role == Qt::DisplayRole || role == Qt::EditRole) {
        if (column == Part)
            return role == Qt::EditRole ? fromCore(p.name)
                   : row.twin           ? tr("%1  %2, the right one").arg(fromCore(p.mark), fromCore(p.name))
                   : m.twin             ? tr("%1  %2, the left one").arg(fromCore(p.mark), fromCore(p.name))
                                        : u"%1  %2"_s.arg(fromCore(p.mark), fromCore(p.name));
        if (column == Count) return m.there && !row.twin ? QString::number(m.twin ? 1 : m.count) : QString();
        if (!measure || !m.there) return {};
        const Length length = lengthAt(row, *measure);
        const QString text = length == Length{} ? QString() : typedAs(length, m_unit);
        if (role == Qt::EditRole) return text;
        return withFractions(text) + (doubt() ? u"  ?"_s : QString());
    }
    if (role == Qt::AccessibleTextRole) { // heard with what it is, for a figure alone says nothing
        const QVariant tick = data(index, Qt::CheckStateRole);
        const QString said =
            tick.isValid() ? (tick == Qt::Checked ? tr("yes") : tr("no")) : data(index, Qt::DisplayRole).toString();
        const QString head = measure ? fromCore(p.measure(*measure)->words)
                                     : headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().simplified();
        return tr("%1: %2").arg(head, said.isEmpty() ? tr("nothing") : said);
    }
    if (role == Qt::TextAlignmentRole)
        return int(column >= Count && column <= Third ? Qt::AlignRight | Qt::AlignVCenter
                                                      : Qt::AlignLeft | Qt::AlignVCenter);
    const Colours colours = coloursOf(QGuiApplication::palette());
    if (role == Qt::ForegroundRole) {
        if (!m.there) return colours.quiet;
        if (doubt()) return colours.broken;
        if (measure && !m_taken.contains({p.id, row.twin, *measure})) return colours.quiet;
        return {};
    }
    if (role == Qt::FontRole && measure && !m_taken.contains({p.id, row.twin, *measure})) {
        QFont font = QGuiApplication::font();
        font.setItalic(true);
        return font;
    }
    if (role == Qt::ToolTipRole) {
        QStringList lines;
        if (measure) lines << fromCore(p.measure(*measure)->words);
        if (measure && !m_taken.contains({p.id, row.twin, *measure}))
            lines << tr("Not measured yet: this is what is usual.");
        if (const Doubt *d = doubt()) lines << withFractions(fromCore(d->text));
        return lines.join(u'\n');
    }
    return {};
}

Qt::ItemFlags MeasureTableModel::flags(const QModelIndex &index) const {
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    if (!index.isValid() || index.row() >= int(m_rows.size())) return flags;
    const Row &row = m_rows[std::size_t(index.row())];
    const PartMeasured &m = measuredOf(row);
    switch (index.column()) {
    case There:
        return row.twin ? flags : flags | Qt::ItemIsUserCheckable;
    case Motif:
        return part(row).motif && m.there ? flags | Qt::ItemIsUserCheckable : flags;
    case Count:
        return m.there && !row.twin && !m.twin ? flags | Qt::ItemIsEditable : flags;
    case First:
    case Second:
    case Third:
        return m.there && measureOf(index) ? flags | Qt::ItemIsEditable : flags;
    default:
        return flags;
    }
}

bool MeasureTableModel::refuse(const QString &sentence) {
    Q_EMIT refused(sentence);
    return false;
}

bool MeasureTableModel::setData(const QModelIndex &index, const QVariant &value, int role) {
    if (!index.isValid() || index.row() >= int(m_rows.size())) return false;
    const Row row = m_rows[std::size_t(index.row())];
    PartMeasured &m = measuredOf(row);
    const QString text = value.toString().trimmed();
    if (role == Qt::CheckStateRole) {
        const bool yes = value.toInt() == Qt::Checked;
        if (index.column() == There) m.there = yes;
        if (index.column() == Motif) (row.twin ? m.twinMotif : m.motif) = yes;
        Q_EMIT dataChanged(this->index(index.row(), 0), this->index(index.row(), ColumnCount - 1));
        Q_EMIT measured();
        return true;
    }
    // Words for a tick, as a spreadsheet has them.
    if (index.column() == There || index.column() == Motif)
        return setData(index, text.isEmpty() || text == u"no"_s ? Qt::Unchecked : Qt::Checked, Qt::CheckStateRole);
    if (!(flags(index) & Qt::ItemIsEditable)) return false;
    const auto measure = measureOf(index);
    if (index.column() == Count) {
        bool isNumber = false;
        const int count = text.toInt(&isNumber);
        if (!isNumber || count < 1 || count > 99) return refuse(tr("How many: a whole number from 1 to 99."));
        m.count = count;
    } else if (measure) {
        Length length;
        if (!text.isEmpty()) {
            const auto read = typedLength(text, m_unit, LengthRange::AboveZero);
            if (!read)
                return refuse(u"%1, %2: %3"_s.arg(fromCore(part(row).name),
                                                  fromCore(part(row).measure(*measure)->words),
                                                  withFractions(fromCore(read.error().text))));
            length = *read;
        }
        if (row.twin) {
            if (m.twin) (*m.twin)[*measure] = length;
        } else {
            m.sizes[*measure] = length;
        }
        m_taken.insert({part(row).id, row.twin, *measure});
    }
    Q_EMIT dataChanged(index, index);
    Q_EMIT measured();
    return true;
}

} // namespace boltwright::ui
