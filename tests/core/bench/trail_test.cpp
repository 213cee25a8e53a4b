// What belongs together in a job: the same seen from either end, and true to the plan.
#include "core/bench/origin.h"
#include "core/bench/trail.h"
#include "core/board/recipe.h"
#include "core/replay/trace.h"
#include "core/timber/demand.h"
#include "tests/core/replay/randomboard.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numeric>

namespace kerfwright {
namespace {

using Kind = Subject::Kind;
using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::IsSupersetOf;

struct Case {
    Board wish;
    std::vector<Wood> woods;
    Shop shop = metricShop();
    Choices choices = {};
    Job job = {};
    std::optional<TimberPlan> timber = {};

    void make() {
        Result<Job> made = makeJob(wish, woods, shop, choices, Notation::millimetres());
        ASSERT_TRUE(made.ok()) << made.fault().text();
        job = std::move(made).value();
    }
    /// Planks of every wood, so that all strips find a place.
    void saw() {
        Timber stock = newTimber(Unit::Millimetres);
        for (const Wood& wood : woods) {
            for (int i = 0; i < 6; ++i) {
                Plank plank;
                plank.wood = wood.key;
                plank.label = wood.key + std::to_string(i);
                plank.thickness = Length::mm(70);
                plank.width = Length::mm(180);
                plank.length = Length::mm(1500);
                stock.rack.planks.push_back(plank);
            }
        }
        stock.sawing.effort = 1;
        timber = planTimber(demandOf(job.steps, woods), woods, shop, stock).value();
    }
    Trails trails() const { return {job, wish.field, timber ? &*timber : nullptr}; }
};

Case chequer(int columns = 6, int rows = 4) {
    Case made;
    made.woods = {*findWood(woodCatalogue(), "hard-maple"),
                  *findWood(woodCatalogue(), "black-walnut")};
    made.wish.thickness = Length::mm(40);
    made.wish.field =
        layOut({Pattern::Chequer, columns, rows, Length::mm(45), Length::mm(45), {0, 1}}).value();
    return made;
}

/// A piece of 2 × 2 cells whose neighbours lie like bricks: glued from blocks.
Case woven() {
    Case made;
    made.woods = {woodCatalogue()[0], woodCatalogue()[1], woodCatalogue()[2]};
    made.wish.thickness = Length::mm(40);
    made.wish.field = layOut(usualRecipe(Pattern::Basket, Length::mm(300), Length::mm(300),
                                         ruleStep(Unit::Millimetres), {0, 1}))
                          .value();
    return made;
}

std::vector<Subject> everything(const Case& from, const std::set<std::string>& parts) {
    std::vector<Subject> all;
    const auto add = [&](Kind kind, std::size_t count) {
        for (std::size_t i = 0; i < count; ++i) {
            all.push_back({kind, static_cast<int>(i)});
        }
    };
    add(Kind::Piece, from.wish.field.pieces.size());
    add(Kind::Step, from.job.steps.steps.size());
    add(Kind::CutLine, cutListOf(from.job.steps).size());
    add(Kind::Caution, from.job.cautions.size());
    all.push_back({Kind::Border});
    for (const std::string& part : parts) {
        all.push_back({Kind::Part, -1, part});
    }
    if (from.timber) {
        for (const PlankCuts& cuts : from.timber->layout.planks) {
            all.push_back({Kind::Plank, -1,
                           from.timber->rack.planks[static_cast<std::size_t>(cuts.plank)].label});
        }
    }
    return all;
}

bool has(const Trail& trail, const Subject& other) {
    switch (other.kind) {
    case Kind::None:
        return false;
    case Kind::Piece:
        return trail.pieces.contains(other.index);
    case Kind::Border:
        return trail.border;
    case Kind::Part:
        return trail.parts.contains(other.label);
    case Kind::Step:
        return trail.steps.contains(other.index);
    case Kind::CutLine:
        return trail.cutLines.contains(other.index);
    case Kind::Caution:
        return trail.cautions.contains(other.index);
    case Kind::Plank:
        return trail.planks.contains(other.label);
    }
    return false;
}

std::set<std::string> allParts(const Case& from) {
    std::set<std::string> parts;
    for (const Step& step : from.job.steps.steps) {
        if (const auto* mill = std::get_if<Mill>(&step.work)) {
            for (const MillLine& line : mill->lines) {
                parts.insert(line.strips.begin(), line.strips.end());
            }
        } else if (const auto* cut = std::get_if<Crosscut>(&step.work)) {
            parts.insert(cut->slices.begin(), cut->slices.end());
            parts.insert(cut->spares.begin(), cut->spares.end());
        } else if (const auto* glue = std::get_if<Glue>(&step.work)) {
            parts.insert(glue->result);
        }
    }
    return parts;
}

void isTheSameFromEitherEnd(const Case& from) {
    const Trails trails = from.trails();
    const std::vector<Subject> all = everything(from, allParts(from));
    std::vector<Trail> found;
    for (const Subject& subject : all) {
        found.push_back(trails.of(subject));
    }
    for (std::size_t a = 0; a < all.size(); ++a) {
        for (std::size_t b = 0; b < a; ++b) {
            ASSERT_EQ(has(found[a], all[b]), has(found[b], all[a]))
                << static_cast<int>(all[a].kind) << ' ' << all[a].index << all[a].label << " and "
                << static_cast<int>(all[b].kind) << ' ' << all[b].index << all[b].label;
        }
    }
}

int woodOfStrip(const Job& job, const std::string& label) {
    for (const CutListLine& line : cutListOf(job.steps)) {
        for (const std::string& strip : line.strips.strips) {
            if (strip == label) {
                return line.strips.wood;
            }
        }
    }
    return -1;
}

/// Every piece is of strips of its wood, and of all that the bench finds there.
void piecesComeFromTheirStrips(const Case& from) {
    const Trails trails = from.trails();
    const Trace solids = trace(from.job.steps, from.job.board, from.job.season);
    const Field& field = from.wish.field;
    const int ring = bandOf(from.job, field);
    Length offX;
    Length offY;
    for (int i = 0; i < ring; ++i) {
        offX += from.job.board.field.columns[static_cast<std::size_t>(i)];
        offY += from.job.board.field.rows[static_cast<std::size_t>(i)];
    }
    for (std::size_t i = 0; i < field.pieces.size(); ++i) {
        const Piece& piece = field.pieces[i];
        const Trail trail = trails.of({Kind::Piece, static_cast<int>(i)});
        int strips = 0;
        for (const std::string& part : trail.parts) {
            if (trails.sortOf(part) == PartSort::Strip) {
                ++strips;
                ASSERT_EQ(woodOfStrip(from.job, part), piece.wood) << part << ", piece " << i;
            }
        }
        ASSERT_GT(strips, 0) << i;
        const auto sum = [](const std::vector<Length>& sizes, int count) {
            return std::accumulate(sizes.begin(), sizes.begin() + count, Length());
        };
        const Length x = offX + sum(field.columns, piece.column) +
                         half(field.columns[static_cast<std::size_t>(piece.column)]);
        const Length y = offY + sum(field.rows, piece.row) +
                         half(field.rows[static_cast<std::size_t>(piece.row)]);
        for (const std::string& part : originAt(from.job.steps, solids, x, y)) {
            ASSERT_TRUE(trail.parts.contains(part)) << part << ", piece " << i;
        }
        const Origin origin = originOf(from.job, field, x - offX, y - offY);
        ASSERT_TRUE(trail.parts.contains(origin.strip)) << origin.strip;
        ASSERT_TRUE(trail.parts.contains(origin.slice)) << origin.slice;
        bool milled = false;
        for (const int step : trail.steps) {
            milled = milled || std::holds_alternative<Mill>(
                                   from.job.steps.steps[static_cast<std::size_t>(step)].work);
        }
        ASSERT_TRUE(milled) << i;
    }
}

/// No strip is milled for nothing.
void everyStripShows(const Case& from) {
    const Trails trails = from.trails();
    for (const CutListLine& line : cutListOf(from.job.steps)) {
        for (const std::string& strip : line.strips.strips) {
            const Trail trail = trails.of({Kind::Part, -1, strip});
            ASSERT_TRUE(line.panel.empty() ? trail.border : !trail.pieces.empty() || trail.border)
                << strip;
        }
    }
}

template <class Work, class Fits>
int stepWith(const Job& job, const Fits& fits) {
    for (std::size_t i = 0; i < job.steps.steps.size(); ++i) {
        const auto* work = std::get_if<Work>(&job.steps.steps[i].work);
        if (work != nullptr && fits(*work)) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

TEST(Trail, APieceOfAChequerComesFromOneStripAndOneSlice) {
    Case board = chequer();
    board.make();
    board.saw();
    const Trails trails = board.trails();
    const int piece = pieceAt(board.wish.field, 2, 1);
    const Origin origin =
        originOf(board.job, board.wish.field, Length::mm(2 * 45 + 20), Length::mm(45 + 20));
    const Trail trail = trails.of({Kind::Piece, piece});
    int strips = 0;
    int slices = 0;
    for (const std::string& part : trail.parts) {
        strips += trails.sortOf(part) == PartSort::Strip ? 1 : 0;
        slices += trails.sortOf(part) == PartSort::Slice ? 1 : 0;
    }
    EXPECT_EQ(strips, 1);
    EXPECT_EQ(slices, 1);
    EXPECT_THAT(trail.parts,
                IsSupersetOf({origin.strip, origin.slice, origin.panel, std::string("Field")}));
    EXPECT_THAT(trail.pieces, ElementsAre(piece));
    EXPECT_EQ(trail.cutLines.size(), 1u);
    EXPECT_EQ(trail.planks.size(), 1u);
}

TEST(Trail, AStripLightsUpItsPiecesAndASliceItsRow) {
    Case board = chequer();
    board.choices.rows = RowChoice::Rows;
    board.make();
    const Trails trails = board.trails();
    ASSERT_FALSE(board.job.plan.byColumns);
    const std::string slice = sliceOrder(board.job.steps)[2];
    const Trail row = trails.of({Kind::Part, -1, slice});
    EXPECT_THAT(row.place.rows, ElementsAre(2));
    EXPECT_THAT(row.place.pieces, IsEmpty());
    EXPECT_EQ(row.pieces.size(), 6u);
    const Trail strip = trails.of({Kind::Part, -1, "A1"});
    EXPECT_THAT(strip.place.rows, IsEmpty());
    EXPECT_EQ(strip.place.pieces, strip.pieces);
    EXPECT_EQ(strip.pieces.size(), 4u) << "one a row, since all rows are of one panel";
    // Rows of a chequer lie end for end in turn.
    EXPECT_TRUE(strip.pieces.contains(pieceAt(board.wish.field, 0, 0)));
    EXPECT_TRUE(strip.pieces.contains(pieceAt(board.wish.field, 5, 1)));
}

TEST(Trail, WorkOnTheFieldLightsUpTheFieldAndWorkOnRailsTheBorder) {
    Case board = chequer();
    board.wish.build = Build::LongGrain;
    board.wish.border = {Length::mm(40), 1};
    board.make();
    const Trails trails = board.trails();
    const int last = stepWith<Glue>(board.job, [](const Glue& glue) { return glue.final; });
    EXPECT_TRUE(trails.of({Kind::Step, last}).place.field);
    EXPECT_FALSE(trails.of({Kind::Step, last}).place.border);
    const int rails =
        stepWith<Mill>(board.job, [](const Mill& mill) { return mill.panel.empty(); });
    Highlight border;
    border.border = true;
    EXPECT_EQ(trails.of({Kind::Step, rails}).place, border);
    EXPECT_THAT(trails.of({Kind::Border}).steps, Contains(rails));
    EXPECT_THAT(trails.of({Kind::Border}).pieces, IsEmpty());
}

TEST(Trail, ACautionKeepsToItsPlaceAndItsSteps) {
    Case board = chequer();
    board.make();
    Caution placed;
    placed.place.columns = {1};
    placed.steps = {0};
    Caution whole;
    board.job.cautions = {placed, whole};
    const Trails trails = board.trails();
    const Trail trail = trails.of({Kind::Caution, 0});
    EXPECT_EQ(trail.place, highlightOf(placed.place));
    EXPECT_THAT(trail.steps, ElementsAre(0));
    EXPECT_EQ(trail.pieces.size(), 4u);
    EXPECT_EQ(trails.of({Kind::Piece, pieceAt(board.wish.field, 1, 2)}).cautions, std::set<int>{0});
    EXPECT_THAT(trails.of({Kind::Piece, 0}).cautions, IsEmpty());
    const Trail everywhere = trails.of({Kind::Caution, 1});
    EXPECT_THAT(everywhere.pieces, IsEmpty()) << "what is said of all is said of nothing";
    EXPECT_TRUE(everywhere.place.isEmpty());
}

TEST(Trail, WhatIsNotThereHasNone) {
    Case board = chequer();
    board.make();
    const Trails trails = board.trails();
    EXPECT_TRUE(trails.of({}).isEmpty());
    EXPECT_TRUE(trails.of({Kind::Piece, -1}).isEmpty());
    EXPECT_TRUE(trails.of({Kind::Piece, 99}).isEmpty());
    EXPECT_TRUE(trails.of({Kind::Step, 9999}).isEmpty());
    EXPECT_TRUE(trails.of({Kind::Caution, 9999}).isEmpty());
    EXPECT_TRUE(trails.of({Kind::Part, -1, "nothing"}).isEmpty());
    EXPECT_TRUE(trails.of({Kind::Plank, -1, "P1"}).isEmpty());
}

TEST(Trail, PartsSawnInOneLengthAreSeveral) {
    EXPECT_THAT(partsNamed("A3"), ElementsAre("A3"));
    EXPECT_THAT(partsNamed("Top rail + Right rail"), ElementsAre("Top rail", "Right rail"));
}

TEST(Trail, OfABandGoesToTheFieldAsGlued) {
    Case board = chequer(5, 5);
    board.wish.border = {Length::mm(40), 1};
    board.wish.border.design = BorderDesign::EndGrainBand;
    board.make();
    ASSERT_GT(bandOf(board.job, board.wish.field), 0);
    isTheSameFromEitherEnd(board);
    piecesComeFromTheirStrips(board);
    everyStripShows(board);
    const Trail border = board.trails().of({Kind::Border});
    EXPECT_TRUE(border.border);
    EXPECT_FALSE(border.steps.empty());
    EXPECT_TRUE(board.trails().of({Kind::Part, -1, "Field"}).place.border);
}

TEST(Trail, OfBlocksGluedFromBlocks) {
    Case board = woven();
    board.make();
    ASSERT_FALSE(board.job.plan.construction.empty());
    board.saw();
    isTheSameFromEitherEnd(board);
    piecesComeFromTheirStrips(board);
    everyStripShows(board);
}

TEST(Trail, OfAllPatternsIsTheSameFromEitherEnd) {
    for (const PatternInfo& info : patterns()) {
        SCOPED_TRACE(info.key);
        Case board;
        std::vector<int> order(static_cast<std::size_t>(info.woods));
        std::iota(order.begin(), order.end(), 0);
        for (int i = 0; i < info.woods; ++i) {
            board.woods.push_back(woodCatalogue()[static_cast<std::size_t>(i)]);
        }
        board.wish.thickness = Length::mm(40);
        board.wish.field = layOut(usualRecipe(info.pattern, Length::mm(300), Length::mm(300),
                                              ruleStep(Unit::Millimetres), order))
                               .value();
        Result<Job> made =
            makeJob(board.wish, board.woods, board.shop, {}, Notation::millimetres());
        if (!made.ok()) {
            continue;  // patterns that lock are freed first
        }
        board.job = std::move(made).value();
        piecesComeFromTheirStrips(board);
        everyStripShows(board);
        if (board.wish.field.pieces.size() < 200) {
            isTheSameFromEitherEnd(board);
        }
    }
}

TEST(Trail, OfRandomBoardsIsTheSameFromEitherEnd) {
    int made = 0;
    for (std::uint64_t seed = 1; seed <= (test::underSanitizers ? 10u : 60u); ++seed) {
        SCOPED_TRACE(seed);
        const test::RandomBoard random =
            test::randomBoard(seed, 1 + static_cast<int>(seed % 5), 1 + static_cast<int>(seed % 4));
        Case board;
        board.wish = random.board;
        // Those of the random board have no names that a maker could give.
        board.woods.assign(woodCatalogue().begin(),
                           woodCatalogue().begin() +
                               static_cast<std::ptrdiff_t>(random.woods.size()));
        board.shop = random.shop;
        board.choices = random.choices;
        Result<Job> job =
            makeJob(board.wish, board.woods, board.shop, board.choices, Notation::millimetres());
        if (!job.ok()) {
            continue;
        }
        ++made;
        board.job = std::move(job).value();
        if (seed % 3 == 0) {
            board.saw();
        }
        isTheSameFromEitherEnd(board);
        piecesComeFromTheirStrips(board);
        everyStripShows(board);
        if (HasFatalFailure()) {
            return;
        }
    }
    EXPECT_GT(made, 5);
}

}  // namespace
}  // namespace kerfwright
