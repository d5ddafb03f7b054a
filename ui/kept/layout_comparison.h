#pragma once

#include "core/job/job.h"
#include "ui/drawing/cloth_drawing.h"
#include "ui/kept/layout_words.h"

#include <QPolygonF>
#include <QWidget>

namespace boltwright::ui {

/// Two layouts of a job, one over the other: the panels of the first as paper on the cloth, those of the second that
/// lie elsewhere as dashed outlines over them, each with the line of its last cut. In words: what both come to and how
/// they differ.
class LayoutComparison : public QWidget {
    Q_OBJECT
public:
    /// `first` and `second` are indices into the job's layouts.
    LayoutComparison(const Job &job, int first, int second, QWidget *parent = nullptr);
    /// "16 in longer than “Kept 1”; moved: 9 of 14 panels".
    QString difference() const { return m_difference; }
    QSize sizeHint() const override { return {760, 420}; }
    QSize minimumSizeHint() const override { return {320, 240}; }

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    struct Part {
        QPolygonF outline; ///< table frame
        QString mark;
    };
    struct Sheet {
        SheetPicture cloth;
        QList<Part> first, second;
        double firstEnd = 0, secondEnd = 0; ///< where the last cut is, along the roll; zero: none, or a remnant
    };
    struct Title {
        QString name;
        LayoutWords words;
    };
    double drawTitles(QPainter &painter, double top) const;

    QList<Sheet> m_sheets;
    Title m_first, m_second;
    QString m_difference;
};

} // namespace boltwright::ui
