// Good constructions of pictures of any size, without a proof.
//
// A beam search: a few half-made plans are carried along; in each the largest kind that is wanted
// and not yet parted is parted in many ways (all lines, every second or third, motifs that repeat),
// and those plans go on whose glue-ups, made and foreseen, are fewest.
#pragma once

#include "core/search/ways.h"

#include <functional>
#include <vector>

namespace kerfwright::kinds {

class Guess {
public:
    explicit Guess(Ways& ways)
        : ways_(ways)
        , have_(static_cast<std::size_t>(ways.kinds().count()), 0)
        , sharers_(have_.size(), 0) {}

    using KindSet = std::vector<int>;

    /// Distinct plans, the one with the fewest kinds first; among them always the one whose last
    /// glue-up joins rows and the one whose last joins columns, if there are such. `goOn` is asked
    /// between plans.
    std::vector<KindSet> plans(int beam, const std::function<bool()>& goOn);

private:
    struct Half {
        KindSet made;
        std::vector<std::uint8_t> open;  ///< by place in `made`: not parted yet
        int foreseen = 0;                ///< glue-ups in all, with what is still to come
    };

    void take(const KindSet& set, std::uint8_t mark);
    bool have(int kind) const {
        return kind == freeKind || (kind > 0 && have_[static_cast<std::size_t>(kind)] != 0);
    }
    bool partsFreely(int kind) const;
    template <class Each>
    bool allLines(const Ways::Direction& way, Each each);
    int alone(int kind);
    int foresee(const Half& half);
    void candidates(int kind, std::vector<KindSet>& sets);
    void evenly(const Ways::Direction& way, int kind, std::vector<KindSet>& sets) const;
    void cheapest(const Ways::Direction& way, int kind, const std::function<int(int)>& price,
                  std::vector<KindSet>& sets) const;
    void motifs(const Ways::Direction& way, int kind, std::vector<KindSet>& sets);
    int nextOpen(const Half& half);
    void finish(const Half& half, std::vector<KindSet>& plans);
    void search(std::vector<Half> beam, int width, const std::function<bool()>& goOn,
                std::vector<KindSet>& plans);
    Half begin(const KindSet& added) const;
    void thinOut(KindSet& plan);

    Ways& ways_;
    std::vector<std::uint8_t> have_;
    std::vector<std::int32_t> sharers_;  ///< scratch of `foresee`, by kind; all 0 between calls
};

}  // namespace kerfwright::kinds
