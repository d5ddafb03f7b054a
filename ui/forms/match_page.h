#pragma once

#include "core/edit/match_edit.h"
#include "ui/document/job_document.h"

#include <QLabel>
#include <QWidget>

#include <functional>

class QComboBox;
class QListView;
class QPushButton;
class QSpinBox;

namespace boltwright::ui {

class LengthEdit;
class MatchListModel;
class MatchPicture;

/// Where the pattern runs on from one panel to the next: every match as a sentence, and below the list the selected
/// one, to be changed. Every field is one step of the history; what can't be is refused in a line.
class MatchPage : public QWidget {
    Q_OBJECT
public:
    explicit MatchPage(JobDocument &document, QWidget *parent = nullptr);
    QListView *list() { return m_list; }
    MatchPicture *picture() { return m_picture; }
    QString refusal() const { return m_refusal->text(); }
    QString doubts() const { return m_doubts->text(); }

private:
    /// The fields of one end.
    struct End {
        QComboBox *panel = nullptr, *edge = nullptr, *where = nullptr;
        LengthEdit *across = nullptr, *up = nullptr;
        QSpinBox *copy = nullptr;
    };

    QWidget *buildEnd(MatchSide side);
    int row() const;
    void add();
    void remove();
    void choose(int row);
    void showMatch();
    void showEnd(MatchSide side);
    void change(const QString &text, const std::function<void(Flow &)> &how);
    void refuse(const QString &sentence);
    End &end(MatchSide side) { return side == MatchSide::From ? m_from : m_to; }

    JobDocument &m_document;
    MatchListModel *m_model;
    QLabel *m_refusal, *m_none, *m_doubts;
    QListView *m_list;
    QPushButton *m_remove = nullptr;
    QWidget *m_fields = nullptr;
    MatchPicture *m_picture = nullptr;
    End m_from, m_to;
    LengthEdit *m_lost = nullptr;
    bool m_showing = false; ///< fields are being filled, not changed by hand
};

} // namespace boltwright::ui
