// The search for the fewest glue-ups, by itself.
#include "core/board/recipe.h"
#include "core/project/file.h"
#include "core/search/locked.h"
#include "core/search/search.h"
#include "tests/bench/pairs.h"
#include "tests/source.h"

#include <benchmark/benchmark.h>

#include <chrono>
#include <filesystem>
#include <iostream>
#include <memory>
#include <numeric>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace kerfwright::bench {
namespace {

struct Wish {
    std::string name;
    Picture picture;
};

/// Every recipe at its usual numbers, and every pattern in three sizes.
std::vector<std::pair<std::string, Field>> laidOut() {
    std::vector<std::pair<std::string, Field>> all;
    const auto add = [&all](const PatternInfo& info, const std::string& how,
                            const Result<Field>& field) {
        if (!field) {
            throw std::runtime_error(std::string(info.key) + how + ": " + field.fault().text());
        }
        all.emplace_back(std::string(info.name) + how, *field);
    };
    for (const PatternInfo& info : patterns()) {
        std::vector<int> woods(static_cast<std::size_t>(info.woods));
        std::iota(woods.begin(), woods.end(), 0);
        add(info, ", usual",
            layOut(usualRecipe(info.pattern, Length::mm(400), Length::mm(400),
                               ruleStep(Unit::Millimetres), woods)));
        for (const int side : {6, 8, 12}) {
            const Result<Recipe> recipe =
                recipeOfSquares(info.pattern, side, side, Length::mm(40) * side,
                                Length::mm(40) * side, ruleStep(Unit::Millimetres), woods);
            add(info, ", " + std::to_string(side) + " squares",
                recipe ? layOut(*recipe) : Result<Field>(recipe.fault()));
        }
    }
    return all;
}

/// Locked pictures with the joints that free them, as they are planned.
Picture freed(Picture picture) {
    const Locked locked = lockedPieces(picture);
    return locked.freeing.empty() ? picture : withJoints(picture, locked.freeing);
}

/// Every sample, every recipe and every pattern, in both builds.
std::vector<Wish> wishes() {
    std::vector<Wish> all;
    for (const auto& entry : std::filesystem::directory_iterator(sourceFolder() / "samples")) {
        const Result<Project> project = readProject(entry.path());
        if (!project) {
            throw std::runtime_error(entry.path().string() + ": " + project.fault().text());
        }
        const Laying laying =
            project->board.build == Build::EndGrain ? Laying::EndGrain : Laying::GrainDown;
        all.push_back({entry.path().stem().string(),
                       pictureOf(project->board.field, laying, project->choices.mergeLike)});
    }
    for (const auto& [name, field] : laidOut()) {
        for (const bool mergeLike : {false, true}) {
            for (const Laying laying : {Laying::EndGrain, Laying::GrainDown}) {
                all.push_back({name + (mergeLike ? ", merged" : "") +
                                   (laying == Laying::EndGrain ? ", end grain" : ", long grain"),
                               freed(pictureOf(field, laying, mergeLike))});
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
        const bool done = fewestGlueUps(all[i].picture).proven;
        proven += done ? 1u : 0u;
        if (!done) {
            std::cerr << "not proven: " << all[i].name << '\n';
        }
        if (Clock::now() - begin > longest) {
            longest = Clock::now() - begin;
            slowest = i;
        }
    }
    const auto picture = std::make_shared<Picture>(all[slowest].picture);
    const auto bytes = std::make_shared<std::string>(toBytes(randomProject(10)));
    pair(
        "proof, the slowest of samples, recipes and patterns (" + all[slowest].name + "; " +
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
