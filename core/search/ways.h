// In which ways a kind can be parted: the lines in either direction and the kind of every part
// between two of them. Worked out when first asked for.
#pragma once

#include "core/search/kinds.h"

#include <cstdint>
#include <deque>
#include <vector>

namespace kerfwright::kinds {

class Ways {
public:
    explicit Ways(const Kinds& kinds)
        : kinds_(kinds)
        , place_(static_cast<std::size_t>(kinds.count()), -1)
        , least_(place_.size(), 0) {}

    struct Direction {
        const std::int16_t* lines = nullptr;  ///< of the picture
        const std::int32_t* parts = nullptr;  ///< kind from line i to line j at i * count + j
        int count = 0;                        ///< of lines, both edges included
        int part(int from, int to) const { return parts[from * count + to]; }
    };
    struct Both {
        Direction across, down;  ///< parts side by side, and one below the other
        const Direction& operator[](int i) const { return i == 0 ? across : down; }
    };

    const Kinds& kinds() const { return kinds_; }
    const Both& of(int kind);
    /// Whether the kind can be parted into parts of which `have(kind)` says that they are there.
    template <class Have>
    bool parts(int kind, Have have) {
        const Both& both = of(kind);
        for (int direction = 0; direction < 2; ++direction) {
            const Direction& way = both[direction];
            reached_.assign(static_cast<std::size_t>(way.count), 0);
            reached_[0] = 1;
            for (int to = 1; to < way.count; ++to) {
                std::uint8_t here = 0;
                for (int from = to - 1; from >= 0 && here == 0; --from) {
                    const int part = way.part(from, to);
                    here =
                        reached_[static_cast<std::size_t>(from)] != 0 && part != kind && have(part)
                            ? 1
                            : 0;
                }
                reached_[static_cast<std::size_t>(to)] = here;
            }
            if (reached_.back() != 0) {
                return true;
            }
        }
        return false;
    }
    /// No construction of the kind alone has fewer glue-ups. Of very many kinds only a glance is
    /// taken: 2 for all that is no word.
    int least(int kind);
    /// In square nanometres; 0 for a word that is one kind in any height.
    std::int64_t area(int kind);

private:
    Direction direction(const Box& box, bool alongX);
    int leastAlong(int kind, bool alongX);

    const Kinds& kinds_;
    std::vector<std::int32_t> place_;    ///< by kind, in `known_`; -1: not asked for
    std::vector<std::int16_t> least_;    ///< by kind; 0: not asked for
    std::vector<std::uint8_t> reached_;  ///< scratch of `parts`
    std::deque<Both> known_;
    std::deque<std::vector<std::int16_t>> lines_;  ///< a deque, since directions point into them
    std::deque<std::vector<std::int32_t>> parts_;
};

}  // namespace kerfwright::kinds
