#include "core/bench/hours.h"
#include "core/bench/job.h"
#include "core/board/patterns.h"
#include "tests/core/board/randomfield.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <map>
#include <random>
#include <set>
#include <string_view>

namespace kerfwright {
namespace {

using testing::IsEmpty;

std::vector<Wood> twoWoods() {
    return {*findWood(woodCatalogue(), "hard-maple"), *findWood(woodCatalogue(), "black-walnut")};
}

Board chequer(int across, int down, Length cell, Length thickness, Build build = Build::EndGrain) {
    Board board;
    board.build = build;
    board.thickness = thickness;
    board.field = layOut({Pattern::Chequer, across, down, cell, cell, {0, 1}}).value();
    return board;
}

Job planned(const Board& board, const Shop& shop = metricShop(),
            const Conditions& conditions = {}) {
    Result<Job> job = makeJob(board, twoWoods(), shop, {}, Notation::millimetres(), conditions);
    EXPECT_TRUE(job.ok()) << job.fault().text();
    return std::move(job).value();
}

/// A field of 8 x 8 with a border of each design, glued and not, with inlay and keys where they go.
std::vector<Board> borderedBoards() {
    std::vector<Board> all;
    for (const BorderDesign design :
         {BorderDesign::EndGrainBand, BorderDesign::FloatingFrame, BorderDesign::FixedFrame,
          BorderDesign::BreadboardEnds, BorderDesign::EdgeBand}) {
        Board board =
            chequer(8, 8, Length::mm(45), Length::mm(38),
                    design == BorderDesign::BreadboardEnds ? Build::LongGrain : Build::EndGrain);
        board.border.width = Length::mm(50);
        board.border.wood = 1;
        board.border.design = design;
        board.border.inlayWidth = Length::mm(4);
        board.border.splineThickness = Length::mm(4);
        for (const bool read : {false, true}) {
            board.border.cautionRead = read;
            all.push_back(board);
        }
    }
    return all;
}

BenchHours hoursOf(const Job& job, const BenchRates& rates = {}, const GlueShop& shop = {}) {
    return benchHours(job.steps, glueNeeds(job.steps, twoWoods(), shop), shop, rates);
}

/// Count and rate of each term of a step, by the key of its rate.
std::map<std::string, std::pair<double, double>> termsOf(const BenchTask& task) {
    std::map<std::string, std::pair<double, double>> all;
    for (const TimeTerm& term : task.terms) {
        EXPECT_TRUE(all.emplace(term.setting, std::pair(term.count, term.each)).second)
            << term.setting << " twice in " << task.title;
    }
    return all;
}

// Counted by hand from the worked example of a chequer of 10 × 10, squares 45, thickness 40: strips
// 8 × 45 and 2 × 48 wide, 51 thick and 540 long; 2 margin slices, 8 slices and a spare.
TEST(Hours, CountTheWorkOfEveryStep) {
    const Job job = planned(chequer(10, 10, Length::mm(45), Length::mm(40)));
    const std::vector<BenchTask>& tasks = job.hours.tasks;
    ASSERT_EQ(tasks.size(), 13U) << "ten steps, sanding and two coats";
    const auto has = [&](std::size_t task, const char* key, double count, double each) {
        const auto terms = termsOf(tasks[task]);
        ASSERT_TRUE(terms.contains(key)) << key << " in " << tasks[task].title;
        EXPECT_NEAR(terms.at(key).first, count, 1e-6) << key << " in " << tasks[task].title;
        EXPECT_NEAR(terms.at(key).second, each, 1e-9) << key << " in " << tasks[task].title;
    };
    // Two widths, one thickness and one length; each strip out of the plank, then to width.
    has(0, "setting-minutes", 4, 4);
    has(0, "rip-minutes", 20, 1);
    // 3 mm off in passes of 1 mm, and an edge made straight.
    has(0, "mill-minutes", 10 * 0.54 * 4, 0.25);
    has(1, "lay-minutes", 10, 0.75);
    has(1, "glue-seconds-per-line", 9, 0.5);
    has(1, "scrape-minutes", 9 * 0.54, 1.5);
    has(1, "clamp-minutes", job.glue.glueUps[0].clamps, 1);
    // 456 wide; 3 mm in passes of 0.4 mm are 8.
    has(2, "flatten-long-minutes", 0.456 * 0.54 * 8, 6);
    has(4, "crosscut-minutes", 2, 0.75);
    has(6, "crosscut-minutes", 9, 0.75);
    // 3 mm of end grain in passes of 0.15 mm are 20.
    has(8, "flatten-end-minutes", 0.456 * 0.456 * 20, 8);
    has(9, "crosscut-minutes", 4, 0.75);
    has(10, "sand-end-minutes", 2 * 0.45 * 0.45, 180);
    has(10, "sand-long-minutes", 4 * 0.45 * 0.04, 60);
    has(11, "coat-minutes", 2 * 0.45 * 0.45 + 4 * 0.45 * 0.04, 20);
}

TEST(Hours, AreTheSumOfTheirTerms) {
    for (const Board& board : borderedBoards()) {
        const Job job = planned(board);
        double sum = 0;
        double spreading = 0;
        for (std::size_t i = 0; i < job.hours.tasks.size(); ++i) {
            const BenchTask& task = job.hours.tasks[i];
            EXPECT_EQ(task.step, i < job.steps.steps.size() ? static_cast<int>(i) : -1);
            double minutes = 0;
            for (const TimeTerm& term : task.terms) {
                EXPECT_GT(term.count, 0) << task.title;
                minutes += term.minutes();
                spreading +=
                    std::string_view(term.setting) == "glue-seconds-per-line" ? term.minutes() : 0;
            }
            EXPECT_NEAR(task.minutes, minutes, 1e-9);
            sum += task.minutes;
        }
        double sessions = 0;
        for (const BenchSession& session : job.hours.sessions) {
            sessions += session.minutes;
        }
        EXPECT_NEAR(job.hours.minutes, sum, 1e-6);
        EXPECT_NEAR(sessions, sum, 1e-6);
        // Spreading is reckoned with the glue, and counted here but once.
        double needed = 0;
        for (const GlueUpNeeds& needs : job.glue.glueUps) {
            needed += needs.spreadMinutes;
        }
        EXPECT_GE(spreading, needed - 1e-9);
    }
}

// Every rate that is a time doubles its own terms and leaves the others alone; every one is asked
// for by some board.
TEST(Hours, DoubleWithTheirRate) {
    std::set<std::string> used;
    for (const Board& board : borderedBoards()) {
        const Job job = planned(board);
        for (const RateSetting& rate : rateSettings()) {
            BenchRates twice;
            twice.*rate.value *= 2;
            const BenchHours hours = hoursOf(job, twice);
            if (!std::string_view(rate.key).ends_with("-minutes")) {
                continue;
            }
            ASSERT_EQ(hours.tasks.size(), job.hours.tasks.size());
            for (std::size_t i = 0; i < hours.tasks.size(); ++i) {
                const auto before = termsOf(job.hours.tasks[i]);
                const auto after = termsOf(hours.tasks[i]);
                ASSERT_EQ(before.size(), after.size());
                for (const auto& [key, term] : before) {
                    const bool own = key == rate.key;
                    EXPECT_DOUBLE_EQ(after.at(key).second, (own ? 2 : 1) * term.second) << key;
                    EXPECT_DOUBLE_EQ(after.at(key).first, term.first) << key;
                    if (own) {
                        used.insert(key);
                    }
                }
            }
        }
    }
    for (const RateSetting& rate : rateSettings()) {
        EXPECT_EQ(used.contains(rate.key), std::string_view(rate.key).ends_with("-minutes"))
            << rate.key;
    }
}

TEST(Hours, OfMoreSlicesAreNeverLess) {
    EXPECT_TRUE(rc::check([] {
        Board board;
        board.thickness = Length::mm(30);
        board.field = random::anyField(6, 2);
        const Result<Job> job =
            makeJob(board, twoWoods(), metricShop(), {}, Notation::millimetres());
        RC_PRE(job.ok());
        StepList more = job->steps;
        for (Step& step : more.steps) {
            if (auto* cut = std::get_if<Crosscut>(&step.work)) {
                cut->slices.push_back(cut->part + "-more");
            }
        }
        const BenchHours hours = benchHours(more, job->glue, {}, {});
        RC_ASSERT(hours.minutes > job->hours.minutes);
    }));
    double before = 0;
    for (const int rows : {2, 4, 6, 8, 10, 12}) {
        const double minutes =
            planned(chequer(8, rows, Length::mm(40), Length::mm(30))).hours.minutes;
        EXPECT_GT(minutes, before) << rows;
        before = minutes;
    }
}

// --- sessions

/// In the order of the sessions.
std::vector<int> asDone(const BenchHours& hours) {
    std::vector<int> all;
    for (const BenchSession& session : hours.sessions) {
        EXPECT_FALSE(session.tasks.empty());
        all.insert(all.end(), session.tasks.begin(), session.tasks.end());
    }
    return all;
}

/// Each task once, in an order in which the virtual bench gets the wished board.
void expectOrder(const Job& job) {
    const std::vector<int> order = asDone(job.hours);
    EXPECT_EQ(std::set<int>(order.begin(), order.end()).size(), job.hours.tasks.size());
    EXPECT_EQ(order.size(), job.hours.tasks.size());
    StepList other = job.steps;
    other.steps.clear();
    for (const int task : order) {
        const int step = job.hours.tasks[static_cast<std::size_t>(task)].step;
        if (step >= 0) {
            other.steps.push_back(job.steps.steps[static_cast<std::size_t>(step)]);
        }
    }
    EXPECT_THAT(replay(other, job.board, false, job.season).faults, IsEmpty());
}

TEST(Sessions, KeepAnOrderThatTheVirtualBenchTakes) {
    for (const Board& board : borderedBoards()) {
        expectOrder(planned(board));
    }
    // Blocks glued from blocks.
    Board deep = chequer(1, 1, Length::mm(20), Length::mm(30));
    deep.field = layOut({Pattern::Basket, 4, 4, Length::mm(60), Length::mm(60), {0, 1, 0}}).value();
    const Job blocks = planned(deep);
    EXPECT_TRUE(
        std::any_of(blocks.steps.steps.begin(), blocks.steps.steps.end(), [](const Step& step) {
            return std::holds_alternative<BringToSize>(step.work);
        }));
    expectOrder(blocks);
    EXPECT_TRUE(rc::check([] {
        Board board;
        board.thickness = Length::mm(30);
        board.field = random::anyField(6, 2);
        Conditions conditions;
        conditions.rates.hoursADay = *rc::gen::element(0.25, 1.0, 4.0, 24.0);
        conditions.glue.clampsOwned = *rc::gen::element(0, 4, 30);
        conditions.glue.machiningHours = *rc::gen::element(0, 1, 12, 30);
        const Result<Job> job =
            makeJob(board, twoWoods(), metricShop(), {}, Notation::millimetres(), conditions);
        RC_PRE(job.ok());
        expectOrder(*job);
        int day = 1;
        for (const BenchSession& session : job->hours.sessions) {
            RC_ASSERT(session.day >= day);
            RC_ASSERT(session.lastDay >= session.day);
            // Within a day's work, unless one task alone takes longer.
            RC_ASSERT(session.lastDay == session.day ||
                      session.minutes > conditions.rates.hoursADay * 60 - 1e-6 ||
                      conditions.glue.clampsOwned > 0);
            day = session.lastDay;
        }
        RC_ASSERT(job->hours.days.value() >= day);
    }));
}

/// Rows of two kinds: two panels, then the field.
Job twoPanels(const Conditions& conditions = {}) {
    Board board = chequer(5, 5, Length::mm(45), Length::mm(40));
    return planned(board, metricShop(), conditions);
}

TEST(Sessions, GlueOnePanelWhileTheOtherSets) {
    Conditions conditions;
    conditions.rates.hoursADay = 8;
    const BenchHours hours = twoPanels(conditions).hours;
    std::vector<int> glued;
    for (const int task : hours.sessions.front().tasks) {
        if (hours.tasks[static_cast<std::size_t>(task)].wait == BenchWait::Glue) {
            glued.push_back(task);
        }
    }
    ASSERT_EQ(glued.size(), 2U);
    ASSERT_EQ(hours.sessions.size(), 4U) << "panels; field; board and a coat; the second coat";
    EXPECT_THAT(hours.sessions[0].waitsFor, IsEmpty());
    EXPECT_EQ(hours.sessions[1].waitsFor, glued);
    EXPECT_EQ(hours.sessions[2].waitsFor.size(), 1U);
    EXPECT_EQ(hours.sessions[3].waitsFor.size(), 1U);
    // 12 hours for glue and for a coat: a night each. The second coat dries on the fourth day.
    for (int day = 1; day <= 4; ++day) {
        EXPECT_EQ(hours.sessions[static_cast<std::size_t>(day) - 1].day, day);
    }
    EXPECT_EQ(hours.days, 4);
}

TEST(Sessions, GoOnTheSameDayWhereTheGlueIsQuick) {
    Conditions conditions;
    conditions.rates.hoursADay = 14;
    conditions.rates.coats = 0;
    conditions.glue.machiningHours = 1;
    conditions.glue.cureHours = 1;
    const BenchHours hours = twoPanels(conditions).hours;
    EXPECT_EQ(hours.days, 1);
    EXPECT_EQ(hours.sessions.back().day, 1);
}

TEST(Sessions, WaitForClamps) {
    Conditions conditions;
    const Job all = twoPanels(conditions);
    conditions.glue.clampsOwned = all.glue.glueUps[0].clamps;
    conditions.glue.clampMinutes = 120;
    conditions.rates.hoursADay = 8;
    const BenchHours few = twoPanels(conditions).hours;
    EXPECT_TRUE(std::any_of(few.sessions.begin(), few.sessions.end(),
                            [](const BenchSession& one) { return one.waitsForClamps; }));
    conditions.glue.clampsOwned = 1000;
    for (const BenchSession& session : twoPanels(conditions).hours.sessions) {
        EXPECT_FALSE(session.waitsForClamps);
    }
}

TEST(Sessions, TakeMoreDaysWhereTheDayIsShort) {
    int before = 0;
    for (const double hours : {24.0, 8.0, 4.0, 2.0, 1.0, 0.5}) {
        Conditions conditions;
        conditions.rates.hoursADay = hours;
        const Job job = twoPanels(conditions);
        EXPECT_GE(job.hours.days.value(), before) << hours;
        before = job.hours.days.value();
    }
    EXPECT_GT(before, 8);
}

// Below the least temperature of the glue nothing is made up: the hands-on time alone is known.
TEST(Sessions, SayNoDaysWhereTheGlueNeverSets) {
    Conditions cold;
    cold.glue.celsius = 2;
    const Job job = twoPanels(cold);
    EXPECT_EQ(job.hours.days, std::nullopt);
    EXPECT_NEAR(job.hours.minutes, twoPanels().hours.minutes, 1e-9);
    expectOrder(job);
    for (const BenchTask& task : job.hours.tasks) {
        EXPECT_EQ(task.waitMinutes.has_value(), task.wait != BenchWait::Glue) << task.title;
    }
    for (const BenchSession& session : job.hours.sessions) {
        EXPECT_EQ(session.day, 0);
    }
}

TEST(Sessions, WaitBetweenLoadsWhereTheGlueWouldDry) {
    Conditions conditions;
    conditions.glue.openMinutes = 2;  // four lines
    const Job job =
        planned(chequer(10, 10, Length::mm(45), Length::mm(40)), metricShop(), conditions);
    const GlueUpNeeds& needs = job.glue.glueUps[0];
    ASSERT_EQ(needs.loads, 3);
    const BenchTask& task = job.hours.tasks[static_cast<std::size_t>(needs.step)];
    EXPECT_DOUBLE_EQ(task.betweenLoads, 2 * 45);
    EXPECT_DOUBLE_EQ(termsOf(task).at("clamp-minutes").first, 3 * needs.clamps);
}

// --- outside figures. Makers tell the hours of a whole board and nothing of single steps, of their
// machines or of their finish, so the bands are wide.

double hoursInInches(const Board& board) {
    return planned(board, inchShop()).hours.minutes / 60;
}

// Reported by a maker: 3 h for a board of 14 × 12 × 1 in. The pattern is not told.
TEST(OutsideHours, OfASmallBoard) {
    const double hours = hoursInInches(chequer(7, 6, Length::inch(2), Length::inch(1)));
    EXPECT_GT(hours, 3 / 1.5);
    EXPECT_LT(hours, 3 * 1.5);
}

// Reported by a maker: 5 h for a board of 12 × 12 in with a third glue-up. Thickness not told.
TEST(OutsideHours, OfABoardOfThreeGlueUps) {
    const Board board = chequer(9, 9, Length::inch(4, 3), Length::inch(3, 2));
    ASSERT_EQ(planned(board, inchShop()).plan.assemblies, 3);
    EXPECT_GT(hoursInInches(board), 5 / 1.5);
    EXPECT_LT(hoursInInches(board), 5 * 1.5);
}

// Reported by a maker: 6 h from glue-up to oil, mostly sanding. The size is not told.
TEST(OutsideHours, FromGlueUpToOil) {
    const Job job = planned(chequer(10, 8, Length::inch(2), Length::inch(3, 2)), inchShop());
    const double hours = (job.hours.minutes - job.hours.tasks.front().minutes) / 60;
    EXPECT_GT(hours, 6 / 2.0);
    EXPECT_LT(hours, 6 * 1.5);
}

// A maker sells long-grain boards, which take half the time, at half the price.
TEST(OutsideHours, LongGrainTakesLess) {
    Board plain = chequer(12, 1, Length::inch(1), Length::inch(3, 2), Build::LongGrain);
    plain.field =
        layOut({Pattern::Stripes, 12, 1, Length::inch(1), Length::inch(12), {0, 1}}).value();
    const double share =
        hoursInInches(plain) / hoursInInches(chequer(8, 8, Length::inch(3, 2), Length::inch(3, 2)));
    EXPECT_GT(share, 0.4);
    EXPECT_LT(share, 0.75);
}

// Reported by a maker of illusions: some 200 h for boards of 1 000 pieces, all rows different.
TEST(OutsideHours, OfAThousandPieces) {
    Board board = chequer(32, 32, Length::inch(1, 2), Length::inch(3, 2));
    std::mt19937 random(1);
    for (Piece& piece : board.field.pieces) {
        piece.wood = static_cast<int>(random() % 2);
    }
    const double hours = hoursInInches(board);
    EXPECT_GT(hours, 200 * 0.4);
    EXPECT_LT(hours, 200 * 1.5);
}

}  // namespace
}  // namespace kerfwright
