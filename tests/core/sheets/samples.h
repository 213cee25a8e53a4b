// The projects that come with the program, planned, and some boards that are hard to set.
#pragma once

#include "core/bench/job.h"
#include "core/project/file.h"
#include "core/sheets/sheets.h"
#include "tests/source.h"

#include <filesystem>
#include <random>
#include <stdexcept>
#include <string>
#include <vector>

namespace kerfwright::testing_samples {

struct Sample {
    std::string name;
    Project project;
};

inline std::vector<Sample> samples() {
    std::vector<Sample> all;
    for (const auto& entry : std::filesystem::directory_iterator(sourceFolder() / "samples")) {
        if (entry.path().extension() == ".kerfwright") {
            Result<Project> project = readProject(entry.path());
            if (!project) {
                throw std::runtime_error(project.fault().text());
            }
            all.push_back({entry.path().stem().string(), std::move(project).value()});
        }
    }
    return all;
}

/// `side` x `side` cells of random woods: as good as every row needs its own panel.
inline Sample randomBoard(int side, Length cell, unsigned seed, Unit unit) {
    Project project = newProject(unit);
    project.titles = {"Random board", "Tarn Hut Joinery", "1 March 2026", ""};
    project.board.field = plainGrid(side, side, cell, cell, 0);
    project.shop.longestStrip = Length::mm(3000);
    project.board.border.width = Length();
    std::mt19937 random(seed);
    for (Piece& piece : project.board.field.pieces) {
        piece.wood = static_cast<int>(random() % project.woods.size());
    }
    return {"random " + std::to_string(side), std::move(project)};
}

/// All rows alike: one panel that gives `side` slices.
inline Sample stripedBoard(int side, Length cell) {
    Project project = newProject(Unit::Millimetres);
    project.board.field = plainGrid(side, side, cell, cell, 0);
    project.shop.longestStrip = Length::mm(9000);
    for (Piece& piece : project.board.field.pieces) {
        piece.wood = (piece.column + (piece.row % 2) * (piece.column + 1)) % 2;
    }
    return {"striped " + std::to_string(side), std::move(project)};
}

inline Job jobOf(const Project& project) {
    Result<Job> job =
        makeJob(project.board, project.woods, project.shop, project.choices, project.notation,
                {project.climate, project.glue, project.purpose, project.rates});
    if (!job) {
        throw std::runtime_error(job.fault().text());
    }
    return std::move(job).value();
}

/// Every number that a machine is set to, as the steps have it.
inline std::vector<Length> machineNumbers(const StepList& list) {
    std::vector<Length> all;
    const auto add = [&](const Figure& figure) { all.push_back(figure.value); };
    for (const Step& step : list.steps) {
        if (const auto* mill = std::get_if<Mill>(&step.work)) {
            for (const MillLine& line : mill->lines) {
                for (const Figure* figure :
                     {&line.roughThickness, &line.roughWidth, &line.roughLength, &line.thickness,
                      &line.width, &line.length}) {
                    add(*figure);
                }
            }
        } else if (const auto* flatten = std::get_if<Flatten>(&step.work)) {
            add(flatten->to);
        } else if (const auto* square = std::get_if<SquareEnd>(&step.work)) {
            add(square->waste);
        } else if (const auto* cut = std::get_if<Crosscut>(&step.work)) {
            add(cut->stop);
        } else if (const auto* trim = std::get_if<TrimField>(&step.work)) {
            add(trim->margin);
            add(trim->width);
            add(trim->height);
        } else if (const auto* border = std::get_if<FitBorder>(&step.work)) {
            for (const Rail& rail : border->rails) {
                add(rail.longPoint);
            }
        }
    }
    return all;
}

}  // namespace kerfwright::testing_samples
