#include "ui/picture/layout_card.h"

#include "core/edit/layout_edit.h"
#include "core/rules/cut_shape.h"
#include "ui/drawing/cloth_drawing.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QPainter>
#include <QVBoxLayout>

#include <algorithm>

namespace boltwright::ui {
namespace {

/// The sheets a layout lies on, one beside the other along the roll, in one frame of millimetres.
struct Overview {
    struct Piece {
        SheetPicture picture;
        QPointF move;
    };
    QList<Piece> cloth;
    struct Part {
        QPolygonF outline;
        QString mark;
    };
    QList<Part> parts;
    QRectF all;
};

Overview overviewOf(const Job &job, const Layout &layout) {
    Overview o;
    std::vector<SheetOf> sheets;
    double along = 0;
    for (const Cut &cut : layout.cuts)
        if (job.panel(cut.panel) && std::find(sheets.begin(), sheets.end(), sheetOf(job, cut)) == sheets.end())
            sheets.push_back(sheetOf(job, cut));
    for (const SheetOf &sheet : sheets) {
        const Cloth &cloth = *job.cloth(sheet.cloth);
        Length last;
        QList<Overview::Part> parts;
        for (const Cut &cut : layout.cuts) {
            const Panel *panel = job.panel(cut.panel);
            if (!panel || !(sheetOf(job, cut) == sheet)) continue;
            last = std::max(last, boxOnCloth(job, layout, cut).high.y);
            parts << Overview::Part{onTable(outlineOnCloth(job, layout, cut)), fromCore(panel->mark)};
        }
        const Remnant *remnant = sheet.on ? cloth.remnant(*sheet.on) : nullptr;
        const int number = int(&cloth - job.cloths.data());
        SheetPicture picture;
        if (remnant) {
            picture = pictureOfRemnant(cloth, number, *remnant);
        } else if (cloth.bolt) {
            Cloth used = cloth; // as much as is cut from
            used.bolt->length = last;
            picture = pictureOfBolt(used, number, last);
        }
        const QRectF outline = picture.outline.boundingRect();
        const QPointF move(along - outline.left(), -outline.top());
        o.cloth << Overview::Piece{picture, move};
        o.all |= outline.translated(move);
        for (auto &part : parts) o.parts << Overview::Part{part.outline.translated(move), part.mark};
        along += outline.width() + 60;
    }
    return o;
}

} // namespace

LayoutThumbnail::LayoutThumbnail(QWidget *parent) : QWidget(parent) {
    setMinimumSize(160, 80);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
}

void LayoutThumbnail::show(Job job, Layout layout) {
    m_job = std::move(job);
    m_layout = std::move(layout);
    update();
}

void LayoutThumbnail::paintEvent(QPaintEvent *) {
    const Overview o = overviewOf(m_job, m_layout);
    if (o.all.isEmpty()) return;
    const Colours colours = coloursOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF room = QRectF(rect()).adjusted(2, 2, -2, -2);
    const double scale = std::min(room.width() / o.all.width(), room.height() / o.all.height());
    QTransform toScreen;
    toScreen.translate(room.left(), room.top() + (room.height() - o.all.height() * scale) / 2);
    toScreen.scale(scale, scale);
    toScreen.translate(-o.all.left(), -o.all.top());
    for (const Overview::Piece &c : o.cloth)
        drawSheet(painter, c.picture, QTransform::fromTranslate(c.move.x(), c.move.y()) * toScreen, rect(), true,
                  colours);
    QFont small = font();
    small.setPixelSize(11);
    painter.setFont(small);
    for (const auto &part : o.parts) {
        const QPolygonF outline = toScreen.map(part.outline);
        painter.setPen(QPen(colours.ink, 1));
        QColor paper = colours.paper;
        paper.setAlpha(205);
        painter.setBrush(paper);
        painter.drawPolygon(outline);
        const QRectF box = outline.boundingRect();
        if (painter.fontMetrics().horizontalAdvance(part.mark) + 2 < box.width() &&
            painter.fontMetrics().height() < box.height())
            painter.drawText(box, Qt::AlignCenter, part.mark);
    }
}

LayoutCard::LayoutCard(const QString &headline, const QStringList &words, const Job &job, const Layout &layout,
                       const QString &take, QWidget *parent)
    : QFrame(parent), m_take(new QPushButton(take)) {
    setObjectName(QStringLiteral("layoutCard"));
    setStyleSheet(QStringLiteral("#layoutCard { border: 1px solid palette(mid); }"));
    auto *column = new QVBoxLayout(this);
    auto *title = new QLabel(headline);
    QFont bold = title->font();
    bold.setBold(true);
    title->setFont(bold);
    title->setWordWrap(true);
    column->addWidget(title);
    if (!layout.cuts.empty()) {
        auto *picture = new LayoutThumbnail;
        picture->show(job, layout);
        picture->setAccessibleName(headline);
        column->addWidget(picture);
    }
    for (const QString &line : words) {
        auto *label = new QLabel(line);
        label->setWordWrap(true);
        column->addWidget(label);
    }
    column->addStretch();
    m_take->setVisible(!take.isEmpty() && !layout.cuts.empty());
    column->addWidget(m_take, 0, Qt::AlignLeft);
    connect(m_take, &QPushButton::clicked, this, &LayoutCard::taken);
}

} // namespace boltwright::ui
