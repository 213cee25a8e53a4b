// The hash of any box of a picture, in a few additions and multiplications.
#pragma once

#include "core/search/kinds.h"
#include "core/search/polynomial.h"

namespace kerfwright::kinds {

/// Sums over all cells up to a point; those of a box are a difference of four. Mirror images have
/// sums of their own, with the inverse powers, and transposed ones with the two bases exchanged.
class Kinds::Hasher {
public:
    Hasher(const Picture& picture, bool heightFree, std::uint64_t seed);

    /// The least value of the box laid in any allowed way.
    Residue block(const Box& box) const;
    /// Of a box that is one row of strips: their word, and the height where it matters.
    Residue word(const Box& box, bool alongX) const;
    /// Whether nothing changes down the box (only lines down it part anything), or across it.
    bool sameDown(const Box& box) const {
        return within(changesDown_, box.left, box.right, box.top + 1, box.bottom) == 0;
    }
    bool sameAcross(const Box& box) const {
        return within(changesAcross_, box.left + 1, box.right, box.top, box.bottom) == 0;
    }
    /// Whether each strip of the word, or the one of a box of one wood, fits the timber.
    bool fits(const Box& box, bool alongX) const;

private:
    struct Line {
        Residue up[2], down[2];  ///< either base to the power of the position, and its inverse
    };
    std::size_t point(int column, int row) const {
        return static_cast<std::size_t>(row * (columns_ + 1) + column);
    }
    int within(const std::vector<int>& sums, int left, int right, int top, int bottom) const;
    void sumBlocks(std::uint64_t seed);
    void sumWords(std::uint64_t seed);
    void sumChanges();
    bool differ(int column, int row, int otherColumn, int otherRow) const;
    bool heightMatters(bool alongX) const;

    const Picture& picture_;
    int columns_, rows_;
    bool heightFree_;
    int ways_;
    std::vector<Line> acrossLines_, downLines_;
    std::vector<Residue> blocks_;                  ///< eight a point
    std::vector<Residue> rowWords_, columnWords_;  ///< two a point: forwards, backwards
    std::vector<int> changesDown_, changesAcross_;
};

}  // namespace kerfwright::kinds
