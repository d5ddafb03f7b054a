#pragma once

#include <QStringList>
#include <QWidget>

namespace boltwright::ui {

/// What an empty window says: three steps, a sample to look at, files used before.
class StartPage : public QWidget {
    Q_OBJECT
public:
    explicit StartPage(QWidget *parent = nullptr);
    void setRecent(const QStringList &files);

Q_SIGNALS:
    void clothWanted();
    void panelsWanted();
    void measureWanted();
    void openWanted();
    void sampleWanted(const QString &fileName);
    void fileWanted(const QString &fileName);

private:
    QWidget *m_recent;
};

/// Resource names of the samples, and what each is called.
QList<QPair<QString, QString>> samples();

} // namespace boltwright::ui
