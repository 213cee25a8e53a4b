#include "tests/core/project/samples.h"

#include "core/board/recipe.h"

#include <stdexcept>
#include <utility>

namespace kerfwright::samples {
namespace {

Project begun(Unit unit, std::string name, std::string note,
              const std::vector<const char*>& woods) {
    Project project;
    project.titles = {std::move(name), "Tarn Hut Joinery", "3 October 2026", std::move(note)};
    project.notation = unit == Unit::Inches ? Notation::inches() : Notation::millimetres();
    project.shop = unit == Unit::Inches ? inchShop() : metricShop();
    for (const char* key : woods) {
        const Wood* wood = findWood(woodCatalogue(), key);
        if (wood == nullptr) {
            throw std::invalid_argument(key);
        }
        project.woods.push_back(*wood);
    }
    return project;
}

void lay(Project& project, Pattern pattern, int across, int down, Length width, Length height,
         std::vector<int> woods) {
    project.recipe = recipeOf({pattern, across, down, width, height, std::move(woods)}).value();
    project.board.field = layOut(*project.recipe).value();
}

// A 10 x 10 board by international rules: the long dark diagonal begins at each player's left. The
// squares are those of a 38 mm to 40 mm man with 5 mm to 7 mm of room (customary sizes told in a
// federation's forum). Allowances are the metric defaults.
Project draughts() {
    Project project =
        begun(Unit::Millimetres, "Hut draughts board",
              "For the long table by the stove. Men of 39 mm.", {"hard-maple", "cherry", "wenge"});
    project.purpose = {BoardUse::DraughtsBoard, Length::mm(39)};
    project.board.thickness = Length::mm(40);
    lay(project, Pattern::Chequer, 10, 10, Length::mm(45), Length::mm(45), {0, 1});
    project.board.border = {Length::mm(50), 2};
    return project;
}

// 2 1/4 in lies within the 2 in to 2 1/2 in of US Chess and, at 57.15 mm, within the 5 cm to 6 cm
// of FIDE. The light square is at each player's right hand.
Project chess() {
    Project project = begun(Unit::Inches, "Hut chess board", "For the reading corner.",
                            {"hard-maple", "black-walnut", "wenge"});
    project.purpose.use = BoardUse::ChessBoard;
    project.board.thickness = Length::inch(5, 4);
    lay(project, Pattern::Chequer, 8, 8, Length::inch(9, 4), Length::inch(9, 4), {0, 1});
    project.board.border = {Length::inch(3, 2), 2};
    project.board.border.design = BorderDesign::FloatingFrame;
    project.board.border.splineThickness = Length::inch(1, 8);
    return project;
}

Project servingBoard() {
    Project project = begun(Unit::Inches, "Striped serving board",
                            "One panel, squared at both ends. Bread and cheese for six.",
                            {"cherry", "hard-maple", "black-walnut"});
    project.purpose.use = BoardUse::ServingBoard;
    project.shop.spareSlices = 0;  // the slice is the board
    project.board.build = Build::LongGrain;
    project.board.grain = GrainDirection::Down;
    project.board.thickness = Length::inch(7, 8);
    Field field = plainGrid(9, 1, Length::inch(1, 4), Length::inch(18), 1);
    field.columns = {Length::inch(3, 2), Length::inch(1, 4), Length::inch(3, 4),
                     Length::inch(1, 4), Length::inch(5, 2), Length::inch(1, 4),
                     Length::inch(3, 4), Length::inch(1, 4), Length::inch(3, 2)};
    for (const std::size_t outer : {0U, 4U, 8U}) {
        field.pieces[outer].wood = 0;
    }
    for (const std::size_t accent : {2U, 6U}) {
        field.pieces[accent].wood = 2;
    }
    project.board.field = std::move(field);
    return project;
}

Project brickBlock() {
    Project project = begun(Unit::Millimetres, "Brick-bond kitchen block",
                            "For the hut kitchen. Three woods, so that no brick lies on its like.",
                            {"cherry", "hard-maple", "black-walnut"});
    project.purpose.use = BoardUse::KitchenBoard;
    project.board.thickness = Length::mm(60);
    lay(project, Pattern::Bricks, 5, 8, Length::mm(80), Length::mm(40), {0, 1, 2});
    return project;
}

Project mortarBlock() {
    Project project = begun(Unit::Inches, "Mortar-brick block",
                            "One brick panel serves every course: each second slice is flipped.",
                            {"cherry", "hard-maple"});
    project.purpose.use = BoardUse::KitchenBoard;
    project.board.thickness = Length::inch(2);
    lay(project, Pattern::MortarBricks, 4, 8, Length::inch(3), Length::inch(3, 2), {0, 1});
    return project;
}

Project basketBlock() {
    Project project = begun(Unit::Millimetres, "Basket-weave block", "Tiles of three 20 mm strips.",
                            {"black-walnut", "hard-maple", "white-oak"});
    project.purpose.use = BoardUse::KitchenBoard;
    project.board.thickness = Length::mm(45);
    lay(project, Pattern::Basket, 6, 4, Length::mm(60), Length::mm(60), {0, 1});
    return project;
}

Project nestedSquares() {
    Project project =
        begun(Unit::Millimetres, "Nested-squares board", "A centre piece for the window table.",
              {"hard-maple", "padauk", "wenge"});
    project.purpose.use = BoardUse::DryRoom;
    project.board.thickness = Length::mm(32);
    lay(project, Pattern::NestedSquares, 9, 9, Length::mm(32), Length::mm(32), {2, 0, 1});
    return project;
}

Project graduated() {
    Project project = begun(Unit::Millimetres, "Graduated board",
                            "Seems to swell in the middle. Many panels; take a week over it.",
                            {"hard-maple", "black-walnut", "wenge"});
    project.purpose.use = BoardUse::DryRoom;
    project.board.thickness = Length::mm(36);
    lay(project, Pattern::Graduated, 10, 8, Length::mm(40), Length::mm(40), {0, 1});
    project.board.border = {Length::mm(35), 2};
    return project;
}

Project longGrainChequer() {
    Project project = begun(Unit::Inches, "Long-grain chequer",
                            "A light board for the rucksack. The grain runs down.",
                            {"white-ash", "black-walnut"});
    project.board.build = Build::LongGrain;
    project.board.grain = GrainDirection::Down;
    project.board.thickness = Length::inch(5, 8);
    lay(project, Pattern::Chequer, 8, 8, Length::inch(7, 4), Length::inch(7, 4), {0, 1});
    return project;
}

}  // namespace

std::vector<Sample> all() {
    return {
        {"hut-draughts.kerfwright", draughts()},
        {"hut-chess.kerfwright", chess()},
        {"striped-serving-board.kerfwright", servingBoard()},
        {"brick-bond-block.kerfwright", brickBlock()},
        {"mortar-brick-block.kerfwright", mortarBlock()},
        {"basket-weave-block.kerfwright", basketBlock()},
        {"nested-squares-board.kerfwright", nestedSquares()},
        {"graduated-board.kerfwright", graduated()},
        {"long-grain-chequer.kerfwright", longGrainChequer()},
    };
}

}  // namespace kerfwright::samples
