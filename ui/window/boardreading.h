// What the board view has under the hand, in words: for the bubble beside the pointer and for those
// who hear the board instead of seeing it.
#pragma once

#include "core/board/magnets.h"
#include "core/project/project.h"
#include "ui/window/boardeditor.h"
#include "ui/window/boardgeometry.h"
#include "ui/window/regioneditor.h"

#include <QRect>
#include <QString>
#include <QStringList>

#include <optional>

namespace kerfwright {

/// A line or a rectangle on its way.
struct Drawn {
    Stroke stroke = Stroke::Line;
    QPoint from, to;
    std::vector<int> pieces;  ///< that it reaches
};

/// What the maker works on just now; the first of these that is there is meant.
struct Hand {
    const Carried* carried = nullptr;
    std::optional<Drawn> drawn;
    GridJoint joint;
    QRect mark;
};

/// One sentence without a stop, empty where the hand is empty.
QString handReading(const Project& project, const Hand& hand);

/// "Columns 2 to 4, rows 1 to 3".
QString cellsWords(const QRect& cells);
/// "9 pieces: 5 hard maple, 4 black walnut".
QString piecesWords(const Project& project, const std::vector<int>& pieces);
/// Where the joint is, the two sizes beside it, and why it is well placed where it is.
QStringList jointWords(const Project& project, const GridJoint& joint);
QString fitWords(JointFit fit);

}  // namespace kerfwright
