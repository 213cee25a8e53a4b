// The search for the fewest glue-ups, by itself.
#include "core/board/patterns.h"
#include "core/project/file.h"
#include "core/search/search.h"
#include "tests/bench/pairs.h"
#include "tests/source.h"

#include <benchmark/benchmark.h>

#include <chrono>
#include <filesystem>
#include <memory>
#include <utility>
#include <vector>

namespace kerfwright::bench {
namespace {

struct Wish {
    std::string name;
    Picture picture;
};

/// Every pattern in three sizes.
std::vector<std::pair<PatternInfo, int>> sized() {
    std::vector<std::pair<PatternInfo, int>> all;
    for (const PatternInfo& pattern : patterns()) {
        for (const int side : {6, 8, 12}) {
            all.emplace_back(pattern, side);
        }
    }
    return all;
}

/// Every sample and every pattern, in both builds.
std::vector<Wish> wishes() {
    std::vector<Wish> all;
    for (const auto& entry : std::filesystem::directory_iterator(sourceFolder() / "samples")) {
        const Result<Project> project = readProject(entry.path());
        if (!project) {
            continue;
        }
        const Laying laying =
            project->board.build == Build::EndGrain ? Laying::EndGrain : Laying::GrainDown;
        all.push_back({entry.path().stem().string(),
                       pictureOf(project->board.field, laying, project->choices.mergeLike)});
    }
    for (const auto& [pattern, side] : sized()) {
        PatternRequest request;
        request.pattern = pattern.pattern;
        request.cellWidth = request.cellHeight = Length::mm(40);
        request.across = request.down = side;
        for (int wood = 0; wood < pattern.woods; ++wood) {
            request.woods.push_back(wood);
        }
        const Result<Field> field = layOut(request);
        for (const bool mergeLike : {false, true}) {
            for (const Laying laying : {Laying::EndGrain, Laying::GrainDown}) {
                if (field) {
                    all.push_back(
                        {std::string(pattern.name), pictureOf(*field, laying, mergeLike)});
                }
            }
        }
    }
    return all;
}

void addProofs() {
    using Clock = std::chrono::steady_clock;
    const std::vector<Wish> all = wishes();
    std::size_t slowest = 0;
    std::size_t proven = 0;
    Clock::duration longest{};
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto begin = Clock::now();
        proven += fewestGlueUps(all[i].picture).proven ? 1u : 0u;
        if (Clock::now() - begin > longest) {
            longest = Clock::now() - begin;
            slowest = i;
        }
    }
    const auto picture = std::make_shared<Picture>(all[slowest].picture);
    const auto bytes = std::make_shared<std::string>(toBytes(randomProject(10)));
    pair(
        "proof, the slowest of samples and patterns (" + all[slowest].name + "; " +
            std::to_string(proven) + " of " + std::to_string(all.size()) + " proven)",
        {1000, 0}, [picture] { benchmark::DoNotOptimize(fewestGlueUps(*picture).bound); },
        "reading a project of 10 x 10 from its bytes",
        [bytes] { benchmark::DoNotOptimize(fromBytes(*bytes).ok()); });
}

}  // namespace

void addSearch() {
    struct Size {
        int cells, period;
        std::int64_t budget;
        double limit;
    };
    const std::int64_t usual = SearchOptions().budget;
    for (const Size& size : {Size{16, 0, 0, 10},
                             {16, 4, 0, 10},
                             {32, 0, 0, 200},
                             {32, 8, 0, 100},
                             {64, 0, usual, 2000},
                             {64, 8, usual, 2000}}) {
        Project project = randomProject(size.cells);
        std::vector<Piece>& pieces = project.board.field.pieces;
        for (std::size_t i = 0; size.period > 0 && i < pieces.size(); ++i) {
            const int like =
                pieces[i].row % size.period * size.cells + pieces[i].column % size.period;
            pieces[i].wood = pieces[static_cast<std::size_t>(like)].wood;
        }
        const auto field = std::make_shared<Field>(project.board.field);
        const auto bytes = std::make_shared<std::string>(toBytes(project));
        const std::string cells = std::to_string(size.cells);
        pair(
            "fewest glue-ups, " + cells + " x " + cells +
                (size.period > 0 ? " periodic" : " random") +
                (size.budget > 0 ? ", with a bound" : ""),
            {size.limit, 0},
            [field, budget = size.budget] {
                const Picture picture = pictureOf(*field, Laying::EndGrain, true);
                benchmark::DoNotOptimize(fewestGlueUps(picture, {false, budget, 4}).bound);
            },
            "reading the same project from its bytes",
            [bytes] { benchmark::DoNotOptimize(fromBytes(*bytes).ok()); });
    }
    addProofs();
}

}  // namespace kerfwright::bench
