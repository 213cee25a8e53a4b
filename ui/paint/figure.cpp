#include "ui/paint/figure.h"

#include <QBrush>
#include <QImage>
#include <QPainter>

#include <algorithm>
#include <cmath>
#include <vector>

namespace kerfwright {
namespace {

std::uint32_t opaque(Colour colour) {
    return qRgb(colour.red, colour.green, colour.blue);
}

}  // namespace

FigureTable figureTable(const Wood& wood, Finish finish, double contrast) {
    const Tints tints = tintsOf(wood, finish, contrast);
    FigureTable table{};
    std::transform(tints.begin(), tints.end(), table.begin(), opaque);
    return table;
}

QColor flatColour(const Wood& wood, Finish finish) {
    return QColor::fromRgb(opaque(finished(wood.colour, finish)));
}

QImage figureImage(const Wood& wood, const FigureFill& fill, QSize size, double step) {
    QImage image(size, QImage::Format_RGB32);
    if (size.isEmpty()) {
        return image;
    }
    constexpr double thickness = 40;
    const double width = (fill.grain == FaceGrain::Across ? size.height() : size.width()) * step;
    const double high = fill.grain == FaceGrain::End ? size.height() * step : thickness;
    const TimberCut cut = cutFor(fill.seed, wood.rings, width, high);
    const FacePlane face =
        fill.grain == FaceGrain::End      ? FacePlane{{0, 0, high}, {1, 0, 0}, {0, 0, -1}}
        : fill.grain == FaceGrain::Across ? FacePlane{{0, 0, 0}, {0, 1, 0}, {1, 0, 0}}
                                          : FacePlane{{0, 0, high}, {1, 0, 0}, {0, 1, 0}};
    std::vector<std::uint8_t> tones(static_cast<std::size_t>(size.width()) *
                                    static_cast<std::size_t>(size.height()));
    figureTexture(tones.data(), {0, 0, size.width(), size.height(), step}, lookOf(wood), cut,
                  cut.inTree(face));
    const FigureTable table = figureTable(wood, fill.finish);
    const std::uint8_t* tone = tones.data();
    for (int y = 0; y < size.height(); ++y) {
        auto* line = reinterpret_cast<std::uint32_t*>(image.scanLine(y));
        for (int x = 0; x < size.width(); ++x) {
            line[x] = table[*tone++];
        }
    }
    return image;
}

void paintFigure(QPainter& painter, const QPolygonF& shape, const Wood& wood,
                 const FigureFill& fill) {
    const QRectF bounds = shape.boundingRect();
    const double ratio = painter.device()->devicePixelRatioF();
    const QSize size(static_cast<int>(std::ceil(bounds.width() * ratio)),
                     static_cast<int>(std::ceil(bounds.height() * ratio)));
    if (size.isEmpty()) {
        return;
    }
    QBrush brush(figureImage(wood, fill, size, 1 / (fill.pixelsPerMm * ratio)));
    brush.setTransform(
        QTransform::fromTranslate(bounds.left(), bounds.top()).scale(1 / ratio, 1 / ratio));
    painter.save();
    painter.setPen(Qt::NoPen);
    painter.setBrush(brush);
    painter.drawPolygon(shape);
    painter.restore();
}

}  // namespace kerfwright
