#include "ui/paint/figure.h"

#include <QBrush>
#include <QImage>
#include <QPainter>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace kerfwright {
namespace {

std::uint32_t opaque(Colour colour) {
    return qRgb(colour.red, colour.green, colour.blue);
}

/// Pixels whose middle lies in [from, to).
int firstPixel(double from) {
    return static_cast<int>(std::ceil(from - 0.5));
}

/// Where a row at `y` lies in a convex shape: from and to, the same where it lies outside.
std::pair<double, double> spanAt(const std::vector<Point>& corners, double y) {
    double from = 0;
    double to = 0;
    bool isFirst = true;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Point& a = corners[i];
        const Point& b = corners[(i + 1) % corners.size()];
        if ((a.y <= y) == (b.y <= y)) {
            continue;
        }
        const double x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
        from = isFirst ? x : std::min(from, x);
        to = isFirst ? x : std::max(to, x);
        isFirst = false;
    }
    return {from, to};
}

void paintFace(QImage& image, const FiguredFace& face, const WoodLook& look,
               const FigureTable& table, double pixelsPerMm, Point corner) {
    const auto byX = [](const Point& a, const Point& b) { return a.x < b.x; };
    const auto byY = [](const Point& a, const Point& b) { return a.y < b.y; };
    const auto [least, greatest] =
        std::minmax_element(face.corners.begin(), face.corners.end(), byX);
    const auto [highest, lowest] =
        std::minmax_element(face.corners.begin(), face.corners.end(), byY);
    const int left = std::max(0, firstPixel((least->x - corner.x) * pixelsPerMm));
    const int right = std::min(image.width(), firstPixel((greatest->x - corner.x) * pixelsPerMm));
    const int top = std::max(0, firstPixel((highest->y - corner.y) * pixelsPerMm));
    const int bottom = std::min(image.height(), firstPixel((lowest->y - corner.y) * pixelsPerMm));
    if (right <= left) {
        return;
    }
    // In bands, so that a large face of a large picture needs little room.
    constexpr int band = 64;
    std::vector<std::uint8_t> tones(static_cast<std::size_t>(right - left) * band);
    for (int from = top; from < bottom; from += band) {
        const int count = std::min(band, bottom - from);
        figureTexture(tones.data(), {0, from - top, right - left, count, 1 / pixelsPerMm}, look,
                      face.cut, face.face);
        for (int y = from; y < from + count; ++y) {
            const auto [begin, end] = spanAt(face.corners, corner.y + (y + 0.5) / pixelsPerMm);
            const int first = std::max(left, firstPixel((begin - corner.x) * pixelsPerMm));
            const int last = std::min(right, firstPixel((end - corner.x) * pixelsPerMm));
            const std::uint8_t* tone =
                tones.data() + static_cast<std::ptrdiff_t>(right - left) * (y - from) - left;
            auto* line = reinterpret_cast<std::uint32_t*>(image.scanLine(y));
            for (int x = first; x < last; ++x) {
                line[x] = table[tone[x]];
            }
        }
    }
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
    const FigureTable table = figureTable(wood, fill.finish, fill.contrast);
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

void paintFaces(QImage& image, const DrawingFigure& figure, double pixelsPerMm, Point corner) {
    std::vector<WoodLook> looks;
    std::vector<FigureTable> tables;
    for (const Wood& wood : figure.woods) {
        looks.push_back(lookOf(wood));
        tables.push_back(figureTable(wood, figure.finish));
    }
    for (const FiguredFace& face : figure.faces) {
        const auto wood = static_cast<std::size_t>(face.wood);
        paintFace(image, face, looks[wood], tables[wood], pixelsPerMm, corner);
    }
}

std::vector<Wood> finishedWoods(std::vector<Wood> woods, Finish finish) {
    for (Wood& wood : woods) {
        wood.colour = finished(wood.colour, finish);
    }
    return woods;
}

}  // namespace kerfwright
