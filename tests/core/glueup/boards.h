// Small boards for the tests of the plan. Sizes and woods are invented.
#pragma once

#include "core/glueup/steps.h"

#include <string>
#include <vector>

namespace kerfwright::test {

inline constexpr Length square = Length::mm(45);

/// Timber so large that every piece can be one stick.
inline std::vector<Wood> endlessWoods(int count,
                                      Section section = {Length::mm(9000), Length::mm(9000)}) {
    std::vector<Wood> woods;
    for (int i = 0; i < count; ++i) {
        const std::string letter(1, static_cast<char>('A' + i));
        woods.push_back(
            {"wood-" + std::to_string(i), "Wood " + letter, letter, {}, 700, section, "invented"});
    }
    return woods;
}

/// The allowances of glue-ups.md 3: k = 3.2, e1 = e2 = 10, m = a_p = a_f = 3, s = 1.
inline Shop notesShop() {
    Shop shop = metricShop();
    shop.kerf = Length::um(3200);
    shop.squaringCut = shop.tail = Length::mm(10);
    shop.trimMargin = shop.panelFlattening = shop.fieldFlattening = Length::mm(3);
    shop.milling = Length::mm(3);
    shop.endAllowance = Length();
    shop.lengthStep = Length::mm(10);
    shop.spareSlices = 1;
    shop.longestStrip = Length::mm(9000);
    return shop;
}

/// One piece a cell; each string is a row, each letter a wood: {"AB", "BA"}.
inline Field letters(const std::vector<std::string>& rows, Length cell = square) {
    Field field;
    field.columns.assign(rows.front().size(), cell);
    field.rows.assign(rows.size(), cell);
    for (int row = 0; row < static_cast<int>(rows.size()); ++row) {
        const std::string& word = rows[static_cast<std::size_t>(row)];
        for (int column = 0; column < static_cast<int>(word.size()); ++column) {
            field.pieces.push_back(
                {column, row, 1, 1, word[static_cast<std::size_t>(column)] - 'A'});
        }
    }
    return field;
}

inline Board boardOf(Field field, Build build = Build::EndGrain) {
    Board board;
    board.build = build;
    board.thickness = Length::mm(40);
    board.field = std::move(field);
    return board;
}

inline Field chequer(int columns, int rows) {
    std::vector<std::string> words;
    for (int row = 0; row < rows; ++row) {
        std::string word;
        for (int column = 0; column < columns; ++column) {
            word += (row + column) % 2 == 0 ? 'A' : 'B';
        }
        words.push_back(word);
    }
    return letters(words);
}

template <class Work_>
std::vector<Work_> all(const StepList& list) {
    std::vector<Work_> found;
    for (const Step& step : list.steps) {
        if (const auto* work = std::get_if<Work_>(&step.work)) {
            found.push_back(*work);
        }
    }
    return found;
}

}  // namespace kerfwright::test
