#include "ui/widgets/svg_picture.h"

#include <QPainter>

namespace boltwright::ui {

SvgPicture::SvgPicture(QWidget *parent) : QWidget(parent) {}

void SvgPicture::setSvg(const std::string &svg, const QString &words) {
    m_renderer.load(QByteArray::fromStdString(svg));
    setAccessibleName(words);
    update();
}

void SvgPicture::paintEvent(QPaintEvent *) {
    if (!m_renderer.isValid()) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    QSizeF size = m_renderer.viewBoxF().size().scaled(QSizeF(this->size()), Qt::KeepAspectRatio);
    QRectF place(QPointF(), size);
    place.moveCenter(QRectF(rect()).center());
    m_renderer.render(&painter, place);
}

} // namespace boltwright::ui
