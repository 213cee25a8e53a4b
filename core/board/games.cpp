#include "core/board/games.h"

#include "core/words/say.h"

namespace kerfwright {

const std::vector<SquareSizes>& squareSizes() {
    static const std::vector<SquareSizes> all{
        {BoardUse::ChessBoard, 8, Length::mm(50), Length::mm(60), "FIDE",
         noted("FIDE, 5 to 6 cm, quoted at second hand")},
        {BoardUse::ChessBoard, 8, Length::inch(2), Length::inch(5, 2), "US Chess",
         noted("US Chess, 2 to 2 1/2 in, seen in a page on its rules")},
        {BoardUse::DraughtsBoard, 8, Length::mm(45), Length::mm(50), "WCDF",
         noted("WCDF (English draughts), 4.5 to 5 cm, seen in a page on equipment")},
        {BoardUse::DraughtsBoard, 8, Length::inch(2), Length::inch(2), noted("American checkers"),
         noted("American Checker Federation, 2 in, seen in a page on boards")},
        {BoardUse::DraughtsBoard, 10, Length::mm(40), Length::mm(52),
         noted("international draughts"),
         noted("Custom, as told in a forum: men of 35 to 45 mm and 5 to 7 mm more. The federation "
               "sets no size")},
    };
    return all;
}

FootShare footShare(BoardUse use, int across) {
    if (use == BoardUse::ChessBoard) {
        return {
            0.70, 0.80,
            noted(
                "King's base 75 to 80 % of the square by US Chess custom, about 70 % by a maker of "
                "boards")};
    }
    if (across == 10) {
        return {0.83, 0.90, noted("Square = man + 5 to 7 mm, for men of 35 to 45 mm")};
    }
    return {0.60, 0.89, noted("WCDF: men of 3 to 4 cm on squares of 4.5 to 5 cm")};
}

Length squareFor(BoardUse use, int across, Length foot, Unit unit) {
    const Length step = unit == Unit::Inches ? Length::inch(1, 8) : Length::mm(1);
    if (use == BoardUse::ChessBoard) {
        return roundedUp(Length::nm((foot.nm() * 4 + 2) / 3), step);
    }
    if (across == 10) {
        return roundedUp(foot + Length::mm(6), step);
    }
    return roundedUp(Length::nm((foot.nm() * 100 + 77) / 78), step);
}

}  // namespace kerfwright
