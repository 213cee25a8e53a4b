// Where the board lies in its view: millimetres to pixels and back.
#pragma once

#include "core/board/board.h"

#include <QPoint>
#include <QPointF>
#include <QRect>
#include <QRectF>
#include <QSizeF>

#include <vector>

namespace kerfwright {

/// A joint of the grid that can be dragged: the one after column or row `index`.
struct GridJoint {
    bool vertical = true;
    int index = -1;
    bool isNone() const { return index < 0; }
    friend bool operator==(const GridJoint&, const GridJoint&) = default;
};

class BoardGeometry {
public:
    BoardGeometry() = default;
    /// `scale` in pixels per mm; `origin` is the pixel of the board's top left corner; `ratio` is
    /// device pixels per pixel, to which every edge is rounded so that joints stay crisp.
    BoardGeometry(const Board& board, const Surround& surround, double scale, QPointF origin,
                  double ratio);

    double scale() const { return scale_; }
    QPointF origin() const { return origin_; }
    double ratio() const { return ratio_; }
    QRectF board() const { return board_; }
    QRectF field() const;
    /// What the rails leave free: the field and the gap round it.
    QRectF inside() const { return inside_; }
    const Surround& surround() const { return surround_; }
    /// Of the board, in mm.
    QSizeF size() const { return size_; }
    int columns() const { return static_cast<int>(xs_.size()) - 1; }
    int rows() const { return static_cast<int>(ys_.size()) - 1; }
    /// The pixels of a rectangle of cells.
    QRectF cells(const QRect& cells) const;
    /// (-1, -1) outside the field.
    QPoint cellAt(QPointF pixel) const;
    /// The inner joint of the grid within `reach` pixels.
    GridJoint jointAt(QPointF pixel, double reach) const;
    /// mm from the board's top left corner.
    QPointF toMm(QPointF pixel) const;
    double x(double mm) const { return snapped(origin_.x() + mm * scale_); }
    double y(double mm) const { return snapped(origin_.y() + mm * scale_); }

private:
    double snapped(double pixel) const;

    double scale_ = 1;
    double ratio_ = 1;
    QPointF origin_;
    Surround surround_;
    QSizeF size_;
    QRectF board_, inside_;
    std::vector<double> xs_, ys_;  ///< edges of the columns and rows, one more than there are
};

}  // namespace kerfwright
