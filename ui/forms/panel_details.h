#pragma once

#include "ui/document/job_document.h"

#include <QWidget>

#include <functional>

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLabel;
class QPlainTextEdit;
class QPushButton;
class QSpinBox;

namespace boltwright::ui {

class EdgePicture;
class EdgeTableModel;
class LengthEdit;
class SheetTable;

/// What is rarer about a panel, below the table of panels: its single edges, what may be given up, of how many pieces
/// it may be made, which point of the motif is centred, its corners. Every field is one step of the history.
class PanelDetails : public QWidget {
    Q_OBJECT
public:
    explicit PanelDetails(JobDocument &document, QWidget *parent = nullptr);
    /// The panel that is shown, by its place in the job; -1: none. Also after it has changed.
    void showPanel(int panel);
    SheetTable *edges() { return m_edges; }
    EdgePicture *picture() { return m_picture; }

Q_SIGNALS:
    void refused(const QString &sentence);

private:
    QFormLayout *block(const QString &title);
    void head(QFormLayout &form, const QString &title);
    void buildEdges();
    void buildLeave(QFormLayout &form);
    void buildMotif(QFormLayout &form);
    void buildPieces();
    void buildCorners();
    void show();
    void showCloths(const Panel &panel);
    void change(const QString &text, const std::function<void(Panel &)> &how);
    void takeCorners();

    JobDocument &m_document;
    int m_panel = -1;
    EdgeTableModel *m_edgeModel;
    SheetTable *m_edges = nullptr;
    EdgePicture *m_picture = nullptr;
    QPlainTextEdit *m_corners = nullptr;
    QSpinBox *m_pieces = nullptr;
    LengthEdit *m_seam = nullptr, *m_shortest = nullptr, *m_least = nullptr, *m_motifAcross = nullptr,
               *m_motifUp = nullptr;
    QComboBox *m_joins = nullptr, *m_motif = nullptr, *m_other = nullptr;
    QCheckBox *m_match = nullptr, *m_mayTurn = nullptr, *m_mayUncentre = nullptr;
    bool m_showing = false; ///< fields are being filled, not changed by hand
};

/// Corners as they are typed, one a line: "24; 17 1/2".
QString cornersText(const std::vector<std::pair<Length, Length>> &corners, Unit unit);
Result<std::vector<std::pair<Length, Length>>> readCorners(const QString &text, Unit unit);

} // namespace boltwright::ui
