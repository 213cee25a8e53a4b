#include "core/project/patternproject.h"

#include <algorithm>
#include <utility>

namespace kerfwright {

Result<Project> newProject(Unit unit, Pattern pattern) {
    Project project = newProject(unit);
    std::vector<int> order = project.recipe->woods;
    for (int wood = 0; wood < static_cast<int>(project.woods.size()); ++wood) {
        if (std::find(order.begin(), order.end(), wood) == order.end() &&
            wood != project.board.border.wood) {
            order.push_back(wood);
        }
    }
    order.push_back(project.board.border.wood);
    const std::size_t wanted = static_cast<std::size_t>(patternInfo(pattern).woods);
    order.resize(std::min(order.size(), wanted));
    constexpr int squares = 8;
    const Result<Recipe> recipe =
        recipeOfSquares(pattern, squares, squares, project.recipe->width, project.recipe->height,
                        ruleStep(unit), std::move(order));
    if (!recipe) {
        return recipe.fault();
    }
    Result<Field> field = layOut(*recipe, project.notation);
    if (!field) {
        return field.fault();
    }
    project.recipe = *recipe;
    project.board.field = std::move(field).value();
    return project;
}

}  // namespace kerfwright
