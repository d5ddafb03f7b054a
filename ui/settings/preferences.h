#pragma once

#include "core/paper/labels.h"

#include <QSettings>
#include <QStringList>

namespace boltwright::ui {

/// What the window remembers between two days, with its defaults. Owns the names under which it is kept.
class Preferences {
public:
    enum class Look { AsSystem, Light, Dark };

    Preferences();
    /// Kept in a file of its own, for tests.
    explicit Preferences(const QString &fileName);

    QStringList recentFiles() const;
    void rememberFile(const QString &fileName);
    void forgetFile(const QString &fileName);
    Look look() const;
    void setLook(Look look);
    int textPercent() const; ///< 100 to 200
    void setTextPercent(int percent);
    double planSeconds() const;
    /// What is given up first when cloth is short, in words of the page that asks; empty: as usual.
    QStringList giveUpOrder() const;
    void setGiveUpOrder(const QStringList &words);
    bool giveUpFromFewest() const;
    void setGiveUpFromFewest(bool fewest);
    QByteArray geometry() const;
    void setGeometry(const QByteArray &geometry);
    QString folder() const; ///< where the shop's own files lie, beside the preferences
    bool paneShown(const QString &name) const;
    void setPaneShown(const QString &name, bool shown);
    Paper paper() const; ///< A4 where the system measures in millimetres, else Letter
    void setPaper(Paper paper);
    LabelGrid labelGrid() const; ///< slips on plain paper until another was used
    void setLabelGrid(const LabelGrid &grid);

private:
    mutable QSettings m_settings;
};

} // namespace boltwright::ui
