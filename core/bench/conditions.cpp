#include "core/bench/conditions.h"

#include <iterator>
#include <utility>

namespace kerfwright {

std::vector<Fault> faults(const Conditions& conditions, const Notation& notation) {
    std::vector<Fault> all = faults(conditions.climate);
    for (std::vector<Fault> more : {faults(conditions.glue), faults(conditions.purpose, notation),
                                    faults(conditions.rates)}) {
        std::move(more.begin(), more.end(), std::back_inserter(all));
    }
    return all;
}

}  // namespace kerfwright
