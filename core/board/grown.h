// The same field in other sizes: smaller and larger squares, or fewer and more of them.
#pragma once

#include "core/board/board.h"
#include "core/board/recipe.h"

#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

enum class Growth {
    Squares,  ///< all cells larger, as many as before
    Cells,    ///< more rows and columns of the same size
};

struct GrownField {
    Field field;
    std::optional<Recipe> recipe;  ///< where that of the field lays this one out too
    std::string words;             ///< "squares of 42 mm", "9 × 9 squares"
};

/// From the smallest to the largest that a board may be, each a step larger: by squares the
/// smallest cell is a whole number of `step`, more than 0, and the others follow in proportion, to
/// whole steps; by cells a recipe is laid out with other counts, and a plain grid goes on as it
/// began. Empty where the field has no way to grow: pieces over several cells and no recipe.
std::vector<GrownField> grownFields(const Field& field, const std::optional<Recipe>& recipe,
                                    Growth growth, Length step, const Notation& notation);

}  // namespace kerfwright
