// The build as a film: what its stages cover, and that pictures and dimensions are those of the
// plan.
#include "core/drawing/geometry.h"
#include "core/sheets/film.h"
#include "core/sheets/filmbodies.h"
#include "core/sheets/filmpicture.h"
#include "core/sheets/filmscene.h"
#include "core/sheets/stagepictures.h"
#include "tests/core/sheets/samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace kerfwright {
namespace {

using testing_samples::jobOf;
using testing_samples::randomBoard;
using testing_samples::Sample;
using testing_samples::samples;

/// The samples, every border design, fields of one slice and of one piece, and random woods.
std::vector<Sample> boards() {
    std::vector<Sample> all = samples();
    for (const BorderDesign design :
         {BorderDesign::EndGrainBand, BorderDesign::FloatingFrame, BorderDesign::FixedFrame,
          BorderDesign::EdgeBand, BorderDesign::BreadboardEnds}) {
        Project project = newProject(Unit::Millimetres);
        project.board.build =
            design == BorderDesign::BreadboardEnds ? Build::LongGrain : Build::EndGrain;
        project.board.border.design = design;
        project.board.border.width = Length::mm(48);
        project.board.border.wood = 1;
        project.board.border.cautionRead = true;
        if (design == BorderDesign::FloatingFrame) {
            project.board.border.inlayWidth = Length::mm(5);
            project.board.border.splineThickness = Length::mm(4);
        }
        all.push_back({"border " + std::to_string(static_cast<int>(design)), std::move(project)});
    }
    Project slice = newProject(Unit::Millimetres);
    slice.board.build = Build::LongGrain;
    slice.board.border.width = Length();
    slice.board.field = plainGrid(6, 1, Length::mm(40), Length::mm(300), 0);
    for (Piece& piece : slice.board.field.pieces) {
        piece.wood = piece.column % 2;
    }
    all.push_back({"one slice", slice});
    slice.board.field = plainGrid(1, 1, Length::mm(90), Length::mm(300), 0);
    all.push_back({"one piece", slice});
    Project bare = newProject(Unit::Inches);
    bare.board.border.width = Length();
    bare.shop.trimMargin = Length();
    all.push_back({"no border, no margin", bare});
    all.push_back(randomBoard(5, Length::mm(40), 7, Unit::Millimetres));
    return all;
}

struct FilmTest : testing::Test {
    void forEach(const std::function<void(const Film&, const Job&)>& look) {
        for (const Sample& sample : boards()) {
            SCOPED_TRACE(sample.name);
            const Job job = jobOf(sample.project);
            look(makeFilm(sample.project, job), job);
        }
    }
};

std::vector<StageKind> kindsOf(const Film& film) {
    std::vector<StageKind> kinds;
    for (const FilmStage& stage : film.stages) {
        kinds.push_back(stage.kind);
    }
    return kinds;
}

TEST_F(FilmTest, EveryBoardHasItsStages) {
    forEach([](const Film& film, const Job& job) {
        const std::vector<StageKind> kinds = kindsOf(film);
        const auto has = [&](StageKind kind) {
            return std::count(kinds.begin(), kinds.end(), kind);
        };
        EXPECT_EQ(kinds.front(), StageKind::Timber);
        EXPECT_EQ(kinds.back(), StageKind::Finished);
        EXPECT_EQ(has(StageKind::Field), 1);
        EXPECT_EQ(has(StageKind::Laid), 1);
        EXPECT_EQ(has(StageKind::Trimmed), job.plan.margin > Length() ? 1 : 0);
        EXPECT_EQ(has(StageKind::Rails), job.board.border.isThere() ? 1 : 0);
        EXPECT_EQ(has(StageKind::Border), job.board.border.isThere() ? 1 : 0);
        const auto panels =
            std::count_if(job.plan.parts.begin(), job.plan.parts.end(), [](const Part& part) {
                return part.role == Role::Panel && part.isGlued();
            });
        EXPECT_GE(has(StageKind::Panel), panels);
        std::set<std::string> keys;
        for (const FilmStage& stage : film.stages) {
            EXPECT_TRUE(keys.insert(stage.key).second) << stage.key;
            EXPECT_FALSE(stage.name.empty());
            EXPECT_FALSE(stage.title.empty());
            EXPECT_TRUE(stage.words.ends_with('.')) << stage.words;
            EXPECT_FALSE(stage.parts.empty()) << stage.key;
            EXPECT_EQ(stageOf(film, stage.key), &stage - film.stages.data());
        }
    });
}

TEST_F(FilmTest, StagesCoverAllStepsInOrder) {
    forEach([](const Film& film, const Job& job) {
        std::vector<int> covered;
        for (std::size_t i = 1; i < film.stages.size(); ++i) {
            EXPECT_FALSE(film.stages[i].steps.empty()) << film.stages[i].key;
            for (const int step : film.stages[i].steps) {
                if (covered.empty() || covered.back() != step) {
                    covered.push_back(step);
                }
            }
        }
        ASSERT_EQ(covered.size(), job.steps.steps.size());
        for (std::size_t i = 0; i < covered.size(); ++i) {
            EXPECT_EQ(covered[i], static_cast<int>(i));
            const int stage = stageOf(film, static_cast<int>(i));
            ASSERT_GT(stage, 0);
            EXPECT_THAT(film.stages[static_cast<std::size_t>(stage)].steps,
                        testing::Contains(static_cast<int>(i)));
        }
        EXPECT_EQ(stageOf(film, static_cast<int>(covered.size())), -1);
        for (const int step : film.stages.front().steps) {
            EXPECT_TRUE(
                std::holds_alternative<Mill>(job.steps.steps[static_cast<std::size_t>(step)].work));
        }
    });
}

TEST_F(FilmTest, DimensionsAreAsLargeAsTheySay) {
    forEach([](const Film& film, const Job&) {
        for (int stage = 0; stage < static_cast<int>(film.stages.size()); ++stage) {
            const FilmStage& shown = film.stages[static_cast<std::size_t>(stage)];
            const Scene scene = sceneOf(film, stage);
            EXPECT_FALSE(scene.sizes.empty()) << shown.key;
            for (const SceneSize& size : scene.sizes) {
                const double tilt = size.way == SceneSize::Way::Up &&
                                            shown.kind != StageKind::Trimmed &&
                                            shown.kind != StageKind::Border
                                        ? filmTilt
                                        : 1;
                EXPECT_NEAR((size.to - size.from) / tilt, size.value.toMm(), 1e-6) << shown.key;
                if (size.number >= 0) {
                    const StageNumber& number =
                        shown.numbers[static_cast<std::size_t>(size.number)];
                    EXPECT_EQ(number.figure.value, size.value) << shown.key << number.label;
                }
            }
            for (const StageNumber& number : shown.numbers) {
                EXPECT_EQ(number.figure.sumOfTerms(), number.figure.value) << number.label;
                EXPECT_FALSE(number.figure.terms.empty());
            }
        }
    });
}

bool measures(const Scene& scene, Length value) {
    return std::any_of(scene.sizes.begin(), scene.sizes.end(),
                       [&](const SceneSize& size) { return size.value == value; });
}

TEST_F(FilmTest, DimensionsAreThoseOfThePlan) {
    forEach([](const Film& film, const Job& job) {
        for (const Part& part : job.plan.parts) {
            if (part.role == Role::Panel && part.isGlued()) {
                const int at = stageOf(film, "panel-" + part.label);
                ASSERT_GE(at, 0) << part.label;
                const Scene scene = sceneOf(film, at);
                const Stage& first = part.stages.front();
                EXPECT_TRUE(measures(scene, first.thickness.value)) << part.label;
                Length width = part.width.value;
                for (const Sizing& sizing : first.sized) {
                    width = sizing.in == SizedIn::Width ? sizing.to.value : width;
                }
                EXPECT_TRUE(measures(scene, width)) << part.label;
                if (!part.keptWhole) {
                    const Scene cut = sceneOf(film, stageOf(film, "cut-" + part.label));
                    for (const Stage& stage : part.stages) {
                        for (const SliceRun& run : stage.runs) {
                            EXPECT_TRUE(measures(cut, run.length.value)) << part.label;
                        }
                    }
                }
            }
        }
        const Part& field = job.plan.field();
        const Scene glued = sceneOf(film, stageOf(film, "field"));
        EXPECT_TRUE(measures(glued, field.width.value));
        EXPECT_TRUE(measures(glued, field.length.value));
        EXPECT_TRUE(measures(glued, job.board.thickness));
        if (job.plan.margin > Length()) {
            EXPECT_TRUE(measures(sceneOf(film, stageOf(film, "trimmed")), job.plan.margin));
        }
        const Scene finished = sceneOf(film, stageOf(film, "finished"));
        EXPECT_TRUE(measures(finished, job.totals.width));
        EXPECT_TRUE(measures(finished, job.totals.height));
        EXPECT_TRUE(measures(finished, job.totals.thickness));
        if (job.board.border.isThere()) {
            EXPECT_TRUE(measures(sceneOf(film, stageOf(film, "border")), job.board.border.width));
        }
    });
}

/// Lowest and highest corner in the scene.
std::pair<Spot, Spot> hull(const SceneBlock& block) {
    Spot low{1e9, 1e9, 1e9};
    Spot high{-1e9, -1e9, -1e9};
    for (int corner = 0; corner < 8; ++corner) {
        Spot local{};
        for (std::size_t i = 0; i < 3; ++i) {
            local[i] = (corner >> i & 1) != 0 ? block.solid.size[i].toMm() : 0;
        }
        const Spot at = placed(block, local);
        for (std::size_t i = 0; i < 3; ++i) {
            low[i] = std::min(low[i], at[i]);
            high[i] = std::max(high[i], at[i]);
        }
    }
    return {low, high};
}

TEST_F(FilmTest, SlicesLieFirstAsTheyWereCutAndThenAsTheyAreGlued) {
    forEach([](const Film& film, const Job& job) {
        const int at = stageOf(film, "laid");
        const Scene before = sceneOf(film, at, 0);
        const Scene after = sceneOf(film, at, 1);
        std::vector<Laid> parts;
        for (const Step& step : job.steps.steps) {
            if (const auto* glue = std::get_if<Glue>(&step.work); glue && glue->final) {
                parts = glue->parts;
            } else if (const auto* take = std::get_if<Take>(&step.work)) {
                parts = {take->part};
            }
        }
        ASSERT_EQ(before.blocks.size(), parts.size());
        ASSERT_EQ(after.blocks.size(), parts.size());
        for (std::size_t i = 0; i < parts.size(); ++i) {
            const SceneBlock& block = before.blocks[i];
            EXPECT_EQ(block.label, parts[i].part);
            const Solid& solid = film.solids.at(parts[i].part).ready;
            const auto [low, high] = hull(block);
            for (std::size_t axis = 0; axis < 3; ++axis) {
                EXPECT_NEAR(high[axis] - low[axis], solid.size[axis].toMm(), 1e-6);
            }
            EXPECT_NEAR(low[2], 0, 1e-6);
            // After it, every box lies where the bench laid it.
            const Solid wished = laid(solid, parts[i].lay);
            const auto [from, to] = hull(after.blocks[i]);
            EXPECT_NEAR(from[2], 0, 1e-6);
            for (std::size_t axis = 0; axis < 3; ++axis) {
                EXPECT_NEAR(to[axis] - from[axis], wished.size[axis].toMm(), 1e-6);
            }
            for (std::size_t box = 0; box < solid.boxes.size(); ++box) {
                Spot middle{};
                for (std::size_t axis = 0; axis < 3; ++axis) {
                    middle[axis] =
                        (solid.boxes[box].low[axis] + solid.boxes[box].high[axis]).toMm() / 2;
                }
                const Spot lies = placed(after.blocks[i], middle);
                for (std::size_t axis = 0; axis < 3; ++axis) {
                    const double wanted =
                        (wished.boxes[box].low[axis] + wished.boxes[box].high[axis]).toMm() / 2;
                    EXPECT_NEAR(lies[axis] - from[axis], wanted, 1e-6);
                }
            }
        }
    });
}

TEST_F(FilmTest, NothingLeavesTheBenchOrJumpsOnTheWay) {
    forEach([](const Film& film, const Job&) {
        const int at = stageOf(film, "laid");
        Scene last = sceneOf(film, at, 0);
        constexpr int frames = 40;
        for (int frame = 1; frame <= frames; ++frame) {
            Scene next = sceneOf(film, at, static_cast<double>(frame) / frames);
            ASSERT_EQ(next.blocks.size(), last.blocks.size());
            for (std::size_t i = 0; i < next.blocks.size(); ++i) {
                EXPECT_GE(hull(next.blocks[i]).first[2], -1e-6);
                EXPECT_LE(std::abs(next.blocks[i].flipped - last.blocks[i].flipped), 0.25);
                EXPECT_GE(next.blocks[i].stoodUp, last.blocks[i].stoodUp);
            }
            last = std::move(next);
        }
    });
}

TEST_F(FilmTest, EaseIsSoftAndStaysInside) {
    EXPECT_EQ(eased(0), 0);
    EXPECT_EQ(eased(1), 1);
    EXPECT_EQ(eased(0.5), 0.5);
    EXPECT_EQ(eased(-1), 0);
    EXPECT_EQ(eased(2), 1);
    EXPECT_LT(eased(0.02), 0.001);
    for (double p = 0.05; p <= 1; p += 0.05) {
        EXPECT_GE(eased(p), eased(p - 0.05));
    }
}

TEST_F(FilmTest, PicturesStayInTheirFrame) {
    forEach([](const Film& film, const Job&) {
        for (int stage = 0; stage < static_cast<int>(film.stages.size()); ++stage) {
            for (const FilmLook& look :
                 {FilmLook{180, 150}, FilmLook{26, 16, false}, FilmLook{90, 120, true, true}}) {
                const FilmPicture picture = filmPicture(film, stage, look);
                const std::string& key = film.stages[static_cast<std::size_t>(stage)].key;
                ASSERT_FALSE(picture.drawing.marks.empty());
                for (const Mark& mark : picture.drawing.marks) {
                    const Box box = bounds(mark);
                    const auto* text = std::get_if<Text>(&mark);
                    const std::string words = text ? text->text : std::string();
                    EXPECT_GE(box.x, -1e-6) << key << words;
                    EXPECT_GE(box.y, -1e-6) << key << words;
                    // A text that is squeezed where it must be is measured unsqueezed.
                    if (text == nullptr || text->maxWidth == 0) {
                        EXPECT_LE(box.right(), look.width + 1e-6) << key << words;
                    }
                    EXPECT_LE(box.bottom(), look.height + 1e-6) << key << words;
                }
                EXPECT_EQ(look.dimensions,
                          std::any_of(
                              picture.drawing.marks.begin(), picture.drawing.marks.end(),
                              [](const Mark& mark) { return std::holds_alternative<Text>(mark); }))
                    << key;
            }
        }
    });
}

TEST_F(FilmTest, SpotsLeadToTheirNumbers) {
    forEach([](const Film& film, const Job&) {
        for (int stage = 0; stage < static_cast<int>(film.stages.size()); ++stage) {
            const FilmStage& shown = film.stages[static_cast<std::size_t>(stage)];
            for (const FilmSpot& spot : filmPicture(film, stage, {}).spots) {
                ASSERT_LT(static_cast<std::size_t>(spot.number), shown.numbers.size());
                EXPECT_EQ(shown.numbers[static_cast<std::size_t>(spot.number)].figure.value,
                          spot.value);
                EXPECT_GT(spot.box.width, 1);
            }
        }
    });
}

TEST_F(FilmTest, PanelsAreToldApartByTheirLetter) {
    forEach([](const Film& film, const Job& job) {
        std::set<std::string> names;
        int panels = 0;
        for (const FilmStage& stage : film.stages) {
            if (stage.kind == StageKind::Panel) {
                ++panels;
                names.insert(stage.name);
            }
        }
        EXPECT_EQ(names.size(), static_cast<std::size_t>(panels));
        EXPECT_FALSE(job.plan.parts.empty());
    });
}

TEST_F(FilmTest, TheDraughtsBoardAsOneKnowsIt) {
    for (const Sample& sample : samples()) {
        if (sample.name != "hut-draughts") {
            continue;
        }
        const Film film = makeFilm(sample.project, jobOf(sample.project));
        EXPECT_THAT(kindsOf(film),
                    testing::ElementsAre(StageKind::Timber, StageKind::Strips, StageKind::Panel,
                                         StageKind::Cut, StageKind::Laid, StageKind::Field,
                                         StageKind::Trimmed, StageKind::Rails, StageKind::Border,
                                         StageKind::Finished));
        const FilmStage& laid = film.stages[4];
        EXPECT_EQ(laid.title, "Slices stood up and flipped");
        EXPECT_THAT(laid.words, testing::HasSubstr("10 parts"));
        EXPECT_THAT(laid.words, testing::HasSubstr("5 flipped end for end"));
        EXPECT_EQ(film.stages[2].name, "Panel");  // there is but one
        return;
    }
    FAIL() << "no such sample";
}

/// The parts of a slicing stage lie with ground between them, so that cut faces are no stock.
TEST_F(FilmTest, GroundIsSeenBetweenSlices) {
    int looked = 0;
    forEach([&looked](const Film& film, const Job&) {
        for (int stage = 0; stage < static_cast<int>(film.stages.size()); ++stage) {
            if (film.stages[static_cast<std::size_t>(stage)].kind != StageKind::Cut) {
                continue;
            }
            const Scene scene = sceneOf(film, stage, 1);
            for (std::size_t i = 1; i < scene.blocks.size(); ++i) {
                const SceneBlock& before = scene.blocks[i - 1];
                const SceneBlock& block = scene.blocks[i];
                const double thick = block.solid.size[Z].toMm();
                const double foot = before.middle[1] + before.solid.size[Y].toMm() / 2;
                const double head =
                    block.middle[1] - block.solid.size[Y].toMm() / 2 - filmTilt * thick;
                EXPECT_GT(head, foot + 5) << block.label;
                ++looked;
            }
        }
    });
    EXPECT_GT(looked, 50);
}

/// Labels and numbers right of the bodies share one column.
TEST_F(FilmTest, WordsBesideTheSlicesDoNotOverprintTheNumbers) {
    forEach([](const Film& film, const Job&) {
        for (int stage = 0; stage < static_cast<int>(film.stages.size()); ++stage) {
            if (film.stages[static_cast<std::size_t>(stage)].kind != StageKind::Cut) {
                continue;
            }
            for (const FilmLook& look :
                 {FilmLook{70, 110}, FilmLook{72, 80}, FilmLook{180, 150}, FilmLook{170, 100}}) {
                std::vector<std::pair<Box, const Text*>> all;
                const Drawing drawing = filmPicture(film, stage, look).drawing;
                for (const Mark& mark : drawing.marks) {
                    const auto* text = std::get_if<Text>(&mark);
                    if (text == nullptr) {
                        continue;
                    }
                    const Box box = bounds(mark);
                    for (const auto& [other, words] : all) {
                        // A number is no next line of the words.
                        const double air = text->bold != words->bold ? 0.8 : 0;
                        const bool apart = box.x >= other.right() || other.x >= box.right() ||
                                           box.y >= other.bottom() + air ||
                                           other.y >= box.bottom() + air;
                        EXPECT_TRUE(apart) << text->text << " over " << words->text << " in "
                                           << film.stages[static_cast<std::size_t>(stage)].key
                                           << ", " << look.width << " mm wide";
                    }
                    all.emplace_back(box, text);
                }
            }
        }
    });
}

/// Nor do they touch the fine lines of a dimension that stands among them.
TEST_F(FilmTest, WordsBesideTheSlicesKeepClearOfDimensionLines) {
    forEach([](const Film& film, const Job&) {
        for (int stage = 0; stage < static_cast<int>(film.stages.size()); ++stage) {
            if (film.stages[static_cast<std::size_t>(stage)].kind != StageKind::Cut) {
                continue;
            }
            for (const FilmLook& look :
                 {FilmLook{72, 80}, FilmLook{110, 120}, FilmLook{180, 150}}) {
                const Drawing drawing = filmPicture(film, stage, look).drawing;
                std::vector<Box> words;
                for (const Mark& mark : drawing.marks) {
                    const auto* text = std::get_if<Text>(&mark);
                    if (text != nullptr && text->align == Align::Left) {
                        words.push_back(bounds(mark));
                    }
                }
                for (const Mark& mark : drawing.marks) {
                    const auto* line = std::get_if<Line>(&mark);
                    if (line == nullptr || line->style.line != Ink::Quiet) {
                        continue;
                    }
                    const Box box = bounds(mark);
                    for (const Box& text : words) {
                        EXPECT_TRUE(box.x >= text.right() || text.x >= box.right() ||
                                    box.y >= text.bottom() || text.y >= box.bottom())
                            << "at " << text.x << ", " << text.y << ", " << look.width
                            << " mm wide";
                    }
                }
            }
        }
    });
}

/// A slice that is not needed is struck through on each of its woods, in what reads on it.
TEST_F(FilmTest, SpareSlicesAreStruckThroughOnEveryWood) {
    int looked = 0;
    forEach([&looked](const Film& film, const Job&) {
        const auto woods = film.project.woods.size();
        for (int stage = 0; stage < static_cast<int>(film.stages.size()); ++stage) {
            std::set<int> onTop;
            for (const SceneBlock& block : sceneOf(film, stage).blocks) {
                for (const Cuboid& box : block.solid.boxes) {
                    if (block.fate == SceneBlock::Fate::Spare &&
                        box.high[Z] == block.solid.size[Z]) {
                        onTop.insert(box.wood);
                    }
                }
            }
            std::set<int> struck;
            for (const Mark& mark : filmPicture(film, stage, {}).drawing.marks) {
                const auto* line = std::get_if<Line>(&mark);
                if (line != nullptr && line->style.dashed) {
                    EXPECT_EQ(line->style.line, Ink::WoodLine);
                    struck.insert(line->style.wood % static_cast<int>(woods));
                }
            }
            EXPECT_EQ(struck, onTop) << film.stages[static_cast<std::size_t>(stage)].key;
            looked += static_cast<int>(onTop.size());
        }
    });
    EXPECT_GT(looked, 8);
}

double saturation(const Colour& colour) {
    const double most = std::max({colour.red, colour.green, colour.blue});
    return most > 0 ? 1 - std::min({colour.red, colour.green, colour.blue}) / most : 0;
}

/// Of woods, between red at 0 and yellow at 1.
double hue(const Colour& colour) {
    const double least = std::min({colour.red, colour.green, colour.blue});
    return (colour.green - least) / std::max(1.0, colour.red - least);
}

TEST(FilmBodies, AFaceThatLooksSidewaysIsDarkerAndOfTheSameWood) {
    const std::vector<Wood>& woods = woodCatalogue();
    const std::vector<Colour> all = FilmBodies::woods(woods);
    constexpr std::size_t side = 4;  // tones from the one that is lit from above
    for (std::size_t i = 0; i < woods.size(); ++i) {
        const Colour& top = all[i];
        const Colour& front = all[side * woods.size() + i];
        EXPECT_EQ(top, woods[i].colour);
        EXPECT_LT(front.red + front.green + front.blue, 0.95 * (top.red + top.green + top.blue))
            << woods[i].name;
        EXPECT_GT(front.red + front.green + front.blue, 0.72 * (top.red + top.green + top.blue))
            << woods[i].name;
        // Never greyer, and never towards green.
        EXPECT_GE(saturation(front), saturation(top)) << woods[i].name;
        if (saturation(top) > 0.15 && top.red >= top.green && top.green >= top.blue) {
            EXPECT_NEAR(hue(front), hue(top), 0.12) << woods[i].name;
        }
    }
}

/// Pictures in the row of stages are a few millimetres high.
TEST_F(FilmTest, SmallPicturesFillTheirRoomAndHaveALineRoundThem) {
    const FilmLook look{21, 12, false};
    forEach([&look](const Film& film, const Job&) {
        for (int stage = 0; stage < static_cast<int>(film.stages.size()); ++stage) {
            const Drawing drawing = filmPicture(film, stage, look).drawing;
            Box wood{1e9, 1e9, -2e9, -2e9};
            Box line = wood;
            const auto add = [](Box& sum, const Box& box) {
                const double right = std::max(sum.right(), box.right());
                const double bottom = std::max(sum.bottom(), box.bottom());
                sum.x = std::min(sum.x, box.x);
                sum.y = std::min(sum.y, box.y);
                sum.width = right - sum.x;
                sum.height = bottom - sum.y;
            };
            for (const Mark& mark : drawing.marks) {
                const Style& style =
                    std::visit([](const auto& one) -> const Style& { return one.style; }, mark);
                add(style.line == Ink::Quiet ? line : wood, bounds(mark));
            }
            const std::string& key = film.stages[static_cast<std::size_t>(stage)].key;
            EXPECT_GE(wood.width, 4) << key;
            EXPECT_GE(wood.height, 4) << key;
            EXPECT_LE(line.x, wood.x - 0.25) << key;
            EXPECT_LE(line.y, wood.y - 0.25) << key;
            EXPECT_GE(line.right(), wood.right() + 0.25) << key;
            EXPECT_GE(line.bottom(), wood.bottom() + 0.25) << key;
        }
    });
}

TEST_F(FilmTest, PicturesOfWaysFillTheirRoomAndHaveALineRoundThem) {
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        for (const StagePicture& picture : stagePictures(sample.project, job, 30)) {
            const Box& extent = picture.drawing.extent;
            EXPECT_NEAR(std::max(extent.width, extent.height), 30, 1e-6);
            EXPECT_GE(std::min(extent.width, extent.height), 5) << sample.name << picture.title;
            const auto* line = std::get_if<Rectangle>(&picture.drawing.marks.back());
            ASSERT_NE(line, nullptr);
            EXPECT_EQ(line->style.line, Ink::Quiet);
            const Box box = bounds(picture.drawing.marks.back());
            EXPECT_NEAR(box.width, extent.width, 1e-6);
            EXPECT_NEAR(box.height, extent.height, 1e-6);
        }
    }
}

}  // namespace
}  // namespace kerfwright
