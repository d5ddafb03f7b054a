#include "ui/settings/preferences.h"

#include <QFileInfo>
#include <QLocale>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

Preferences::Preferences() : m_settings(u"boltwright"_s, u"boltwright"_s) {}
Preferences::Preferences(const QString &fileName) : m_settings(fileName, QSettings::IniFormat) {}

QStringList Preferences::recentFiles() const { return m_settings.value(u"recent"_s).toStringList(); }

void Preferences::rememberFile(const QString &fileName) {
    QStringList files = recentFiles();
    files.removeAll(fileName);
    files.prepend(fileName);
    m_settings.setValue(u"recent"_s, QStringList(files.mid(0, 8)));
}

void Preferences::forgetFile(const QString &fileName) {
    QStringList files = recentFiles();
    files.removeAll(fileName);
    m_settings.setValue(u"recent"_s, files);
}

Preferences::Look Preferences::look() const { return Look(std::clamp(m_settings.value(u"look"_s, 0).toInt(), 0, 2)); }
void Preferences::setLook(Look look) { m_settings.setValue(u"look"_s, int(look)); }
int Preferences::textPercent() const { return std::clamp(m_settings.value(u"text"_s, 100).toInt(), 100, 200); }
void Preferences::setTextPercent(int percent) { m_settings.setValue(u"text"_s, std::clamp(percent, 100, 200)); }
double Preferences::planSeconds() const {
    return std::clamp(m_settings.value(u"planSeconds"_s, 8.0).toDouble(), 0.5, 600.0);
}
QStringList Preferences::giveUpOrder() const { return m_settings.value(u"giveUp/order"_s).toStringList(); }
void Preferences::setGiveUpOrder(const QStringList &words) { m_settings.setValue(u"giveUp/order"_s, words); }
bool Preferences::giveUpFromFewest() const { return m_settings.value(u"giveUp/fewest"_s, false).toBool(); }
void Preferences::setGiveUpFromFewest(bool fewest) { m_settings.setValue(u"giveUp/fewest"_s, fewest); }
QByteArray Preferences::geometry() const { return m_settings.value(u"geometry"_s).toByteArray(); }
void Preferences::setGeometry(const QByteArray &geometry) { m_settings.setValue(u"geometry"_s, geometry); }
QString Preferences::folder() const { return QFileInfo(m_settings.fileName()).absolutePath(); }
bool Preferences::paneShown(const QString &name) const { return m_settings.value(u"pane/"_s + name, true).toBool(); }
void Preferences::setPaneShown(const QString &name, bool shown) { m_settings.setValue(u"pane/"_s + name, shown); }

Paper Preferences::paper() const {
    const Paper usual = QLocale().measurementSystem() == QLocale::ImperialUSSystem ? Paper::Letter : Paper::A4;
    return paperNamed(m_settings.value(u"paper"_s).toString().toStdString()).value_or(usual);
}

void Preferences::setPaper(Paper paper) { m_settings.setValue(u"paper"_s, QString::fromStdString(nameOf(paper))); }

LabelGrid Preferences::labelGrid() const {
    const QStringList kept = m_settings.value(u"labels"_s).toStringList();
    if (kept.size() != 10) return slipsOn(paper() == Paper::Letter ? Paper::Letter : Paper::A4);
    const auto length = [&](int i) { return Length::ticks(kept[i].toLongLong()); };
    const LabelGrid grid{paperNamed(kept[0].toStdString()).value_or(Paper::Letter),
                         kept[1].toInt(),
                         kept[2].toInt(),
                         length(3),
                         length(4),
                         length(5),
                         length(6),
                         length(7),
                         length(8),
                         kept[9] == u"cut"_s};
    return faultOf(grid) ? slipsOn(grid.paper) : grid;
}

void Preferences::setLabelGrid(const LabelGrid &grid) {
    QStringList kept = {QString::fromStdString(nameOf(grid.paper)), QString::number(grid.columns),
                        QString::number(grid.rows)};
    for (Length length : {grid.width, grid.height, grid.fromLeft, grid.fromTop, grid.everyAcross, grid.everyDown})
        kept << QString::number(length.ticks());
    kept << (grid.toCut ? u"cut"_s : u"label"_s);
    m_settings.setValue(u"labels"_s, kept);
}

} // namespace boltwright::ui
