#include "core/board/recipe.h"

#include "core/board/families.h"
#include "core/measure/at.h"
#include "core/words/say.h"

#include <algorithm>
#include <limits>
#include <string>
#include <string_view>
#include <utility>

namespace kerfwright {

namespace laying {
namespace {

std::string rangeRule(int least, int greatest) {
    return say("must be from {1} to {2} with this pattern", least, greatest);
}

/// The greatest value of one count, at most its own, for which the cells of `side` are few enough.
int greatestCount(const PatternFamily& family, Recipe recipe, std::size_t which,
                  int GridSize::*side) {
    int& value = recipe.counts[which];
    const PatternCount& count = family.info.counts[which];
    for (value = count.greatest; value > count.least; --value) {
        if (family.grid(recipe).*side <= BoardLimits::cellsAcross) {
            break;
        }
    }
    return value;
}

/// The count that makes too many cells: one that lies that way, if there is one.
std::size_t blamed(const PatternInfo& info, CountedAlong along) {
    for (std::size_t i = 0; i < info.counts.size(); ++i) {
        if (info.counts[i].along == along) {
            return i;
        }
    }
    return info.counts.size() - 1;
}

}  // namespace

std::vector<Fault> countFaults(const Recipe& recipe) {
    const PatternFamily& family = familyOf(recipe.pattern);
    const PatternInfo& info = family.info;
    std::vector<Fault> all;
    if (recipe.counts.size() != info.counts.size()) {
        all.push_back({say("Counts"), say("must be {1} with this pattern", info.counts.size()),
                       std::to_string(recipe.counts.size())});
        return all;
    }
    for (std::size_t i = 0; i < info.counts.size(); ++i) {
        const PatternCount& count = info.counts[i];
        if (recipe.counts[i] < count.least || recipe.counts[i] > count.greatest) {
            // How many fit is asked with the others as they are usual, since those may be wrong.
            const bool down = count.along == CountedAlong::Height;
            Recipe usual = recipe;
            for (std::size_t k = 0; k < info.counts.size(); ++k) {
                usual.counts[k] = info.counts[k].usual;
            }
            const int most =
                greatestCount(family, usual, i, down ? &GridSize::rows : &GridSize::columns);
            all.push_back({say(count.name),
                           rangeRule(count.least,
                                     count.along == CountedAlong::Neither ? count.greatest : most),
                           std::to_string(recipe.counts[i])});
        }
    }
    if (!all.empty()) {
        return all;
    }
    for (const auto& [along, side] : {std::pair{CountedAlong::Width, &GridSize::columns},
                                      std::pair{CountedAlong::Height, &GridSize::rows}}) {
        if (family.grid(recipe).*side > BoardLimits::cellsAcross) {
            const std::size_t which = blamed(info, along);
            all.push_back(
                {say(info.counts[which].name),
                 rangeRule(info.counts[which].least, greatestCount(family, recipe, which, side)),
                 std::to_string(recipe.counts[which])});
        }
    }
    return all;
}

std::vector<Length> usualLengths(const Recipe& recipe) {
    const PatternInfo& info = patternInfo(recipe.pattern);
    Length least = std::min(recipe.width, recipe.height);
    for (std::size_t i = 0; i < info.counts.size(); ++i) {
        const CountedAlong along = info.counts[i].along;
        if (along != CountedAlong::Neither) {
            const Length whole = along == CountedAlong::Width ? recipe.width : recipe.height;
            least = std::min(least, Length::nm(whole.nm() / std::max(1, recipe.counts[i])));
        }
    }
    const bool inches = recipe.step.nm() % Length::inch(1, 64).nm() == 0;
    const Length round = inches ? Length::inch(1, 16) : Length::mm(1);
    std::vector<Length> all;
    for (const PatternLength& length : info.lengths) {
        all.push_back(std::max(nearestPart(least, length.parts, round),
                               roundedUp(BoardLimits::leastCell, round)));
    }
    return all;
}

}  // namespace laying

namespace {

using laying::familyOf;
using laying::PatternFamily;

void checkRange(std::vector<Fault>& all, const std::string& entry, Length value, Length least,
                Length greatest, const Notation& notation) {
    if (value < least || value > greatest) {
        all.push_back({entry,
                       say("must be from {1} to {2}", formatLeast(least, notation),
                           formatGreatest(greatest, notation)),
                       formatExact(value, notation)});
    }
}

/// What is wrong before anything can be laid out.
std::vector<Fault> numberFaults(const Recipe& recipe, const Notation& notation) {
    std::vector<Fault> all = laying::countFaults(recipe);
    const PatternInfo& info = patternInfo(recipe.pattern);
    if (recipe.lengths.size() != info.lengths.size()) {
        all.push_back({say("Lengths"), say("must be {1} with this pattern", info.lengths.size()),
                       std::to_string(recipe.lengths.size())});
    } else {
        for (std::size_t i = 0; i < info.lengths.size(); ++i) {
            checkRange(all, say(info.lengths[i].name), recipe.lengths[i], BoardLimits::leastCell,
                       BoardLimits::greatestCell, notation);
        }
    }
    checkRange(all, say("Field width"), recipe.width, BoardLimits::leastCell,
               BoardLimits::greatestField, notation);
    checkRange(all, say("Field height"), recipe.height, BoardLimits::leastCell,
               BoardLimits::greatestField, notation);
    checkRange(all, sayIn("grid", "Step"), recipe.step, Length::nm(1), RecipeLimits::greatestStep,
               notation);
    if (recipe.woods.empty()) {
        all.push_back({say("Woods"), say("must be one at least"), say("none")});
    } else if (recipe.woods.size() > static_cast<std::size_t>(RecipeLimits::woods)) {
        all.push_back({say("Woods"), say("must be at most {1}", RecipeLimits::woods),
                       std::to_string(recipe.woods.size())});
    } else if (const int wood = *std::min_element(recipe.woods.begin(), recipe.woods.end());
               wood < 0) {
        all.push_back(
            {say("Woods"), say("must be woods of the project"), say("wood number {1}", wood)});
    }
    return all;
}

/// The first column or row that the numbers leave too little or too much for. `entry` and `rule`
/// are to be said, with its number and with the limits.
void checkCells(std::vector<Fault>& all, const std::vector<Length>& sizes, const char* entry,
                const char* rule, const Notation& notation) {
    for (std::size_t i = 0; i < sizes.size() && all.empty(); ++i) {
        if (sizes[i] < BoardLimits::leastCell || sizes[i] > BoardLimits::greatestCell) {
            all.push_back({say(entry, i + 1),
                           say(rule, formatLeast(BoardLimits::leastCell, notation),
                               formatGreatest(BoardLimits::greatestCell, notation)),
                           format(sizes[i], notation)});
        }
    }
}

/// `length` times `numerator / denominator`, on the step.
Length inProportion(Length length, Length numerator, Length denominator, Length step) {
    const detail::Wide product = area(length, numerator).squareNm();
    const detail::Wide unit = area(denominator, step).squareNm();
    return step * static_cast<std::int64_t>((product + unit / 2) / unit);
}

}  // namespace

Length ruleStep(Unit unit) {
    return unit == Unit::Inches ? Length::inch(1, 64) : Length::um(100);
}

Result<Field> layOut(const Recipe& recipe, const Notation& notation) {
    if (const std::vector<Fault> found = numberFaults(recipe, notation); !found.empty()) {
        return found.front();
    }
    Field field = familyOf(recipe.pattern).lay(recipe);
    std::vector<Fault> found;
    checkCells(found, field.columns, noted("Column {1}"),
               noted("must come out from {1} to {2} wide"), notation);
    checkCells(found, field.rows, noted("Row {1}"), noted("must come out from {1} to {2} high"),
               notation);
    if (!found.empty()) {
        return found.front();
    }
    return field;
}

std::vector<Fault> faults(const Recipe& recipe, const Field& field, const Notation& notation) {
    std::vector<Fault> all = numberFaults(recipe, notation);
    if (!all.empty()) {
        return all;
    }
    const Result<Field> laid = layOut(recipe, notation);
    if (!laid) {
        all.push_back(laid.fault());
    } else if (*laid != field) {
        all.push_back({say("Field"), say("must be what its recipe lays out, or have no recipe"),
                       say("another field")});
    }
    return all;
}

Recipe usualRecipe(Pattern pattern, Length width, Length height, Length step,
                   std::vector<int> woods) {
    const PatternInfo& info = patternInfo(pattern);
    const std::size_t given = woods.size();
    for (auto role = given; info.apart > 0 && given > 0 && role < info.roles.size(); ++role) {
        woods.push_back(woods[role % static_cast<std::size_t>(info.apart) % given]);
    }
    Recipe recipe{pattern, {}, {}, std::move(woods), width, height, step};
    for (const PatternCount& count : info.counts) {
        recipe.counts.push_back(count.usual);
    }
    recipe.lengths = laying::usualLengths(recipe);
    return recipe;
}

Result<Recipe> recipeOfSquares(Pattern pattern, int columns, int rows, Length width, Length height,
                               Length step, std::vector<int> woods) {
    const PatternFamily& family = familyOf(pattern);
    Recipe recipe = usualRecipe(pattern, width, height, step, std::move(woods));
    const std::vector<PatternCount>& counts = family.info.counts;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        if (counts[i].along != CountedAlong::Neither) {
            const int squares = counts[i].along == CountedAlong::Width ? columns : rows;
            recipe.counts[i] = std::clamp((squares + counts[i].squares / 2) / counts[i].squares,
                                          counts[i].least, counts[i].greatest);
        }
    }
    for (;;) {
        recipe.lengths = laying::usualLengths(recipe);
        const Result<Field> laid = layOut(recipe);
        if (laid) {
            return recipe;
        }
        // One less of what there is most of.
        std::size_t most = counts.size();
        for (std::size_t i = 0; i < counts.size(); ++i) {
            if (recipe.counts[i] > counts[i].least &&
                (most == counts.size() || recipe.counts[i] > recipe.counts[most])) {
                most = i;
            }
        }
        if (most == counts.size()) {
            return laid.fault();
        }
        --recipe.counts[most];
    }
}

namespace {

/// With the least counts that give at least so many columns and rows.
Recipe withCounts(Recipe recipe, std::size_t columns, std::size_t rows) {
    const PatternFamily& family = familyOf(recipe.pattern);
    const auto countsUntil = [&](CountedAlong along, int laying::GridSize::*side,
                                 std::size_t cells) {
        for (std::size_t i = 0; i < family.info.counts.size(); ++i) {
            const PatternCount& count = family.info.counts[i];
            if (count.along == along) {
                int& value = recipe.counts[i];
                for (value = count.least; value < count.greatest; ++value) {
                    if (family.grid(recipe).*side >= static_cast<int>(cells)) {
                        break;
                    }
                }
            }
        }
    };
    countsUntil(CountedAlong::Width, &laying::GridSize::columns, columns);
    countsUntil(CountedAlong::Height, &laying::GridSize::rows, rows);
    return recipe;
}

}  // namespace

std::optional<Recipe> recounted(const Recipe& recipe, int columns, int rows) {
    const Result<Field> before = layOut(recipe);
    if (!before || columns < 1 || rows < 1) {
        return std::nullopt;
    }
    Recipe wanted = withCounts(recipe, at(columns), at(rows));
    const auto asMany = [](Length size, int now, std::size_t then) {
        return Length::nm(size.nm() * now / static_cast<std::int64_t>(then));
    };
    // What is left of the room grows with it, so that fewer squares again are the same as before.
    wanted.width = asMany(recipe.width, columns, before->columns.size());
    wanted.height = asMany(recipe.height, rows, before->rows.size());
    const Result<Field> laid = layOut(wanted);
    const bool fits = laid && laid->columns.size() == at(columns) && laid->rows.size() == at(rows);
    return fits ? std::optional(std::move(wanted)) : std::nullopt;
}

std::optional<Recipe> refitted(const Recipe& recipe, const Field& field) {
    const Result<Field> before = layOut(recipe);
    if (!before) {
        return std::nullopt;
    }
    Recipe wanted = withCounts(recipe, field.columns.size(), field.rows.size());
    // Room that nothing was made of stays where the size stayed.
    if (field.width() != before->width()) {
        wanted.width = field.width();
    }
    if (field.height() != before->height()) {
        wanted.height = field.height();
    }
    const auto lays = [&field](const Recipe& candidate) {
        const Result<Field> laid = layOut(candidate);
        return laid && *laid == field;
    };
    if (lays(wanted)) {
        return wanted;
    }
    Recipe inProportionToo = wanted;
    for (Length& length : inProportionToo.lengths) {
        length = inProportion(length, field.columns.front(), before->columns.front(), wanted.step);
    }
    return lays(inProportionToo) ? std::optional(std::move(inProportionToo)) : std::nullopt;
}

}  // namespace kerfwright
