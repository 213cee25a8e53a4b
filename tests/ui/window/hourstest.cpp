// How long the work takes: the form of the rates, the steps, their workings and the totals.
#include "core/sheets/hourwords.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/document/text.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/numberfield.h"
#include "ui/window/stepspanel.h"

#include <QAbstractButton>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <QToolButton>

namespace kerfwright {
namespace {

class HoursTest : public WindowTest {
protected:
    const BenchHours& hours() const { return window->planner().last()->job.hours; }
    CardList* steps() const { return window->bench().steps()->list(); }
    /// Opens the working of a step and finds the way to an entry.
    QToolButton* linkTo(int step, const QString& entry) {
        steps()->choose(step);
        steps()->scrollTo(steps()->currentIndex());
        QTest::mouseClick(steps()->viewport(), Qt::LeftButton, Qt::NoModifier,
                          steps()->workingRect(step).center());
        // One that was closed goes with the next turn of the event loop.
        const auto popups = window->findChildren<QWidget*>(QStringLiteral("workingPopup"));
        for (auto* link : popups.last()->findChildren<QToolButton*>()) {
            if (link->text().startsWith(entry)) {
                return link;
            }
        }
        ADD_FAILURE() << entry.toStdString();
        return nullptr;
    }
};

TEST_F(HoursTest, EveryRateIsTakenAndUndone) {
    find<QAbstractButton>("ratesHead")->click();
    for (const RateSetting& setting : rateSettings()) {
        const QByteArray entry = QByteArray("setting-") + setting.key;
        type((entry + "-entry").constData(), QStringLiteral("1000000"));
        auto* field = find<NumberField>(entry.constData());
        EXPECT_TRUE(field->isFaulty()) << setting.key;
        QTest::keyClick(field->line(), Qt::Key_Escape);
    }
    EXPECT_EQ(project().rates, BenchRates());
    type("setting-crosscut-minutes-entry", QStringLiteral("1,5"));
    EXPECT_EQ(project().rates.crosscut, 1.5);
    ASSERT_TRUE(planned());
    const double slow = hours().minutes;
    window->document().history().undo();
    EXPECT_EQ(project().rates, BenchRates());
    ASSERT_TRUE(planned());
    EXPECT_LT(hours().minutes, slow);
}

TEST_F(HoursTest, StepsAndTotalsSayHowLong) {
    ASSERT_TRUE(planned());
    ASSERT_LT(static_cast<std::size_t>(steps()->count()), hours().tasks.size());
    for (int step = 0; step < steps()->count(); ++step) {
        const BenchTask& task = hours().tasks[static_cast<std::size_t>(step)];
        const QString line = steps()->card(step).lines.last();
        EXPECT_TRUE(line.contains(toQt(timeWords(task.minutes)))) << line.toStdString();
        EXPECT_EQ(line.contains(QStringLiteral("12 h to set")), task.wait == BenchWait::Glue);
    }
    const QString totals = find("totals")->accessibleName();
    EXPECT_TRUE(totals.contains(QStringLiteral("At the bench ") + toQt(timeWords(hours().minutes))))
        << totals.toStdString();
    EXPECT_TRUE(totals.contains(QStringLiteral("Days 4"))) << totals.toStdString();

    find<QAbstractButton>("hoursHead")->click();
    auto* words = find<QLabel>("hoursWords");
    EXPECT_TRUE(words->isVisible());
    for (const BenchSession& session : hours().sessions) {
        EXPECT_TRUE(words->text().contains(toQt(taskWords(hours(), session))));
        EXPECT_TRUE(words->text().contains(toQt(waitWords(hours(), session))));
    }
}

TEST_F(HoursTest, AWorkingLeadsToTheRate) {
    ASSERT_TRUE(planned());
    QToolButton* toRate = linkTo(0, QStringLiteral("A rip"));
    ASSERT_NE(toRate, nullptr);
    QStringList words;
    for (auto* label : find("workingPopup")->findChildren<QLabel*>()) {
        words << label->text();
    }
    EXPECT_TRUE(words.contains(QStringLiteral("+ 16 × 1 min")))
        << words.join(QStringLiteral(" | ")).toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("= ") + toQt(timeWords(hours().tasks[0].minutes))));
    QTest::mouseClick(toRate, Qt::LeftButton);
    const auto focused = [this](const char* entry) {
        window->activateWindow();
        return QTest::qWaitForWindowActive(window.get()) && QTest::qWaitFor([&] {
                   return QApplication::focusWidget() ==
                          window->findChild<QLineEdit*>(QString::fromLatin1(entry));
               });
    };
    EXPECT_TRUE(focused("setting-rip-minutes-entry"));
    QToolButton* toGlue = linkTo(1, QStringLiteral("Time to spread a line"));
    ASSERT_NE(toGlue, nullptr);
    QTest::mouseClick(toGlue, Qt::LeftButton);
    EXPECT_TRUE(focused("setting-glue-seconds-per-line-entry"));
}

TEST_F(HoursTest, NothingIsMadeUpInTheCold) {
    find<QAbstractButton>("glueHead")->click();
    type("setting-glue-celsius-entry", QStringLiteral("2"));
    ASSERT_TRUE(planned());
    EXPECT_FALSE(find("totals")->accessibleName().contains(QStringLiteral("Days")));
    EXPECT_TRUE(steps()->card(1).lines.last().contains(QStringLiteral("too cold")));
    EXPECT_TRUE(find<QLabel>("hoursWords")->text().contains(QStringLiteral("days not known")));
}

}  // namespace
}  // namespace kerfwright
