// Woods as the plan needs them: what they are called, how they look on paper, what they weigh,
// and in what section their timber is to be had.
#pragma once

#include "core/drawing/colour.h"
#include "core/measure/length.h"
#include "core/measure/notation.h"
#include "core/measure/result.h"

#include <string>
#include <vector>

namespace kerfwright {

/// Greatest cross-section of rough timber that the maker can get, thickness by width.
struct Section {
    Length thickness;
    Length width;
    friend bool operator==(const Section&, const Section&) = default;
};

struct Wood {
    std::string key;     ///< stable name in files: lower case letters, digits and '-'
    std::string name;    ///< "Hard maple"
    std::string letter;  ///< one or two capitals that stand for it on paper without colour
    Colour colour;       ///< the project's own judgement, not measured
    double density = 0;  ///< kg/m3 at 12 % moisture; 0 where not known
    Section timber;      ///< rough
    std::string source;  ///< where the density is from, or "value from memory"
    friend bool operator==(const Wood&, const Wood&) = default;
};

/// Woods that come with the program, from resources/woods.json, in the order of that file.
const std::vector<Wood>& woodCatalogue();
/// Null where the catalogue has no such key.
const Wood* findWood(const std::vector<Wood>& woods, const std::string& key);
/// -1 where there is no such key.
int woodIndex(const std::vector<Wood>& woods, const std::string& key);

/// Everything wrong, in the order of the woods: keys that are malformed or used twice, empty names,
/// letters that are not one or two capitals or stand for two woods, a density that is negative or
/// heavier than wood can be, a section of 0 or less. Lengths are written in `notation`.
std::vector<Fault> faults(const std::vector<Wood>& woods,
                          const Notation& notation = Notation::millimetres());

}  // namespace kerfwright
