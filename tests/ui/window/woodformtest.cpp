// Everything that a project says of a wood, changed by key and mouse.
#include "core/wood/ownwood.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/faultnote.h"
#include "ui/window/numberfield.h"
#include "ui/window/textfield.h"
#include "ui/window/woodlist.h"

#include <QComboBox>
#include <QLineEdit>
#include <QTest>
#include <QToolButton>

namespace kerfwright {
namespace {

class WoodFormTest : public WindowTest {
protected:
    void openForm() { click(find<WoodRow>("wood1")->timberButton()); }
    const Wood& wood() const { return project().woods.front(); }
};

TEST_F(WoodFormTest, NumbersAreReadWithBothMarksAndHaveTheMakerForTheirSource) {
    openForm();
    const Project before = project();
    type("shrinkageRadialEntry", QStringLiteral("4,9"));
    EXPECT_EQ(wood().shrinkage.radial, 4.9);
    EXPECT_EQ(wood().sources.shrinkage, ownSource);
    type("movementTangentialEntry", QStringLiteral("0.0031"));
    EXPECT_EQ(wood().movement.tangential, 0.0031);
    EXPECT_EQ(wood().source, before.woods.front().source) << "the density was not touched";
    QTest::keyClick(find<QLineEdit>("movementTangentialEntry"), Qt::Key_Return);
    window->document().history().undo();
    window->document().history().undo();
    EXPECT_EQ(project(), before);
}

TEST_F(WoodFormTest, ANumberThatNoWoodHasIsRefusedInWords) {
    openForm();
    const Wood before = wood();
    for (const char* bad : {"-1", "31", "much", "4.4.4", "1e9", "nan", "inf"}) {
        type("shrinkageRadialEntry", QString::fromLatin1(bad));
        auto* field = find<NumberField>("shrinkageRadial");
        EXPECT_TRUE(field->isFaulty()) << bad;
        EXPECT_TRUE(field->faultText().contains(QStringLiteral("from 0 to 30 %"))) << bad;
        EXPECT_EQ(wood(), before) << bad;
    }
    type("woodNameEntry", QStringLiteral(" "));
    EXPECT_TRUE(find<TextField>("woodName")->isFaulty());
    type("woodColourEntry", QStringLiteral("brown"));
    EXPECT_TRUE(find<TextField>("woodColour")->isFaulty());
    EXPECT_EQ(wood(), before);
}

TEST_F(WoodFormTest, AnEmptyNumberIsNotKnown) {
    openForm();
    auto* line = find<QLineEdit>("woodHardnessEntry");
    line->setFocus();
    QTest::keyClick(line, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClick(line, Qt::Key_Delete);
    EXPECT_EQ(wood().hardness, 0);
    EXPECT_TRUE(wood().sources.hardness.empty());
    EXPECT_FALSE(find<NumberField>("woodHardness")->isFaulty());
}

TEST_F(WoodFormTest, ChoicesAndColoursAreTakenAndUndone) {
    openForm();
    const Wood before = wood();
    auto* rings = find<QComboBox>("woodRings");
    rings->setFocus();
    QTest::keyClick(rings, Qt::Key_End);
    EXPECT_EQ(wood().rings, Rings::Quarter);
    auto* gluing = find<QComboBox>("woodGluing");
    gluing->setFocus();
    QTest::keyClick(gluing, Qt::Key_End);
    EXPECT_EQ(wood().gluing, Gluing::WithDifficulty);
    EXPECT_EQ(wood().sources.gluing, ownSource);
    type("woodColourEntry", QStringLiteral("#102030"));
    EXPECT_EQ(wood().colour, (Colour{0x10, 0x20, 0x30}));
    QTest::keyClick(find<QLineEdit>("woodColourEntry"), Qt::Key_Return);
    auto* swatch = find("woodForm")->findChildren<QToolButton*>().front();
    QTest::mouseClick(swatch, Qt::LeftButton);
    EXPECT_EQ(swatch->objectName(),
              QStringLiteral("colour-") +
                  QColor(wood().colour.red, wood().colour.green, wood().colour.blue)
                      .name()
                      .toUpper()
                      .mid(1));
    for (int i = 0; i < 4; ++i) {
        window->document().history().undo();
    }
    EXPECT_EQ(wood(), before);
}

TEST_F(WoodFormTest, AWoodOfOnesOwnIsAddedNamedAndSaved) {
    const std::size_t count = project().woods.size();
    click("addWood");
    click("ownWood");
    ASSERT_EQ(project().woods.size(), count + 1);
    // The name has the focus: the next keys are for it.
    auto* name = find<QLineEdit>("woodNameEntry");
    EXPECT_TRUE(name->hasFocus());
    type("woodNameEntry", QStringLiteral("Laburnum"));
    type("woodDensityEntry", QStringLiteral("820"));
    const Wood own = project().woods.back();
    EXPECT_EQ(own.name, "Laburnum");
    EXPECT_EQ(own.density, 820);
    find("woodForm")->close();
    clickCell(0, 0);
    EXPECT_EQ(woodAt(0, 0), static_cast<int>(count)) << "it is the one that paints";
    const QString path = inFolder("own.kerfwright");
    ASSERT_TRUE(window->document().save(path).isEmpty());
    Document other(path);
    EXPECT_TRUE(other.openFault().isEmpty()) << other.openFault().toStdString();
    EXPECT_EQ(other.project().woods.back(), own);
}

TEST_F(WoodFormTest, EscapeTakesBackWhatIsTypedAndThenCloses) {
    openForm();
    const Project before = project();
    type("woodDensityEntry", QStringLiteral("500"));
    auto* line = find<QLineEdit>("woodDensityEntry");
    QTest::keyClick(line, Qt::Key_Escape);
    EXPECT_EQ(project(), before);
    ASSERT_TRUE(find("woodForm")->isVisible());
    QTest::keyClick(line, Qt::Key_Escape);
    EXPECT_TRUE(QTest::qWaitFor(
        [this] { return window->findChild<QWidget*>(QStringLiteral("woodForm")) == nullptr; }));
}

}  // namespace
}  // namespace kerfwright
