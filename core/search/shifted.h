// Rows that are windows onto one longer row: one wider panel serves them all, shifted and trimmed.
// Less gluing for more timber, so it is offered as a choice and never taken in silence.
#pragma once

#include "core/search/search.h"

#include <vector>

namespace kerfwright {

/// Plans by rows and by columns, all of whose rows (or columns) are words of strips, in which at
/// least two different rows share one wider panel; the one with fewer glue-ups first. A row may be
/// shifted by up to half of its length. None where nothing can be shared so.
///
/// Their members carry `trimFirst` and `trimLast`. In an end-grain build only rows of one height
/// share a panel; in a long-grain build only rows without end-to-end joints do.
std::vector<Found> shiftedAndTrimmed(const Picture& picture);

}  // namespace kerfwright
