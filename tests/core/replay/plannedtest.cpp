// Random boards through the planner and over the bench.
#include "core/replay/replay.h"
#include "tests/core/replay/randomboard.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <sstream>

namespace kerfwright {
namespace {

using namespace test;

/// What the boards of a run were like, so that a generator gone narrow is noticed.
struct Seen {
    int planned = 0;
    int refused = 0;
    int endGrain = 0;
    int byColumns = 0;
    int extraJoints = 0;
    int omittedJoints = 0;
    int borders = 0;
    int bands = 0;
    int oneSlice = 0;
    int spares = 0;
    int noMargin = 0;
};

void note(const RandomBoard& wish, const Plan& plan, Seen& seen) {
    ++seen.planned;
    seen.endGrain += wish.board.build == Build::EndGrain ? 1 : 0;
    seen.byColumns += plan.byColumns ? 1 : 0;
    seen.extraJoints += plan.extraJoints.empty() ? 0 : 1;
    seen.omittedJoints += plan.omittedJoints.empty() ? 0 : 1;
    seen.borders += wish.board.border.width > Length() ? 1 : 0;
    seen.bands += wish.board.border.has(BorderDesign::EndGrainBand) ? 1 : 0;
    seen.oneSlice += plan.field().isGlued() ? 0 : 1;
    seen.spares += wish.shop.spareSlices > 0 ? 1 : 0;
    seen.noMargin += wish.shop.trimMargin == Length() ? 1 : 0;
}

/// Runs until so many boards have been planned and proved.
void prove(int boards, int leastCells, int greatestCells, Seen& seen) {
    rc::detail::TestMetadata metadata;
    metadata.id = "replay:random-boards";
    metadata.description = "a planned board comes out of its steps";
    rc::detail::TestParams params = rc::detail::configuration().testParams;
    params.maxSuccess = boards;
    const auto property = [&] {
        const auto cells = rc::gen::inRange(leastCells, greatestCells + 1);
        const int columns = *cells;
        const int rows = *cells;
        const auto seed = *rc::gen::noShrink(rc::gen::inRange<std::uint64_t>(0, 1ULL << 60U));
        const RandomBoard wish = randomBoard(seed, columns, rows);
        RC_LOG(inWords(wish));
        RC_ASSERT(faults(wish.board, static_cast<int>(wish.woods.size())).empty());
        const Board glued = asGlued(wish.board);
        RC_ASSERT(faults(glued, static_cast<int>(wish.woods.size())).empty());
        const Result<Plan> made =
            plan(glued, wish.woods, wish.shop, wish.choices, Notation::millimetres(3), wish.season);
        if (!made) {
            ++seen.refused;
            RC_LOG(made.fault().text());
            RC_ASSERT(!made.fault().entry.empty());
            RC_DISCARD("no strip is to be had for it");
        }
        note(wish, *made, seen);
        const StepList list = steps(*made, glued, wish.shop);
        const Proof proof = replay(list, glued, wish.choices.mergeLike, wish.season);
        for (const std::string& fault : proof.faults) {
            RC_LOG(fault);
        }
        RC_ASSERT(proof.ok());
        // A band is a rail to the maker, whatever it is glued with.
        const bool band = wish.board.border.has(BorderDesign::EndGrainBand);
        const BoardSize size =
            sizeOf(wish.board, band ? surroundOf(wish.board, true, {}, {}) : made->border.surround);
        RC_ASSERT(proof.width == size.width);
        RC_ASSERT(proof.height == size.height);
        RC_ASSERT(proof.thickness == wish.board.thickness);
        RC_ASSERT(proof.ledger == list.ledger);
    };
    const rc::detail::TestResult result = rc::detail::checkTestable(property, metadata, params);
    std::ostringstream out;
    rc::detail::printResultMessage(result, out);
    EXPECT_TRUE(result.template is<rc::detail::SuccessResult>()) << out.str();
}

TEST(RandomBoards, OfUpToTwelveCellsComeOutOfTheirSteps) {
    Seen seen;
    const int boards = underSanitizers ? 1'000 : 10'000;
    prove(boards, 1, 12, seen);
    EXPECT_GE(seen.planned, boards);
    EXPECT_LT(seen.refused, boards / 3);
    for (const int count : {seen.endGrain, seen.planned - seen.endGrain, seen.byColumns,
                            seen.planned - seen.byColumns, seen.extraJoints, seen.omittedJoints,
                            seen.borders, seen.bands, seen.oneSlice, seen.spares, seen.noMargin}) {
        EXPECT_GT(count, boards / 50);
    }
}

TEST(RandomBoards, OfFortyCellsAndMoreComeOutOfTheirSteps) {
    Seen seen;
    const int boards = underSanitizers ? 10 : 120;
    prove(boards, 40, 64, seen);
    EXPECT_GE(seen.planned, boards);
}

}  // namespace
}  // namespace kerfwright
