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
constexpr char fixedDate[] = "20000101000000";

QPageSize pageSizeOf(Paper paper) {
    return QPageSize(paper == Paper::A4 ? QPageSize::A4 : QPageSize::Letter);
}

/// Overwrites the digits of "/CreationDate (D:yyyyMMddHHmmss+hh'mm')" and their like in place:
/// the length stays, so every offset in the file stays valid.
void fixDate(QByteArray& bytes, const QByteArray& opening) {
    constexpr qsizetype digits = 14;
    for (qsizetype at = bytes.indexOf(opening); at >= 0; at = bytes.indexOf(opening, at + 1)) {
        const qsizetype first = at + opening.size();
        if (first + digits <= bytes.size()) {
            bytes.replace(first, digits, fixedDate);
        }
    }
}

void scaleToMm(QPainter& painter, double dotsPerInch) {
    painter.scale(dotsPerInch / mmPerInch, dotsPerInch / mmPerInch);
}

}  // namespace

QImage toImage(const Drawing& drawing, double pixelsPerMm, const Theme& theme) {
    const auto pixels = [&](double mm) {
        return std::max(1, static_cast<int>(std::ceil(mm * pixelsPerMm - 1e-6)));
    };
    QImage image(pixels(drawing.extent.width), pixels(drawing.extent.height),
                 QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    painter.scale(pixelsPerMm, pixelsPerMm);
    painter.translate(-drawing.extent.x, -drawing.extent.y);
    paint(painter, drawing, theme);
    return image;
}

QByteArray toPng(const Drawing& drawing, double pixelsPerMm, const Theme& theme) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QImage image = toImage(drawing, pixelsPerMm, theme);
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
    fixDate(bytes, QByteArrayLiteral("/CreationDate (D:"));
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
