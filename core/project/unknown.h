// What a file holds that this version does not know.
//
// It is kept beside the project as an object of the same shape as the file, without all that is
// known. Items of a list that have a "key" are named by it, so that they find their place again
// after the list was sorted anew.
#pragma once

#include "core/project/json.h"

namespace kerfwright {

/// What `read` has and `ours` has not. What both have must be of one kind, and lists that have
/// keyed items must be equally long. `read` may lack keys of `ours`: files are older than some
/// keys.
Json unknownIn(const Json& read, const Json& ours);
/// Puts `unknown` back, after the known keys of each object. What has lost its place is left out.
void mergeUnknown(Json& ours, const Json& unknown);

}  // namespace kerfwright
