#include "tests/core/replay/randomboard.h"

#include <algorithm>
#include <random>
#include <sstream>

namespace kerfwright::test {

namespace {

class Dice {
public:
    explicit Dice(std::uint64_t seed)
        : engine_(seed) {}

    int from(int least, int greatest) {
        const auto span = static_cast<std::uint64_t>(greatest - least + 1);
        return least + static_cast<int>(engine_() % span);
    }
    bool oneIn(int chances) { return from(1, chances) == 1; }
    /// In tenths of a millimetre or 64ths of an inch, now and then off every grid.
    Length length(int leastMm, int greatestMm) {
        if (oneIn(3)) {
            return Length::inch(from(leastMm * 3, greatestMm * 5 / 2), 64);
        }
        const Length tenths = Length::um(from(leastMm * 10, greatestMm * 10) * 100);
        return oneIn(8) ? tenths + Length::nm(from(0, 99)) : tenths;
    }
    Length lengthOrNone(int leastMm, int greatestMm) {
        return oneIn(3) ? Length() : length(leastMm, greatestMm);
    }

private:
    std::mt19937_64 engine_;
};

std::vector<Length> sizes(Dice& dice, int count) {
    const int greatest = std::min(180, 2900 / count);
    const int style = dice.from(0, 2);
    const Length one = dice.length(5, greatest);
    const Length other = dice.length(5, greatest);
    std::vector<Length> all;
    all.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        all.push_back(style == 0   ? one
                      : style == 1 ? (dice.oneIn(2) ? one : other)
                                   : dice.length(5, greatest));
    }
    if (dice.oneIn(3)) {
        std::copy(all.begin(), all.begin() + count / 2, all.rbegin());
    }
    return all;
}

/// Rows that repeat each other, some of them the other way round, and some of their own.
std::vector<std::vector<int>> rowsOfWoods(Dice& dice, int columns, int rows, int woods) {
    std::vector<std::vector<int>> words;
    for (int r = 0; r < rows; ++r) {
        std::vector<int> word;
        if (r == 0 || dice.oneIn(3)) {
            for (int c = 0; c < columns; ++c) {
                word.push_back(dice.from(0, woods - 1));
            }
        } else {
            word = words[static_cast<std::size_t>(dice.from(0, r - 1))];
            if (dice.oneIn(2)) {
                std::reverse(word.begin(), word.end());
            }
        }
        words.push_back(std::move(word));
    }
    return words;
}

Field field(Dice& dice, int columns, int rows, int woods) {
    Field field;
    field.columns = sizes(dice, columns);
    field.rows = sizes(dice, rows);
    const auto words = rowsOfWoods(dice, columns, rows, woods);
    for (int r = 0; r < rows; ++r) {
        for (int c = 0; c < columns; ++c) {
            field.pieces.push_back(
                {c, r, 1, 1, words[static_cast<std::size_t>(r)][static_cast<std::size_t>(c)]});
        }
    }
    if (dice.oneIn(2)) {
        for (int merges = dice.from(1, std::max(1, std::min(20, columns * rows / 3))); merges > 0;
             --merges) {
            const int c = dice.from(0, columns - 1);
            const int r = dice.from(0, rows - 1);
            field = withMerged(field, c, r, dice.from(1, std::min(4, columns - c)),
                               dice.from(1, std::min(4, rows - r)));
        }
    }
    return field;
}

Border border(Dice& dice, int woods, Build build) {
    const BorderDesign designs[] = {BorderDesign::FixedFrame, BorderDesign::FloatingFrame,
                                    BorderDesign::EdgeBand, BorderDesign::FloatingFrame,
                                    BorderDesign::BreadboardEnds};
    Border border{dice.oneIn(3) ? Length() : dice.length(9, 60), dice.from(0, woods - 1)};
    border.design = build == Build::EndGrain && dice.oneIn(4)
                        ? BorderDesign::EndGrainBand
                        : designs[dice.from(0, build == Build::LongGrain ? 4 : 3)];
    border.housing = dice.oneIn(2) ? Housing::Groove : Housing::Rebate;
    if (dice.oneIn(4)) {
        border.gap = dice.lengthOrNone(1, 4);
    }
    border.inlayWidth = dice.oneIn(2) ? Length() : dice.length(2, 5);
    border.inlayWood = dice.from(0, woods - 1);
    border.splineThickness = dice.oneIn(2) ? Length() : dice.length(1, 3);
    border.splineWood = dice.from(0, woods - 1);
    border.cautionRead = dice.oneIn(2);
    return border;
}

Shop shop(Dice& dice) {
    Shop shop = metricShop();
    shop.kerf = dice.length(1, 5);
    shop.fieldFlattening = dice.lengthOrNone(1, 4);
    shop.panelFlattening = dice.lengthOrNone(1, 4);
    shop.trimMargin = dice.lengthOrNone(1, 6);
    shop.squaringCut = dice.lengthOrNone(3, 20);
    shop.tail = dice.lengthOrNone(3, 30);
    shop.milling = dice.lengthOrNone(1, 5);
    shop.endAllowance = dice.lengthOrNone(1, 30);
    const Length lengthSteps[] = {Length::nm(1), Length::mm(1), Length::mm(10), Length::inch(1)};
    shop.lengthStep = lengthSteps[dice.from(0, 3)];
    shop.spareSlices = dice.from(0, 3);
    shop.longestStrip = dice.oneIn(3) ? dice.length(300, 900) : Length::mm(3000);
    return shop;
}

}  // namespace

RandomBoard randomBoard(std::uint64_t seed, int columns, int rows) {
    Dice dice(seed);
    RandomBoard wish;
    const int woods = dice.from(1, 4);
    for (int i = 0; i < woods; ++i) {
        const std::string letter(1, static_cast<char>('a' + i));
        Wood wood;
        wood.key = "wood-" + letter;
        wood.name = "Wood " + letter;
        wood.letter = letter;
        wood.timber = {dice.length(40, 200), dice.length(60, 400)};
        wish.woods.push_back(std::move(wood));
    }
    wish.board.build = dice.oneIn(2) ? Build::EndGrain : Build::LongGrain;
    wish.board.grain = static_cast<GrainDirection>(dice.from(0, 2));
    wish.board.thickness = dice.length(8, dice.oneIn(2) ? 30 : 70);
    wish.board.field = field(dice, columns, rows, woods);
    wish.board.border = border(dice, woods, wish.board.build);
    if (Border& ring = wish.board.border; ring.design == BorderDesign::EndGrainBand) {
        // It makes the field larger, which has its limits.
        ring.width = std::min(ring.width, Length::mm(45));
        if (std::max(columns, rows) > BoardLimits::cellsAcross - 2) {
            ring.design = BorderDesign::FixedFrame;
        }
    }
    wish.season = {dice.lengthOrNone(1, 4), dice.lengthOrNone(1, 4), dice.lengthOrNone(1, 4),
                   dice.lengthOrNone(1, 4)};
    wish.shop = shop(dice);
    wish.choices.rows = static_cast<RowChoice>(dice.from(0, 2));
    wish.choices.mergeLike = dice.oneIn(2);
    return wish;
}

std::string inWords(const RandomBoard& wish) {
    std::ostringstream out;
    const auto mm = [&](const char* name, Length length) {
        out << name << ' ' << format(length, Notation::millimetres(6)) << "; ";
    };
    const Board& board = wish.board;
    out << (board.build == Build::EndGrain ? "end grain" : "long grain") << ", grain "
        << static_cast<int>(board.grain) << ", rows " << static_cast<int>(wish.choices.rows)
        << (wish.choices.mergeLike ? ", like pieces merged; " : "; ");
    mm("thickness", board.thickness);
    mm("border", board.border.width);
    for (const Length width : board.field.columns) {
        mm("column", width);
    }
    for (const Length height : board.field.rows) {
        mm("row", height);
    }
    for (const Piece& piece : board.field.pieces) {
        out << "piece " << piece.column << ',' << piece.row << ' ' << piece.across << 'x'
            << piece.down << " wood " << piece.wood << "; ";
    }
    for (const Wood& wood : wish.woods) {
        mm("timber", wood.timber.thickness);
        mm("by", wood.timber.width);
    }
    for (const SettingInfo& setting : shopSettings()) {
        mm(setting.key, wish.shop.*setting.value);
    }
    out << "spare slices " << wish.shop.spareSlices;
    return out.str();
}

}  // namespace kerfwright::test
