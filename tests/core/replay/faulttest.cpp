// What cannot be carried out, and the words for it: one broken step each.
#include "core/replay/replay.h"
#include "tests/core/replay/handbuilt.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

namespace kerfwright {
namespace {

using namespace test;
using ::testing::Contains;
using ::testing::HasSubstr;

struct Broken {
    Job job;
    std::size_t step;  ///< from 1
    std::function<void(Work&)> breakIt;
    const char* fault;
};

template <class T, class Change>
std::function<void(Work&)> in(Change change) {
    return [change](Work& work) { change(std::get<T>(work)); };
}

void PrintTo(const Broken& broken, std::ostream* out) {
    *out << broken.job.name << ", step " << broken.step << ": " << broken.fault;
}

class BrokenStep : public ::testing::TestWithParam<Broken> {};

TEST_P(BrokenStep, IsToldInWords) {
    Broken broken = GetParam();
    broken.breakIt(broken.job.list.steps.at(broken.step - 1).work);
    const Proof proof = replay(broken.job.list, broken.job.board, broken.job.mergeLike);
    EXPECT_THAT(proof.faults, Contains(HasSubstr(broken.fault)));
}

INSTANTIATE_TEST_SUITE_P(
    Bench, BrokenStep,
    ::testing::Values(
        Broken{chequer(), 5, in<Crosscut>([](Crosscut& cut) { cut.part = "Q"; }),
               "Step 5: there is no workpiece “Q”"},
        Broken{chequer(), 8, in<TrimField>([](TrimField& trim) { trim.part = "A"; }),
               "Step 8: “A” is not the field"},
        Broken{chequer(), 3,
               in<Flatten>([](Flatten& flatten) { flatten.purpose = Purpose::Finished; }),
               "Step 3: “A” is not the field"},
        Broken{divided(), 3, in<Crosscut>([](Crosscut& cut) { cut.part = "A1"; }),
               "Step 3: the workpiece “A1” has been used up"},
        Broken{divided(), 6, in<Crosscut>([](Crosscut& cut) { cut.part = "A-1"; }),
               "Step 6: “A-1” is not a panel"},
        Broken{chequer(), 5, in<Crosscut>([](Crosscut& cut) { cut.slices[0].clear(); }),
               "Step 5: a workpiece has no label"},
        Broken{chequer(), 5, in<Crosscut>([](Crosscut& cut) { cut.slices[0] = "A1"; }),
               "Step 5: the label “A1” is given twice"},
        Broken{chequer(), 1, in<Mill>([](Mill& mill) { mill.lines.clear(); }),
               "Step 1: there is nothing to mill"},
        Broken{chequer(), 1, in<Mill>([](Mill& mill) { mill.lines[0].length = figure(Length()); }),
               "Step 1: a strip must be more than 0 thick, wide and long"},
        Broken{chequer(), 1, in<Mill>([](Mill& mill) { mill.lines[0].strips.clear(); }),
               "Step 1: a line of the mill list names no strip"},
        Broken{chequer(), 1, in<Mill>([](Mill& mill) { mill.panel = "B"; }),
               "Step 2: the strip “A1” was not milled for “A”"},
        Broken{chequer(), 6, in<Glue>([](Glue& glue) { glue.parts.resize(1); }),
               "Step 6: a glue-up needs two parts or more"},
        Broken{chequer(), 7,
               in<Flatten>([](Flatten& flatten) { flatten.to = figure(20_mm + Length::nm(1)); }),
               "Step 7: the board is to be 20 mm thick; got 20.000001 mm"},
        Broken{chequer(), 7, in<Flatten>([](Flatten& flatten) { flatten.from = figure(23_mm); }),
               "Step 7: “Field” should be 23 mm thick; it is 22 mm"},
        Broken{chequer(), 3, in<Flatten>([](Flatten& flatten) { flatten.to = flatten.from; }),
               "Step 3: a workpiece of 44 mm cannot be flattened to 44 mm"},
        Broken{chequer(), 4, in<SquareEnd>([](SquareEnd& cut) { cut.waste = figure(87_mm); }),
               "Step 4: “A” is 90 mm long; nothing is left of it when its end is squared"},
        Broken{chequer(), 5, in<Crosscut>([](Crosscut& cut) { cut.stop = figure(Length()); }),
               "Step 5: a slice must be more than 0 long, and there must be one"},
        Broken{chequer(), 8, in<TrimField>([](TrimField& trim) { trim.margin = figure(Length()); }),
               "Step 8: there is nothing to trim off the field"},
        Broken{chequer(), 8, in<TrimField>([](TrimField& trim) { trim.margin = figure(42_mm); }),
               "Step 8: nothing is left of the field when 42 mm comes off each side"},
        Broken{stripes(), 11, in<FitBorder>([](FitBorder& border) { border.rails.pop_back(); }),
               "Step 11: this border has 4 rails; got 3"},
        Broken{stripes(), 9, in<Mill>([](Mill& mill) { mill.panel = "S"; }),
               "Step 10: “Top” was not milled for the border"},
        Broken{stripes(), 9, in<Mill>([](Mill& mill) { mill.lines[0].wood = 0; }),
               "Step 11: the rail “Top” is not of the wood of the border"},
        Broken{
            stripes(), 9, in<Mill>([](Mill& mill) { mill.lines[0].thickness = figure(14_mm); }),
            "Step 11: the rail “Top” should be 15 mm × 25 mm as it is seen; it is 14 mm × 25 mm"},
        Broken{stripes(), 9, in<Mill>([](Mill& mill) { mill.lines[0].length = figure(119_mm); }),
               "Step 10: the rail “Top” of 119 mm does not give 120 mm"}));

TEST(BrokenOrder, TheEndIsSquaredBeforeTheFirstSlice) {
    Job job = chequer();
    std::swap(job.list.steps[3], job.list.steps[4]);
    std::get<Crosscut>(job.list.steps[3].work).left = 15_mm;
    EXPECT_THAT(replay(job.list, job.board, false).faults,
                Contains("Step 5: slices have been cut from “A” before its end was squared."));
}

TEST(BrokenOrder, ThereIsOneField) {
    Job job = block();
    MillLine& line = std::get<Mill>(job.list.steps[0].work).lines[0];
    line.roughLength = line.length = figure(46_mm);
    Crosscut& cut = std::get<Crosscut>(job.list.steps[1].work);
    cut.slices = {"P-1", "P-2"};
    Take second = std::get<Take>(job.list.steps[2].work);
    second.result = "Another field";
    second.part.part = "P-2";
    job.list.steps.push_back({second});
    EXPECT_THAT(replay(job.list, job.board, false).faults,
                Contains("Step 4: there is a field already."));
}

TEST(BrokenOrder, TheFieldIsPartOfNothingElse) {
    Job job = chequer();
    job.list.steps.push_back(
        {Take{"More", {"Field", {}}, figure(80_mm), figure(80_mm), figure(20_mm)}});
    EXPECT_THAT(replay(job.list, job.board, false).faults,
                Contains("Step 9: the field is not part of anything else."));
}

}  // namespace
}  // namespace kerfwright
