// Racks and demands for tests and benchmarks: read from the data beside this file, or grown from a
// seed.
#pragma once

#include "core/timber/layout.h"

#include <cstdint>
#include <string>
#include <vector>

namespace kerfwright::timbertest {

struct Instance {
    std::string name;
    Rack rack;
    Demand demand;
    CutRules rules;
    std::int64_t optimum = 0;  ///< published, or known by construction; 0 where not known
};

/// "lum1", "lum3": every plank costs its area in mm2, in hundredths.
Instance boards(const std::string& name);
/// A folder of data/guillotine: one plank, and all that could be cut from it.
Instance guillotine(const std::string& folder);
/// "roll5600", "roll100": stock lengths enough, each at 1.
Instance textbook(const std::string& example);
/// The 20 of binpack1.txt: bins are planks at 1 each, as many as there are items.
std::vector<Instance> binPacking();

/// One wood, planks of 1500-3200 x 110-260 mm priced by volume with that many knots and cracks
/// spread over them, and strips of eight sizes that take about half of them. The same for the same
/// seed, everywhere.
Instance mixed(std::uint64_t seed, int planks, int strips, int defects);

/// The one that the search is measured on: 30 planks, 260 strips, 60 defects.
Instance measured();

/// Planks that are cut up into the strips that are wanted, with waste only where it was planned and
/// all defects in it. There are dearer planks besides, each larger than all the waste and at twice
/// the price for its area; so no layout is cheaper than the planted one.
Instance planted(std::uint64_t seed, int planks);

/// A project as makers bring it: 6 planks, 20 strips of four sizes, two knots.
Instance typical();

}  // namespace kerfwright::timbertest
