// The fewest glue-ups that make a picture, and how good that answer is.
//
// A glue-up joins two or more blocks along one direction; however many copies of it are needed, it
// counts once. What counts as one kind:
// - end grain: equal cross-sections, up to the eight placings. With `thinning`, rows of one word in
//   several heights count once.
// - long grain: a block without end-to-end joints is one kind whatever its height along the grain,
//   since height is only the crosscut length. A block with end-to-end joints is one kind too, but
//   has to be glued once a copy: see `assemblies`.
// A tile, and with `mergeLike` a rectangle of one wood, costs nothing where timber is large enough.
#pragma once

#include "core/search/construction.h"
#include "core/search/picture.h"

#include <cstdint>
#include <functional>
#include <vector>

namespace kerfwright {

struct SearchOptions {
    bool thinning = false;          ///< end grain only: one panel may serve rows of several heights
    std::int64_t budget = 400'000;  ///< steps of the proof, a few million a second; 0: no proof
    int alternatives = 4;           ///< how many constructions at most, 1 or more
};

struct SearchProgress {
    int bound = 0;    ///< no construction has fewer glue-ups
    int best = 0;     ///< glue-ups of the best construction so far
    double done = 0;  ///< share of the budget, 0 to 1
};

/// Called every few thousand steps; false stops the search, which then returns what it has.
using SearchCallback = std::function<bool(const SearchProgress&)>;

/// A construction in numbers.
struct Found {
    Construction construction;
    int glueUps = 0;     ///< kinds
    int assemblies = 0;  ///< how often clamps are set: in long grain once a copy where a block has
                         ///< end-to-end joints, else as `glueUps`
    int members = 0;     ///< parts laid in all glue-ups, each kind counted once
    int levels = 0;      ///< glue-ups one after another on the longest way
};

struct SearchResult {
    /// The best first: fewest glue-ups, then assemblies, members and levels. None of them is worse
    /// in all of these than another, but for the best by rows and by columns, which are always
    /// among them where there is room. Empty where the picture is locked (see locked.h), or where
    /// the search was stopped before it had any.
    std::vector<Found> found;
    int bound = 0;         ///< no construction has fewer glue-ups
    bool proven = false;   ///< found.front() has `bound` glue-ups
    bool stopped = false;  ///< by the callback
};

/// Deterministic: the same picture and options give the same result, if not stopped.
SearchResult fewestGlueUps(const Picture& picture, const SearchOptions& options = {},
                           const SearchCallback& callback = {});

/// Counts, for any construction of a picture laid like that.
Found counted(Construction construction, Laying laying);

}  // namespace kerfwright
