#include "core/replay/replay.h"

#include "tests/core/replay/handbuilt.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>

namespace kerfwright {
namespace {

using namespace test;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

Proof replayed(const Job& job) {
    return replay(job.list, job.board, job.mergeLike);
}

template <class Work>
Work& work(Job& job, std::size_t step) {
    return std::get<Work>(job.list.steps.at(step - 1).work);
}

TEST(Replay, ProvesListsWrittenByHand) {
    for (const Job& job : handBuilt()) {
        const Proof proof = replayed(job);
        EXPECT_THAT(proof.faults, IsEmpty()) << job.name;
        EXPECT_EQ(proof.ledger, job.list.ledger) << job.name;
        EXPECT_EQ(proof.ledger.timberIn, proof.ledger.out()) << job.name;
        const BoardSize size = sizeOf(job.board, surroundOf(job.board, true, {}, {}));
        EXPECT_EQ(proof.width, size.width) << job.name;
        EXPECT_EQ(proof.height, size.height) << job.name;
        EXPECT_EQ(proof.thickness, job.board.thickness) << job.name;
    }
}

TEST(Replay, NamesTheStepAndStopsThere) {
    Job job = chequer();
    work<Crosscut>(job, 5).stop = figure(23_mm);
    work<TrimField>(job, 8).margin = figure(7_mm);
    EXPECT_THAT(replayed(job).faults,
                ElementsAre("Step 5: 7 mm of “A” should be left; it is 4 mm."));
}

TEST(Replay, AnEmptyListMakesNoField) {
    const Proof proof = replay(StepList(), block().board, false);
    EXPECT_THAT(proof.faults, ElementsAre("After the last step: no field was made."));
    EXPECT_EQ(proof.width, Length());
}

TEST(Replay, EachFigureIsTheSumOfItsWorking) {
    Job job = chequer();
    work<Crosscut>(job, 5).stop.terms.push_back({TermKind::FieldFlattening, 1_mm, 2});
    EXPECT_THAT(replayed(job).faults,
                ElementsAre("Step 5: stop of 22 mm is not the sum of its working."));
}

TEST(Replay, GluedFacesMustMatch) {
    Job job = divided();
    work<Mill>(job, 1).lines[1].thickness = figure(19_mm);
    EXPECT_THAT(
        replayed(job).faults,
        ElementsAre("Step 2: the glued face of “A2” is 55 mm × 19 mm; the face before it is 55 mm "
                    "× 20 mm."));
}

TEST(Replay, AMilledStripIsNotGreaterThanItsTimber) {
    Job job = block();
    work<Mill>(job, 1).lines[0].roughWidth = figure(29_mm);
    EXPECT_THAT(replayed(job).faults, ElementsAre(HasSubstr("greater than its rough timber")));
}

TEST(Replay, AWorkpieceIsUsedOnce) {
    Job job = divided();
    work<Glue>(job, 5).parts[2].part = "B2";
    EXPECT_THAT(replayed(job).faults, ElementsAre("Step 5: the workpiece “B2” has been used up."));
}

TEST(Replay, TheLastKerfMayRunOutOfTheWoodButASliceMayNot) {
    Job job = block();
    MillLine& line = work<Mill>(job, 1).lines[0];
    line.roughLength = line.length = figure(22_mm);
    job.list.ledger.timberIn = cubicMm(30 * 30 * 22);
    job.list.ledger.kerf = cubicMm(30 * 30 * 2);
    EXPECT_THAT(replayed(job).faults, IsEmpty());
    line.roughLength = line.length = figure(19_mm);
    EXPECT_THAT(replayed(job).faults,
                ElementsAre("Step 2: “P” is too short for the slice “P-1”: 19 mm left of it."));
}

TEST(Replay, ThereIsOneBlade) {
    Job job = columns();
    work<Crosscut>(job, 5).kerf = figure(2_mm);
    EXPECT_THAT(replayed(job).faults, ElementsAre(HasSubstr("there is one blade")));
}

TEST(Replay, TakesFromBothFacesAndTheOddNanometreFromBelow) {
    Job job = block();
    job.board.thickness = 20_mm - Length::nm(3);
    job.list.steps.push_back({Flatten{"Field", Face::EndGrain, Purpose::Finished, figure(20_mm),
                                      figure(job.board.thickness)}});
    const Volume off = volume(30_mm, 30_mm, Length::nm(3));
    job.list.ledger.planed += off;
    job.list.ledger.board -= off;
    EXPECT_THAT(replayed(job).faults, IsEmpty());
}

TEST(Replay, TheFaceToFlattenMustTellTheTruth) {
    Job job = chequer();
    work<Flatten>(job, 7).face = Face::LongGrain;
    EXPECT_THAT(replayed(job).faults,
                ElementsAre("Step 7: “Field” shows end grain, not long grain."));
}

TEST(Replay, ASpareSliceIsNotForTheField) {
    Job job = chequer();
    work<Glue>(job, 6).parts[1].part = "A-spare";
    EXPECT_THAT(replayed(job).faults, ElementsAre("Step 6: “A-spare” is a spare slice."));
}

TEST(Replay, NothingIsLeftOver) {
    Job job = divided();
    Mill more = work<Mill>(job, 1);
    more.lines.resize(1);
    more.lines[0].strips = {"More"};
    job.list.steps.push_back({more});
    EXPECT_THAT(replayed(job).faults, Contains("After the last step: “More” is left over."));
}

TEST(Replay, MarginRowsAreTheOutermost) {
    Job job = chequer();
    work<Crosscut>(job, 5).marginRows = false;
    EXPECT_THAT(replayed(job).faults,
                ElementsAre(HasSubstr("an outermost slice was not cut as a margin row")));
}

TEST(Replay, ABorderMustNotBeGlued) {
    Job job = stripes();
    work<FitBorder>(job, 11).mustNotBeGlued = false;
    EXPECT_THAT(replayed(job).faults, ElementsAre(HasSubstr("must not be glued")));
}

TEST(Replay, ABorderThatIsWishedMustBeThere) {
    Job job = chequer();
    job.board.border.width = 20_mm;
    EXPECT_THAT(replayed(job).faults, ElementsAre(HasSubstr("the border is missing")));
    Job other = stripes();
    other.board.border.width = Length();
    EXPECT_THAT(replayed(other).faults, ElementsAre("Step 10: the board has no border."));
}

TEST(Replay, TheWishIsComparedInEveryRespect) {
    for (const Job& job : handBuilt()) {
        const auto fails = [&](const char* what, const auto& change) {
            Board board = job.board;
            change(board);
            EXPECT_THAT(replay(job.list, board, job.mergeLike).faults, Not(IsEmpty()))
                << job.name << ": " << what;
        };
        fails("build", [](Board& board) {
            board.build = board.build == Build::EndGrain ? Build::LongGrain : Build::EndGrain;
        });
        fails("thickness", [](Board& board) { board.thickness += Length::nm(1); });
        fails("border", [](Board& board) { board.border.width += Length::nm(1); });
        for (std::size_t i = 0; i < job.board.field.pieces.size(); ++i) {
            fails("wood", [i](Board& board) { ++board.field.pieces[i].wood; });
        }
        for (std::size_t i = 0; i < job.board.field.columns.size(); ++i) {
            fails("column", [i](Board& board) { board.field.columns[i] += Length::nm(1); });
        }
        for (std::size_t i = 0; i < job.board.field.rows.size(); ++i) {
            fails("row", [i](Board& board) { board.field.rows[i] += Length::nm(1); });
        }
        for (std::size_t i = 1; i < job.board.field.columns.size(); ++i) {
            fails("joint of columns", [i](Board& board) {
                board.field.columns[i - 1] += Length::nm(1);
                board.field.columns[i] -= Length::nm(1);
            });
        }
    }
}

TEST(Replay, GrainRunsAsTheBuildWants) {
    Job job = divided();
    job.board.grain = GrainDirection::Down;
    EXPECT_THAT(replayed(job).faults, IsEmpty());
    job.board.grain = GrainDirection::Across;
    EXPECT_THAT(replayed(job).faults,
                ElementsAre("After the last step: the grain does not run as the build wants."));
}

TEST(Replay, JointsInsideAPieceAreListed) {
    Job job = divided();
    job.list.extraJoints.clear();
    EXPECT_THAT(replayed(job).faults,
                ElementsAre("After the last step: a joint inside a piece is not listed: down at 80 "
                            "mm, from 50 mm to 110 mm."));
}

TEST(Replay, ListedJointsAreThere) {
    Job job = divided();
    job.list.extraJoints.push_back({false, 80_mm, 80_mm, 120_mm});
    std::sort(job.list.extraJoints.begin(), job.list.extraJoints.end());
    EXPECT_THAT(replayed(job).faults,
                ElementsAre("After the last step: a joint is listed as extra that is not there: "
                            "across at 80 mm, from 80 mm to 120 mm."));
}

TEST(Replay, JointsAreLeftOutOnlyWhereLikePiecesMayBeMerged) {
    Job job = divided();
    job.mergeLike = false;
    EXPECT_THAT(replayed(job).faults,
                ElementsAre(HasSubstr("a joint is left out though like pieces stay apart")));
    job.mergeLike = true;
    job.list.omittedJoints.clear();
    EXPECT_THAT(replayed(job).faults, ElementsAre(HasSubstr("a wished joint is missing")));
}

TEST(Replay, TheLedgerOfTheListIsCheckedBucketByBucket) {
    Job job = chequer();
    job.list.ledger.planed += Volume(1);
    job.list.ledger.trimmed -= Volume(1);
    EXPECT_THAT(replayed(job).faults,
                ElementsAre("After the last step: the volume planed off is not what the list says.",
                            "After the last step: the volume trimmed off is not what the list "
                            "says."));
}

TEST(Replay, AbsurdFiguresAreRefusedWithoutOverflow) {
    for (const std::int64_t nm : {std::int64_t{-1}, std::int64_t{1} << 62, INT64_MAX, INT64_MIN}) {
        for (const std::size_t step : {std::size_t{1}, std::size_t{2}}) {
            Job job = block();
            Figure absurd = figure(Length::nm(nm));
            absurd.terms.push_back({TermKind::Kerf, Length::nm(nm), 0});
            if (step == 1) {
                work<Mill>(job, 1).lines[0].roughLength = absurd;
            } else {
                work<Crosscut>(job, 2).kerf = absurd;
            }
            const std::vector<std::string> faults = replayed(job).faults;
            ASSERT_EQ(faults.size(), 1U);
            EXPECT_THAT(faults[0], HasSubstr("must be 0 to 1 km"));
        }
    }
}

}  // namespace
}  // namespace kerfwright
