// How a picture is put together from pictures: blocks glued from blocks along one direction, each
// distinct block made once. What the blocks are made with, and with which allowances, is the
// plan's matter; here only the finished sizes count.
//
// A block is a rectangle of the field seen from above: x to the right, y down. In an end-grain
// build it is the cross-section of a stick; in a long-grain build it is a part of the face.
#pragma once

#include "core/board/joint.h"
#include "core/measure/length.h"

#include <vector>

namespace kerfwright {

/// One of the eight ways to lay a rectangle down. Applied in this order: mirrored left to right,
/// then turned clockwise by quarter turns. An end-grain build allows all eight (a quarter turn is a
/// stick rolled about its length, a mirror image is a slice turned over); a long-grain build only
/// those of 0 or 2 quarter turns, which keep the direction of the grain.
struct Placing {
    bool mirrored = false;
    int quarterTurns = 0;  ///< 0 to 3
    friend bool operator==(const Placing&, const Placing&) = default;
    friend auto operator<=>(const Placing&, const Placing&) = default;
};

/// `first`, then `second`, as one.
Placing then(Placing first, Placing second);
Placing inverse(Placing placing);

enum class JoinedAlong {
    X,  ///< members lie side by side, left to right
    Y,  ///< members lie one below the other, top to bottom
};

struct Member {
    int block = -1;  ///< index into the construction's blocks, less than that of its owner
    Placing placing;
    /// Sawn off before it is laid, at the first and at the last member of the block's own row; more
    /// than 0 only where the row is a window onto a longer one.
    Length trimFirst = {};
    Length trimLast = {};
    friend bool operator==(const Member&, const Member&) = default;
};

struct Block {
    Length width, height;
    int wood = -1;  ///< of a block that is not glued: one strip, or a length of it; -1: glued
    JoinedAlong along = JoinedAlong::X;
    std::vector<Member> members;  ///< two or more where glued, none where not
    /// An earlier block of the same row in another height, from whose glue-up this one comes too:
    /// crosscut off the same panel in a long-grain build, off the panel thinned or before it was
    /// thinned in an end-grain build. -1: glued by itself.
    int sameGlueUpAs = -1;

    bool isGlued() const { return wood < 0; }
};

struct Construction {
    std::vector<Block> blocks;       ///< each after its members; the last is the whole field
    std::vector<Joint> extraJoints;  ///< inside a piece of the wish, sorted
    int glueUps() const;             ///< how many glue-ups make its glued blocks
};

}  // namespace kerfwright
