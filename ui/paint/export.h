// A drawing or pages as files and on the printer. Everything is made in memory first; only
// `writeFileAtomically` touches the disk. Same input, same bytes.
#pragma once

#include "core/sheets/sheets.h"
#include "ui/paint/figure.h"
#include "ui/paint/painter.h"

#include <QByteArray>
#include <QImage>
#include <QString>

#include <vector>

QT_BEGIN_NAMESPACE
class QPrinter;
QT_END_NAMESPACE

namespace kerfwright {

/// Transparent where the drawing paints nothing.
QImage toImage(const Drawing& drawing, double pixelsPerMm, const Theme& theme);
/// With figure in the place of the woods' plain fills: what has a line round it, like an inlay, and
/// what is too small to show figure stays plain.
QImage toImage(const Drawing& drawing, double pixelsPerMm, const Theme& theme,
               const DrawingFigure& figure);
/// Marked with its resolution, so that it is opened and printed at true size.
QByteArray toPng(QImage image, double pixelsPerMm);
QByteArray toPng(const Drawing& drawing, double pixelsPerMm, const Theme& theme);
/// 1 user unit is 1 mm; width and height are in mm. Text stays text.
QByteArray toSvg(const Drawing& drawing, const QString& title, const Theme& theme);
/// One PDF of all pages at true size. The creation date in it is fixed.
QByteArray toPdf(const std::vector<Page>& pages, Paper paper, const QString& title);
/// At true size, each page from the corner of the paper. False where the printer gave up.
bool print(QPrinter& printer, const std::vector<Page>& pages, Paper paper);

/// Empty where it went well, else what went wrong, in words with the path.
QString writeFileAtomically(const QString& path, const QByteArray& bytes);

}  // namespace kerfwright
