#include "ui/document/planner.h"

#include <QTest>

#include <gtest/gtest.h>

namespace kerfwright {
namespace {

using namespace std::chrono_literals;

bool settles(const Planner& planner) {
    return QTest::qWaitFor([&] { return planner.state() != Planner::State::Working; }, 10'000);
}

void thicken(Document& document, int mm) {
    document.edit(QStringLiteral("change thickness"), entry::thickness,
                  [mm](Project& project) { project.board.thickness = Length::mm(mm); });
}

TEST(Planner, PlansWhatIsOpen) {
    Document document;
    const Planner planner(document, 0ms);
    EXPECT_EQ(planner.state(), Planner::State::Working);
    ASSERT_TRUE(settles(planner));
    ASSERT_EQ(planner.state(), Planner::State::Current) << planner.fault().toStdString();
    EXPECT_EQ(planner.last()->project, document.snapshot());
    EXPECT_TRUE(planner.last()->job.proof.ok());
}

TEST(Planner, GivesOnlyThePlanOfTheLastOfManyEdits) {
    Document document;
    const Planner planner(document, 0ms);
    for (int mm = 20; mm <= 40; ++mm) {
        thicken(document, mm);
        EXPECT_EQ(planner.state(), Planner::State::Working);
        QCoreApplication::processEvents();
        if (planner.last() && planner.state() == Planner::State::Current) {
            EXPECT_EQ(planner.last()->project->board.thickness, Length::mm(mm));
        }
    }
    ASSERT_TRUE(settles(planner));
    EXPECT_EQ(planner.last()->project->board.thickness, Length::mm(40));
}

TEST(Planner, KeepsTheLastGoodPlanWhereThereIsNone) {
    Document document;
    const Planner planner(document, 0ms);
    ASSERT_TRUE(settles(planner));
    const PlannedPtr good = planner.last();
    // The rails of a border would be longer than any strip to be had.
    document.edit(QStringLiteral("limit"), entry::none, [](Project& project) {
        project.board.border.width = Length::mm(25);
        project.shop.longestStrip = Length::mm(100);
    });
    ASSERT_TRUE(settles(planner));
    EXPECT_EQ(planner.state(), Planner::State::Impossible);
    EXPECT_FALSE(planner.fault().isEmpty());
    EXPECT_EQ(planner.last(), good);
    document.history().undo();
    ASSERT_TRUE(settles(planner));
    EXPECT_EQ(planner.state(), Planner::State::Current);
    EXPECT_TRUE(planner.fault().isEmpty());
}

TEST(Planner, DoesNotPlanAgainForATitle) {
    Document document;
    const Planner planner(document, 0ms);
    ASSERT_TRUE(settles(planner));
    document.edit(QStringLiteral("change name"), entry::name,
                  [](Project& project) { project.titles.name = "Tray"; });
    EXPECT_EQ(planner.state(), Planner::State::Current);
}

TEST(Planner, ForgetsThePlanOfAnotherBoard) {
    Document document;
    const Planner planner(document, 0ms);
    ASSERT_TRUE(settles(planner));
    document.start(newProject(Unit::Inches));
    EXPECT_EQ(planner.last(), nullptr);
    ASSERT_TRUE(settles(planner));
    EXPECT_EQ(planner.last()->project, document.snapshot());
}

}  // namespace
}  // namespace kerfwright
