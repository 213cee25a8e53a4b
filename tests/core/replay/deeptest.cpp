// Plans of any depth over the bench: constructions put together at random, those that the search
// finds, rows that are windows onto wider ones, and panels that are thinned.
#include "core/glueup/deep.h"

#include "core/glueup/constructions.h"
#include "core/measure/at.h"
#include "core/replay/replay.h"
#include "core/replay/trace.h"
#include "core/search/painted.h"
#include "core/search/search.h"
#include "core/search/shifted.h"
#include "tests/core/replay/randomboard.h"

#include <gtest/gtest.h>

#include <random>
#include <set>

namespace kerfwright {
namespace {

using namespace test;

/// Blocks glued from blocks, bottom up, whatever fits together.
class Building {
public:
    Building(std::uint64_t seed, Laying laying)
        : engine_(seed)
        , laying_(laying) {}

    Construction construction() {
        const Length unit = Length::um(from(120, 400) * 100);
        for (int i = from(2, 4); i > 0; --i) {
            all_.blocks.push_back(
                {unit * from(1, 3), unit * from(1, 3), from(0, 2), JoinedAlong::X, {}, -1});
        }
        const int most = from(2, 6);
        for (int i = 0, made = 0; i < 60 && made < most; ++i) {
            made += glue() ? 1 : 0;
        }
        return std::move(all_);
    }

private:
    int from(int least, int greatest) {
        return least +
               static_cast<int>(engine_() % static_cast<std::uint64_t>(greatest - least + 1));
    }
    Placing placing() {
        const bool all = laying_ == Laying::EndGrain;
        return {from(0, 1) == 1, all ? from(0, 3) : from(0, 1) * 2};
    }
    std::pair<Length, Length> size(int block, Placing placing) const {
        const Block& one = all_.blocks[at(block)];
        return placing.quarterTurns % 2 == 0 ? std::pair(one.width, one.height)
                                             : std::pair(one.height, one.width);
    }
    bool glue() {
        const int count = static_cast<int>(all_.blocks.size());
        Block block;
        block.along = from(0, 1) == 0 ? JoinedAlong::X : JoinedAlong::Y;
        const bool alongX = block.along == JoinedAlong::X;
        Length across;
        Length reached;
        // The latest block is always among them, so that the depth grows.
        for (int tries = 0; tries < 30 && block.members.size() < 5; ++tries) {
            const int one = tries < 3 ? count - 1 : from(0, count - 1);
            Placing laid = all_.blocks[at(one)].isGlued() ? placing() : Placing();
            auto [width, height] = size(one, laid);
            if (!block.members.empty() && (alongX ? height : width) != across) {
                continue;
            }
            across = alongX ? height : width;
            reached += alongX ? width : height;
            block.members.push_back({one, laid, {}, {}});
        }
        if (block.members.size() < 2 || reached > Length::mm(900)) {
            return false;
        }
        (alongX ? block.width : block.height) = reached;
        (alongX ? block.height : block.width) = across;
        all_.blocks.push_back(std::move(block));
        return true;
    }

    std::mt19937_64 engine_;
    Laying laying_;
    Construction all_;
};

/// The field that a construction makes: every strip a piece.
Field fieldOf(const Construction& construction) {
    std::set<Length> xs;
    std::set<Length> ys;
    const std::vector<PaintedStrip> strips = painted(construction);
    for (const PaintedStrip& strip : strips) {
        xs.insert({strip.left, strip.right});
        ys.insert({strip.top, strip.bottom});
    }
    const auto place = [](const std::set<Length>& lines, Length where) {
        return static_cast<int>(std::distance(lines.begin(), lines.find(where)));
    };
    Field field;
    const auto sizes = [](const std::set<Length>& lines) {
        std::vector<Length> all;
        for (auto line = lines.begin(); std::next(line) != lines.end(); ++line) {
            all.push_back(*std::next(line) - *line);
        }
        return all;
    };
    field.columns = sizes(xs);
    field.rows = sizes(ys);
    for (const PaintedStrip& strip : strips) {
        const int column = place(xs, strip.left);
        const int row = place(ys, strip.top);
        field.pieces.push_back({column, row, place(xs, strip.right) - column,
                                place(ys, strip.bottom) - row, strip.wood});
    }
    std::sort(field.pieces.begin(), field.pieces.end(), readsBefore);
    return field;
}

/// A step along the field is a step in the strip, along one of its edges; in end grain never along
/// its grain.
std::string placeMistake(const StepList& list, const Trace& solids, const std::string& strip,
                         Build build, const FieldPoint& point) {
    const Length step = Length::nm(250'000);
    const std::vector<StripPlace> places =
        stripsAt(list, solids, {point, {point.x + step, point.y}, {point.x, point.y + step}});
    const StripPlace& place = places.front();
    int lengthwise = 0;
    for (const Axis axis : {X, Y, Z}) {
        if (place.point[axis] < Length() || place.point[axis] > place.size[axis]) {
            return "a piece lies outside strip " + strip;
        }
        if (places[1].point[axis] - place.point[axis] != place.across[axis] * step ||
            places[2].point[axis] - place.point[axis] != place.down[axis] * step) {
            return "a step beside a piece leads elsewhere in strip " + strip;
        }
        lengthwise += axis == Y ? std::abs(place.across[axis]) + std::abs(place.down[axis]) : 0;
    }
    if (place.strip != strip || places[1].strip != strip || places[2].strip != strip) {
        return "a piece lies in strip " + place.strip + ", and comes from " + strip;
    }
    return lengthwise == (build == Build::EndGrain ? 0 : 1)
               ? std::string()
               : "the grain of " + strip + " lies wrong";
}

/// Where a piece comes from, asked for in the middle of every piece, must be a strip of its wood.
std::string originMistake(const StepList& list, const Board& board) {
    std::unordered_map<std::string, int> woods;
    for (const Step& step : list.steps) {
        if (const auto* mill = std::get_if<Mill>(&step.work)) {
            for (const MillLine& line : mill->lines) {
                for (const std::string& strip : line.strips) {
                    woods[strip] = line.wood;
                }
            }
        }
    }
    const Trace solids = trace(list, board);
    for (const Piece& piece : board.field.pieces) {
        Length x = half(board.field.columns[at(piece.column)]);
        Length y = half(board.field.rows[at(piece.row)]);
        for (int i = 0; i < piece.column; ++i) {
            x += board.field.columns[at(i)];
        }
        for (int i = 0; i < piece.row; ++i) {
            y += board.field.rows[at(i)];
        }
        const std::vector<std::string> chain = originAt(list, solids, x, y);
        const auto strip = chain.empty() ? woods.end() : woods.find(chain.back());
        if (strip == woods.end() || strip->second != piece.wood) {
            return "a piece comes from " + (chain.empty() ? "nowhere" : chain.back());
        }
        // Of one piece in five, to keep this quick.
        const std::string mistake =
            (piece.column + 2 * piece.row) % 5 == 0
                ? placeMistake(list, solids, chain.back(), board.build, {x, y})
                : std::string();
        if (!mistake.empty()) {
            return mistake;
        }
    }
    return {};
}

struct Tally {
    int planned = 0, refused = 0, deep = 0, rolled = 0, sized = 0, whole = 0, thinned = 0;
};

/// Plans, carries out, and says what does not hold; empty where no strip is to be had.
std::vector<std::string> mistakes(const Construction& construction, Laying laying,
                                  const Board& board, const RandomBoard& with, Tally& tally,
                                  bool mergeLike = false) {
    const Result<Plan> plan = planOf(construction, laying, board, with.woods, with.shop);
    if (!plan) {
        ++tally.refused;
        return {};
    }
    ++tally.planned;
    for (const Part& part : plan->parts) {
        tally.whole += int{part.keptWhole};
        for (const Use& use : part.uses) {
            tally.rolled += int{use.lay.rolled};
            tally.deep +=
                int{part.role == Role::Panel && plan->parts[at(use.part)].role == Role::Panel};
        }
    }
    const StepList list = steps(*plan, board, with.shop);
    for (const Step& step : list.steps) {
        tally.sized += int{std::holds_alternative<BringToSize>(step.work)};
        const auto* flatten = std::get_if<Flatten>(&step.work);
        tally.thinned += int{flatten != nullptr && flatten->purpose == Purpose::RowHeight};
    }
    const Proof proof = replay(list, board, mergeLike);
    std::vector<std::string> found = proof.faults;
    if (found.empty() && proof.ledger != list.ledger) {
        found.emplace_back("the ledger is not the bench's");
    }
    if (const std::string wrong = originMistake(list, board); found.empty() && !wrong.empty()) {
        found.push_back(wrong);
    }
    if (found.empty() && plan->glueUps > construction.glueUps()) {
        found.push_back("more glue-ups than the construction: " + std::to_string(plan->glueUps));
    }
    return found;
}

/// A shop and woods at random, with timber large enough for most.
RandomBoard surroundings(std::uint64_t seed) {
    RandomBoard with = randomBoard(seed, 2, 2);
    while (with.woods.size() < 3) {
        with.woods.push_back(with.woods.front());
    }
    for (Wood& wood : with.woods) {
        wood.timber = {Length::mm(250), Length::mm(500)};
    }
    with.shop.longestStrip = Length::mm(seed % 3 == 0 ? 2500 : 9000);
    with.shop.truing = Length::um(static_cast<std::int64_t>(seed % 5) * 700);
    return with;
}

TEST(DeepPlans, OfConstructionsPutTogetherAtRandomComeOutOfTheirSteps) {
    Tally tally;
    const std::uint64_t seeds = underSanitizers ? 100 : 2000;
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
        const Laying layings[] = {Laying::EndGrain, Laying::GrainDown, Laying::GrainAcross};
        const Laying laying = layings[seed % 3];
        const Construction construction = Building(seed, laying).construction();
        if (!construction.blocks.back().isGlued()) {
            continue;
        }
        const RandomBoard with = surroundings(seed);
        Board board;
        board.build = laying == Laying::EndGrain ? Build::EndGrain : Build::LongGrain;
        board.grain = laying == Laying::GrainAcross ? GrainDirection::Across : GrainDirection::Down;
        board.thickness = with.board.thickness;
        board.field = fieldOf(construction);
        if (!faults(board, 3).empty()) {
            continue;
        }
        const auto found = mistakes(construction, laying, board, with, tally);
        ASSERT_TRUE(found.empty()) << "seed " << seed << ": " << found.front();
        const Construction divided = dividedIntoLoads(construction, 2 + static_cast<int>(seed % 3));
        ASSERT_EQ(painted(divided), painted(construction)) << "seed " << seed;
        const auto inLoads = mistakes(divided, laying, board, with, tally);
        ASSERT_TRUE(inLoads.empty()) << "divided, seed " << seed << ": " << inLoads.front();
    }
    EXPECT_GT(tally.planned, static_cast<int>(seeds) / 2);
    for (const int count : {tally.deep, tally.rolled, tally.sized, tally.whole}) {
        EXPECT_GT(count, static_cast<int>(seeds) / 20);
    }
}

TEST(DeepPlans, ThatTheSearchFindsComeOutOfTheirSteps) {
    Tally tally;
    int shifted = 0;
    const std::uint64_t seeds = underSanitizers ? 40 : 600;
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
        const int columns = 2 + static_cast<int>(seed % 5);
        const int rows = 2 + static_cast<int>(seed / 5 % 5);
        RandomBoard wish = randomBoard(seed * 7919, columns, rows);
        Board board = wish.board;
        board.border = Border();
        const RandomBoard with = surroundings(seed);
        wish.woods = with.woods;
        wish.shop = with.shop;
        while (wish.woods.size() < 4) {
            wish.woods.push_back(wish.woods.front());
        }
        const Laying laying = board.build == Build::EndGrain          ? Laying::EndGrain
                              : board.grain == GrainDirection::Across ? Laying::GrainAcross
                                                                      : Laying::GrainDown;
        const bool merge = wish.choices.mergeLike;
        const Picture picture = pictureOf(board.field, laying, merge);
        SearchOptions options;
        options.thinning = seed % 2 == 0;
        options.budget = 3000;
        for (const Found& one : fewestGlueUps(picture, options).found) {
            const auto found = mistakes(one.construction, laying, board, wish, tally, merge);
            ASSERT_TRUE(found.empty()) << "seed " << seed << ": " << found.front();
        }
        for (const Found& one : shiftedAndTrimmed(picture)) {
            ++shifted;
            const auto found = mistakes(one.construction, laying, board, wish, tally, merge);
            ASSERT_TRUE(found.empty()) << "shifted, seed " << seed << ": " << found.front();
        }
    }
    EXPECT_GT(tally.planned, static_cast<int>(seeds));
    for (const int count : {shifted, tally.deep, tally.sized, tally.whole, tally.thinned}) {
        EXPECT_GT(count, 3);
    }
}

TEST(DeepPlans, OfTwoLevelsAreThoseOfTheRowPlanner) {
    // Both planners work the same board backwards, by different code.
    for (const Build build : {Build::EndGrain, Build::LongGrain}) {
        Board board;
        board.build = build;
        board.grain = GrainDirection::Down;
        board.thickness = Length::mm(40);
        board.field = plainGrid(10, 10, Length::mm(45), Length::mm(45), 0);
        for (Piece& piece : board.field.pieces) {
            piece.wood = (piece.column + piece.row) % 2;
        }
        const RandomBoard with = surroundings(9);
        Shop shop = metricShop();
        shop.longestStrip = Length::mm(2400);
        const Laying laying = build == Build::EndGrain ? Laying::EndGrain : Laying::GrainDown;
        SearchResult search = fewestGlueUps(pictureOf(board.field, laying, false));
        ASSERT_FALSE(search.found.empty());
        const Construction& best = search.found.front().construction;
        const bool byRows = best.blocks.back().along == JoinedAlong::Y;
        const Result<Plan> rows = planField(board, with.woods, shop,
                                            {byRows ? RowChoice::Rows : RowChoice::Columns, false});
        const Result<Plan> deep = planOf(best, laying, board, with.woods, shop);
        ASSERT_TRUE(rows.ok());
        ASSERT_TRUE(deep.ok());
        EXPECT_EQ(deep->glueUps, rows->glueUps);
        EXPECT_EQ(deep->strips, rows->strips);
        EXPECT_EQ(steps(*deep, board, shop).ledger, steps(*rows, board, shop).ledger);
    }
}

TEST(DeepPlans, SpoiledInOnePlaceDoNotComeOut) {
    // A basket of two tiles by two, each of three strips, every other one a quarter turned.
    Construction basket;
    const auto strip = [&](int width, int height, int wood) {
        basket.blocks.push_back(
            {Length::mm(width), Length::mm(height), wood, JoinedAlong::X, {}, -1});
        return static_cast<int>(basket.blocks.size()) - 1;
    };
    const int wide = strip(25, 60, 0);
    const int thin = strip(10, 60, 1);
    basket.blocks.push_back({Length::mm(60),
                             Length::mm(60),
                             -1,
                             JoinedAlong::X,
                             {{wide, {}, {}, {}}, {thin, {}, {}, {}}, {wide, {}, {}, {}}},
                             -1});
    basket.blocks.push_back({Length::mm(120),
                             Length::mm(60),
                             -1,
                             JoinedAlong::X,
                             {{2, {}, {}, {}}, {2, {false, 1}, {}, {}}},
                             -1});
    basket.blocks.push_back({Length::mm(120),
                             Length::mm(120),
                             -1,
                             JoinedAlong::Y,
                             {{3, {}, {}, {}}, {3, {false, 2}, {}, {}}},
                             -1});
    Board board;
    board.thickness = Length::mm(40);
    board.field = fieldOf(basket);
    const RandomBoard with = surroundings(9);
    const Result<Plan> plan = planOf(basket, Laying::EndGrain, board, with.woods, metricShop());
    ASSERT_TRUE(plan.ok());
    const StepList right = steps(*plan, board, metricShop());
    ASSERT_TRUE(replay(right, board, false).ok());

    int spoiled = 0;
    const auto mustFail = [&](std::size_t step, const char* what, auto change) {
        StepList list = right;
        change(list.steps[step].work);
        EXPECT_FALSE(replay(list, board, false).ok()) << "step " << step + 1 << ": " << what;
        ++spoiled;
    };
    for (std::size_t i = 0; i < right.steps.size(); ++i) {
        if (const auto* glue = std::get_if<Glue>(&right.steps[i].work)) {
            for (std::size_t k = 0; k < glue->parts.size() && glue->result == "B"; ++k) {
                mustFail(i, "rolled or not", [&](Work& work) {
                    Lay& lay = std::get<Glue>(work).parts[k].lay;
                    lay.rolled = !lay.rolled;
                });
            }
        } else if (std::holds_alternative<Crosscut>(right.steps[i].work)) {
            mustFail(i, "for panels or not", [](Work& work) {
                Crosscut& cut = std::get<Crosscut>(work);
                cut.forPanels = !cut.forPanels;
            });
        } else if (const auto* sized = std::get_if<BringToSize>(&right.steps[i].work)) {
            const auto sizing = [&](const char* what, auto change) {
                mustFail(i, what, [&](Work& work) { change(std::get<BringToSize>(work)); });
            };
            sizing("a part less", [](BringToSize& work) { work.parts.pop_back(); });
            sizing("a part twice",
                   [](BringToSize& work) { work.parts.push_back(work.parts.back()); });
            sizing("more off", [](BringToSize& work) { work.sizing.offFirst += Length::um(1); });
            sizing("another size", [&](BringToSize& work) {
                work.sizing.in =
                    sized->sizing.in == SizedIn::Width ? SizedIn::Thickness : SizedIn::Width;
                work.sizing.from.value += Length::um(1);
            });
            sizing("true sides or not", [&](BringToSize& work) {
                work.sizing.purpose = sized->sizing.purpose == SizedFor::TrueSides
                                          ? SizedFor::LessMargin
                                          : SizedFor::TrueSides;
            });
            sizing("off the other side", [](BringToSize& work) {
                // Evenly off both sides is the same from either.
                work.sizing.offFirst += Length::mm(1);
                work.sizing.offLast -= Length::mm(1);
            });
        }
    }
    EXPECT_GE(spoiled, 15);
}

}  // namespace
}  // namespace kerfwright
