// Which joints on the face of the field differ from those that were drawn.
#pragma once

#include "core/glueup/rows.h"
#include "core/search/painted.h"

namespace kerfwright::rows {

/// Compares the joints that the bands make with those of the draft's field, and fills in
/// `extraJoints` (piece by piece) and `omittedJoints` (pair by pair of pieces).
void listJoints(Draft& draft);

/// The same for strips of any arrangement that make the field.
void listJoints(const std::vector<PaintedStrip>& strips, const Field& field,
                std::vector<Joint>& extra, std::vector<Joint>& omitted);

}  // namespace kerfwright::rows
