#include "ui/picture/layout_card.h"

#include "core/edit/layout_edit.h"
#include "core/rules/cut_shape.h"
#include "ui/drawing/colours.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QPainter>
#include <QVBoxLayout>

#include <algorithm>

namespace boltwright::ui {
namespace {

/// The sheets a layout lies on, one beside the other along the roll, in one frame of millimetres.
struct Overview {
    QList<QPolygonF> cloth;
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
        ClothRing ring = roomOf(cloth, sheet.on);
        if (cloth.bolt) ring = ringOf(ClothBox{{}, {cloth.bolt->width, last}});
        QPolygonF outline = onTable(ring);
        const QPointF move(along - outline.boundingRect().left(), -outline.boundingRect().top());
        o.cloth << outline.translated(move);
        for (auto &part : parts) o.parts << Overview::Part{part.outline.translated(move), part.mark};
        along += outline.boundingRect().width() + 60;
    }
    for (const QPolygonF &c : o.cloth) o.all |= c.boundingRect();
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
    const ClothColours cloth = clothColours(0, colours.dark);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF room = QRectF(rect()).adjusted(2, 2, -2, -2);
    const double scale = std::min(room.width() / o.all.width(), room.height() / o.all.height());
    QTransform toScreen;
    toScreen.translate(room.left(), room.top() + (room.height() - o.all.height() * scale) / 2);
    toScreen.scale(scale, scale);
    toScreen.translate(-o.all.left(), -o.all.top());
    painter.setPen(QPen(colours.hairline, 1));
    painter.setBrush(cloth.ground);
    for (const QPolygonF &c : o.cloth) painter.drawPolygon(toScreen.map(c));
    QFont small = font();
    small.setPixelSize(11);
    painter.setFont(small);
    for (const auto &part : o.parts) {
        const QPolygonF outline = toScreen.map(part.outline);
        painter.setPen(QPen(colours.ink, 1));
        painter.setBrush(colours.paper);
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
    setFrameShape(QFrame::StyledPanel);
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
