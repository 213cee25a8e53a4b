// Brings a sheet to as few pages as it needs, none of them nearly empty.
#pragma once

#include "core/sheets/flow.h"

#include <functional>
#include <vector>

namespace kerfwright {

/// Sets one sheet by `set`, which appends its pages; again with a closer `Fit` where that saves a
/// page or where a page that goes on from another would hold only a few lines: first with the
/// shortest safety words, then with tables set closer, then with lines of the pages before moved to
/// the last one.
void settle(std::vector<Draft>& drafts, const Matter& matter,
            const std::function<void(std::vector<Draft>&, const Matter&)>& set);

}  // namespace kerfwright
