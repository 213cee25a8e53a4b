// All ways to glue a board, side by side. Counts of glue-ups from tables of known constructions
// (descriptions in the trade press, and geometry); each way is carried out on the virtual bench by
// `makeJob`.
#include "core/bench/alternatives.h"
#include "core/board/patterns.h"
#include "tests/core/search/pictures.h"

#include <gmock/gmock.h>

namespace kerfwright {
namespace {

using searching::cells;
using searching::pieces;

std::vector<Wood> woods(std::size_t count) {
    std::vector<Wood> all;
    for (std::size_t i = 0; i < count; ++i) {
        Wood wood;
        wood.key = "wood-" + std::to_string(i);
        wood.name = "Wood " + std::to_string(i);
        wood.letter = std::string(1, static_cast<char>('A' + i));
        wood.timber = {Length::mm(80), Length::mm(300)};
        all.push_back(wood);
    }
    return all;
}

Board boardOf(Field field, Build build = Build::EndGrain) {
    Board board;
    board.build = build;
    board.thickness = Length::mm(40);
    board.field = std::move(field);
    return board;
}

Alternatives waysOf(const Board& board, const Choices& choices = {}) {
    Result<Alternatives> made =
        alternatives(board, woods(4), metricShop(), choices, Notation::millimetres());
    EXPECT_TRUE(made.ok()) << (made.ok() ? "" : made.fault().text());
    return made.ok() ? *made : Alternatives();
}

int fewest(const Alternatives& ways) {
    int least = 1000;
    for (const Alternative& way : ways.all) {
        least = std::min(least, way.measures.glueUps);
    }
    return least;
}

const Alternative* named(const Alternatives& ways, const std::string& words) {
    for (const Alternative& way : ways.all) {
        if (way.name.find(words) != std::string::npos) {
            return &way;
        }
    }
    return nullptr;
}

Field basket() {
    // Tiles of three strips, every other one a quarter turned.
    return pieces({"abcddd", "abceee", "abcfff", "gggjkl", "hhhjkl", "iiijkl"},
                  {0, 1, 0, 0, 1, 0, 0, 1, 0, 0, 1, 0});
}

TEST(Alternatives, OfABasketNeedThreeGlueUpsAndNoJointThatNobodyDrew) {
    const Alternatives ways = waysOf(boardOf(basket()));
    ASSERT_FALSE(ways.all.empty());
    EXPECT_EQ(ways.all.front().measures.glueUps, 3);
    EXPECT_TRUE(ways.all.front().job.plan.extraJoints.empty());
    EXPECT_TRUE(ways.proven);
    EXPECT_EQ(ways.bound, 3);
}

TEST(Alternatives, OfAnOddChequerShareOneWiderPanel) {
    // 3 by rows; 2 with one strip more, shifted and trimmed.
    const Alternatives ways = waysOf(boardOf(cells({"ABABA", "BABAB", "ABABA", "BABAB", "ABABA"})));
    const Alternative* shifted = named(ways, "shifted and trimmed");
    ASSERT_NE(shifted, nullptr);
    EXPECT_EQ(shifted->measures.glueUps, 2);
    EXPECT_EQ(ways.bound, 3);
    const Alternative* plain = nullptr;
    for (const Alternative& way : ways.all) {
        plain = way.measures.glueUps == 3 ? &way : plain;
    }
    ASSERT_NE(plain, nullptr) << "less timber for more gluing is a choice";
    EXPECT_LT(plain->measures.timber, shifted->measures.timber);
}

TEST(Alternatives, OfAPinwheelSayWhichPiecesLockAndWhatFreesThem) {
    const Board board = boardOf(pieces({"aab", "deb", "dcc"}, {0, 1, 2, 3, 0}));
    const Alternatives ways = waysOf(board);
    EXPECT_THAT(ways.locked.pieces, testing::SizeIs(4)) << "those round the middle";
    ASSERT_EQ(ways.locked.freeing.size(), 1u);
    EXPECT_TRUE(ways.locked.fewest);
    Board freed = board;
    freed.field = dividedAlong(board.field, ways.locked.freeing);
    ASSERT_TRUE(faults(freed, 4).empty());
    EXPECT_EQ(freed.field.pieces.size(), 6u);
    const Alternatives free = waysOf(freed);
    EXPECT_TRUE(free.locked.pieces.empty());
    EXPECT_TRUE(std::any_of(free.all.begin(), free.all.end(), [](const Alternative& way) {
        return way.job.plan.extraJoints.empty();
    }));
    EXPECT_TRUE(free.proven);
}

TEST(Alternatives, OfAMotifRepeatedAndMirroredAreFewerThanRowsAndColumns) {
    const Field motif = cells({"ABCCBA", "BCAACB", "CABBAC", "CABBAC", "BCAACB", "ABCCBA", "ABCCBA",
                               "BCAACB", "CABBAC", "CABBAC", "BCAACB", "ABCCBA"});
    const Alternatives ways = waysOf(boardOf(motif));
    const Result<Plan> rows =
        planField(boardOf(motif), woods(4), metricShop(), {RowChoice::Rows, false});
    ASSERT_TRUE(rows.ok());
    EXPECT_LE(fewest(ways), rows->glueUps);
    EXPECT_GE(fewest(ways), ways.bound);
    EXPECT_GE(ways.all.size(), 1u);
}

TEST(Alternatives, AreNeverWorseInEverythingThanAnother) {
    for (const Build build : {Build::EndGrain, Build::LongGrain}) {
        const Alternatives ways = waysOf(boardOf(cells({"ABAC", "CABA", "ABAC", "ACCB"}), build));
        for (const Alternative& a : ways.all) {
            for (const Alternative& b : ways.all) {
                const Measures& x = a.measures;
                const Measures& y = b.measures;
                const bool worse = x.glueUps > y.glueUps && x.clampLoads > y.clampLoads &&
                                   x.panels > y.panels && x.settings > y.settings &&
                                   x.cuts > y.cuts && x.timber > y.timber &&
                                   x.minutes > y.minutes && a.limits.size() > b.limits.size();
                EXPECT_FALSE(worse) << a.name << " and " << b.name;
            }
        }
    }
}

TEST(Alternatives, TheChosenOneIsPlannedAgainAndAnotherPictureFallsBackInWords) {
    const Board board = boardOf(basket());
    const Alternatives ways = waysOf(board);
    const Choices chosen = ways.all.front().choices;
    ASSERT_FALSE(chosen.construction.empty());
    const Result<Plan> again = planField(board, woods(4), metricShop(), chosen);
    ASSERT_TRUE(again.ok());
    EXPECT_EQ(again->construction, chosen.construction);
    EXPECT_EQ(again->glueUps, 3);

    // Sizes do not matter, the picture does.
    Board wider = board;
    wider.field.columns.assign(6, Length::mm(30));
    wider.field.rows.assign(6, Length::mm(30));
    EXPECT_EQ(planField(wider, woods(4), metricShop(), chosen)->construction, chosen.construction);
    const Result<Plan> other =
        planField(boardOf(cells({"AB", "BA"})), woods(4), metricShop(), chosen);
    ASSERT_TRUE(other.ok());
    EXPECT_TRUE(other->construction.empty());
    EXPECT_THAT(other->decidedBy, testing::StartsWith("The way that was chosen does not make"));
}

TEST(Alternatives, GluedInLoadsWhereTheGlueDoesNotStayOpen) {
    Conditions conditions;
    conditions.glue.openMinutes = 3;
    conditions.glue.secondsPerLine = 60;  // three joints: four parts in one go
    const Board board = boardOf(cells({"ABABABABAB", "BABABABABA", "ABABABABAB", "BABABABABA"}));
    const Result<Alternatives> ways =
        alternatives(board, woods(4), metricShop(), {}, Notation::millimetres(), conditions);
    ASSERT_TRUE(ways.ok());
    bool inLoads = false;
    for (const Alternative& way : ways->all) {
        int most = 0;
        for (const Step& step : way.job.steps.steps) {
            if (const auto* glue = std::get_if<Glue>(&step.work)) {
                most = std::max(most, static_cast<int>(glue->parts.size()));
            }
        }
        const bool named = std::any_of(way.limits.begin(), way.limits.end(), [](const auto& limit) {
            return limit.find("glue stays open") != std::string::npos;
        });
        EXPECT_EQ(named, most > 4) << way.name;
        inLoads = inLoads || most <= 4;
    }
    EXPECT_TRUE(inLoads);
}

TEST(Alternatives, OfAFieldThatIsWiderThanTheSanderHaveSomeOfNarrowerPanels) {
    // 10 × 70 mm across: no row fits a sander of 400 mm, but rows and columns of half of it do.
    const Board board = boardOf(cells({"ABABABABAB", "BABABABABA", "ABABABABAB", "BABABABABA"},
                                      Length::mm(70), Length::mm(50)));
    Shop shop = metricShop();
    shop.sanderWidth = Length::mm(400);
    const Proposals all = proposals(board, woods(4), shop, {});
    int narrow = 0;
    int wide = 0;
    for (const Proposal& proposal : all.all) {
        Length widest;
        const std::vector<Block>& blocks = proposal.construction.blocks;
        for (std::size_t i = 0; i + 1 < blocks.size(); ++i) {
            if (blocks[i].isGlued()) {
                widest = std::max(widest, blocks[i].along == JoinedAlong::X ? blocks[i].width
                                                                            : blocks[i].height);
            }
        }
        ++(widest > Length::mm(391) ? wide : narrow);
    }
    EXPECT_GT(narrow, 0);
    EXPECT_GT(wide, 0) << "what breaks a limit is offered too, with the limit named";
}

TEST(Alternatives, StopWhenTheyAreToldTo) {
    const Board board =
        boardOf(cells({"ABCABA", "CABBAC", "BBCAAC", "ACBCBA", "CCABAB", "ABBCAC"}));
    const Result<Alternatives> ways =
        alternatives(board, woods(4), metricShop(), {}, Notation::millimetres(), {},
                     [](const SearchProgress&) { return false; });
    ASSERT_TRUE(ways.ok());
    EXPECT_FALSE(ways->all.empty()) << "rows and columns need no search";
    EXPECT_FALSE(ways->proven);
}

TEST(DividedAlong, DividesWhatAJointRunsThroughAndNothingElse) {
    const Field field = pieces({"aab", "aab"}, {0, 1});
    const Field divided =
        dividedAlong(field, {{true, Length::mm(40), Length(), Length::mm(80)},
                             {true, Length::mm(80), Length(), Length::mm(80)},
                             {false, Length::mm(40), Length::mm(80), Length::mm(100)}});
    EXPECT_EQ(divided.pieces,
              (std::vector<Piece>{{0, 0, 1, 2, 0}, {1, 0, 1, 2, 0}, {2, 0, 1, 2, 1}}));
}

}  // namespace
}  // namespace kerfwright
