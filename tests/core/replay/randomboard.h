// Boards, woods, shops and choices at random, within what a form would take.
#pragma once

#include "core/board/board.h"
#include "core/glueup/borderfit.h"
#include "core/glueup/plan.h"
#include "core/shop/shop.h"
#include "core/wood/wood.h"

#include <cstdint>
#include <string>
#include <vector>

namespace kerfwright::test {

#ifdef KERFWRIGHT_SANITIZED
constexpr bool underSanitizers = true;
#else
constexpr bool underSanitizers = false;
#endif

struct RandomBoard {
    Board board;
    std::vector<Wood> woods;
    Shop shop;
    Choices choices;
    FieldSeason season;
};

/// The same board for the same numbers.
RandomBoard randomBoard(std::uint64_t seed, int columns, int rows);

/// All numbers that matter, for the message of a failed test.
std::string inWords(const RandomBoard& wish);

}  // namespace kerfwright::test
