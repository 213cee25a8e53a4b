// Rails of a border, sawn one after another from long pieces of a plank, so that their grain runs
// round the board. Private to core/timber.
#pragma once

#include "core/timber/timber.h"

#include <functional>
#include <vector>

namespace kerfwright {

/// The rails of a demand, by border, wood and section, and the lengths in which each group is to be
/// sawn.
class Rails {
public:
    /// All in one length where `inLengths`, else singly. Rails that are pinned stay single.
    Rails(const Demand& demand, bool inLengths);

    /// The demand with the rails in their lengths: as long as their rails and the kerfs between.
    Demand demand(Length kerf) const;

    /// Groups whose lengths `fits` refuses are sawn in shorter ones.
    void shorten(const std::function<bool(const WantedStrips&)>& fits, Length kerf);
    /// Groups of which something is missing are sawn in shorter lengths. False: there was none that
    /// could be shortened. `missing` belongs to `demand()` as it was.
    bool shortenMissing(const Demand& demand, const std::vector<int>& missing);
    void makeSingle();
    bool allSingle() const;

    /// The shortest of all groups.
    RailLengths lengths() const;

private:
    struct Rail {
        int line = 0;  ///< of the demand
        std::string label;
    };
    struct Group {
        std::vector<Rail> rails;  ///< round the board
        RailLengths lengths = RailLengths::Single;
    };

    bool shorten(Group& group) const;
    std::vector<WantedStrips> linesOf(const Group& group, Length kerf) const;
    bool isOf(const Group& group, const WantedStrips& strips) const;

    Demand demand_;
    std::vector<Group> groups_;
};

}  // namespace kerfwright
