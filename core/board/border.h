// What runs round the field, as it is wished, and the room that it takes.
#pragma once

#include "core/measure/length.h"

#include <optional>

namespace kerfwright {

enum class BorderDesign {
    EndGrainBand,    ///< a ring of end-grain pieces, glued as part of an end-grain field
    FloatingFrame,   ///< mitred rails with a gap; the field lies loose in them
    FixedFrame,      ///< mitred rails glued to the field
    BreadboardEnds,  ///< two ends across the grain of a long-grain field, pinned
    EdgeBand,        ///< straight strips glued to edges, butted: see `BorderSides`
};

/// How a floating frame holds its field.
enum class Housing {
    Groove,  ///< a loose tongue, glued into the rail and dry in the field
    Rebate,  ///< a ledge below the field, which can be lifted out
};

/// `width` 0: no border. What a design has no use for is kept and left out of account.
struct Border {
    Length width = {};  ///< the visible rail, inlay included
    int wood = 0;
    BorderDesign design = BorderDesign::FixedFrame;
    Housing housing = Housing::Groove;  ///< floating frame only
    /// Per side, floating frame only. Empty: from the season that the field moves most in.
    std::optional<Length> gap = {};
    Length inlayWidth = {};  ///< line along the inside edge of a frame; 0: none
    int inlayWood = 0;
    Length splineThickness = {};  ///< keys across the corners of a frame; 0: none
    int splineWood = 0;
    /// The maker has read what happens to rails that are glued round a field which moves. Until
    /// then nothing tells anybody to glue them.
    bool cautionRead = false;
    friend bool operator==(const Border&, const Border&) = default;

    bool isThere() const { return width > Length(); }
    bool has(BorderDesign which) const { return isThere() && design == which; }
    /// Four mitred rails.
    bool isFrame() const {
        return has(BorderDesign::FloatingFrame) || has(BorderDesign::FixedFrame);
    }
    bool hasInlay() const { return isFrame() && inlayWidth > Length(); }
    bool hasSplines() const { return isFrame() && splineThickness > Length(); }
};

struct Board;

/// Which edges of the field a border has a rail on.
///
/// Breadboard ends lie on the two edges where the grain ends. Edge bands lie on the two edges along
/// the grain, where they move with the field; round an end-grain field, which has no such edges, on
/// all four, and those are glued only once the caution is read.
struct BorderSides {
    bool leftAndRight = false;
    bool topAndBottom = false;
    friend bool operator==(const BorderSides&, const BorderSides&) = default;
};
/// `grainDown`: the grain of a long-grain field runs down the page (a plan by rows).
BorderSides borderSides(const Board& board, bool grainDown);

/// The room that a border takes beyond the field, on each of two opposite sides.
struct Surround {
    Length gapX, gapY;    ///< between field and rail: left and right; top and bottom
    Length railX, railY;  ///< of the visible rail
    friend bool operator==(const Surround&, const Surround&) = default;

    Length left() const { return gapX + railX; }
    Length top() const { return gapY + railY; }
};
/// An end-grain band is reckoned as rail here, as the maker sees it.
Surround surroundOf(const Board& board, bool grainDown, Length gapX, Length gapY);

/// Of the finished board, border and gap included.
struct BoardSize {
    Length width, height;
    friend bool operator==(const BoardSize&, const BoardSize&) = default;
};
BoardSize sizeOf(const Board& board, const Surround& surround);

/// What the rails cover, seen from above; nothing where the band is part of the field.
Area railFace(const Board& board, const Surround& surround);

/// Rails of long grain glued round a field that moves, so that the maker must have read the caution
/// first: a fixed frame, and edge bands round an end-grain field.
bool bindsTheField(const Board& board);

/// Its corners are keyed: not before the caution is read, since keys go into a frame that is glued.
bool keysCorners(const Board& board);

/// The board as it is glued: an end-grain band becomes an outer ring of the field, one piece for
/// each cell beside it and one in each corner, and there is no border any more. Others stay as they
/// are.
Board asGlued(const Board& board);

}  // namespace kerfwright
