#include "ui/piece/piece_page.h"

#include "ui/piece/piece_painter.h"
#include "ui/piece/piece_words.h"
#include "ui/text/on_paper.h"
#include "ui/text/words.h"

#include <QBuffer>
#include <QFileInfo>
#include <QFontMetricsF>
#include <QImage>
#include <QPageLayout>
#include <QPageSize>
#include <QPdfWriter>
#include <QRegularExpression>
#include <QSaveFile>
#include <QSvgGenerator>

#include <algorithm>
#include <cmath>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

QFont wordsFont(int type) {
    QFont words;
    words.setPixelSize(std::max(11, type));
    return words;
}

constexpr qsizetype mostMisses = 8; // the picture is what the page is for

QStringList wordsBelow(const Job &job, const CoveredPiece &piece) {
    QStringList below;
    if (!job.card.title.empty()) below << fromCore(job.card.title);
    QStringList misses = missWords(job, piece);
    if (misses.size() > mostMisses) {
        const qsizetype more = misses.size() - (mostMisses - 1);
        misses = misses.mid(0, mostMisses - 1) << onPaper("… and %1 more joins where it does not run on").arg(more);
    }
    return below << misses;
}

QString titleOf(const Job &job) {
    return QStringList{fromCore(!job.card.title.empty() ? job.card.title : job.card.piece), onPaper("covered piece")}
        .filter(QRegularExpression(u"."_s))
        .join(u" · "_s);
}

/// How high a sentence stands in a column of that width: a long one takes two lines and more.
double heightOf(const QString &text, const QFontMetricsF &metrics, double width) {
    return metrics.boundingRect(QRectF(0, 0, width, 1e6), Qt::AlignLeft | Qt::TextWordWrap, text).height();
}

double heightOf(const QStringList &below, const QFontMetricsF &metrics, double width) {
    double height = 0.5 * metrics.height();
    for (const QString &text : below) height += heightOf(text, metrics, width);
    return height;
}

void paintOn(QPainter &painter, const QRectF &page, const Job &job, const CoveredPiece &piece, int type) {
    const QFont words = wordsFont(type);
    const QFontMetricsF metrics(words, painter.device());
    const QStringList below = wordsBelow(job, piece);
    const Colours day = lightColours();
    const QRectF room = page.adjusted(0, 0, 0, -heightOf(below, metrics, page.width()));
    QFont marks = words;
    marks.setBold(true);
    const PieceView view = viewInto(room, piece.box);
    paintCoveredPiece(painter, job, piece, view, {day, marks, {}});
    painter.setFont(words);
    double y = std::min(room.bottom(), view.at(piece.box).bottom()) + 0.5 * metrics.height();
    for (qsizetype i = 0; i < below.size(); ++i) {
        const double height = heightOf(below[i], metrics, page.width());
        painter.setPen(i == 0 && !job.card.title.empty() ? day.ink : day.broken);
        painter.drawText(QRectF(page.left(), y, page.width(), height), Qt::AlignLeft | Qt::TextWordWrap, below[i]);
        y += height;
    }
}

/// How large a page is that holds the piece at this size, with room around it.
struct PageRoom {
    PageRoom(const Job &job, const CoveredPiece &piece, int longestSide) : type(longestSide / 60) {
        const double across = piece.box.width().toMillimetres(), up = piece.box.height().toMillimetres(),
                     scale = longestSide / std::max(across, up), edge = longestSide * 0.04;
        const double words = heightOf(wordsBelow(job, piece), QFontMetricsF(wordsFont(type)), across * scale);
        room = QRectF(edge, edge, across * scale, up * scale + words);
        size = QSize(int(std::ceil(across * scale + 2 * edge)), int(std::ceil(up * scale + 2 * edge + words)));
    }
    int type;
    QRectF room;
    QSize size;
};

tl::unexpected<Fault> refuse(const std::filesystem::path &file, const std::string &why) {
    return fault(Fault{why}.at(file.string()));
}

Result<void> save(const std::filesystem::path &file, const QByteArray &bytes) {
    QSaveFile out(QFileInfo(file).absoluteFilePath());
    if (!out.open(QIODevice::WriteOnly) || out.write(bytes) != bytes.size() || !out.commit())
        return refuse(file, toCore(out.errorString()));
    return {};
}

QByteArray asSvg(const Job &job, const CoveredPiece &piece) {
    const PageRoom page(job, piece, 1200);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setSize(page.size);
    generator.setViewBox(QRect(QPoint(0, 0), page.size));
    generator.setTitle(titleOf(job));
    QPainter painter(&generator);
    painter.fillRect(QRect(QPoint(0, 0), page.size), Qt::white);
    paintOn(painter, page.room, job, piece, page.type);
    painter.end();
    return bytes;
}

QByteArray asPdf(const Job &job, const CoveredPiece &piece) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(300);
    const bool wide = piece.box.width() > piece.box.height();
    writer.setPageLayout(QPageLayout(QPageSize(job.unit == Unit::Inch ? QPageSize::Letter : QPageSize::A4),
                                     wide ? QPageLayout::Landscape : QPageLayout::Portrait, QMarginsF(14, 14, 14, 14),
                                     QPageLayout::Millimeter));
    writer.setTitle(titleOf(job));
    writer.setCreator(u"Boltwright"_s);
    QPainter painter(&writer);
    const QRectF page(QPointF(0, 0), writer.pageLayout().paintRectPixels(300).size());
    paintOn(painter, page, job, piece, 42);
    painter.end();
    return bytes;
}

} // namespace

void paintPiecePage(QPainter &painter, const QRectF &page, const Job &job, const Layout &layout, int type) {
    const CoveredPiece piece = coveredPiece(job, layout);
    if (!piece.panels.empty()) paintOn(painter, page, job, piece, type);
}

Result<void> writeCoveredPiecePng(const Job &job, const Layout &layout, const std::filesystem::path &file,
                                  int longestSide) {
    const CoveredPiece piece = coveredPiece(job, layout);
    if (piece.panels.empty()) return refuse(file, "there are no panels to show yet");
    const PageRoom page(job, piece, longestSide);
    QImage image(page.size, QImage::Format_RGB32);
    if (image.isNull()) return refuse(file, "not enough memory for a picture of that size");
    image.fill(Qt::white);
    QPainter painter(&image);
    paintOn(painter, page.room, job, piece, page.type);
    painter.end();
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return save(file, bytes);
}

Result<void> writeCoveredPiece(const Job &job, const Layout &layout, const std::filesystem::path &file) {
    const QString ending = QFileInfo(file).suffix().toLower();
    if (ending == u"png"_s) return writeCoveredPiecePng(job, layout, file);
    if (ending != u"svg"_s && ending != u"pdf"_s)
        return refuse(file, "no picture is written with that ending; .png, .svg and .pdf are");
    const CoveredPiece piece = coveredPiece(job, layout);
    if (piece.panels.empty()) return refuse(file, "there are no panels to show yet");
    return save(file, ending == u"svg"_s ? asSvg(job, piece) : asPdf(job, piece));
}

} // namespace boltwright::ui
