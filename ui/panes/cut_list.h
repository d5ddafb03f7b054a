#pragma once

#include "ui/models/cut_list_model.h"

#include <QListView>
#include <QWidget>

namespace boltwright::ui {

/// The left pane: the notebook page of what is to cut.
class CutListPane : public QWidget {
    Q_OBJECT
public:
    CutListPane(JobDocument &document, QWidget *parent = nullptr);
    QListView *list() { return m_list; }

Q_SIGNALS:
    void panelTableWanted();
    void layDownWanted(); ///< the selected panel was opened in the list

protected:
    void changeEvent(QEvent *event) override;

private:
    void fitWords();
    JobDocument &m_document;
    CutListModel *m_model;
    QListView *m_list;
};

} // namespace boltwright::ui
