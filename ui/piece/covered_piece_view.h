#pragma once

#include "ui/document/job_document.h"
#include "ui/piece/piece_painter.h"

#include <QLabel>
#include <QTimer>
#include <QWidget>

namespace boltwright::ui {

/// The picture alone: shows the layout shown by the document, also while a panel is in the hand. A click on a panel
/// selects it; the arrow keys go from panel to panel.
class CoveredPiecePicture : public QWidget {
    Q_OBJECT
public:
    explicit CoveredPiecePicture(JobDocument &document, QWidget *parent = nullptr);

    const CoveredPiece &piece() const { return m_piece; }
    PieceView view() const;
    const CoveredPanel *panelAt(QPointF at) const; ///< null: none there
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override { return {264, heightForWidth(264)}; }

Q_SIGNALS:
    void pieceChanged();

protected:
    void paintEvent(QPaintEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void mouseMoveEvent(QMouseEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void showEvent(QShowEvent *event) override;
    bool event(QEvent *event) override;

private:
    void follow(Changes changes);
    void freshen();
    void select(const CoveredPanel &panel);
    std::optional<CopyOf> selected() const;
    const CoveredPanel *nextTo(const CoveredPanel &from, QPointF heading) const;

    JobDocument &m_document;
    CoveredPiece m_piece;
    bool m_outOfDate = true;
    QTimer m_soon; ///< several changes before the next picture are one
};

/// "As it will look": the covered piece beside the cloth, and in words where its pattern does not run on.
class CoveredPieceView : public QWidget {
    Q_OBJECT
public:
    explicit CoveredPieceView(JobDocument &document, QWidget *parent = nullptr);
    CoveredPiecePicture &picture() { return *m_picture; }
    /// The sentences below the picture.
    QStringList sentences() const;
    void savePicture();                     ///< asks where
    void writePicture(const QString &file); ///< PNG, SVG or PDF, by its ending
    void print();                           ///< after a look at the page

Q_SIGNALS:
    void saved(const QString &fileName);
    void failed(const QString &sentence);

protected:
    void changeEvent(QEvent *event) override;

private:
    void refreshWords();

    JobDocument &m_document;
    CoveredPiecePicture *m_picture;
    QLabel *m_misses, *m_quiet;
};

} // namespace boltwright::ui
