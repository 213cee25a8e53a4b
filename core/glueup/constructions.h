// The constructions of a board that are worth looking at: what the search finds, with and without
// the limits of the machines, rows that share a wider panel, and the same with glue-ups divided so
// that the glue stays open.
#pragma once

#include "core/board/board.h"
#include "core/glueup/plan.h"
#include "core/search/construction.h"
#include "core/search/locked.h"
#include "core/search/search.h"
#include "core/shop/shop.h"
#include "core/wood/wood.h"

#include <cstdint>
#include <string>
#include <vector>

namespace kerfwright {

struct Proposal {
    /// Of how its blocks are put together, and not of their sizes or woods: a changed thickness or
    /// a wider column leaves it as it is.
    std::string key;
    std::string name;  ///< "Rows", "Columns, one panel shifted and trimmed", "Blocks in 3 levels"
    Construction construction;
    Laying laying = Laying::EndGrain;
    int glueUps = 0, assemblies = 0, levels = 0;
};

struct Proposals {
    std::vector<Proposal> all;  ///< fewest glue-ups first; each construction once
    int bound = 0;              ///< no construction has fewer glue-ups, without shift and trim
    bool proven = false;        ///< the fewest glue-ups of those without shift and trim
    bool stopped = false;       ///< by the callback
    bool thinning = false;      ///< whether the bound allows one panel to be thinned in stages
    Locked locked;              ///< pieces that no straight glue line parts; then `all` is empty
};

struct ProposalOptions {
    bool mergeLike = false;
    int mostParts = 0;              ///< in one glue-up, for the glue's open time; 0: any number
    std::int64_t budget = 400'000;  ///< as in `SearchOptions`
};

/// Of a valid board, as it is glued. Deterministic, unless stopped.
Proposals proposals(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                    const ProposalOptions& options, const SearchCallback& callback = {});

/// The proposal with that key; nothing where there is none.
const Proposal* withKey(const Proposals& proposals, const std::string& key);

/// The same construction with every glue-up of more than `mostParts` divided into glue-ups of about
/// equally many, equal ones made once. `mostParts` of 2 or more.
Construction dividedIntoLoads(const Construction& construction, int mostParts);

}  // namespace kerfwright
