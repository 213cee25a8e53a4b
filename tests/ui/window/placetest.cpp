// What the board is for, the seasons of its place, and what the shop glues with.
#include "core/wood/air.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/glueform.h"
#include "ui/window/lengthfield.h"
#include "ui/window/numberfield.h"
#include "ui/window/textfield.h"
#include "ui/window/woodlist.h"

#include <QAbstractButton>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <QToolButton>

#include <cmath>

namespace kerfwright {
namespace {

class PlaceTest : public WindowTest {
protected:
    void open(const char* head) { find<QAbstractButton>(head)->click(); }
    /// By keys, as a list is worked that has the focus.
    void choose(const char* list, int index) {
        auto* box = find<QComboBox>(list);
        box->setFocus();
        QTest::keyClick(box, Qt::Key_Home);
        for (int i = 0; i < index; ++i) {
            QTest::keyClick(box, Qt::Key_Down);
        }
    }
    const Climate& climate() const { return project().climate; }
};

TEST_F(PlaceTest, APlaceSetsAllThreeMoisturesAndIsUndone) {
    open("placeHead");
    const Project before = project();
    choose("place", 4);
    EXPECT_EQ(climate(), climatePresets()[4].climate);
    EXPECT_EQ(find<NumberField>("climate-build-percent")->value(), climate().build);
    window->document().history().undo();
    while (window->document().history().canUndo()) {
        window->document().history().undo();
    }
    EXPECT_EQ(project(), before);
}

TEST_F(PlaceTest, OnesOwnMoistureIsNoPlaceOfTheList) {
    open("placeHead");
    type("climate-dampest-percent-entry", QStringLiteral("11,5"));
    EXPECT_EQ(climate().dampest, 11.5);
    auto* place = find<QComboBox>("place");
    EXPECT_EQ(place->currentIndex(), place->count() - 1);
}

TEST_F(PlaceTest, ASeasonThatCannotBeIsRefusedBesideTheEntry) {
    open("placeHead");
    const Climate before = climate();
    type("climate-dampest-percent-entry", QStringLiteral("1"));
    auto* dampest = find<NumberField>("climate-dampest-percent");
    EXPECT_TRUE(dampest->isFaulty()) << "damper than the driest season it must be";
    EXPECT_FALSE(dampest->faultText().isEmpty());
    EXPECT_EQ(climate(), before);
    type("climate-build-percent-entry", QStringLiteral("31"));
    EXPECT_TRUE(find<NumberField>("climate-build-percent")
                    ->faultText()
                    .contains(QStringLiteral("from 0 to 30 %")));
    EXPECT_EQ(climate(), before);
}

TEST_F(PlaceTest, AirIsReckonedIntoMoisture) {
    open("placeHead");
    click(find("typedAs")->findChildren<QAbstractButton*>()[1]);
    // Wood Handbook (US Forest Products Laboratory, 2010), table 4-2: 26.7 °C, 65 %: 11.7 %.
    type("climate-humidity-dampest-percent-entry", QStringLiteral("65"));
    type("climate-degrees-dampest-percent-entry", QStringLiteral("26.7"));
    EXPECT_NEAR(climate().dampest, 11.7, 0.11);
    EXPECT_EQ(find<QLineEdit>("climate-humidity-dampest-percent-entry")->text(),
              QStringLiteral("65"))
        << "what was typed stays";
    EXPECT_FALSE(find("climate-dampest-percent")->isVisible());
}

TEST_F(PlaceTest, DegreesFollowTheUnit) {
    click(find("units")->findChildren<QAbstractButton*>().front());
    open("glueHead");
    EXPECT_EQ(find<QLineEdit>("setting-glue-celsius-entry")->text(), QStringLiteral("68"));
    type("setting-glue-celsius-entry", QStringLiteral("59"));
    EXPECT_EQ(project().glue.celsius, 15);
    type("setting-glue-celsius-entry", QStringLiteral("200"));
    EXPECT_TRUE(find<NumberField>("setting-glue-celsius")
                    ->faultText()
                    .contains(QStringLiteral("to 140 °F")));
}

TEST_F(PlaceTest, AFootIsAskedForOnlyWherePiecesStand) {
    open("placeHead");
    EXPECT_FALSE(find("foot")->isVisible());
    choose("boardUse", 1);
    EXPECT_EQ(project().purpose.use, BoardUse::ChessBoard);
    ASSERT_TRUE(QTest::qWaitFor([this] { return find("foot")->isVisible(); }));
    type("footEntry", QStringLiteral("38"));
    EXPECT_EQ(project().purpose.foot, Length::mm(38));
    type("footEntry", QStringLiteral("-1"));
    EXPECT_TRUE(find<LengthField>("foot")->isFaulty());
}

TEST_F(PlaceTest, EverySettingOfTheGlueIsTaken) {
    open("glueHead");
    for (const GlueSetting& setting : glueSettings()) {
        const QByteArray entry = QByteArray("setting-") + setting.key + "-entry";
        type(entry.constData(), QStringLiteral("1000000"));
        auto* field = find<NumberField>((QByteArray("setting-") + setting.key).constData());
        EXPECT_TRUE(field->isFaulty()) << setting.key;
        QTest::keyClick(field->line(), Qt::Key_Escape);
    }
    EXPECT_EQ(project().glue, GlueShop());
    type("setting-glue-spread-entry", QStringLiteral("200"));
    EXPECT_EQ(project().glue.spread, 200);
    type("setting-glue-light-density-entry", QStringLiteral("950"));
    EXPECT_TRUE(find<NumberField>("setting-glue-light-density")->isFaulty())
        << "light woods are not heavier than heavy ones";
    EXPECT_EQ(project().glue.lightDensity, GlueShop().lightDensity);
}

TEST_F(PlaceTest, APriceIsTypedInTheUnitAtHand) {
    open("unitsHead");
    type("currencyEntry", QStringLiteral("CHF"));
    EXPECT_EQ(project().currency, "CHF");
    click(find<WoodRow>("wood1")->timberButton());
    type("woodPriceEntry", QStringLiteral("2400,5"));
    EXPECT_EQ(project().woods[0].price.minorPerCubicMetre, 240'050);
    type("woodPriceEntry", QStringLiteral("cheap"));
    EXPECT_TRUE(find<TextField>("woodPrice")->isFaulty());
    find("woodForm")->close();
    ASSERT_TRUE(QTest::qWaitFor(
        [this] { return window->findChild<QWidget*>(QStringLiteral("woodForm")) == nullptr; }));
    click(find("units")->findChildren<QAbstractButton*>().front());
    click(find<WoodRow>("wood2")->timberButton());
    type("woodPriceEntry", QStringLiteral("12.50"));
    EXPECT_EQ(project().woods[1].price, pricePerBoardFoot(1'250));
}

}  // namespace
}  // namespace kerfwright
