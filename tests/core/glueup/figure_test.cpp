#include "core/glueup/figure.h"
#include "core/glueup/steps.h"
#include "tests/core/words/spoken.h"

#include <gtest/gtest.h>

namespace kerfwright {
namespace {

TEST(Figure, IsTheSumOfItsTerms) {
    Figure figure{{TermKind::PieceWidth, Length::mm(45)}};
    figure.add(TermKind::Kerf, Length::um(3200), 10).add(TermKind::TrimMargin, Length::mm(3));
    EXPECT_EQ(figure.value, Length::mm(80));
    EXPECT_EQ(figure.sumOfTerms(), figure.value);
}

TEST(Figure, LeavesOutTermsThatAddNothing) {
    Figure figure{{TermKind::PieceWidth, Length::mm(45)}};
    figure.add(TermKind::TrimMargin, Length()).add(TermKind::Kerf, Length::mm(3), 0);
    EXPECT_EQ(figure.terms.size(), 1U);
}

TEST(Figure, RoundsUpAndSaysSo) {
    Figure figure{{TermKind::Slices, Length::um(531'400)}};
    figure.roundUp(Length::mm(10));
    EXPECT_EQ(figure.value, Length::mm(540));
    EXPECT_EQ(figure.terms.back(), (Term{TermKind::RoundingUp, Length::um(8600), 1}));
    const Figure before = figure;
    figure.roundUp(Length::mm(10));
    EXPECT_EQ(figure, before);
}

TEST(Figure, TellsItsWorkingInTheUnitsOfTheMaker) {
    Figure figure{{TermKind::PieceWidth, Length::mm(45)}};
    figure.add(TermKind::TrimMargin, Length::mm(3));
    EXPECT_EQ(working(figure, Notation::millimetres()), "45 mm piece + 3 mm trim margin = 48 mm");
    Figure inches{{TermKind::Kerf, Length::inch(1, 8), 9}};
    EXPECT_EQ(working(inches, Notation::inches()), "9 × 1/8 in kerf = 1 1/8 in");
    EXPECT_EQ(working(inches, Notation::millimetres()), "9 × ≈ 3.2 mm kerf ≈ 28.6 mm");
}

TEST(Figure, NamesEveryTermAndSetsTheOnesOfTheShop) {
    for (int kind = 0; kind <= static_cast<int>(TermKind::RoundingUp); ++kind) {
        EXPECT_NE(termName(static_cast<TermKind>(kind)), "");
    }
    EXPECT_EQ(settingOf(TermKind::Kerf), Setting::Kerf);
    EXPECT_EQ(settingOf(TermKind::RoundingUp), Setting::LengthStep);
    EXPECT_EQ(settingOf(TermKind::PieceWidth), Setting::None);
}

TEST(Figure, LabelsThatAreWordsAreShownInTheMakersLanguage) {
    for (const char* label : {"Field", "Top rail", "A", "A3", "A-1", "AB-spare", "A-spare2"}) {
        EXPECT_EQ(shownLabel(label), label);
    }
    const Spoken german(Entries{{"Top rail", "Leiste oben"}, {"{1}-spare{2}", "{1}-Ersatz{2}"}});
    EXPECT_EQ(shownLabel("Top rail"), "Leiste oben");
    EXPECT_EQ(shownLabel("AB-spare"), "AB-Ersatz");
    EXPECT_EQ(shownLabel("2: Top rail + 12: Top rail"), "2: Leiste oben + 12: Leiste oben");
    EXPECT_EQ(shownLabel("Top rail + A1"), "Leiste oben + A1");
    EXPECT_EQ(shownLabel("2: A3"), "2: A3");
    EXPECT_EQ(shownLabel("A-spare2"), "A-Ersatz2");
    EXPECT_EQ(shownLabel("A-1"), "A-1");
}

}  // namespace
}  // namespace kerfwright
