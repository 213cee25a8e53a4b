// Constructions with at most so many glue-ups, found or ruled out.
//
// A set of kinds is a plan if each of them can be parted into free parts and kinds of the set. The
// search starts from the whole picture, takes a kind that is wanted and not yet parted, and tries
// every smallest set of new kinds that parts it. Kinds that are wanted anyway cost nothing more.
#pragma once

#include "core/search/ways.h"

#include <cstdint>
#include <functional>
#include <unordered_set>
#include <vector>

namespace kerfwright::kinds {

class Proof {
public:
    explicit Proof(Ways& ways)
        : ways_(ways)
        , state_(static_cast<std::size_t>(ways.kinds().count()), absent) {}

    enum class Answer { Found, RuledOut, Stopped };
    using KindSet = std::vector<int>;

    /// Looks for sets of at most `glueUps` kinds and gives each to `found`, which returns whether
    /// to go on. `goOn` is asked now and then with the steps taken; false stops.
    Answer attempt(int glueUps, const std::function<bool(const KindSet&)>& found,
                   const std::function<bool(std::int64_t)>& goOn);
    std::int64_t steps() const { return steps_; }

private:
    enum State : std::uint8_t { absent, pending, done };
    struct Options;

    bool have(int kind) const {
        return kind == freeKind || (kind > 0 && state_[static_cast<std::size_t>(kind)] != absent);
    }
    bool search();
    bool partsFreely(int kind);
    int newAtLeast(int kind);
    void extend(Options& options, int kind, int direction, std::vector<std::uint8_t>& reached);
    Options optionsOf(int kind, std::size_t cap);
    std::uint64_t fingerprint() const;
    void add(int kind, State state);
    void stepTaken(int lines);

    Ways& ways_;
    std::vector<std::uint8_t> state_;
    KindSet made_;
    int limit_ = 0;
    bool anyFound_ = false;
    bool stop_ = false;
    bool enough_ = false;
    std::int64_t steps_ = 0;
    std::vector<std::uint8_t> barred_;
    std::unordered_set<std::uint64_t> seen_;
    const std::function<bool(const KindSet&)>* found_ = nullptr;
    const std::function<bool(std::int64_t)>* goOn_ = nullptr;
};

}  // namespace kerfwright::kinds
