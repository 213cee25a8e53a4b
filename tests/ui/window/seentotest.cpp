// Cautions that are ticked as seen to: by mouse and keys, counted, and open again.
#include "core/bench/standing.h"
#include "core/words/catalogue.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/document/language.h"
#include "ui/document/text.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/spotlight.h"
#include "ui/window/tones.h"

#include <QTabBar>
#include <QTest>

#include <algorithm>
#include <functional>

namespace kerfwright {
namespace {

class SeenToTest : public WindowTest {
protected:
    CardList* cards() { return window->bench().cautions(); }
    const std::vector<Caution>& cautions() { return window->planner().last()->job.cautions; }
    QStringList titles() {
        QStringList all;
        for (int row = 0; row < cards()->count(); ++row) {
            all << cards()->card(row).title;
        }
        return all;
    }
    void edit(const std::function<void(Project&)>& change) {
        window->document().edit(QStringLiteral("test"), entry::none, change);
    }
    /// A chess board whose squares are not alike, without margin and squaring cut: at least four
    /// cautions, one with a remedy.
    void begin() {
        edit([](Project& changed) {
            changed.purpose.use = BoardUse::ChessBoard;
            changed.board.field.columns.front() += Length::mm(4);
            changed.shop.trimMargin = Length();
            changed.shop.squaringCut = Length();
        });
        ASSERT_TRUE(planned());
        window->bench().setCurrentIndex(BenchTabs::Cautions);
        ASSERT_GE(cards()->count(), 4);
    }
    void clickTick(int row) {
        cards()->scrollTo(cards()->model()->index(row, 0));
        QTest::mouseClick(cards()->viewport(), Qt::LeftButton, Qt::NoModifier,
                          cards()->tickRect(row).center());
    }
    int rowOf(const QString& title) { return static_cast<int>(titles().indexOf(title)); }
    int indexOf(const std::string& key) {
        const auto at = std::find_if(cautions().begin(), cautions().end(),
                                     [&](const Caution& one) { return one.key == key; });
        return at == cautions().end() ? -1 : static_cast<int>(at - cautions().begin());
    }
    int rowOfKey(const std::string& key) {
        return rowOf(cardTitle(cautions()[static_cast<std::size_t>(indexOf(key))]));
    }
    static QString cardTitle(const Caution& caution) {
        return toQt(caution.title) + (caution.steps.empty()
                                          ? QString()
                                          : QStringLiteral(" · ") + toQt(whichSteps(caution)));
    }
    QString totals() { return find("totals")->accessibleName(); }
    QString tab() { return window->bench().tabToolTip(BenchTabs::Cautions); }
};

TEST_F(SeenToTest, AClickOnTheTickSinksACautionAndASecondOneBringsItBack) {
    begin();
    const QStringList before = titles();
    const Project was = project();
    EXPECT_FALSE(cards()->card(0).isQuiet());
    clickTick(0);
    EXPECT_EQ(project().seenTo.size(), 1U);
    EXPECT_EQ(window->planner().state(), Planner::State::Current) << "no plan changes by it";
    QStringList wanted = before.mid(1);
    wanted << before.front();
    EXPECT_EQ(titles(), wanted);
    const int last = cards()->count() - 1;
    EXPECT_TRUE(cards()->card(last).isQuiet());
    EXPECT_FALSE(cards()->card(last).section.isEmpty());
    EXPECT_FALSE(cards()->card(last - 1).isQuiet());
    EXPECT_FALSE(cards()->card(last).lines.isEmpty()) << "it can still be read";
    clickTick(last);
    EXPECT_EQ(titles(), before);
    EXPECT_EQ(project(), was);
}

TEST_F(SeenToTest, UndoAndRedoTickAndOpenIt) {
    begin();
    const QStringList before = titles();
    clickTick(0);
    const QStringList ticked = titles();
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(titles(), before);
    EXPECT_TRUE(project().seenTo.empty());
    window->document().history().redo();
    EXPECT_EQ(titles(), ticked);
}

TEST_F(SeenToTest, ControlEnterTicksTheCardThatTheKeysStandOnAndGoesToTheNext) {
    begin();
    const QStringList before = titles();
    cards()->setFocus();
    QTest::keyClick(cards(), Qt::Key_Home);
    QTest::keyClick(cards(), Qt::Key_Return, Qt::ControlModifier);
    EXPECT_EQ(cards()->currentIndex().row(), 0);
    EXPECT_EQ(cards()->card(0).title, before[1]);
    EXPECT_EQ(cards()->chosenCard(), -1);
    QTest::keyClick(cards(), Qt::Key_Enter, Qt::ControlModifier);
    EXPECT_EQ(project().seenTo.size(), 2U);
    QTest::keyClick(cards(), Qt::Key_End);
    QTest::keyClick(cards(), Qt::Key_Return, Qt::ControlModifier);
    EXPECT_EQ(project().seenTo.size(), 1U);
    // Without Ctrl it is the remedy, as ever.
    const Project was = project();
    const int row = rowOfKey("squares-uneven");
    ASSERT_FALSE(cards()->card(row).ways.empty());
    cards()->goTo(row);
    QTest::keyClick(cards(), Qt::Key_Return);
    EXPECT_EQ(field().columns.front(), field().columns.back());
    EXPECT_EQ(project().seenTo, was.seenTo);
}

TEST_F(SeenToTest, OnlyWhatIsOpenIsCountedAndTheRestIsTold) {
    begin();
    const int all = cards()->count();
    const auto dangers = static_cast<int>(
        std::count_if(cautions().begin(), cautions().end(),
                      [](const Caution& one) { return one.severity == Severity::Danger; }));
    ASSERT_GT(dangers, 0);
    EXPECT_EQ(tab(), QStringLiteral("%1 cautions").arg(all));
    EXPECT_FALSE(totals().contains(QStringLiteral("Seen to")));
    for (int i = 0; i < dangers; ++i) {
        clickTick(0);  // dangers come first
    }
    EXPECT_EQ(tab(), QStringLiteral("%1 open · %2 seen to").arg(all - dangers).arg(dangers));
    EXPECT_EQ(window->bench().tabBar()->accessibleTabName(BenchTabs::Cautions), tab())
        << "no word of dangers";
    EXPECT_TRUE(totals().contains(QStringLiteral("Cautions %1").arg(all - dangers)));
    EXPECT_TRUE(totals().contains(QStringLiteral("Seen to %1").arg(dangers)));
    EXPECT_FALSE(totals().contains(QStringLiteral("Dangers")));
    for (int i = dangers; i < all; ++i) {
        clickTick(0);
    }
    EXPECT_EQ(tab(), QStringLiteral("0 open · %1 seen to").arg(all));
    QWidget* mark = window->bench().tabBar()->tabButton(BenchTabs::Cautions, QTabBar::RightSide);
    ASSERT_NE(mark, nullptr) << "a tick, where there is nothing open";
    EXPECT_TRUE(mark->isVisible());
}

TEST_F(SeenToTest, ItIsOpenAgainAndSaysSoOnceItsNumbersChange) {
    begin();
    const int row = rowOfKey("squares-uneven");
    clickTick(row);
    ASSERT_EQ(project().seenTo.size(), 1U);
    EXPECT_TRUE(cards()->card(rowOfKey("squares-uneven")).isQuiet());
    edit([](Project& changed) { changed.board.field.columns.front() += Length::mm(1); });
    ASSERT_TRUE(planned());
    const Card& card = cards()->card(rowOfKey("squares-uneven"));
    EXPECT_FALSE(card.isQuiet());
    EXPECT_EQ(card.lapsed, QStringLiteral("Was seen to before its numbers changed"));
    EXPECT_TRUE(card.spoken().contains(card.lapsed));
    window->document().history().undo();
    ASSERT_TRUE(planned());
    EXPECT_TRUE(cards()->card(rowOfKey("squares-uneven")).isQuiet());
}

TEST_F(SeenToTest, InAnotherOrderARemedyIsStillThatOfItsCard) {
    begin();
    clickTick(rowOfKey("squares-uneven"));
    const int row = rowOfKey("squares-uneven");
    ASSERT_EQ(row, cards()->count() - 1);
    ASSERT_FALSE(cards()->card(row).ways.empty());
    cards()->scrollTo(cards()->model()->index(row, 0));
    QTest::mouseClick(cards()->viewport(), Qt::LeftButton, Qt::NoModifier,
                      cards()->wayRect(row).center());
    EXPECT_EQ(field().columns.front(), field().columns.back());
    ASSERT_TRUE(planned());
    EXPECT_EQ(indexOf("squares-uneven"), -1);
    EXPECT_EQ(project().seenTo.size(), 1U) << "it counts again if the caution comes back";
}

TEST_F(SeenToTest, InAnotherOrderACardIsStillTheCautionThatItSays) {
    begin();
    clickTick(0);
    clickTick(0);
    for (int row = 0; row < cards()->count(); ++row) {
        cards()->choose(row);
        const Subject subject = window->spotlight().subject();
        ASSERT_EQ(subject.kind, Subject::Kind::Caution);
        EXPECT_EQ(cardTitle(cautions()[static_cast<std::size_t>(subject.index)]),
                  cards()->card(row).title);
        EXPECT_EQ(cards()->chosenCard(), row);
    }
    // And seen from the other end.
    const int step = cautions()[static_cast<std::size_t>(indexOf("end-grain-face"))].step;
    window->spotlight().choose({Subject::Kind::Step, step});
    EXPECT_TRUE(cards()->isMarked(rowOfKey("end-grain-face")));
    for (int row = 0; row < cards()->count(); ++row) {
        const Caution& one =
            *std::find_if(cautions().begin(), cautions().end(), [&](const Caution& it) {
                return cardTitle(it) == cards()->card(row).title;
            });
        const int index = static_cast<int>(&one - cautions().data());
        EXPECT_EQ(cards()->isMarked(row), window->spotlight().trail().cautions.contains(index));
    }
}

TEST_F(SeenToTest, WhatIsTickedIsLetGoOf) {
    begin();
    cards()->choose(1);
    clickTick(1);
    EXPECT_TRUE(window->spotlight().subject().isNone());
    EXPECT_EQ(cards()->chosenCard(), -1);
    // The choice of another card stays, wherever that goes.
    cards()->choose(1);
    const QString chosen = cards()->card(1).title;
    clickTick(0);
    ASSERT_EQ(cards()->chosenCard(), 0);
    EXPECT_EQ(cards()->card(0).title, chosen);
}

TEST_F(SeenToTest, TheTickIsSaidToEarsAndEyes) {
    begin();
    const QModelIndex first = cards()->model()->index(0, 0);
    EXPECT_TRUE(
        first.data(Qt::AccessibleTextRole).toString().contains(QStringLiteral("Not seen to")));
    EXPECT_EQ(first.data(Qt::CheckStateRole).toInt(), Qt::Unchecked);
    clickTick(0);
    const QModelIndex last = cards()->model()->index(cards()->count() - 1, 0);
    const QString spoken = last.data(Qt::AccessibleTextRole).toString();
    EXPECT_TRUE(spoken.contains(QStringLiteral("Seen to")));
    EXPECT_FALSE(spoken.contains(QStringLiteral("Not seen to")));
    EXPECT_EQ(last.data(Qt::CheckStateRole).toInt(), Qt::Checked);
    EXPECT_GE(cards()->tickRect(0).height(), 24) << "WCAG 2.2, 2.5.8";
    EXPECT_GE(cards()->tickRect(0).width(), 24);
}

/// Of a quiet card all words are seen; how well in every palette: contrasttest.cpp, quiet on
/// panels.
TEST_F(SeenToTest, AQuietCardLooksOtherThanAnOpenOne) {
    begin();
    const QString title = cards()->card(0).title;
    const QImage open =
        cards()->viewport()->grab(cards()->visualRect(cards()->model()->index(0, 0))).toImage();
    clickTick(0);
    const int row = rowOf(title);
    cards()->scrollTo(cards()->model()->index(row, 0));
    const QRect place = cards()->visualRect(cards()->model()->index(row, 0));
    const QImage quiet = cards()->viewport()->grab(place).toImage();
    const auto has = [](const QImage& image, const QColor& colour) {
        for (int y = 0; y < image.height(); ++y) {
            for (int x = 0; x < image.width(); ++x) {
                if (image.pixelColor(x, y) == colour) {
                    return true;
                }
            }
        }
        return false;
    };
    const Tones tones = tonesOf(cards()->palette());
    EXPECT_TRUE(has(open, tones.danger));
    EXPECT_FALSE(has(quiet, tones.danger));
    EXPECT_TRUE(has(quiet, tones.quiet));
}

TEST_F(SeenToTest, ItIsSavedWithTheProject) {
    begin();
    clickTick(0);
    answers.write = inFolder("ticked.kerfwright");
    ASSERT_EQ(window->document().save(answers.write), QString());
    const std::vector<SeenTo> kept = project().seenTo;
    window = makeWindow(answers.write);
    ASSERT_TRUE(planned());
    EXPECT_EQ(project().seenTo, kept);
    EXPECT_TRUE(cards()->card(cards()->count() - 1).isQuiet());
}

/// What was seen to in one language is seen to in the other.
TEST_F(SeenToTest, ItDoesNotDependOnTheLanguage) {
    begin();
    const Project asked = project();
    const auto planIt = [&asked] {
        return makeJob(asked.board, asked.woods, asked.shop, asked.choices, asked.notation,
                       {asked.climate, asked.glue, asked.purpose, asked.rates})
            .value()
            .cautions;
    };
    std::vector<SeenTo> seenTo;
    const std::vector<Caution> english = planIt();
    for (const Caution& caution : english) {
        seeTo(seenTo, caution);
    }
    speakLanguage(QStringLiteral("de"));
    const std::vector<Caution> german = planIt();
    speak(nullptr);
    ASSERT_EQ(german.size(), english.size());
    for (std::size_t i = 0; i < german.size(); ++i) {
        EXPECT_NE(german[i].reason, english[i].reason);
        EXPECT_EQ(standingOf(german[i], seenTo), Standing::SeenTo) << german[i].reason;
    }
}

}  // namespace
}  // namespace kerfwright
