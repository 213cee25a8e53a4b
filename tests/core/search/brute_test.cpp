#include "core/search/search.h"
#include "tests/core/search/brute.h"
#include "tests/core/search/pictures.h"

#include <gtest/gtest.h>

#include <array>
#include <random>
#include <string>

namespace kerfwright::searching {
namespace {

#ifdef KERFWRIGHT_SANITIZED
constexpr int thinned = 20;  // looks at every so manieth picture only
#else
constexpr int thinned = 1;
#endif

Field field(const Cells& cells) {
    Field field = plainGrid(cells.columns, cells.rows, Length::mm(40), Length::mm(40), 0);
    for (Piece& piece : field.pieces)
        piece.wood = cells.wood(piece.column, piece.row);
    return field;
}

std::string text(const Cells& cells) {
    std::string text;
    for (int row = 0; row < cells.rows; ++row) {
        for (int column = 0; column < cells.columns; ++column)
            text += static_cast<char>('A' + cells.wood(column, row));
        text += ' ';
    }
    return text;
}

struct Case {
    Rule rule;
    bool mergeLike;
};

/// "" where the search agrees with the brute force and its constructions are sound.
std::string difference(const Cells& cells, Case which, BruteForce& brute) {
    const Laying laying = which.rule == Rule::GrainDown ? Laying::GrainDown : Laying::EndGrain;
    const Picture picture = pictureOf(field(cells), laying, which.mergeLike);
    SearchOptions options;
    options.thinning = which.rule == Rule::Thinned;
    const SearchResult result = fewestGlueUps(picture, options);
    const int fewest = brute.fewest(cells);
    const std::string name = text(cells) + "brute force " + std::to_string(fewest) + ", ";
    if (result.found.empty())
        return name + "nothing found";
    if (result.found.front().glueUps != fewest)
        return name + "search " + std::to_string(result.found.front().glueUps);
    if (!result.proven || result.bound != fewest)
        return name + "not proven";
    const std::string wrong = mistakes(result.found.front().construction, picture);
    return wrong.empty() ? wrong : name + wrong;
}

/// Of all pictures that differ in the names of woods or by mirroring only the first.
bool isFirst(const Cells& cells) {
    for (int way = 0; way < 4; ++way) {
        std::array<int, 4> names{-1, -1, -1, -1};
        int next = 0;
        for (int i = 0; i < cells.columns * cells.rows; ++i) {
            const int column = i % cells.columns;
            const int row = i / cells.columns;
            const int wood = cells.wood((way & 1) != 0 ? cells.columns - 1 - column : column,
                                        (way & 2) != 0 ? cells.rows - 1 - row : row);
            int& name = names[static_cast<std::size_t>(wood)];
            if (name < 0)
                name = next++;
            const int here = cells.wood(column, row);
            if (name != here) {
                if (way == 0 || name < here)
                    return false;
                break;
            }
        }
    }
    return true;
}

/// All pictures of that size in three woods, as far as they can differ.
void compareAll(int columns, int rows, Case which, int every) {
    BruteForce brute(which.rule, which.mergeLike);
    const int count = columns * rows;
    std::vector<int> woods(static_cast<std::size_t>(count), 0);
    int seen = 0;
    // Counts through all texts in which woods are named in the order in which they appear.
    while (true) {
        Cells cells{columns, rows, 0};
        for (int i = 0; i < count; ++i)
            cells.set(i % columns, i / columns, woods[static_cast<std::size_t>(i)]);
        if (isFirst(cells) && seen++ % every == 0) {
            ASSERT_EQ(difference(cells, which, brute), "");
        }
        int place = count - 1;
        for (; place > 0; --place) {
            int most = 0;
            for (int i = 0; i < place; ++i)
                most = std::max(most, woods[static_cast<std::size_t>(i)] + 1);
            int& wood = woods[static_cast<std::size_t>(place)];
            if (wood < std::min(most, 2)) {
                ++wood;
                break;
            }
            wood = 0;
        }
        if (place <= 0)
            break;
    }
    EXPECT_GT(seen, 0);
}

void compareSample(Case which, int many, unsigned seed) {
    BruteForce brute(which.rule, which.mergeLike);
    std::mt19937 random(seed);
    for (int i = 0; i < many; ++i) {
        Cells cells{4, 4, 0};
        const auto woods = 2 + random() % 3;
        for (int cell = 0; cell < 16; ++cell)
            cells.set(cell % 4, cell / 4, static_cast<int>(random() % woods));
        ASSERT_EQ(difference(cells, which, brute), "");
    }
}

TEST(BruteForceSearch, AgreesOnEveryPictureUpToThreeByFour) {
    for (int columns = 1; columns <= 4; ++columns)
        for (int rows = 1; rows <= 3; ++rows)
            compareAll(columns, rows, {Rule::EndGrain, true}, columns * rows > 6 ? thinned : 1);
}

TEST(BruteForceSearch, AgreesOnEveryPictureUpToThreeByThreeInOtherBuilds) {
    for (const Case which : {Case{Rule::EndGrain, false}, Case{Rule::Thinned, true},
                             Case{Rule::GrainDown, true}, Case{Rule::GrainDown, false}}) {
        compareAll(3, 3, which, thinned);
        compareAll(4, 2, which, thinned);
        compareAll(2, 4, which, thinned);
    }
}

TEST(BruteForceSearch, AgreesOnASampleOfFourByFour) {
    compareSample({Rule::EndGrain, true}, 2000 / thinned, 1);
    compareSample({Rule::EndGrain, false}, 400 / thinned, 2);
    compareSample({Rule::Thinned, true}, 400 / thinned, 3);
    compareSample({Rule::GrainDown, true}, 400 / thinned, 4);
}

}  // namespace
}  // namespace kerfwright::searching
