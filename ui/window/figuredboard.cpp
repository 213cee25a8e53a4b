#include "ui/window/figuredboard.h"

#include "ui/document/figureplaces.h"
#include "ui/window/boardpainter.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace kerfwright {

namespace {

/// What of the pieces is seen beside their joints, which lie at their right and lower edges.
void leaveJoints(std::vector<FiguredFace>& faces, std::size_t pieces, double joint, Point end) {
    for (std::size_t i = 0; i < pieces; ++i) {
        std::vector<Point>& corners = faces[i].corners;  // clockwise from the top left
        if (corners[2].x < end.x - joint / 2) {
            corners[1].x -= joint;
            corners[2].x -= joint;
        }
        if (corners[2].y < end.y - joint / 2) {
            corners[2].y -= joint;
            corners[3].y -= joint;
        }
    }
}

}  // namespace

QImage figuredBoard(const Project& project, const Surround& surround, double scale, double ratio,
                    Finish finish) {
    const Board glued = asGlued(project.board);
    const Surround room = glued.border.isThere() ? surround : Surround();
    const BoardGeometry geometry(glued, room, scale, QPointF(), ratio);
    QImage image((geometry.board().size() * ratio).toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    image.setDevicePixelRatio(ratio);
    const std::vector<Wood> woods = finishedWoods(project.woods, finish);
    QPainter flat(&image);
    paintBoard(flat, glued, woods, geometry);
    flat.end();

    const FigurePlaces places =
        figurePlaces(glued, project.woods, {}, project.board.grain != GrainDirection::Across);
    std::vector<FiguredFace> faces = figuredFaces(glued, room, project.woods, places);
    leaveJoints(faces, places.size(), jointWidth(glued.field, geometry) / scale,
                {room.left().toMm() + glued.field.width().toMm(),
                 room.top().toMm() + glued.field.height().toMm()});
    paintFaces(image, {std::move(faces), project.woods, finish}, scale * ratio, {0, 0});
    if (glued.border.isThere()) {
        QPainter lines(&image);
        paintBorderLines(lines, glued.border, woods, geometry);
    }
    return image;
}

}  // namespace kerfwright
