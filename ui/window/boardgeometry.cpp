#include "ui/window/boardgeometry.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {

namespace {

/// Index of the interval of `edges` that holds `at`, or -1.
int intervalOf(const std::vector<double>& edges, double at) {
    if (edges.size() < 2 || at < edges.front() || at >= edges.back()) {
        return -1;
    }
    const auto next = std::upper_bound(edges.begin(), edges.end(), at);
    return static_cast<int>(next - edges.begin()) - 1;
}

/// Index of the inner edge nearest to `at`, less one, and how far it is.
std::pair<int, double> nearestInner(const std::vector<double>& edges, double at) {
    int best = -1;
    double distance = 1e9;
    for (std::size_t i = 1; i + 1 < edges.size(); ++i) {
        const double gap = std::abs(edges[i] - at);
        if (gap < distance) {
            distance = gap;
            best = static_cast<int>(i) - 1;
        }
    }
    return {best, distance};
}

}  // namespace

BoardGeometry::BoardGeometry(const Board& board, const Surround& surround, double scale,
                             QPointF origin, double ratio)
    : scale_(scale)
    , ratio_(ratio)
    , origin_(origin)
    , surround_(surround) {
    const auto edges = [&](const std::vector<Length>& sizes, Length first, auto place) {
        std::vector<double> all{place(first.toMm())};
        Length sum = first;
        for (const Length size : sizes) {
            sum += size;
            all.push_back(place(sum.toMm()));
        }
        return all;
    };
    xs_ = edges(board.field.columns, surround.left(), [this](double mm) { return x(mm); });
    ys_ = edges(board.field.rows, surround.top(), [this](double mm) { return y(mm); });
    const BoardSize whole = sizeOf(board, surround);
    size_ = QSizeF(whole.width.toMm(), whole.height.toMm());
    const double railX = surround.railX.toMm();
    const double railY = surround.railY.toMm();
    board_ = QRectF(QPointF(x(0), y(0)), QPointF(x(size_.width()), y(size_.height())));
    inside_ = QRectF(QPointF(x(railX), y(railY)),
                     QPointF(x(size_.width() - railX), y(size_.height() - railY)));
}

double BoardGeometry::snapped(double pixel) const {
    return std::round(pixel * ratio_) / ratio_;
}

QRectF BoardGeometry::field() const {
    return QRectF(QPointF(xs_.front(), ys_.front()), QPointF(xs_.back(), ys_.back()));
}

QRectF BoardGeometry::cells(const QRect& cells) const {
    const auto at = [](const std::vector<double>& edges, int index) {
        return edges[static_cast<std::size_t>(
            std::clamp(index, 0, static_cast<int>(edges.size()) - 1))];
    };
    return QRectF(QPointF(at(xs_, cells.x()), at(ys_, cells.y())),
                  QPointF(at(xs_, cells.x() + cells.width()), at(ys_, cells.y() + cells.height())));
}

QPoint BoardGeometry::cellAt(QPointF pixel) const {
    const int column = intervalOf(xs_, pixel.x());
    const int row = intervalOf(ys_, pixel.y());
    return column < 0 || row < 0 ? QPoint(-1, -1) : QPoint(column, row);
}

GridJoint BoardGeometry::jointAt(QPointF pixel, double reach) const {
    if (xs_.empty() || !field().contains(pixel)) {
        return {};
    }
    const auto [column, fromColumn] = nearestInner(xs_, pixel.x());
    const auto [row, fromRow] = nearestInner(ys_, pixel.y());
    if (std::min(fromColumn, fromRow) > reach) {
        return {};
    }
    return fromColumn <= fromRow ? GridJoint{true, column} : GridJoint{false, row};
}

QPointF BoardGeometry::toMm(QPointF pixel) const {
    return (pixel - origin_) / scale_;
}

}  // namespace kerfwright
