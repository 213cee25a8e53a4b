// Whether a caution is still open, or was seen to by the maker.
#pragma once

#include "core/bench/cautions.h"
#include "core/board/seento.h"

#include <string>
#include <vector>

namespace kerfwright {

enum class Standing {
    Open,
    Lapsed,  ///< open again: it was seen to when it said something else
    SeenTo,
};

Standing standingOf(const Caution& caution, const std::vector<SeenTo>& seenTo);
/// For behind a caution: "seen to", "was seen to before its numbers changed"; empty where it is
/// simply open.
std::string standingWords(Standing standing);

/// Keeps what the caution says now; the oldest entry goes where there are too many.
void seeTo(std::vector<SeenTo>& seenTo, const Caution& caution);
/// As if the caution had never been seen to, whatever it said.
void reopen(std::vector<SeenTo>& seenTo, const Caution& caution);

struct CautionCount {
    int open = 0;         ///< dangers included, and those that lapsed
    int openDangers = 0;  ///< of those
    int seenTo = 0;
    friend bool operator==(const CautionCount&, const CautionCount&) = default;
};
CautionCount countOf(const std::vector<Caution>& cautions, const std::vector<SeenTo>& seenTo);
/// "3 open · 4 seen to"; "3 cautions", "No cautions" where none was seen to.
std::string countWords(const CautionCount& count);

/// Indices of the cautions: those that are open, then those seen to, each in the order they have.
std::vector<int> openFirst(const std::vector<Caution>& cautions, const std::vector<SeenTo>& seenTo);

}  // namespace kerfwright
