#include "core/bench/standing.h"
#include "core/sheets/flow.h"
#include "core/sheets/record.h"
#include "core/sheets/sheets.h"
#include "tests/core/sheets/samples.h"
#include "tests/core/sheets/wellset.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <utility>

using namespace kerfwright;
using namespace kerfwright::testing_samples;
using ::testing::HasSubstr;
using ::testing::Not;

namespace {

constexpr double fourteenPoints = 14 * 25.4 / 72;

const Page* pageOf(const std::vector<Page>& pages, const std::string& key) {
    const auto found =
        std::find_if(pages.begin(), pages.end(), [&](const Page& page) { return page.key == key; });
    return found == pages.end() ? nullptr : &*found;
}

}  // namespace

// ISO 216: A4 is 210 x 297 mm. US Letter (ANSI Y14.1 size A) is 8 1/2 x 11 in.
TEST(PaperSizes, AreThoseOfTheStandards) {
    EXPECT_EQ(paperSize(Paper::A4).width, Length::mm(210));
    EXPECT_EQ(paperSize(Paper::A4).height, Length::mm(297));
    EXPECT_EQ(paperSize(Paper::Letter).width, Length::um(215'900));
    EXPECT_EQ(paperSize(Paper::Letter).height, Length::um(279'400));
}

TEST(Sheets, AreWellSetForEverySampleOnBothPapersInBothUnits) {
    for (Sample& sample : samples()) {
        for (const Notation& notation : {Notation::millimetres(), Notation::inches(),
                                         Notation::inches(16), Notation::millimetres(3)}) {
            sample.project.notation = notation;
            const Job job = jobOf(sample.project);
            for (const Paper paper : {Paper::A4, Paper::Letter}) {
                expectWellSet(sheets(sample.project, job, paper), paper, sample.name);
            }
        }
    }
}

TEST(Sheets, AreWellSetForHardBoards) {
    std::vector<Sample> hard{randomBoard(64, Length::mm(8), 1, Unit::Millimetres),
                             randomBoard(20, Length::inch(3, 4), 2, Unit::Inches),
                             stripedBoard(64, Length::mm(5)), stripedBoard(2, Length::mm(200))};
    hard.push_back(randomBoard(30, Length::mm(15), 4, Unit::Millimetres));
    hard.back().project.choices.rows = RowChoice::Columns;
    for (const Sample& sample : hard) {
        const Job job = jobOf(sample.project);
        expectWellSet(sheets(sample.project, job, Paper::Letter), Paper::Letter, sample.name);
    }
}

TEST(Sheets, BearLongTitles) {
    Project project = newProject(Unit::Inches);
    project.titles.name = std::string(400, 'W') + "\nsecond line";
    project.titles.maker = std::string(200, 'M');
    project.titles.note = std::string(5000, 'n') + " " + std::string(3000, 'o');
    for (Wood& wood : project.woods) {
        wood.name += " with a name that goes on and on until nobody reads it any more";
    }
    const Job job = jobOf(project);
    expectWellSet(sheets(project, job, Paper::A4), Paper::A4, "long titles");
}

TEST(Sheets, EachSayProjectSheetRevisionAndSizes) {
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        const std::vector<Page> pages = sheets(sample.project, job, Paper::A4);
        std::set<std::string> keys;
        for (std::size_t i = 0; i < pages.size(); ++i) {
            SCOPED_TRACE(sample.name + ", " + pages[i].key);
            EXPECT_TRUE(keys.insert(pages[i].key).second);
            const std::string words = wordsOf(pages[i]);
            EXPECT_THAT(words, HasSubstr(sample.project.titles.name));
            EXPECT_THAT(words, HasSubstr("Sheet " + std::to_string(i + 1) + " of " +
                                         std::to_string(pages.size())));
            EXPECT_THAT(words, HasSubstr("Revision " + revision(sample.project)));
            EXPECT_THAT(
                words,
                HasSubstr(sample.project.notation.unit == Unit::Inches ? "inches" : "millimetres"));
            EXPECT_TRUE(words.find("Rough sizes") != std::string::npos ||
                        words.find("Finished sizes") != std::string::npos);
        }
        for (const char* key :
             {"overview", "cut-list", "slicing-A", "final-glue-up", "machine-settings"}) {
            EXPECT_TRUE(keys.contains(key)) << sample.name << ": " << key;
        }
        EXPECT_EQ(keys.contains("border"), sample.project.board.border.width > Length());
    }
}

TEST(Sheets, SetEveryMachineNumberInFourteenPointsOrMore) {
    for (Sample& sample : samples()) {
        for (const Notation& notation : {Notation::millimetres(), Notation::inches()}) {
            sample.project.notation = notation;
            const Job job = jobOf(sample.project);
            std::set<std::string> large;
            for (const Page& page : sheets(sample.project, job, Paper::A4)) {
                if (!page.key.starts_with("machine-settings")) {
                    continue;
                }
                for (const Text& text : textsOf(page)) {
                    if (text.size >= fourteenPoints) {
                        large.insert(text.text);
                    }
                }
            }
            for (const Length number : machineNumbers(job.steps)) {
                EXPECT_TRUE(large.contains(format(number, notation)))
                    << sample.name << ": " << format(number, notation);
            }
        }
    }
}

TEST(Sheets, KeepTheMarkOfRoundedNumbers) {
    Project project = newProject(Unit::Inches);
    project.notation = Notation::inches(4);
    project.board.field = withCells(project.board.field, Length::mm(41), Length::mm(41));
    const Job job = jobOf(project);
    std::string settings;
    for (const Page& page : sheets(project, job, Paper::A4)) {
        if (page.key.starts_with("machine-settings")) {
            settings += wordsOf(page);
        }
    }
    EXPECT_THAT(settings, HasSubstr("≈"));
}

TEST(Sheets, WarnOfGluingABorderRoundEndGrain) {
    Project project = newProject(Unit::Millimetres);
    project.board.build = Build::EndGrain;
    project.board.border.width = Length::mm(50);
    const Job job = jobOf(project);
    const std::vector<Page> pages = sheets(project, job, Paper::A4);
    const Page* border = pageOf(pages, "border");
    ASSERT_NE(border, nullptr);
    EXPECT_THAT(wordsOf(*border),
                AllOf(HasSubstr("Do not glue this border to the field: it will move by up to"),
                      HasSubstr("through the year and burst the mitres.")));
}

// All rails out of one plank: their rough lengths and the kerfs between.
TEST(Sheets, ReserveThePlanksOfTheBorderFirst) {
    Project project = newProject(Unit::Millimetres);
    project.board.border.width = Length::mm(50);
    const Job job = jobOf(project);
    Length all = project.shop.kerf * 3;
    for (const Step& step : job.steps.steps) {
        if (const auto* mill = std::get_if<Mill>(&step.work);
            mill != nullptr && mill->panel.empty()) {
            for (const MillLine& line : mill->lines) {
                all += line.roughLength.value * static_cast<int>(line.strips.size());
            }
        }
    }
    const std::vector<Page> pages = sheets(project, job, Paper::A4);
    const std::string words = wordsOf(*pageOf(pages, "cut-list"));
    EXPECT_THAT(words, HasSubstr("Put the planks for the border aside before any strip is sawn"));
    EXPECT_THAT(words, HasSubstr("out of one plank, " + format(all, project.notation) + " with"));
    EXPECT_LT(words.find("Border rails"), words.find("Panel A"));
}

TEST(Sheets, SayThatMarginSlicesComeFirst) {
    Project project = newProject(Unit::Millimetres);
    const Job job = jobOf(project);
    const std::vector<Page> pages = sheets(project, job, Paper::A4);
    const Page* slicing = pageOf(pages, "slicing-A");
    ASSERT_NE(slicing, nullptr);
    EXPECT_THAT(wordsOf(*slicing), HasSubstr("First, while the panel is still thick"));
    project.shop.trimMargin = Length();
    const Job without = jobOf(project);
    const std::vector<Page> others = sheets(project, without, Paper::A4);
    EXPECT_THAT(wordsOf(*pageOf(others, "slicing-A")), Not(HasSubstr("First, while")));
}

// Whoever works down the sheet must never thin a panel before its margin slices are cut.
TEST(Sheets, SetTheMachinesInStepOrder) {
    Project project = newProject(Unit::Millimetres);
    const Job job = jobOf(project);
    std::vector<std::string> wished;
    for (std::size_t i = 0; i < job.steps.steps.size(); ++i) {
        const Work& work = job.steps.steps[i].work;
        const Figure* figure = nullptr;
        if (const auto* flatten = std::get_if<Flatten>(&work)) {
            figure = &flatten->to;
        } else if (const auto* cut = std::get_if<Crosscut>(&work)) {
            figure = &cut->stop;
        }
        if (figure != nullptr) {
            wished.push_back("Step " + std::to_string(i + 1));
            wished.push_back(format(figure->value, project.notation));
        }
    }
    ASSERT_GT(wished.size(), 8U);
    std::size_t found = 0;
    for (const Page& page : sheets(project, job, Paper::A4)) {
        if (page.key.starts_with("machine-settings")) {
            for (const Text& text : textsOf(page)) {
                found += found < wished.size() && text.text == wished[found] ? 1U : 0U;
            }
        }
    }
    EXPECT_EQ(found, wished.size()) << "missing in its place: " << wished[found % wished.size()];
}

TEST(Sheets, KeepTheSettingsOfVeryManyPanelsWithinBounds) {
    const Sample sample = randomBoard(64, Length::mm(8), 1, Unit::Millimetres);
    const Job job = jobOf(sample.project);
    std::size_t count = 0;
    std::string words;
    for (const Page& page : sheets(sample.project, job, Paper::A4)) {
        if (page.key.starts_with("machine-settings")) {
            ++count;
            words += wordsOf(page);
        }
    }
    EXPECT_LE(count, 6U);
    EXPECT_THAT(words, HasSubstr("each of panels A"));
    EXPECT_LT(words.find("Flatten the panels"), words.find("Cut slices"));
}

TEST(Sheets, LetNoCautionNoteOrStepDropOffThePaper) {
    std::vector<Sample> all = samples();
    all.push_back(randomBoard(30, Length::mm(15), 4, Unit::Millimetres));
    for (Sample& sample : all) {
        sample.project.titles.note.clear();
        for (int i = 0; i < 900; ++i) {
            sample.project.titles.note += "word" + std::to_string(i) + " ";
        }
        const Job job = jobOf(sample.project);
        std::string words;
        for (const Page& page : sheets(sample.project, job, Paper::Letter)) {
            words += page.key.starts_with("overview") ? wordsOf(page) : "";
        }
        for (const Caution& caution : job.cautions) {
            EXPECT_THAT(words, HasSubstr(caution.title)) << sample.name;
        }
        EXPECT_THAT(words, HasSubstr("word899")) << sample.name;
        EXPECT_THAT(words, HasSubstr("Order of work")) << sample.name;
        EXPECT_THAT(words, HasSubstr(std::to_string(job.steps.steps.size()) + " " +
                                     title(job.steps.steps.back())))
            << sample.name;
    }
}

/// Lines of the ticks in boxes, and the boxes before cautions: thin squares of 3.6 mm.
std::pair<int, int> ticksAndBoxes(const std::vector<Page>& pages) {
    std::pair<int, int> count;
    for (const Page& page : pages) {
        for (const Mark& mark : page.drawing.marks) {
            if (const auto* line = std::get_if<Line>(&mark)) {
                count.first += line->style.lineWidth == 0.55 ? 1 : 0;
            } else if (const auto* box = std::get_if<Rectangle>(&mark)) {
                count.second += box->box.width == 3.6 && box->style.lineWidth == 0.25 ? 1 : 0;
            }
        }
    }
    return count;
}

TEST(Sheets, PrintEveryCautionAndTickThoseThatWereSeenTo) {
    for (Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        if (job.cautions.size() < 2) {
            continue;
        }
        const auto before = sheets(sample.project, job, Paper::A4);
        seeTo(sample.project.seenTo, job.cautions[0]);
        Caution other = job.cautions[1];
        other.said.push_back(fact("another", 1));
        seeTo(sample.project.seenTo, other);
        const auto after = sheets(sample.project, job, Paper::A4);
        std::string words;
        for (const Page& page : after) {
            words += page.key.starts_with("overview") ? wordsOf(page) : "";
        }
        for (const Caution& caution : job.cautions) {
            EXPECT_THAT(words, HasSubstr(caution.title)) << sample.name;
        }
        EXPECT_THAT(words, HasSubstr("(seen to)")) << sample.name;
        EXPECT_THAT(words, HasSubstr("(was seen to before its numbers changed)")) << sample.name;
        const auto [ticksBefore, boxesBefore] = ticksAndBoxes(before);
        const auto [ticksAfter, boxesAfter] = ticksAndBoxes(after);
        EXPECT_EQ(ticksAfter, ticksBefore + 2) << sample.name << ": two strokes make a tick";
        EXPECT_EQ(boxesAfter, boxesBefore) << sample.name;
        EXPECT_GE(boxesBefore, static_cast<int>(job.cautions.size())) << sample.name;
        Project untouched = sample.project;
        untouched.seenTo.clear();
        EXPECT_EQ(revision(sample.project), revision(untouched)) << "the plan is the same";
    }
}

TEST(Sheets, SayInTheFootHowFarNumbersAreRounded) {
    Project project = newProject(Unit::Inches);
    project.notation = Notation::inches(16);
    project.board.field = withCells(project.board.field, Length::mm(41), Length::mm(41));
    const Job job = jobOf(project);
    std::size_t rounded = 0;
    for (const Page& page : sheets(project, job, Paper::A4)) {
        const std::string words = wordsOf(page);
        const bool said = words.find("≈ rounded, by 1/32 in at most") != std::string::npos;
        std::size_t marks = 0;
        for (const Text& text : textsOf(page)) {
            marks += text.text.find("≈") != std::string::npos ? 1U : 0U;
        }
        EXPECT_EQ(said, marks > (said ? 1U : 0U)) << page.key;
        rounded += said ? 1U : 0U;
    }
    EXPECT_GT(rounded, 3U);
}

TEST(Sheets, KeepEveryWorkpieceOfASampleOnOneSheet) {
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        for (const Paper paper : {Paper::A4, Paper::Letter}) {
            for (const Page& page : sheets(sample.project, job, paper)) {
                // A stick with many copies has as many cuts as it takes.
                const bool lengths = page.title.find("to lengths") != std::string::npos;
                const bool many =
                    page.key.starts_with("overview") || page.key.starts_with("cut-list") ||
                    page.key.starts_with("hours") || page.key.starts_with("machine-settings");
                EXPECT_TRUE(many || lengths || !page.title.ends_with("(continued)"))
                    << sample.name << ", " << page.key;
            }
        }
    }
}

TEST(Sheets, KeepTheOverviewOfUsualBoardsOnOneSheet) {
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        if (job.cautions.size() < 4) {
            EXPECT_EQ(pageOf(sheets(sample.project, job, Paper::A4), "overview-2"), nullptr)
                << sample.name;
        }
    }
}

TEST(Sheets, DoNotListVeryManyJointsInsidePieces) {
    int listed = 0;
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        const std::vector<Joint>& joints = job.steps.extraJoints;
        std::string words;
        for (const Page& page : sheets(sample.project, job, Paper::A4)) {
            words += page.key.starts_with("final-glue-up") ? wordsOf(page) : "";
        }
        EXPECT_EQ(words.find("Joints inside pieces") != std::string::npos, !joints.empty());
        const auto lengths = [&](const Joint& joint) {
            return formatBare(joint.from, sample.project.notation) + " to " +
                   format(joint.to, sample.project.notation);
        };
        for (const Joint& joint : joints) {
            EXPECT_EQ(words.find(lengths(joint)) != std::string::npos, joints.size() <= 12)
                << sample.name << ", " << lengths(joint);
            listed += joints.size() <= 12 ? 1 : 0;
        }
    }
    EXPECT_GT(listed, 0);
}

TEST(Sheets, DoNotSpendTheSpareOnTrials) {
    const Project project = newProject(Unit::Millimetres);
    const Job job = jobOf(project);
    std::string words;
    for (const Page& page : sheets(project, job, Paper::A4)) {
        words += page.key.starts_with("slicing") ? wordsOf(page) : "";
    }
    EXPECT_THAT(words, HasSubstr("stands in for a slice"));
    EXPECT_THAT(words, Not(HasSubstr("try the blade")));
}

TEST(Sheets, WarnWhenAPanelGetsShort) {
    Project project = newProject(Unit::Millimetres);
    project.shop.leastHeld = Length::mm(150);
    const Job shortJob = jobOf(project);
    const std::vector<Page> warned = sheets(project, shortJob, Paper::A4);
    EXPECT_THAT(wordsOf(*pageOf(warned, "slicing-A")), HasSubstr("hold-down clamp, hands clear"));
    project.shop.leastHeld = Length::mm(1);
    const Job longJob = jobOf(project);
    const std::vector<Page> calm = sheets(project, longJob, Paper::A4);
    EXPECT_THAT(wordsOf(*pageOf(calm, "slicing-A")), Not(HasSubstr("hands clear of the blade")));
}

TEST(Sheets, ShowTheWrongFieldOnlyWhereItDiffers) {
    Project chequer = newProject(Unit::Millimetres);
    const Job job = jobOf(chequer);
    const std::vector<Page> pages = sheets(chequer, job, Paper::A4);
    EXPECT_THAT(wordsOf(*pageOf(pages, "final-glue-up")), HasSubstr("Wrong: nothing flipped"));
    const Sample plain = randomBoard(5, Length::mm(40), 7, Unit::Millimetres);
    Project striped = plain.project;
    for (Piece& piece : striped.board.field.pieces) {
        piece.wood = piece.column % 2;
    }
    const Job stripes = jobOf(striped);
    const std::vector<Page> others = sheets(striped, stripes, Paper::A4);
    EXPECT_THAT(wordsOf(*pageOf(others, "final-glue-up")), Not(HasSubstr("Wrong")));
}

// The map is drawn from the step list alone; read back, it must give the wished field.
TEST(FinalMap, ReadsAsTheWishedField) {
    std::vector<Sample> all = samples();
    all.push_back(randomBoard(12, Length::mm(30), 3, Unit::Millimetres));
    std::size_t columns = 0;
    for (std::size_t i = 0, count = all.size(); i < count; ++i) {
        Sample turned = all[i];
        turned.project.choices.rows = RowChoice::Columns;
        turned.name += ", by columns";
        all.push_back(std::move(turned));
    }
    for (const Sample& sample : all) {
        const Job job = jobOf(sample.project);
        const Record record(job.steps);
        const Field& field = sample.project.board.field;
        const std::vector<int> map = pieceMap(field);
        const auto wished = [&](Length x, Length y) {
            const auto cell = static_cast<std::size_t>(rowAt(field, y)) * field.columns.size() +
                              static_cast<std::size_t>(columnAt(field, x));
            return field.pieces[static_cast<std::size_t>(map[cell])].wood;
        };
        columns += job.plan.byColumns ? 1 : 0;
        const Length margin = job.plan.margin;
        Length v = -margin;
        for (const RowRecord& row :
             record.rows(sample.project.board.build == Build::EndGrain, true)) {
            Length u = -margin;
            for (const StripRecord& strip : row.strips) {
                const Length middleU = u + half(strip.line->width.value);
                const Length middleV = v + half(row.height);
                EXPECT_EQ(strip.line->wood,
                          record.byColumns() ? wished(middleV, middleU) : wished(middleU, middleV))
                    << sample.name << ", slice " << row.slice;
                u += strip.line->width.value;
            }
            v += row.height;
        }
    }
    EXPECT_GT(columns, 3U);
}

TEST(Shortened, KeepsWholeCharacters) {
    const Tone tone{4, false, Ink::Text};
    EXPECT_EQ(shortened("short", tone, 100), "short");
    EXPECT_EQ(shortened("a\nb", tone, 100), "a b");
    const std::string cut = shortened("½½½½½½½½½½", tone, 15);
    EXPECT_LE(textWidth(cut, 4, false), 15);
    EXPECT_TRUE(cut.ends_with("½…")) << cut;
}

TEST(Revision, ChangesWithTheContent) {
    const Project project = newProject(Unit::Millimetres);
    const std::string mark = revision(project);
    EXPECT_EQ(mark.size(), 8U);
    EXPECT_EQ(mark, revision(project));
    Project other = project;
    other.titles.note = "x";
    EXPECT_NE(revision(other), mark);
    other = project;
    other.shop.kerf += Length::nm(1);
    EXPECT_NE(revision(other), mark);
    other = project;
    other.board.field.pieces.front().wood = 1;
    EXPECT_NE(revision(other), mark);
}
