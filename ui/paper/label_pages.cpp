#include "ui/paper/label_pages.h"

#include "ui/drawing/colours.h"
#include "ui/paper/page_ink.h"
#include "ui/picture/type.h"
#include "ui/text/on_paper.h"
#include "ui/text/words.h"

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr double mm = unitsPerMillimetre;

/// One line of a label, as large as its share of the height and the width allow.
struct LabelLine {
    QString text;
    double share; ///< of the label's height, for the line with its leading
    bool bold;
    bool quiet;
};

class LabelPages : public Pages {
public:
    LabelPages(const Job &job, const Layout &layout, const LabelGrid &grid, int firstLabel)
        : m_job(job), m_grid(grid), m_labels(pieceLabels(job, layout)), m_boxes(labelBoxes(grid)),
          m_first(std::clamp(firstLabel, 0, std::max(0, int(m_boxes.size()) - 1))), m_colours(lightColours()) {}

    QString title() const override {
        return m_job.card.title.empty() ? onPaper("labels")
                                        : QStringList{fromCore(m_job.card.title), onPaper("labels")}.join(u" · "_s);
    }
    PaperSize paper() const override { return sizeOf(m_grid.paper); }
    int count() const override {
        const int each = int(m_boxes.size());
        return std::max(1, (m_first + int(m_labels.size()) + each - 1) / each);
    }
    bool isEmpty() const { return m_labels.empty(); }

    void paint(Surface &surface, int page) const override {
        PageInk ink;
        const int each = int(m_boxes.size());
        for (int k = 0; k < each; ++k) {
            const int index = page * each + k - m_first;
            if (index < 0 || index >= int(m_labels.size())) continue;
            const QRectF box = onPage(m_boxes[std::size_t(k)]);
            if (m_grid.toCut) ink.box(box, {}, {m_colours.hairline, 0.15, {2, 1.5}});
            label(ink, m_labels[std::size_t(index)], box);
        }
        ink.paint(surface);
    }

private:
    /// The label's room: off its own edges, and inside what printers print.
    QRectF roomIn(const QRectF &box) const {
        const double off = std::min(2.0, box.height() / mm * 0.07) * mm;
        return box.adjusted(off, off, -off, -off).intersected(onPage(printable(sizeOf(m_grid.paper))));
    }

    void label(PageInk &ink, const PieceLabel &label, const QRectF &box) const {
        const QRectF room = roomIn(box);
        const double arrow = std::min(9 * mm, room.height() * 0.34);
        topArrow(ink, QRectF(room.topLeft(), QSizeF(arrow, room.height())));
        const QRectF words(room.topLeft() + QPointF(arrow + 1.5 * mm, 0), room.bottomRight());
        QString copy = fromCore(label.copy);
        if (label.mirrored) copy += (copy.isEmpty() ? QString() : u", "_s) + onPaper("mirror image");
        const QString size = shownSize(label.cutAcross, label.cutUp, m_job.unit);
        QStringList job{fromCore(m_job.card.title), fromCore(m_job.card.client), fromCore(label.cloth)};
        job.removeAll(QString());
        head(ink, label, QRectF(words.topLeft(), QSizeF(words.width(), words.height() * 0.36)));
        QList<LabelLine> lines = {{fromCore(label.name), 0.22, true, false},
                                  {copy.isEmpty() ? size : copy + u" · "_s + size, 0.18, false, false}};
        double y = words.top() + words.height() * 0.40;
        for (const LabelLine &line : lines) {
            const double high = words.height() * line.share;
            fitted(ink, line, QRectF(words.left(), y, words.width(), high));
            y += high;
        }
        // The job in what is left, in two lines where one cannot hold it.
        const double most = words.bottom() - y;
        double type = std::min(2.6, most / mm / 1.25);
        const auto height = [&] { return PageInk::paragraphHeight(job.join(u" · "_s), words.width(), type, false); };
        while (type > 1.2 && height() > most) type *= 0.95;
        ink.paragraph(job.join(u" · "_s), {words.left(), y}, words.width(), type, false, m_colours.quiet, 2);
    }

    /// Mark large at the left, the number in its frame at the right.
    void head(PageInk &ink, const PieceLabel &label, const QRectF &room) const {
        const double size = std::min(9.0, room.height() / mm / 1.1), number = size * 0.7;
        const QString text = QString::number(label.number);
        const double wide = std::max(wordsWidth(text, true) * number + 1.6, number * 1.2) * mm;
        const QRectF frame(room.right() - wide, room.top() + 0.1 * mm, wide, number * 1.25 * mm);
        ink.box(frame, {}, {m_colours.ink, 0.3});
        ink.words(text,
                  {frame.left() + (wide - wordsWidth(text, true) * number * mm) / 2, frame.top() + number * 0.98 * mm},
                  wide, number, true, m_colours.ink);
        const double left = room.width() - wide - 1.5 * mm;
        const QString mark = fromCore(label.mark.empty() ? label.name : label.mark);
        const double fits = std::min(size, left / mm / std::max(0.1, wordsWidth(mark, true)));
        ink.words(mark, room.topLeft() + QPointF(0, size * 0.95 * mm), left, std::max(2.0, fits), true, m_colours.ink);
    }

    void fitted(PageInk &ink, const LabelLine &line, const QRectF &room) const {
        const double most = std::min(line.share * 22, room.height() / mm / 1.25),
                     wide = wordsWidth(line.text, line.bold);
        const double size = std::clamp(room.width() / mm / std::max(0.1, wide) * 0.995, std::min(1.7, most), most);
        ink.words(line.text, {room.left(), room.top() + room.height() * 0.76}, room.width(), size, line.bold,
                  line.quiet ? m_colours.quiet : m_colours.ink);
    }

    /// Pinned so that the arrow points to the piece's top.
    void topArrow(PageInk &ink, const QRectF &room) const {
        const double middle = room.center().x(), wide = room.width() * 0.36,
                     word = std::min(2.6, room.width() / mm * 0.42);
        const double foot = room.bottom() - word * 1.35 * mm, head = room.top() + wide * 1.5;
        ink.shape(QPolygonF({{middle, room.top()},
                             {middle + wide, head},
                             {middle + wide * 0.4, head},
                             {middle + wide * 0.4, foot},
                             {middle - wide * 0.4, foot},
                             {middle - wide * 0.4, head},
                             {middle - wide, head}}),
                  m_colours.ink);
        const QString text = onPaper("top");
        const double size = std::min(word, room.width() / mm / wordsWidth(text, false));
        ink.words(text, {middle - wordsWidth(text, false) * size * mm / 2, room.bottom() - word * 0.28 * mm},
                  room.width(), size, false, m_colours.quiet);
    }

    Job m_job;
    LabelGrid m_grid;
    std::vector<PieceLabel> m_labels;
    std::vector<PaperBox> m_boxes;
    int m_first;
    Colours m_colours;
};

} // namespace

Result<std::shared_ptr<const Pages>> labelPages(const Job &job, const Layout &layout, const LabelGrid &grid,
                                                int firstLabel) {
    if (const auto wrong = faultOf(grid)) return tl::unexpected(*wrong);
    auto pages = std::make_shared<LabelPages>(job, layout, grid, firstLabel);
    if (pages->isEmpty()) return fault("the layout has no cuts to make labels for");
    return pages;
}

} // namespace boltwright::ui
