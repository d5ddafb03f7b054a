#pragma once

#include <QLabel>
#include <QPainter>

namespace boltwright::ui {

/// One line of words that gives way to what stands beside it: what there is no room for is left out with a sign that
/// it is, and stands in the tooltip.
class ElidedLabel : public QLabel {
public:
    using QLabel::QLabel;
    QSize minimumSizeHint() const override {
        return {fontMetrics().averageCharWidth() * 6, QLabel::minimumSizeHint().height()};
    }

protected:
    void paintEvent(QPaintEvent *) override {
        QPainter painter(this);
        painter.setPen(palette().color(QPalette::WindowText));
        painter.setFont(font());
        painter.drawText(contentsRect(), int(alignment()) | Qt::TextSingleLine,
                         fontMetrics().elidedText(text(), Qt::ElideRight, contentsRect().width()));
    }
    void resizeEvent(QResizeEvent *event) override {
        QLabel::resizeEvent(event);
        setToolTip(fontMetrics().horizontalAdvance(text()) > contentsRect().width() ? text() : QString());
    }
};

} // namespace boltwright::ui
