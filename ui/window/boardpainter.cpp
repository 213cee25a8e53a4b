#include "ui/window/boardpainter.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <array>
#include <cmath>

namespace kerfwright {

namespace {

/// A thin line between woods: what the average of the woods looks like in the shade of a joint; a
/// lighter one where that would not be seen between the dark woods.
QColor jointColour(const std::vector<Wood>& woods) {
    int red = 0;
    int green = 0;
    int blue = 0;
    for (const Wood& wood : woods) {
        red += wood.colour.red;
        green += wood.colour.green;
        blue += wood.colour.blue;
    }
    const int count = std::max(1, static_cast<int>(woods.size()));
    const QColor average(red / count, green / count, blue / count);
    const auto leastContrast = [&woods](const QColor& line) {
        double least = 21;
        for (const Wood& wood : woods) {
            least = std::min(least, contrast(line, toQColor(wood.colour)));
        }
        return least;
    };
    constexpr double seen = 1.25;
    const QColor shade = mixed(average, QColor(30, 20, 14), 0.6);
    const QColor light = mixed(average, QColor(226, 214, 196), 0.35);
    return leastContrast(shade) >= seen || leastContrast(shade) >= leastContrast(light) ? shade
                                                                                        : light;
}

}  // namespace

QColor toQColor(Colour colour) {
    return QColor(colour.red, colour.green, colour.blue);
}

double jointWidth(const Field& field, const BoardGeometry& geometry) {
    const QRectF rect = geometry.field();
    const double smallest = std::min(rect.width() / static_cast<double>(field.columns.size()),
                                     rect.height() / static_cast<double>(field.rows.size()));
    return smallest < 5 ? 0 : 1 / geometry.ratio();
}

QRectF pieceRect(const Piece& piece, const BoardGeometry& geometry, double joint) {
    const QRectF field = geometry.field();
    QRectF rect = geometry.cells(QRect(piece.column, piece.row, piece.across, piece.down));
    if (rect.right() < field.right()) {
        rect.setRight(rect.right() - joint);
    }
    if (rect.bottom() < field.bottom()) {
        rect.setBottom(rect.bottom() - joint);
    }
    return rect;
}

void paintBoard(QPainter& painter, const Board& board, const std::vector<Wood>& woods,
                const BoardGeometry& geometry) {
    if (board.border.has(BorderDesign::EndGrainBand)) {
        // The band is pieces like those of the field.
        const Board glued = asGlued(board);
        paintBoard(painter, glued, woods,
                   BoardGeometry(glued, {}, geometry.scale(), geometry.origin(), geometry.ratio()));
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(Qt::NoPen);
    if (board.border.isThere()) {
        paintBorder(painter, board.border, woods, geometry);
    }
    // The ground shows between the pieces as the joints.
    const QRectF field = geometry.field();
    painter.fillRect(field, jointColour(woods));
    const double joint = jointWidth(board.field, geometry);
    std::vector<std::vector<QRectF>> byWood(woods.size());
    for (const Piece& piece : board.field.pieces) {
        byWood[static_cast<std::size_t>(piece.wood)].push_back(pieceRect(piece, geometry, joint));
    }
    for (std::size_t i = 0; i < woods.size(); ++i) {
        if (!byWood[i].empty()) {
            painter.setBrush(toQColor(woods[i].colour));
            painter.drawRects(byWood[i].data(), static_cast<int>(byWood[i].size()));
        }
    }
    painter.restore();
}

void paintShadow(QPainter& painter, const QRectF& board, bool dark) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    // What the board covers is most of it: blending that six times over would cost more than the
    // board itself.
    const QRect around = board.adjusted(-12, -12, 12, 12).toAlignedRect();
    painter.setClipRegion(QRegion(around) - QRegion(board.adjusted(1, 1, -1, -1).toAlignedRect()));
    for (int spread = 1; spread <= 6; ++spread) {
        painter.setBrush(QColor(0, 0, 0, dark ? 18 : 8));
        painter.drawRoundedRect(board.adjusted(-spread, -spread + 3, spread, spread + 3), spread,
                                spread);
    }
    painter.restore();
}

void paintOutline(QPainter& painter, const BoardGeometry& geometry, const Tones& tones) {
    if (!tones.dark) {
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(mixed(tones.surround, tones.text, 0.45), 1));
    // Ends of a breadboard may be longer or shorter than a season makes the field.
    const QRectF board = geometry.board();
    const QRectF inside = geometry.inside();
    QPainterPath outline;
    if (const Surround& room = geometry.surround();
        (room.railX == Length() && room.gapX != Length()) ||
        (room.railY == Length() && room.gapY != Length())) {
        QPainterPath rails;
        rails.addRect(board.adjusted(-0.5, -0.5, 0.5, 0.5));
        QPainterPath between;
        between.addRect(room.railX == Length() ? inside.adjusted(-1, 0.5, 1, -0.5)
                                               : inside.adjusted(0.5, -1, -0.5, 1));
        outline.addRect(geometry.field().adjusted(-0.5, -0.5, 0.5, 0.5));
        outline = outline.united(rails.subtracted(between));
    } else {
        outline.addRect(board.adjusted(-0.5, -0.5, 0.5, 0.5));
    }
    painter.drawPath(outline);
    painter.restore();
}

void paintExtraJoints(QPainter& painter, const std::vector<Joint>& joints, const Board& board,
                      const BoardGeometry& geometry) {
    if (joints.empty()) {
        return;
    }
    // Those of a field with an end-grain band count from the edge of the band.
    const bool band = board.border.has(BorderDesign::EndGrainBand);
    const double left = band ? 0 : geometry.surround().left().toMm();
    const double top = band ? 0 : geometry.surround().top().toMm();
    std::vector<QLineF> lines;
    lines.reserve(joints.size());
    std::vector<QLineF> dashed;
    for (const Joint& joint : joints) {
        const double at = (joint.vertical ? left : top) + joint.at.toMm();
        const double from = (joint.vertical ? top : left) + joint.from.toMm();
        const double to = (joint.vertical ? top : left) + joint.to.toMm();
        lines.push_back(
            joint.vertical
                ? QLineF(geometry.x(at), geometry.y(from), geometry.x(at), geometry.y(to))
                : QLineF(geometry.x(from), geometry.y(at), geometry.x(to), geometry.y(at)));
        // A single dash would look like a spot of dirt.
        constexpr double twoDashes = 12;
        if (lines.back().length() >= twoDashes) {
            dashed.push_back(lines.back());
        }
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    // Light under dark dashes: one of the two shows on any wood.
    painter.setPen(QPen(QColor(255, 255, 255, 110), 1));
    painter.drawLines(lines.data(), static_cast<int>(lines.size()));
    painter.setPen(QPen(QColor(20, 14, 10, 220), 1, Qt::CustomDashLine));
    QPen dashes = painter.pen();
    dashes.setDashPattern({4, 4});
    painter.setPen(dashes);
    painter.drawLines(dashed.data(), static_cast<int>(dashed.size()));
    painter.restore();
}

void paintFrame(QPainter& painter, const QRectF& rect, const QColor& colour, double width) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    QPen pen(QColor(255, 255, 255, 200), width + 2);
    pen.setJoinStyle(Qt::MiterJoin);
    painter.setPen(pen);
    painter.drawRect(rect);
    pen.setColor(colour);
    pen.setWidthF(width);
    painter.setPen(pen);
    painter.drawRect(rect);
    painter.restore();
}

void paintHighlight(QPainter& painter, const Highlight& highlight, const Board& board,
                    const BoardGeometry& geometry, const Tones& tones) {
    if (highlight.isEmpty()) {
        return;
    }
    const int columns = static_cast<int>(board.field.columns.size());
    const int rows = static_cast<int>(board.field.rows.size());
    // Slices of a field with an end-grain band reach through the band, and the outermost are in it.
    const QRectF whole =
        board.border.has(BorderDesign::EndGrainBand) ? geometry.board() : geometry.field();
    const auto left = [&](int column) {
        return column < 0         ? whole.left()
               : column > columns ? whole.right()
                                  : geometry.cells(QRect(column, 0, 1, 1)).left();
    };
    const auto top = [&](int row) {
        return row < 0      ? whole.top()
               : row > rows ? whole.bottom()
                            : geometry.cells(QRect(0, row, 1, 1)).top();
    };
    std::vector<QRectF> lit;
    // Neighbours are framed together.
    const auto runs = [](const std::set<int>& lines, const auto& add) {
        for (auto line = lines.begin(); line != lines.end();) {
            const int first = *line;
            int last = first;
            while (++line != lines.end() && *line == last + 1) {
                last = *line;
            }
            add(first, last - first + 1);
        }
    };
    runs(highlight.rows, [&](int first, int count) {
        lit.emplace_back(QPointF(whole.left(), top(first)),
                         QPointF(whole.right(), top(first + count)));
    });
    runs(highlight.columns, [&](int first, int count) {
        lit.emplace_back(QPointF(left(first), whole.top()),
                         QPointF(left(first + count), whole.bottom()));
    });
    for (const int index : highlight.pieces) {
        if (index >= 0 && index < static_cast<int>(board.field.pieces.size())) {
            const Piece& piece = board.field.pieces[static_cast<std::size_t>(index)];
            lit.push_back(geometry.cells(QRect(piece.column, piece.row, piece.across, piece.down)));
        }
    }
    if (highlight.field) {
        lit.push_back(geometry.field());
    }
    // Rows, columns and pieces may lie over each other, so what is lit is united first.
    QPainterPath light;
    for (const QRectF& rect : lit) {
        QPainterPath one;
        one.addRect(rect);
        light = light.united(one);
    }
    if (highlight.border) {
        QPainterPath ring;
        ring.addRect(geometry.board());
        QPainterPath inside;
        inside.addRect(geometry.field());
        light = light.united(ring.subtracted(inside));
        lit.push_back(geometry.board());
    }
    QPainterPath veil;
    veil.addRect(geometry.board());
    veil = veil.subtracted(light);
    QColor ground = tones.surround;
    ground.setAlpha(150);
    painter.fillPath(veil, ground);
    for (const QRectF& rect : lit) {
        paintFrame(painter, rect.adjusted(0.5, 0.5, -0.5, -0.5), tones.accent, 2);
    }
}

void paintBubble(QPainter& painter, QPointF at, const QRectF& bounds, const QStringList& lines) {
    if (lines.isEmpty()) {
        return;
    }
    QFont plain = painter.font();
    QFont bold = plain;
    bold.setBold(true);
    const QFontMetricsF plainMetrics(plain);
    const QFontMetricsF boldMetrics(bold);
    const double lineHeight = std::ceil(plainMetrics.height() + 3);
    double width = 0;
    for (int i = 0; i < lines.size(); ++i) {
        width = std::max(width, (i == 0 ? boldMetrics : plainMetrics).horizontalAdvance(lines[i]));
    }
    QRectF rect(at + QPointF(16, 16),
                QSizeF(std::ceil(width) + 24, lineHeight * static_cast<double>(lines.size()) + 13));
    if (rect.right() > bounds.right() - 4) {
        rect.moveRight(std::max(bounds.left() + 4 + rect.width(), at.x() - 12));
    }
    if (rect.bottom() > bounds.bottom() - 4) {
        rect.moveBottom(at.y() - 12);
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor(38, 36, 32, 236));
    painter.drawRoundedRect(rect, 6, 6);
    double baseline = rect.top() + 7 + plainMetrics.ascent();
    for (int i = 0; i < lines.size(); ++i) {
        painter.setFont(i == 0 ? bold : plain);
        painter.setPen(i == 0 ? QColor(255, 255, 255) : QColor(214, 209, 200));
        painter.drawText(QPointF(rect.left() + 12, baseline), lines[i]);
        baseline += lineHeight;
    }
    painter.restore();
}

}  // namespace kerfwright
