#pragma once

#include <QSvgRenderer>
#include <QWidget>

#include <string>

namespace boltwright::ui {

/// An SVG drawing as large as its room lets it be, in its own proportions.
class SvgPicture : public QWidget {
    Q_OBJECT
public:
    explicit SvgPicture(QWidget *parent = nullptr);
    /// `words`: what it shows, for those who listen.
    void setSvg(const std::string &svg, const QString &words);

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    QSvgRenderer m_renderer;
};

} // namespace boltwright::ui
