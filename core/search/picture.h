// What the search looks at: the field on the lines along which it may be joined, and nothing else
// of the board.
#pragma once

#include "core/board/board.h"
#include "core/board/joint.h"
#include "core/measure/length.h"

#include <vector>

namespace kerfwright {

/// Which blocks count as one, and what a glue-up can serve.
enum class Laying {
    EndGrain,     ///< all eight placings
    GrainDown,    ///< long grain along the columns: four placings, rows are crosscut off panels
    GrainAcross,  ///< the same along the rows
};

/// The greatest piece that can be one strip of a wood; 0 in a member: as large as you like.
/// In an end-grain build a section may be turned; in a long-grain build `width` is across the grain
/// and `thickness` is not looked at, since it is that of the board.
struct StripLimit {
    Length thickness, width;
};

/// What the machines take of a panel, in finished sizes; 0: as large as you like. The field is
/// exempt: nothing can be done about its size.
struct PanelLimit {
    Length widest;    ///< across the joints of a panel, for the flattening machine
    Length thickest;  ///< end grain: the other way, for the saw; in long grain not looked at
    friend bool operator==(const PanelLimit&, const PanelLimit&) = default;
};

/// One rectangle of one wood, between lines of the picture.
struct Tile {
    int left = 0, right = 1;  ///< indices into `xs`
    int top = 0, bottom = 1;  ///< indices into `ys`
    int wood = 0;
    int piece = 0;  ///< of the field, whole or a part of it
};

struct Picture {
    Laying laying = Laying::EndGrain;
    bool mergeLike = false;            ///< tiles of one wood side by side may be one strip
    std::vector<Length> xs, ys;        ///< lines, ascending, from 0 to the field's width and height
    std::vector<Tile> tiles;           ///< sorted by top, then left
    std::vector<int> tileAt;           ///< for every cell between lines, row by row
    std::vector<StripLimit> greatest;  ///< by wood; woods that are not listed have no limit
    PanelLimit panels = {};            ///< of all glued blocks but the field
    std::vector<Joint> extraJoints;    ///< lines between tiles of one piece, sorted

    int columns() const { return static_cast<int>(xs.size()) - 1; }
    int rows() const { return static_cast<int>(ys.size()) - 1; }
    const Tile& tile(int column, int row) const {
        return tiles[static_cast<std::size_t>(
            tileAt[static_cast<std::size_t>(row * columns() + column)])];
    }
    /// Whether one strip of the wood can be that large.
    bool fitsTimber(int wood, Length width, Length height) const;
};

/// The picture of a valid field. Pieces that fit no timber are divided into as few equal parts as
/// make them fit, which adds to `extraJoints`; a piece stays whole where its parts would be thinner
/// than a cell may be, and then the picture has no construction.
Picture pictureOf(const Field& field, Laying laying, bool mergeLike,
                  const std::vector<StripLimit>& greatest = {});

/// The same picture with more joints inside its tiles. Each must run from edge to edge of a tile
/// (or of several tiles in a row).
Picture withJoints(const Picture& picture, const std::vector<Joint>& joints);

}  // namespace kerfwright
