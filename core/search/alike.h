// Kinds that look alike but may not be joined alike.
#pragma once

#include "core/search/kinds.h"

namespace kerfwright::kinds {

/// Where like neighbours may be one strip, two blocks can show the same woods and yet have their
/// tiles, and so the lines along which they may be parted, in different places: a way of making the
/// one can then serve the other, or not. The search takes them for two kinds. Whether there are
/// such blocks; then what it rules out from three glue-ups on may still be possible.
bool someLookAlike(const Kinds& kinds);

}  // namespace kerfwright::kinds
