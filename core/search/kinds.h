// Which rectangles of a picture are one kind, so that one glue-up serves them all.
//
// Every rectangle that is bounded by whole tiles has a number: `free` where it is one strip, the
// number of its kind where it must be glued, `none` where a tile sticks out of it. Kinds are found
// by hashing: a polynomial over the real positions, modulo 2^61 - 1, the least value of all allowed
// placings. Two different rectangles may in principle fall together; whoever builds from kinds
// compares tile by tile (assemble.h), and asks for another `seed` where that fails.
#pragma once

#include "core/search/picture.h"

#include <cstdint>
#include <functional>
#include <unordered_map>
#include <vector>

namespace kerfwright::kinds {

constexpr int none = -1;
constexpr int freeKind = 0;

/// Between lines of the picture.
struct Box {
    std::int16_t left = 0, right = 0, top = 0, bottom = 0;
    friend bool operator==(const Box&, const Box&) = default;
};

/// The lines from edge to edge of a box along which it can be parted, both edges included.
using Lines = std::vector<std::int16_t>;

class Kinds {
public:
    /// `heightFree`: rows of one word are one kind in any height (always so in long grain).
    /// `mostKinds`: where there are more, only thin rectangles and those from edge to edge count.
    /// `goOn` is asked now and then; where it says no, the numbers are of no use.
    Kinds(const Picture& picture, bool heightFree, std::uint64_t seed, int mostKinds,
          const std::function<bool()>& goOn = {});

    int count() const { return static_cast<int>(shown_.size()); }  ///< kinds are 1 to count - 1
    /// A rectangle of the kind.
    const Box& shown(int kind) const { return shown_[static_cast<std::size_t>(kind)]; }
    /// A kind that is one glue-up of strips, whatever the way: nothing else has to be glued first.
    bool isWord(int kind) const { return word_[static_cast<std::size_t>(kind)] != 0; }
    int of(int left, int right, int top, int bottom) const {
        if (dense_) {
            return number_[index(left, right, top, bottom)];
        }
        const bool looked =
            isLookedAt({static_cast<std::int16_t>(left), static_cast<std::int16_t>(right),
                        static_cast<std::int16_t>(top), static_cast<std::int16_t>(bottom)});
        return looked ? sparse(index(left, right, top, bottom)) : none;
    }
    int of(const Box& box) const { return of(box.left, box.right, box.top, box.bottom); }
    int whole() const { return of(0, columns_, 0, rows_); }
    bool complete() const { return complete_; }  ///< every rectangle was looked at

    /// Lines down the box, for parts side by side (`alongX`), or across it.
    void lines(const Box& box, bool alongX, Lines& lines) const;
    /// The part between two lines.
    int part(const Box& box, bool alongX, int from, int to) const {
        return alongX ? of(from, to, box.top, box.bottom) : of(box.left, box.right, from, to);
    }
    /// Whether the machines take the box as a panel with its parts side by side (`alongX`), or one
    /// below the other. They must take the whole picture.
    bool isTaken(const Box& box, bool alongX) const;
    /// Whether some words are one kind in any height.
    bool heightFree() const { return heightFree_ || picture_.laying != Laying::EndGrain; }
    const Picture& picture() const { return picture_; }

private:
    class Hasher;
    int sparse(std::size_t index) const;
    /// Thin, or from edge to edge, or there are so few that all are.
    bool isLookedAt(const Box& box) const {
        return complete_ || box.bottom - box.top <= thin_ || box.right - box.left <= thin_ ||
               (box.top == 0 && box.bottom == rows_) || (box.left == 0 && box.right == columns_);
    }
    std::size_t index(int left, int right, int top, int bottom) const {
        return pair(top, bottom) * pairsAcross_ + pair(left, right);
    }
    static std::size_t pair(int from, int to) {
        return static_cast<std::size_t>(to * (to - 1) / 2 + from);
    }
    void look(const Hasher& hasher, int mostKinds, const std::function<bool()>& goOn);
    int numberOf(std::uint64_t hash, const Box& box, bool word, std::vector<std::uint64_t>& keys,
                 std::vector<std::int32_t>& values);
    void countCrossings();

    const Picture& picture_;
    int columns_ = 0, rows_ = 0;
    std::size_t pairsAcross_ = 0;
    bool heightFree_ = false;
    bool complete_ = true;
    bool dense_ = true;
    int thin_ = 0;
    std::vector<std::int32_t> number_;
    std::unordered_map<std::size_t, std::int32_t> few_;  ///< in place of `number_` where not dense
    std::vector<Box> shown_;
    std::vector<std::uint8_t> word_;
    /// How many cells above (left of) a cell have a tile that crosses the line to its left (top).
    std::vector<std::int16_t> crossedDown_, crossedAcross_;
};

}  // namespace kerfwright::kinds
