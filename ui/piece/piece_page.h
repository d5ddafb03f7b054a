#pragma once

#include "core/base/result.h"
#include "core/job/job.h"

#include <QPainter>
#include <QRectF>

#include <filesystem>

namespace boltwright::ui {

/// The covered piece on a page: as large as there is room, with the job's title below and, where the pattern does not
/// run on, the words. By day, whatever the window's colours are. `type`: height of the words, in the page's units.
void paintPiecePage(QPainter &painter, const QRectF &page, const Job &job, const Layout &layout, int type);

/// Writes the covered piece as a picture to show or print: PNG, SVG or PDF (A4 or Letter, as the job's unit suggests),
/// by the file's ending. Errors, naming the file: there are no panels, another ending, or it cannot be written.
Result<void> writeCoveredPiece(const Job &job, const Layout &layout, const std::filesystem::path &file);

/// The same as PNG, `longestSide` pixels along the piece's longer side.
Result<void> writeCoveredPiecePng(const Job &job, const Layout &layout, const std::filesystem::path &file,
                                  int longestSide = 2400);

} // namespace boltwright::ui
