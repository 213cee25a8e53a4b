#include "core/board/grown.h"

#include "core/measure/at.h"
#include "core/words/say.h"

#include <algorithm>
#include <utility>

namespace kerfwright {
namespace {

/// Below that no square is a square of a board.
constexpr Length leastSquare = Length::mm(5);

/// Of `size` as `now` stands to `before`, to the nearest step and at least one.
Length scaled(Length size, Length now, Length before, Length step) {
    const detail::Wide exact = detail::Wide{size.nm()} * now.nm();
    const detail::Wide grid = detail::Wide{before.nm()} * step.nm();
    const detail::Wide steps = std::max<detail::Wide>((exact * 2 + grid) / (grid * 2), 1);
    return step * static_cast<std::int64_t>(steps);
}

bool isAllowed(const Field& field) {
    const auto within = [](const std::vector<Length>& sizes, Length whole) {
        return sizes.size() <= at(BoardLimits::cellsAcross) &&
               whole <= BoardLimits::greatestField &&
               std::all_of(sizes.begin(), sizes.end(), [](Length size) {
                   return size >= BoardLimits::leastCell && size <= BoardLimits::greatestCell;
               });
    };
    return within(field.columns, field.width()) && within(field.rows, field.height());
}

std::vector<GrownField> bySquares(const Field& field, const std::optional<Recipe>& recipe,
                                  Length step, const Notation& notation) {
    const Length smallest = std::min(*std::min_element(field.columns.begin(), field.columns.end()),
                                     *std::min_element(field.rows.begin(), field.rows.end()));
    std::vector<GrownField> grown;
    for (Length size = step; size <= BoardLimits::greatestCell; size += step) {
        if (size < leastSquare) {
            continue;
        }
        Field larger = field;
        for (std::vector<Length>* sizes : {&larger.columns, &larger.rows}) {
            for (Length& each : *sizes) {
                each = scaled(each, size, smallest, step);
            }
        }
        if (larger.width() > BoardLimits::greatestField ||
            larger.height() > BoardLimits::greatestField) {
            break;
        }
        if (isAllowed(larger)) {
            std::optional<Recipe> same = recipe ? refitted(*recipe, larger) : std::nullopt;
            grown.push_back({std::move(larger), std::move(same),
                             say("squares of {1}", format(size, notation))});
        }
    }
    return grown;
}

std::string countWords(const Field& field) {
    return say("{1} × {2} squares", field.columns.size(), field.rows.size());
}

std::vector<GrownField> byRecipe(const Field& field, const Recipe& recipe) {
    const std::vector<PatternCount>& counts = patternInfo(recipe.pattern).counts;
    int across = 0;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        if (counts[i].along == CountedAlong::Width) {
            across = recipe.counts[i];
        }
    }
    std::vector<GrownField> grown;
    for (int now = 1; across > 0 && now <= BoardLimits::cellsAcross; ++now) {
        Recipe larger = recipe;
        bool inRange = true;
        for (std::size_t i = 0; i < counts.size(); ++i) {
            if (counts[i].along == CountedAlong::Neither) {
                continue;
            }
            const int before = recipe.counts[i];
            const int after = std::max((before * now * 2 + across) / (across * 2), 1);
            const bool wide = counts[i].along == CountedAlong::Width;
            Length& room = wide ? larger.width : larger.height;
            const Length taken = wide ? field.width() : field.height();
            room = Length::nm(static_cast<std::int64_t>(
                (detail::Wide{taken.nm()} * after + before - 1) / before));
            larger.counts[i] = after;
            inRange = inRange && after >= counts[i].least && after <= counts[i].greatest;
        }
        if (!inRange || larger.width > BoardLimits::greatestField ||
            larger.height > BoardLimits::greatestField) {
            continue;
        }
        if (const Result<Field> laid = layOut(larger); laid && isAllowed(*laid)) {
            grown.push_back({*laid, larger, countWords(*laid)});
        }
    }
    return grown;
}

/// The shortest part of a side after which it repeats itself, `same(i, k)` told line by line.
template <class Same>
int period(int count, const Same& same) {
    for (int part = 1; part < count; ++part) {
        bool repeats = true;
        for (int i = part; i < count && repeats; ++i) {
            repeats = same(i, i - part);
        }
        if (repeats) {
            return part;
        }
    }
    return count;
}

std::vector<GrownField> byRepeating(const Field& field) {
    const bool plain =
        std::all_of(field.pieces.begin(), field.pieces.end(),
                    [](const Piece& piece) { return piece.across == 1 && piece.down == 1; });
    if (!plain) {
        return {};
    }
    const int columns = static_cast<int>(field.columns.size());
    const int rows = static_cast<int>(field.rows.size());
    std::vector<int> woods(at(columns * rows), 0);
    for (const Piece& piece : field.pieces) {
        woods[at(piece.row * columns + piece.column)] = piece.wood;
    }
    const auto wood = [&](int column, int row) { return woods[at(row * columns + column)]; };
    const int across = period(columns, [&](int a, int b) {
        bool same = field.columns[at(a)] == field.columns[at(b)];
        for (int row = 0; row < rows && same; ++row) {
            same = wood(a, row) == wood(b, row);
        }
        return same;
    });
    const int down = period(rows, [&](int a, int b) {
        bool same = field.rows[at(a)] == field.rows[at(b)];
        for (int column = 0; column < columns && same; ++column) {
            same = wood(column, a) == wood(column, b);
        }
        return same;
    });
    std::vector<GrownField> grown;
    for (int now = 1; now <= BoardLimits::cellsAcross; ++now) {
        const int high = std::max((rows * now * 2 + columns) / (columns * 2), 1);
        Field larger;
        for (int i = 0; i < now; ++i) {
            larger.columns.push_back(field.columns[at(i % across)]);
        }
        for (int i = 0; i < high; ++i) {
            larger.rows.push_back(field.rows[at(i % down)]);
        }
        for (int row = 0; row < high; ++row) {
            for (int column = 0; column < now; ++column) {
                larger.pieces.push_back({column, row, 1, 1, wood(column % across, row % down)});
            }
        }
        if (!isAllowed(larger)) {
            break;
        }
        grown.push_back({larger, std::nullopt, countWords(larger)});
    }
    return grown;
}

}  // namespace

std::vector<GrownField> grownFields(const Field& field, const std::optional<Recipe>& recipe,
                                    Growth growth, Length step, const Notation& notation) {
    if (growth == Growth::Squares) {
        return bySquares(field, recipe, step, notation);
    }
    return recipe ? byRecipe(field, *recipe) : byRepeating(field);
}

}  // namespace kerfwright
