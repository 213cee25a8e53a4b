// Woods that the maker adds, and values that the maker knows better.
#pragma once

#include "core/wood/wood.h"
#include "core/words/say.h"

namespace kerfwright {

/// What stands in files as the source of a value that the maker typed; said where it is shown.
inline constexpr const char* ownSource = noted("The maker's own value");

/// A wood of which nothing is known yet, with a key, a name and a letter that none of `taken` and
/// no wood of the catalogue has; its timber is that of the catalogue.
Wood ownWood(const std::vector<Wood>& taken);

/// Sees to the sources after a change: a value that differs from that in `before` has the maker for
/// its source; one that is not known any more has none; and one that is again what the catalogue
/// says of this wood has the catalogue's.
void renewSources(Wood& changed, const Wood& before);

}  // namespace kerfwright
