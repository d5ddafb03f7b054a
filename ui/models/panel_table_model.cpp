#include "ui/models/panel_table_model.h"

#include "core/edit/job_edit.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"

#include <QCoreApplication>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

struct ColumnText {
    const char *title, *sentence;
};

constexpr ColumnText columns[PanelTableModel::ColumnCount] = {
    {QT_TRANSLATE_NOOP("PanelTable", "Mark"), QT_TRANSLATE_NOOP("PanelTable", "What is written on the cloth.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Part"), QT_TRANSLATE_NOOP("PanelTable", "What part of the piece it is.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Count"), QT_TRANSLATE_NOOP("PanelTable", "How many of it.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Cloth"), QT_TRANSLATE_NOOP("PanelTable", "The cloth it is cut from.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Shape"),
     QT_TRANSLATE_NOOP("PanelTable", "Rectangle, tapered, or cut to corners.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Across"),
     QT_TRANSLATE_NOOP("PanelTable", "Side to side as measured, of a tapered panel at the bottom.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Top"),
     QT_TRANSLATE_NOOP("PanelTable", "Side to side at the top of a tapered panel.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Up"), QT_TRANSLATE_NOOP("PanelTable", "From bottom to top as measured.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Lean"),
     QT_TRANSLATE_NOOP("PanelTable",
                       "How far the top of a tapered panel leans to the right; with a minus to the left.")},
    {QT_TRANSLATE_NOOP("PanelTable", "+ top"), QT_TRANSLATE_NOOP("PanelTable", "Allowance at the top edge.")},
    {QT_TRANSLATE_NOOP("PanelTable", "+ bottom"), QT_TRANSLATE_NOOP("PanelTable", "Allowance at the bottom edge.")},
    {QT_TRANSLATE_NOOP("PanelTable", "+ left"), QT_TRANSLATE_NOOP("PanelTable", "Allowance at the left edge.")},
    {QT_TRANSLATE_NOOP("PanelTable", "+ right"), QT_TRANSLATE_NOOP("PanelTable", "Allowance at the right edge.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Run"), QT_TRANSLATE_NOOP("PanelTable", "Which way it lies on the roll.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Centred"),
     QT_TRANSLATE_NOOP("PanelTable", "Whether a motif or stripe is centred on it.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Alike"),
     QT_TRANSLATE_NOOP("PanelTable", "Every one of them shows the same part of the repeat.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Mirrored"),
     QT_TRANSLATE_NOOP("PanelTable", "Every second one is the mirror image.")},
    {QT_TRANSLATE_NOOP("PanelTable", "Out of sight"), QT_TRANSLATE_NOOP("PanelTable", "It may cross a flaw.")},
};

QString tableText(const char *text) { return QCoreApplication::translate("PanelTable", text); }

const QList<QPair<QString, QString>> &runs() {
    static const QList<QPair<QString, QString>> list = {
        {QString(), QObject::tr("as the cloth")},  {u"up"_s, QObject::tr("up the roll")},
        {u"down"_s, QObject::tr("down the roll")}, {u"railroad"_s, QObject::tr("railroaded")},
        {u"either"_s, QObject::tr("either")},      {u"bias"_s, QObject::tr("on the bias")}};
    return list;
}
const QList<QPair<QString, QString>> &centres() {
    static const QList<QPair<QString, QString>> list = {{QString(), QObject::tr("no")},
                                                        {u"across"_s, QObject::tr("side to side")},
                                                        {u"up"_s, QObject::tr("up and down")},
                                                        {u"both"_s, QObject::tr("both ways")}};
    return list;
}
const QList<QPair<QString, QString>> &kinds() {
    static const QList<QPair<QString, QString>> list = {{u"rectangle"_s, QObject::tr("rectangle")},
                                                        {u"trapezoid"_s, QObject::tr("tapered")},
                                                        {u"polygon"_s, QObject::tr("corners")}};
    return list;
}

QString textFor(const QList<QPair<QString, QString>> &list, const QString &key) {
    for (const auto &[k, text] : list)
        if (k == key) return text;
    return {};
}

QString runKey(const Panel &p) {
    if (!p.run) return {};
    switch (*p.run) {
    case Run::UpRoll:
        return u"up"_s;
    case Run::DownRoll:
        return u"down"_s;
    case Run::Railroad:
        return u"railroad"_s;
    case Run::Either:
        return u"either"_s;
    case Run::Bias:
        return u"bias"_s;
    }
    return {};
}

QString centreKey(const Panel &p) {
    if (!p.motif) return {};
    return p.motif->centre == Centre::Across ? u"across"_s : p.motif->centre == Centre::Up ? u"up"_s : u"both"_s;
}

QString kindKey(const Panel &p) { return kinds()[qsizetype(p.shape.index())].first; }

/// The same panel in another shape, as near as it can be told.
Shape shapeAs(const Shape &shape, const QString &kind) {
    const PanelBox box = boxOf(measuredOutline(shape));
    if (kind == u"rectangle"_s) return Rectangle{box.width(), box.height()};
    if (kind == u"trapezoid"_s) return Trapezoid{box.width(), box.width(), box.height(), Length{}};
    return PolygonShape{measuredOutline(shape)};
}

bool allAlike(const std::vector<Length> &lengths) {
    return std::all_of(lengths.begin(), lengths.end(), [&](Length l) { return l == lengths.front(); });
}

/// A polygon has one field for what is added at its edges, which says nothing where they differ.
bool differsByEdge(const Panel &panel, int column) {
    return column == PanelTableModel::AllowTop && std::holds_alternative<PolygonShape>(panel.shape) &&
           !allAlike(preferredAllowances(panel));
}

int edgeOfColumn(int column) {
    switch (column) {
    case PanelTableModel::AllowTop:
        return Top;
    case PanelTableModel::AllowBottom:
        return Bottom;
    case PanelTableModel::AllowLeft:
        return Left;
    default:
        return Right;
    }
}

} // namespace

PanelTableModel::PanelTableModel(JobDocument &document, QObject *parent)
    : QAbstractTableModel(parent), m_document(document), m_rows(int(document.job().panels.size())) {
    connect(&document, &JobDocument::changed, this, &PanelTableModel::follow);
}

void PanelTableModel::follow(Changes changes) {
    if (!(changes & (Change::Panels | Change::NewJob | Change::Card | Change::Cloths))) return;
    const int rows = int(m_document.job().panels.size());
    if (rows != m_rows || (changes & Change::NewJob)) {
        beginResetModel();
        m_rows = rows;
        endResetModel();
    } else if (rows > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rows - 1, ColumnCount - 1));
    }
}

int PanelTableModel::rowCount(const QModelIndex &parent) const { return parent.isValid() ? 0 : m_rows; }
int PanelTableModel::columnCount(const QModelIndex &parent) const { return parent.isValid() ? 0 : ColumnCount; }

QVariant PanelTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::DisplayRole) return tableText(columns[section].title);
    if (role == Qt::ToolTipRole) return tableText(columns[section].sentence);
    return {};
}

bool PanelTableModel::isAsked(const Panel &panel, int column) const {
    const bool tapered = std::holds_alternative<Trapezoid>(panel.shape),
               corners = std::holds_alternative<PolygonShape>(panel.shape);
    if (column == TopAcross || column == Lean) return tapered;
    if (column == Across || column == Up) return !corners;
    if (column == AllowBottom || column == AllowLeft || column == AllowRight) return !corners;
    return true;
}

QString PanelTableModel::textOf(const Panel &panel, int column) const {
    const Unit unit = m_document.job().unit;
    const auto *rectangle = std::get_if<Rectangle>(&panel.shape);
    const auto *tapered = std::get_if<Trapezoid>(&panel.shape);
    if (!isAsked(panel, column)) return {};
    switch (column) {
    case Mark:
        return fromCore(panel.mark);
    case Name:
        return fromCore(panel.name);
    case Count:
        return QString::number(panel.count);
    case OfCloth: {
        const Cloth *cloth = panel.cloth ? m_document.job().cloth(*panel.cloth) : &m_document.job().cloths.front();
        return cloth ? fromCore(cloth->name.empty() ? cloth->id : cloth->name) : QString();
    }
    case Kind:
        return textFor(kinds(), kindKey(panel));
    case Across:
        return typedAs(rectangle ? rectangle->across : tapered->bottom, unit);
    case TopAcross:
        return typedAs(tapered->top, unit);
    case Up:
        return typedAs(rectangle ? rectangle->up : tapered->up, unit);
    case Lean:
        return typedAs(tapered->shift, unit);
    case AllowTop:
    case AllowBottom:
    case AllowLeft:
    case AllowRight:
        if (!std::holds_alternative<PolygonShape>(panel.shape))
            return typedAs(panel.allowance(edgeOfColumn(column)), unit);
        return allAlike(preferredAllowances(panel)) ? typedAs(panel.allowance(0), unit) : QString();
    case RunColumn:
        return textFor(runs(), runKey(panel));
    case Motif:
        return textFor(centres(), centreKey(panel));
    default:
        return {};
    }
}

QVariant PanelTableModel::data(const QModelIndex &index, int role) const {
    if (!index.isValid() || index.row() >= int(m_document.job().panels.size())) return {};
    const Panel &panel = panelAt(index.row());
    const int column = index.column();
    const bool isYesNo = column == Alike || column == Mirror || column == Hidden;
    if (role == Qt::CheckStateRole && isYesNo) {
        const bool yes = column == Alike ? panel.alike : column == Mirror ? panel.mirror : panel.hidden;
        return yes ? Qt::Checked : Qt::Unchecked;
    }
    if (role == Qt::DisplayRole && differsByEdge(panel, column)) return tr("by edge");
    if (role == Qt::DisplayRole) return withFractions(textOf(panel, column));
    if (role == Qt::AccessibleTextRole) { // heard with what it is, for a figure alone says nothing
        const bool yes = isYesNo && data(index, Qt::CheckStateRole) == Qt::Checked;
        const QString said = isYesNo                        ? (yes ? tr("yes") : tr("no"))
                             : differsByEdge(panel, column) ? tr("by edge")
                                                            : withFractions(textOf(panel, column));
        return tr("%1: %2").arg(tableText(columns[column].title).simplified(), said.isEmpty() ? tr("nothing") : said);
    }
    if (role == Qt::EditRole) {
        if (column == RunColumn) return runKey(panel);
        if (column == Motif) return centreKey(panel);
        if (column == Kind) return kindKey(panel);
        if (column == OfCloth) return fromCore(panel.cloth.value_or(m_document.job().cloths.front().id));
        return textOf(panel, column);
    }
    if (role == Qt::TextAlignmentRole)
        return int((column >= Across && column <= AllowRight) || column == Count ? Qt::AlignRight | Qt::AlignVCenter
                                                                                 : Qt::AlignLeft | Qt::AlignVCenter);
    if (role == Qt::ToolTipRole) return tableText(columns[column].sentence);
    if (role == ChoicesRole || role == KeysRole) {
        QStringList texts, keys;
        const auto take = [&](const QList<QPair<QString, QString>> &list) {
            for (const auto &[key, text] : list) {
                keys << key;
                texts << text;
            }
        };
        if (column == RunColumn) take(runs());
        if (column == Motif) take(centres());
        if (column == Kind) take(kinds());
        if (column == OfCloth)
            for (const Cloth &cloth : m_document.job().cloths) {
                keys << fromCore(cloth.id);
                texts << fromCore(cloth.name.empty() ? cloth.id : cloth.name);
            }
        return role == ChoicesRole ? texts : keys;
    }
    return {};
}

Qt::ItemFlags PanelTableModel::flags(const QModelIndex &index) const {
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    if (!index.isValid() || index.row() >= m_rows) return flags;
    const int column = index.column();
    if (column == Alike || column == Mirror || column == Hidden) return flags | Qt::ItemIsUserCheckable;
    return isAsked(panelAt(index.row()), column) ? flags | Qt::ItemIsEditable : flags;
}

Result<Panel> PanelTableModel::changedPanel(Panel panel, int column, const QString &value) const {
    const Unit unit = m_document.job().unit;
    const auto measure = [&](Length &length, LengthRange range) -> Result<void> {
        const auto read = typedLength(value, unit, range);
        if (!read) return tl::unexpected<Fault>(read.error());
        length = *read;
        return {};
    };
    Result<void> done;
    auto *rectangle = std::get_if<Rectangle>(&panel.shape);
    auto *tapered = std::get_if<Trapezoid>(&panel.shape);
    switch (column) {
    case Mark:
        if (value.trimmed().isEmpty()) return fault(toCore(tr("A panel needs a mark.")));
        panel.mark = toCore(value.trimmed());
        break;
    case Name:
        panel.name = toCore(value.trimmed());
        break;
    case Count: {
        bool isNumber = false;
        const int count = value.toInt(&isNumber);
        if (!isNumber || count < 1 || count > 999) return fault(toCore(tr("How many: a whole number from 1 to 999.")));
        panel.count = count;
        break;
    }
    case OfCloth:
        if (value == fromCore(m_document.job().cloths.front().id))
            panel.cloth.reset();
        else
            panel.cloth = toCore(value);
        break;
    case Kind: {
        Shape shape = shapeAs(panel.shape, value);
        panel = withShape(std::move(panel), std::move(shape));
        break;
    }
    case Across:
        done = measure(rectangle ? rectangle->across : tapered->bottom, LengthRange::AboveZero);
        break;
    case TopAcross:
        done = measure(tapered->top, LengthRange::AboveZero);
        break;
    case Up:
        done = measure(rectangle ? rectangle->up : tapered->up, LengthRange::AboveZero);
        break;
    case Lean:
        done = measure(tapered->shift, LengthRange::Any);
        break;
    case AllowTop:
    case AllowBottom:
    case AllowLeft:
    case AllowRight: {
        Length allowance;
        done = measure(allowance, LengthRange::ZeroOrMore);
        if (!done) break;
        if (std::holds_alternative<PolygonShape>(panel.shape))
            for (int edge = 0; edge < int(edgeCount(panel.shape)); ++edge)
                panel = withAllowanceAt(std::move(panel), edge, allowance);
        else
            panel = withAllowanceAt(std::move(panel), edgeOfColumn(column), allowance);
        break;
    }
    case RunColumn:
        panel.run = value == u"up"_s         ? std::optional(Run::UpRoll)
                    : value == u"down"_s     ? std::optional(Run::DownRoll)
                    : value == u"railroad"_s ? std::optional(Run::Railroad)
                    : value == u"either"_s   ? std::optional(Run::Either)
                    : value == u"bias"_s     ? std::optional(Run::Bias)
                                             : std::nullopt;
        break;
    case Motif:
        if (value.isEmpty()) {
            panel.motif.reset();
        } else {
            if (!panel.motif) panel.motif = MotifWish{};
            panel.motif->centre = value == u"across"_s ? Centre::Across : value == u"up"_s ? Centre::Up : Centre::Both;
        }
        break;
    default:
        break;
    }
    if (!done) return tl::unexpected<Fault>(done.error());
    return panel;
}

bool PanelTableModel::setData(const QModelIndex &index, const QVariant &value, int role) {
    if (!index.isValid() || index.row() >= m_rows) return false;
    Job job = m_document.job();
    Panel &panel = job.panels[std::size_t(index.row())];
    if (role == Qt::CheckStateRole) {
        const bool yes = value.toInt() == Qt::Checked;
        if (index.column() == Alike) panel.alike = yes;
        if (index.column() == Mirror) panel.mirror = yes;
        if (index.column() == Hidden) panel.hidden = yes;
    } else if (value.toString() == data(index, Qt::EditRole).toString()) {
        return true; // gone through, and not typed over
    } else {
        auto changed = changedPanel(panel, index.column(), value.toString());
        if (!changed) {
            Q_EMIT refused(withFractions(fromCore(changed.error().text)));
            return false;
        }
        panel = std::move(*changed);
    }
    const auto done = m_document.changeJob(std::move(job), tr("Change %1").arg(fromCore(panelAt(index.row()).mark)));
    if (!done) Q_EMIT refused(withFractions(fromCore(done.error().text)));
    return done.has_value();
}

} // namespace boltwright::ui
