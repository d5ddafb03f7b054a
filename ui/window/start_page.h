#pragma once

#include <QList>
#include <QStringList>
#include <QWidget>

class QFrame;
class QGridLayout;
class QPushButton;
class QScrollArea;

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

protected:
    void resizeEvent(QResizeEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    void fit();
    QFrame *m_sheet;
    QScrollArea *m_scroll;
    QGridLayout *m_samples = nullptr;
    QList<QPushButton *> m_sampleButtons;
    int m_columns = 0;
    QWidget *m_recent;
};

/// Resource names of the samples, and what each is called.
QList<QPair<QString, QString>> samples();

} // namespace boltwright::ui
