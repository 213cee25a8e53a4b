#include "tests/core/replay/handbuilt.h"

#include <array>

namespace kerfwright::test {

namespace {

constexpr int maple = 0;
constexpr int walnut = 1;

using Size = std::array<Length, 3>;

MillLine line(int wood, std::vector<std::string> strips, const Size& rough, const Size& milled) {
    return {wood,
            std::move(strips),
            figure(rough[0]),
            figure(rough[1]),
            figure(rough[2]),
            figure(milled[0]),
            figure(milled[1]),
            figure(milled[2])};
}

Glue glue(std::string result, std::vector<Laid> parts, const Size& size, Area face) {
    Glue step;
    step.result = std::move(result);
    step.parts = std::move(parts);
    step.width = figure(size[0]);
    step.length = figure(size[1]);
    step.thickness = figure(size[2]);
    step.glueFace = face;
    return step;
}

Glue finalGlue(GlueAlong along, std::vector<Laid> parts, const Size& size, Area face) {
    Glue step = glue("Field", std::move(parts), size, face);
    step.final = true;
    step.along = along;
    return step;
}

Crosscut crosscut(std::string part, Length stop, std::vector<std::string> slices,
                  std::vector<std::string> spares, bool marginRows, Length left) {
    return {std::move(part),   figure(stop), figure(3_mm), std::move(slices),
            std::move(spares), marginRows,   left};
}

Laid plain(std::string part) {
    return {std::move(part), {}};
}

}  // namespace

Figure figure(Length value) {
    Figure result;
    result.value = value;
    result.terms = {{TermKind::PieceWidth, value, 1}};
    return result;
}

Job chequer() {
    Job job;
    job.name = "chequer";
    job.board.build = Build::EndGrain;
    job.board.thickness = 20_mm;
    job.board.field = {
        {40_mm, 40_mm},
        {40_mm, 40_mm},
        {{0, 0, 1, 1, maple}, {1, 0, 1, 1, walnut}, {0, 1, 1, 1, walnut}, {1, 1, 1, 1, maple}}};
    Lay up;
    up.stoodUp = true;
    Lay upAndFlipped = up;
    upAndFlipped.flipped = true;
    job.list.steps = {
        {Mill{"A",
              {line(maple, {"A1"}, {49_mm, 47_mm, 95_mm}, {44_mm, 42_mm, 90_mm}),
               line(walnut, {"A2"}, {49_mm, 47_mm, 95_mm}, {44_mm, 42_mm, 90_mm})}}},
        {glue("A", {plain("A1"), plain("A2")}, {84_mm, 90_mm, 44_mm}, area(90_mm, 44_mm))},
        {Flatten{"A", Face::LongGrain, Purpose::AfterGlueUp, figure(44_mm), figure(42_mm)}},
        {SquareEnd{"A", figure(5_mm), figure(3_mm), 82_mm}},
        {crosscut("A", 22_mm, {"A-1", "A-2"}, {"A-spare"}, true, 7_mm)},
        {finalGlue(GlueAlong::Down, {{"A-1", up}, {"A-2", upAndFlipped}}, {84_mm, 84_mm, 22_mm},
                   area(84_mm, 22_mm))},
        {Flatten{"Field", Face::EndGrain, Purpose::Finished, figure(22_mm), figure(20_mm)}},
        {TrimField{"Field", figure(2_mm), figure(80_mm), figure(80_mm)}}};
    Ledger& ledger = job.list.ledger;
    ledger.timberIn = cubicMm(2 * 49 * 47 * 95);
    ledger.planed = cubicMm(2 * (49 * 47 - 44 * 42) * 95 + 2 * 84 * 90 + 2 * 84 * 84);
    ledger.trimmed = cubicMm(2 * 44 * 42 * 5 + 5 * 84 * 42 + (84 * 84 - 80 * 80) * 20);
    ledger.kerf = cubicMm(4 * 3 * 84 * 42);
    ledger.spare = cubicMm(22 * 84 * 42);
    ledger.offcut = cubicMm(7 * 84 * 42);
    ledger.board = cubicMm(80 * 80 * 20);
    return job;
}

Job columns() {
    Job job;
    job.name = "columns";
    job.board.build = Build::EndGrain;
    job.board.thickness = 25_mm;
    job.board.field = {{30_mm, 30_mm, 30_mm},
                       {40_mm, 60_mm},
                       {{0, 0, 1, 1, maple},
                        {1, 0, 1, 2, maple},
                        {2, 0, 1, 1, maple},
                        {0, 1, 1, 1, walnut},
                        {2, 1, 1, 1, walnut}}};
    Lay standing;
    standing.stoodUp = true;
    standing.turned = true;
    // Panel A is glued with the walnut first, so that both of its slices have to be flipped.
    Lay reversed = standing;
    reversed.flipped = true;
    job.list.steps = {
        {Mill{"A",
              {line(walnut, {"A1"}, {32_mm, 62_mm, 60_mm}, {30_mm, 60_mm, 56_mm}),
               line(maple, {"A2"}, {32_mm, 42_mm, 60_mm}, {30_mm, 40_mm, 56_mm})}}},
        {glue("A", {plain("A1"), plain("A2")}, {100_mm, 56_mm, 30_mm}, area(56_mm, 30_mm))},
        {crosscut("A", 25_mm, {"A-1", "A-2"}, {}, false, Length())},
        {Mill{"B", {line(maple, {"B"}, {32_mm, 102_mm, 40_mm}, {30_mm, 100_mm, 30_mm})}}},
        {crosscut("B", 25_mm, {"B-1"}, {}, false, 2_mm)},
        {finalGlue(GlueAlong::Width, {{"A-1", reversed}, {"B-1", standing}, {"A-2", reversed}},
                   {90_mm, 100_mm, 25_mm}, area(100_mm, 25_mm) * 2)}};
    Ledger& ledger = job.list.ledger;
    ledger.timberIn = cubicMm(32 * 62 * 60 + 32 * 42 * 60 + 32 * 102 * 40);
    ledger.planed =
        cubicMm((32 * 62 - 30 * 60) * 60 + (32 * 42 - 30 * 40) * 60 + (32 * 102 - 30 * 100) * 40);
    ledger.trimmed = cubicMm(30 * 60 * 4 + 30 * 40 * 4 + 30 * 100 * 10);
    ledger.kerf = cubicMm(3 * 3 * 30 * 100);
    ledger.offcut = cubicMm(2 * 30 * 100);
    ledger.board = cubicMm(90 * 100 * 25);
    return job;
}

Job stripes() {
    Job job;
    job.name = "stripes";
    job.board.build = Build::LongGrain;
    job.board.grain = GrainDirection::Down;
    job.board.thickness = 15_mm;
    job.board.field = {{20_mm, 30_mm, 20_mm},
                       {100_mm},
                       {{0, 0, 1, 1, maple}, {1, 0, 1, 1, walnut}, {2, 0, 1, 1, maple}}};
    job.board.border = {25_mm, walnut};
    FitBorder border;
    border.part = "Field";
    border.rails = {{"Top", figure(120_mm)},
                    {"Right", figure(150_mm)},
                    {"Bottom", figure(120_mm)},
                    {"Left", figure(150_mm)}};
    border.width = figure(25_mm);
    border.boardWidth = figure(120_mm);
    border.boardHeight = figure(150_mm);
    job.list.steps = {
        {Mill{"S",
              {line(maple, {"S1", "S3"}, {20_mm, 24_mm, 125_mm}, {17_mm, 21_mm, 120_mm}),
               line(walnut, {"S2"}, {20_mm, 33_mm, 125_mm}, {17_mm, 30_mm, 120_mm})}}},
        {glue("S", {plain("S1"), plain("S2"), plain("S3")}, {72_mm, 120_mm, 17_mm},
              area(120_mm, 17_mm) * 2)},
        {Flatten{"S", Face::LongGrain, Purpose::AfterGlueUp, figure(17_mm), figure(16_mm)}},
        {SquareEnd{"S", figure(4_mm), figure(3_mm), 113_mm}},
        {crosscut("S", 102_mm, {"S-1"}, {}, false, 8_mm)},
        {Take{"Field", plain("S-1"), figure(72_mm), figure(102_mm), figure(16_mm)}},
        {Flatten{"Field", Face::LongGrain, Purpose::Finished, figure(16_mm), figure(15_mm)}},
        {TrimField{"Field", figure(1_mm), figure(70_mm), figure(100_mm)}},
        {Mill{"",
              {line(walnut, {"Top", "Bottom"}, {17_mm, 27_mm, 135_mm}, {15_mm, 25_mm, 130_mm}),
               line(walnut, {"Right", "Left"}, {17_mm, 27_mm, 165_mm}, {15_mm, 25_mm, 160_mm})}}},
        {CutRails{true, border.rails}},
        {border}};
    Ledger& ledger = job.list.ledger;
    const int rails = 2 * 135 + 2 * 165;
    const int kept = 15 * 25 * (2 * (120 - 25) + 2 * (150 - 25));
    ledger.timberIn = cubicMm(20 * (2 * 24 + 33) * 125 + 17 * 27 * rails);
    ledger.planed = cubicMm((20 * (2 * 24 + 33) - 17 * 72) * 125 + 72 * 120 + 72 * 102 +
                            (17 * 27 - 15 * 25) * rails);
    ledger.trimmed =
        cubicMm(17 * 72 * 5 + 4 * 72 * 16 + (72 * 102 - 70 * 100) * 15 + 15 * 25 * rails - kept);
    ledger.kerf = cubicMm(2 * 3 * 72 * 16);
    ledger.offcut = cubicMm(8 * 72 * 16);
    ledger.board = cubicMm(70 * 100 * 15 + kept);
    return job;
}

Job divided() {
    Job job;
    job.name = "divided";
    job.mergeLike = true;
    job.board.build = Build::LongGrain;
    job.board.thickness = 20_mm;
    job.board.field = {{40_mm, 40_mm, 40_mm},
                       {50_mm, 60_mm},
                       {{0, 0, 1, 1, maple},
                        {1, 0, 1, 1, maple},
                        {2, 0, 1, 1, walnut},
                        {0, 1, 1, 1, walnut},
                        {1, 1, 2, 1, maple}}};
    job.list.omittedJoints = {{true, 40_mm, Length(), 50_mm}};
    job.list.extraJoints = {{true, 80_mm, 50_mm, 110_mm}};
    job.list.steps = {
        {Mill{"A",
              {line(maple, {"A1"}, {20_mm, 80_mm, 55_mm}, {20_mm, 80_mm, 55_mm}),
               line(walnut, {"A2"}, {20_mm, 40_mm, 55_mm}, {20_mm, 40_mm, 55_mm})}}},
        {glue("A", {plain("A1"), plain("A2")}, {120_mm, 55_mm, 20_mm}, area(55_mm, 20_mm))},
        {crosscut("A", 50_mm, {"A-1"}, {}, false, 2_mm)},
        {Mill{"B",
              {line(walnut, {"B1"}, {20_mm, 40_mm, 130_mm}, {20_mm, 40_mm, 130_mm}),
               line(maple, {"B2", "B3"}, {20_mm, 40_mm, 130_mm}, {20_mm, 40_mm, 130_mm})}}},
        {glue("B", {plain("B1"), plain("B2"), plain("B3")}, {120_mm, 130_mm, 20_mm},
              area(130_mm, 20_mm) * 2)},
        {crosscut("B", 60_mm, {"B-1"}, {"B-spare"}, false, 4_mm)},
        {finalGlue(GlueAlong::Down, {plain("A-1"), plain("B-1")}, {120_mm, 110_mm, 20_mm},
                   area(120_mm, 20_mm))}};
    Ledger& ledger = job.list.ledger;
    ledger.timberIn = cubicMm(20 * 120 * (55 + 130));
    ledger.kerf = cubicMm(20 * 120 * 3 * 3);
    ledger.spare = cubicMm(20 * 120 * 60);
    ledger.offcut = cubicMm(20 * 120 * (2 + 4));
    ledger.board = cubicMm(20 * 120 * 110);
    return job;
}

Job block() {
    Job job;
    job.name = "block";
    job.board.build = Build::EndGrain;
    job.board.thickness = 20_mm;
    job.board.field = {{30_mm}, {30_mm}, {{0, 0, 1, 1, walnut}}};
    Lay up;
    up.stoodUp = true;
    job.list.steps = {
        {Mill{"P", {line(walnut, {"P"}, {30_mm, 30_mm, 23_mm}, {30_mm, 30_mm, 23_mm})}}},
        {crosscut("P", 20_mm, {"P-1"}, {}, false, Length())},
        {Take{"Field", {"P-1", up}, figure(30_mm), figure(30_mm), figure(20_mm)}}};
    Ledger& ledger = job.list.ledger;
    ledger.timberIn = cubicMm(30 * 30 * 23);
    ledger.kerf = cubicMm(30 * 30 * 3);
    ledger.board = cubicMm(30 * 30 * 20);
    return job;
}

std::vector<Job> handBuilt() {
    return {chequer(), columns(), stripes(), divided(), block()};
}

}  // namespace kerfwright::test
