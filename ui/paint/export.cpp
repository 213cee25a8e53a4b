#include "ui/paint/export.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QDir>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>
#include <QSaveFile>
#include <QSvgGenerator>

#include <cmath>

namespace kerfwright {
namespace {

constexpr double mmPerInch = 25.4;
constexpr int pdfResolution = 1200;
// 100 units to the mm, so that sizes in whole units are fine enough.
constexpr int svgUnitsPerMm = 100;
constexpr int svgResolution = 2540;
// Every run writes the same bytes, so no file says when it was made; what a sheet's date is stands
// in the titles of the project.
constexpr char fixedDate[] = "20000101000000Z";

QPageSize pageSizeOf(Paper paper) {
    return QPageSize(paper == Paper::A4 ? QPageSize::A4 : QPageSize::Letter);
}

/// Puts `fixedDate` in the place of the date of making, and mends the table of offsets: Qt writes
/// the zone in one character or in seven, "Z" or "+02'00'", so that what follows lies elsewhere.
/// The form of table and trailer is that of ISO 32000-1, 7.5.4 and 7.5.5.
void fixDate(QByteArray& bytes) {
    const QByteArray opening = QByteArrayLiteral("/CreationDate (D:");
    const qsizetype found = bytes.indexOf(opening);
    const qsizetype close = found < 0 ? -1 : bytes.indexOf(')', found);
    const QByteArray trailer = QByteArrayLiteral("startxref\n");
    qsizetype start = bytes.lastIndexOf(trailer);
    if (close < 0 || start < close) {
        return;
    }
    const qsizetype first = found + opening.size();
    bytes.replace(first, close - first, fixedDate);
    const qsizetype moved = qsizetype{sizeof fixedDate} - 1 - (close - first);
    if (moved == 0) {
        return;
    }
    start += moved + trailer.size();
    qsizetype end = start;
    while (bytes.at(end) >= '0' && bytes.at(end) <= '9') {
        ++end;
    }
    const qsizetype table = bytes.mid(start, end - start).toLongLong() + moved;
    bytes.replace(start, end - start, QByteArray::number(table));
    // "xref", "0 <count>", then lines of 20 bytes: ten digits of offset, five of generation, "n" or
    // "f" for free.
    constexpr qsizetype lineLength = 20;
    constexpr qsizetype digits = 10;
    constexpr qsizetype kind = 17;
    const qsizetype counts = bytes.indexOf('\n', table) + 1;
    const qsizetype lines = bytes.indexOf('\n', counts) + 1;
    const qsizetype count = bytes.mid(counts, lines - 1 - counts).split(' ').last().toLongLong();
    for (qsizetype at = lines; at < lines + count * lineLength; at += lineLength) {
        const qsizetype offset = bytes.mid(at, digits).toLongLong();
        if (offset > found && bytes.at(at + kind) == 'n') {
            bytes.replace(at, digits,
                          QByteArray::number(offset + moved).rightJustified(digits, '0'));
        }
    }
}

void scaleToMm(QPainter& painter, double dotsPerInch) {
    painter.scale(dotsPerInch / mmPerInch, dotsPerInch / mmPerInch);
}

}  // namespace

namespace {

QImage emptyImage(const Drawing& drawing, double pixelsPerMm) {
    const auto pixels = [&](double mm) {
        return std::max(1, static_cast<int>(std::ceil(mm * pixelsPerMm - 1e-6)));
    };
    QImage image(pixels(drawing.extent.width), pixels(drawing.extent.height),
                 QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    return image;
}

void paintOver(QImage& image, const Drawing& drawing, double pixelsPerMm, const Theme& theme) {
    QPainter painter(&image);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    painter.scale(pixelsPerMm, pixelsPerMm);
    painter.translate(-drawing.extent.x, -drawing.extent.y);
    paint(painter, drawing, theme);
}

bool isPlainWood(const Mark& mark) {
    const auto isPlain = [](const auto& shape) {
        return shape.style.fill == Ink::Wood && shape.style.line == Ink::None;
    };
    const auto* rectangle = std::get_if<Rectangle>(&mark);
    const auto* shape = std::get_if<Shape>(&mark);
    return rectangle != nullptr ? isPlain(*rectangle) : shape != nullptr && isPlain(*shape);
}

}  // namespace

QImage toImage(const Drawing& drawing, double pixelsPerMm, const Theme& theme) {
    QImage image = emptyImage(drawing, pixelsPerMm);
    paintOver(image, drawing, pixelsPerMm, theme);
    return image;
}

QImage toImage(const Drawing& drawing, double pixelsPerMm, const Theme& theme,
               const DrawingFigure& figure) {
    QImage image = emptyImage(drawing, pixelsPerMm);
    Drawing ground = drawing;
    Drawing above = drawing;
    std::erase_if(ground.marks, [](const Mark& mark) { return !isPlainWood(mark); });
    std::erase_if(above.marks, isPlainWood);
    // Plain first: a border's strips are cut off to the pixel, and no seam is to be left there.
    paintOver(image, ground, pixelsPerMm, theme);
    paintFaces(image, figure, pixelsPerMm, {drawing.extent.x, drawing.extent.y});
    paintOver(image, above, pixelsPerMm, theme);
    return image;
}

QByteArray toPng(const Drawing& drawing, double pixelsPerMm, const Theme& theme) {
    return toPng(toImage(drawing, pixelsPerMm, theme), pixelsPerMm);
}

QByteArray toPng(QImage image, double pixelsPerMm) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    const int dotsPerMetre = static_cast<int>(std::lround(pixelsPerMm * 1000));
    image.setDotsPerMeterX(dotsPerMetre);
    image.setDotsPerMeterY(dotsPerMetre);
    image.save(&buffer, "PNG");
    return bytes;
}

QByteArray toSvg(const Drawing& drawing, const QString& title, const Theme& theme) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setResolution(svgResolution);
    generator.setSize(QSize(static_cast<int>(std::lround(drawing.extent.width * svgUnitsPerMm)),
                            static_cast<int>(std::lround(drawing.extent.height * svgUnitsPerMm))));
    generator.setViewBox(QRectF(0, 0, drawing.extent.width, drawing.extent.height));
#if QT_VERSION < QT_VERSION_CHECK(6, 5, 0)
    generator.setTitle(title.toHtmlEscaped());  // written as it is before 6.5
#else
    generator.setTitle(title);
#endif
    generator.setDescription(QString());
    QPainter painter(&generator);
    painter.translate(-drawing.extent.x, -drawing.extent.y);
    paint(painter, drawing, theme);
    painter.end();
    return bytes;
}

QByteArray toPdf(const std::vector<Page>& pages, Paper paper, const QString& title) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(pdfResolution);
    writer.setPageSize(pageSizeOf(paper));
    writer.setPageMargins(QMarginsF());
    writer.setTitle(title);
    writer.setCreator(QStringLiteral("Kerfwright"));
    QPainter painter(&writer);
    scaleToMm(painter, pdfResolution);
    bool first = true;
    for (const Page& page : pages) {
        if (!first) {
            writer.newPage();
        }
        first = false;
        paint(painter, page.drawing, paperTheme());
    }
    painter.end();
    fixDate(bytes);
    return bytes;
}

bool print(QPrinter& printer, const std::vector<Page>& pages, Paper paper) {
    // Without full page the origin would be the corner of the printable area.
    printer.setFullPage(true);
    printer.setPageSize(pageSizeOf(paper));
    printer.setPageOrientation(QPageLayout::Portrait);
    QPainter painter;
    if (!painter.begin(&printer)) {
        return false;
    }
    painter.scale(printer.logicalDpiX() / mmPerInch, printer.logicalDpiY() / mmPerInch);
    bool first = true;
    for (const Page& page : pages) {
        if (!first && !printer.newPage()) {
            return false;
        }
        first = false;
        paint(painter, page.drawing, paperTheme());
    }
    return painter.end();
}

QString writeFileAtomically(const QString& path, const QByteArray& bytes) {
    QSaveFile file(path);
    const auto fault = [&](const QString& reason) {
        return QCoreApplication::translate("Export", "%1 could not be written: %2.")
            .arg(QDir::toNativeSeparators(path), reason);
    };
    if (!file.open(QIODevice::WriteOnly)) {
        return fault(file.errorString());
    }
    if (file.write(bytes) != bytes.size() || !file.commit()) {
        return fault(file.errorString());
    }
    return {};
}

}  // namespace kerfwright
