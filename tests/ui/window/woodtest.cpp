// The timber of a wood, the totals, and the first page.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/gallery.h"
#include "ui/window/lengthfield.h"
#include "ui/window/textfield.h"
#include "ui/window/totalsbar.h"
#include "ui/window/woodlist.h"

#include <QAbstractButton>
#include <QAction>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <QToolButton>

namespace kerfwright {
namespace {

class WoodTest : public WindowTest {
protected:
    QWidget* openTimber() {
        click(find<WoodRow>("wood1")->timberButton());
        auto* form = window->findChild<QWidget*>(QStringLiteral("woodForm"));
        EXPECT_NE(form, nullptr);
        return form;
    }
};

TEST_F(WoodTest, TheSectionOfATimberIsSetAndUndone) {
    ASSERT_TRUE(planned());
    const Project before = project();
    ASSERT_NE(openTimber(), nullptr);
    EXPECT_TRUE(find<QLabel>("woodFormWhy")->text().contains(QStringLiteral("dashed")));
    // Strips of 50 mm and more: timber of 30 × 40 mm cannot give them whole.
    type("timberThicknessEntry", QStringLiteral("30"));
    type("timberWidthEntry", QStringLiteral("40"));
    EXPECT_EQ(project().woods[0].timber, (Section{Length::mm(30), Length::mm(40)}));
    type("woodLetterEntry", QStringLiteral("HM"));
    type("woodDensityEntry", QStringLiteral("700"));
    EXPECT_EQ(project().woods[0].letter, "HM");
    EXPECT_EQ(project().woods[0].density, 700);
    type("woodLetterEntry", QString::fromStdString(project().woods[1].letter));
    EXPECT_TRUE(find<TextField>("woodLetter")->isFaulty()) << "two woods, one letter";
    EXPECT_EQ(project().woods[0].letter, "HM");
    find("woodForm")->close();
    for (int i = 0; i < 4; ++i) {
        window->document().history().undo();
    }
    EXPECT_EQ(project(), before);
}

TEST_F(WoodTest, TheCautionAboutDividedPiecesLeadsToTheTimber) {
    window->document().edit(QStringLiteral("test"), entry::none, [](Project& changed) {
        changed.woods[0].timber = {Length::mm(60), Length::mm(30)};
    });
    ASSERT_TRUE(planned());
    window->bench().setCurrentIndex(BenchTabs::Cautions);
    CardList* cautions = window->bench().cautions();
    int row = 0;
    const auto leadsOn = [cautions](int card) {
        const std::vector<CardWay>& ways = cautions->card(card).ways;
        return !ways.empty() && !ways.back().acts;
    };
    while (row < cautions->count() && !leadsOn(row)) {
        ++row;
    }
    ASSERT_LT(row, cautions->count());
    const int last = static_cast<int>(cautions->card(row).ways.size()) - 1;
    cautions->scrollTo(cautions->model()->index(row, 0));
    QTest::mouseClick(cautions->viewport(), Qt::LeftButton, Qt::NoModifier,
                      cautions->wayRect(row, last).center());
    auto* form = window->findChild<QWidget*>(QStringLiteral("woodForm"));
    ASSERT_NE(form, nullptr);
    EXPECT_TRUE(form->isVisible());
    form->close();
}

TEST_F(WoodTest, DangersStandBesideTheReplayedPlan) {
    ASSERT_TRUE(planned());
    const auto& cautions = window->planner().last()->job.cautions;
    const auto dangers = std::count_if(cautions.begin(), cautions.end(), [](const Caution& one) {
        return one.severity == Severity::Danger;
    });
    ASSERT_GT(dangers, 0);
    auto* totals = find<TotalsBar>("totals");
    EXPECT_TRUE(totals->accessibleName().contains(
        QStringLiteral("Dangers %1, Plan replayed: gives this board").arg(dangers)))
        << totals->accessibleName().toStdString();
    EXPECT_TRUE(totals->toolTip().contains(QStringLiteral("nothing of safety")));
    EXPECT_FALSE(totals->whatsThis().isEmpty());
}

TEST_F(WoodTest, EnterPressesTheButtonOfTheFirstPageThatHasTheFocus) {
    window->showGallery();
    auto* inches = find<QPushButton>("galleryNewInch");
    inches->setFocus();
    QTest::keyClick(inches, Qt::Key_Return);
    EXPECT_FALSE(window->isGalleryShown());
    EXPECT_EQ(project().notation.unit, Unit::Inches);
    window->showGallery();
    auto* back = find<QPushButton>("galleryClose");
    EXPECT_EQ(back->text(), QStringLiteral("Start with a plain chequer"));
    back->setFocus();
    QTest::keyClick(back, Qt::Key_Enter);
    EXPECT_FALSE(window->isGalleryShown());
}

TEST_F(WoodTest, EverySymmetrySaysWhatItDoes) {
    for (const char* name :
         {"symmetryAcross", "symmetryDown", "symmetryHalfTurn", "symmetryRows"}) {
        auto* action = window->findChild<QAction*>(QString::fromLatin1(name));
        ASSERT_NE(action, nullptr) << name;
        EXPECT_TRUE(action->toolTip().contains(QStringLiteral("what you paint"))) << name;
    }
}

TEST_F(WoodTest, TheMachinesStandTogether) {
    find<QAbstractButton>("machinesHead")->click();
    EXPECT_NE(find("setting-planer-width-entry"), nullptr);
    EXPECT_NE(find("setting-planer-shortest-entry"), nullptr);
}

}  // namespace
}  // namespace kerfwright
