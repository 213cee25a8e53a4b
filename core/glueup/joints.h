// Which joints on the face of the field differ from those that were drawn.
#pragma once

#include "core/glueup/rows.h"

namespace kerfwright::rows {

/// Compares the joints that the bands make with those of the draft's field, and fills in
/// `extraJoints` (piece by piece) and `omittedJoints` (pair by pair of pieces).
void listJoints(Draft& draft);

}  // namespace kerfwright::rows
