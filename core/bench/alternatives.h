// The ways to glue one board, side by side: each carried out on the virtual bench, none worse in
// everything than another.
#pragma once

#include "core/bench/job.h"
#include "core/glueup/constructions.h"
#include "core/search/oddeven.h"

#include <string>
#include <vector>

namespace kerfwright {

/// What a plan costs; less is better in all of it.
struct Measures {
    int glueUps = 0;     ///< kinds
    int clampLoads = 0;  ///< how often clamps are set
    int panels = 0;      ///< distinct ones, each with its own squaring cut and spare
    int settings = 0;    ///< different settings of machines
    int cuts = 0;        ///< crosscuts, and edges that are ripped or trued
    Volume timber;       ///< rough
    int minutes = 0;     ///< hands on
    friend bool operator==(const Measures&, const Measures&) = default;
};

/// Of any plan's steps.
Measures measuresOf(const Job& job);

struct Alternative {
    std::string key;   ///< for `Choices::construction`; empty: rows or columns as planned today
    std::string name;  ///< "Rows", "Columns of blocks, glued in 3 levels"
    Choices choices;   ///< with which the project gets this plan
    Job job;
    Measures measures = {};
    /// What it asks that the shop cannot give, as the titles of those cautions; empty: nothing.
    std::vector<std::string> limits = {};
    std::vector<std::string> limitKeys = {};  ///< stable names of those cautions
};

struct Alternatives {
    /// Those that break no limit first, then by glue-ups, clamp loads and timber.
    std::vector<Alternative> all;
    int bound = 0;        ///< no plan has fewer glue-ups, without shifting and trimming
    bool proven = false;  ///< that bound is reached
    bool stopped = false;
    Locked locked;               ///< pieces that no straight glue line parts
    std::vector<OddEven> looks;  ///< with a row or a column more or less
    std::string sentence;        ///< how good the best is: "No plan has fewer glue-ups than 2."
};

/// Rows and columns as the planner makes them, and what the search finds beside them. Faults of
/// `makeJob` where not even those can be made. The callback may stop the search.
Result<Alternatives> alternatives(const Board& board, const std::vector<Wood>& woods,
                                  const Shop& shop, const Choices& choices,
                                  const Notation& notation, const Conditions& conditions = {},
                                  const SearchCallback& callback = {});

}  // namespace kerfwright
