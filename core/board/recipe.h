// A recipe: a pattern with its numbers, its woods and the room that it fills. A field that was laid
// from one can be laid anew with other numbers.
#pragma once

#include "core/board/patterns.h"
#include "core/measure/notation.h"
#include "core/measure/result.h"

#include <optional>
#include <vector>

namespace kerfwright {

struct Recipe {
    Pattern pattern = Pattern::Chequer;
    std::vector<int> counts;      ///< in the order of the pattern's own
    std::vector<Length> lengths;  ///< the same
    std::vector<int> woods;       ///< indices into the project's, in the order of the roles; 1 to 8
    Length width, height;  ///< the room: the field is as large as equal parts on the step allow,
                           ///< never larger. 2 mm to 3000 mm
    Length step;           ///< what derived sizes are multiples of: more than 0, to 1 mm
    friend bool operator==(const Recipe&, const Recipe&) = default;
};

struct RecipeLimits {
    static constexpr int woods = 8;
    static constexpr Length greatestStep = Length::mm(1);
};

/// The step of a maker's rule: 1/64 in or 0.1 mm.
Length ruleStep(Unit unit);

/// The field. The fault names the number by its name on screen, or the column or row that would be
/// too thin or too thick; lengths in it are written in `notation`.
Result<Field> layOut(const Recipe& recipe, const Notation& notation = Notation::millimetres(3));

/// Everything wrong with a recipe as that of `field`: it must lay out exactly this field.
std::vector<Fault> faults(const Recipe& recipe, const Field& field,
                          const Notation& notation = Notation::millimetres(3));

/// With the usual counts, and the usual lengths for them.
Recipe usualRecipe(Pattern pattern, Length width, Length height, Length step,
                   std::vector<int> woods);

/// By the size of its cells: the same numbers, and the room that they take. The fault is the first
/// of a count or a size; it may still have no layout.
Result<Recipe> recipeOf(const PatternRequest& request);

/// With as many bricks, tiles or stripes as stand for a grid of `columns` x `rows` squares, fewer
/// where that would be too fine for the room. The fault says why not even the fewest have room.
Result<Recipe> recipeOfSquares(Pattern pattern, int columns, int rows, Length width, Length height,
                               Length step, std::vector<int> woods);

/// For a grid of `columns` x `rows` with squares as large as before: the pattern goes on. Empty
/// where no counts of the recipe give just that grid, or it has no room.
std::optional<Recipe> recounted(const Recipe& recipe, int columns, int rows);

/// The same recipe in the sizes and counts of `field`, where it still lays out exactly that: after
/// squares were made larger, or rows added. Empty where the field has gone its own way.
std::optional<Recipe> refitted(const Recipe& recipe, const Field& field);

}  // namespace kerfwright
