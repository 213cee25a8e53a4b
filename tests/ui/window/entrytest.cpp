// Entries that take effect while they are typed.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/countfield.h"
#include "ui/window/lengthfield.h"

#include <QAbstractButton>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

namespace kerfwright {
namespace {

class EntryTest : public WindowTest {};

TEST_F(EntryTest, ReadsFractionsUnitsAndBothDecimalMarksAtOnce) {
    auto* field = find<LengthField>("thickness");
    const std::vector<std::pair<const char*, Length>> cases{
        {"1 3/4 in", Length::inch(7, 4)}, {"44,5", Length::um(44'500)},
        {"44.5", Length::um(44'500)},     {"3 cm", Length::mm(30)},
        {"12 + 20", Length::mm(32)},      {"2\"", Length::inch(2)},
    };
    for (const auto& [text, length] : cases) {
        type("thicknessEntry", QString::fromLatin1(text));
        EXPECT_EQ(project().board.thickness, length) << text;
        EXPECT_FALSE(field->isFaulty()) << text;
    }
    type("thicknessEntry", QStringLiteral("1 3/4 in"));
    EXPECT_EQ(field->line()->note(), QStringLiteral("= ≈ 44.5 mm"));
    QTest::keyClick(field->line(), Qt::Key_Return);
    EXPECT_TRUE(field->line()->note().isEmpty());
    EXPECT_EQ(project().board.thickness, Length::inch(7, 4))
        << "showing it rounded must not change it";
}

TEST_F(EntryTest, KeepsTheLastGoodValueBesideTheReason) {
    auto* field = find<LengthField>("thickness");
    const Length before = project().board.thickness;
    for (const char* bad :
         {"", "abc", "-3", "0", "1/0", "99999999", "4 5 6", "3 ells", "1 km", "½½"}) {
        type("thicknessEntry", QStringLiteral("36"));
        type("thicknessEntry", QString::fromUtf8(bad));
        if (*bad == '\0') {
            QTest::keyClick(field->line(), Qt::Key_Delete);
        }
        EXPECT_TRUE(field->isFaulty()) << bad;
        EXPECT_TRUE(field->faultText().contains(QStringLiteral("Thickness"))) << bad;
        EXPECT_FALSE(field->line()->accessibleDescription().isEmpty());
    }
    QTest::keyClick(field->line(), Qt::Key_Escape);
    EXPECT_FALSE(field->isFaulty());
    EXPECT_FALSE(field->line()->text().isEmpty());
    window->document().history().undo();
    EXPECT_EQ(project().board.thickness, before);
}

TEST_F(EntryTest, RefusesCountsThatNoBoardMayHave) {
    auto* across = find<CountField>("across");
    for (const char* bad : {"0", "65", "10000", "-1", "8.5", "eight"}) {
        type("acrossEntry", QString::fromLatin1(bad));
        EXPECT_TRUE(across->isFaulty()) << bad;
        EXPECT_TRUE(across->faultText().contains(QStringLiteral("1 to 64"))) << bad;
    }
    type("acrossEntry", QStringLiteral("12"));
    EXPECT_FALSE(across->isFaulty());
    EXPECT_EQ(field().columns.size(), 12u);
}

TEST_F(EntryTest, RefusesABoardThatIsTooLargeAsAWhole) {
    const Project before = project();
    type("cellWidthEntry", QStringLiteral("1400"));
    EXPECT_TRUE(find<LengthField>("cellWidth")->isFaulty());
    EXPECT_LT(field().width(), Length::mm(3001));
    window->document().history().undo();
    EXPECT_EQ(project(), before);
}

TEST_F(EntryTest, TypingIsOneUndoStepAndUndoReachesTheDocument) {
    const Length before = project().board.thickness;
    type("thicknessEntry", QStringLiteral("41"));
    type("thicknessEntry", QStringLiteral("42"));
    EXPECT_EQ(window->document().history().count(), 1);
    auto* line = find<QLineEdit>("thicknessEntry");
    QTest::keyClick(line, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(project().board.thickness, before);
    EXPECT_FALSE(window->document().isModified());
    QTest::keyClick(line, Qt::Key_Y, Qt::ControlModifier);
    EXPECT_EQ(project().board.thickness, Length::mm(42));
}

TEST_F(EntryTest, TheFirstDigitOfACountCostsNoPainting) {
    clickCell(6, 5);
    clickCell(7, 7);
    const Field painted = field();
    const int steps = window->document().history().count();
    type("acrossEntry", QStringLiteral("1"));
    EXPECT_EQ(field().columns.size(), 1u) << "shown at once";
    type("acrossEntry", QStringLiteral("12"));
    EXPECT_EQ(field(), resized(painted, 12, 8));
    EXPECT_EQ(window->document().history().count(), steps + 1);
    auto* line = find<QLineEdit>("acrossEntry");
    QTest::keyClick(line, Qt::Key_Backspace);
    QTest::keyClick(line, Qt::Key_Backspace);
    QTest::keyClick(line, Qt::Key_8);
    EXPECT_EQ(field(), painted);
    EXPECT_EQ(window->document().history().count(), steps) << "nothing is left to undo";
}

TEST_F(EntryTest, ACountThatCannotBePutsBackWhatWasThereBefore) {
    const Field before = field();
    type("acrossEntry", QStringLiteral("65"));  // by way of 6
    EXPECT_TRUE(find<CountField>("across")->isFaulty());
    EXPECT_TRUE(find<CountField>("across")->faultText().contains(QStringLiteral("Still 8")));
    EXPECT_EQ(field(), before);
    type("acrossEntry", QStringLiteral("6"));
    QTest::keyClick(find<QLineEdit>("acrossEntry"), Qt::Key_Escape);
    EXPECT_EQ(field(), before);
    EXPECT_EQ(find<QLineEdit>("acrossEntry")->text(), QStringLiteral("8"));
}

TEST_F(EntryTest, AnEditBetweenDigitsIsNotLost) {
    type("acrossEntry", QStringLiteral("6"));
    window->document().history().undo();
    window->document().edit(QStringLiteral("test"), entry::none,
                            [](Project& changed) { changed.board.field.pieces.front().wood = 2; });
    const Field painted = field();
    QTest::keyClicks(find<QLineEdit>("acrossEntry"), QStringLiteral("x"));
    EXPECT_EQ(field(), painted);
    type("acrossEntry", QStringLiteral("9"));
    EXPECT_EQ(field(), resized(painted, 9, 8));
}

TEST_F(EntryTest, ASizeTypedForAnUnevenPatternScalesIt) {
    click("pattern-mortar-bricks");
    const Field bricks = field();
    ASSERT_NE(bricks.columns[0], bricks.columns[1]);
    EXPECT_EQ(find<QLabel>("squaresLabel")->text(), QStringLiteral("First square"));
    // On the way to the second digit the mortar is squeezed; that must not stay.
    const auto twice = QString::number(bricks.columns[0].toMm() * 2);
    type("cellWidthEntry", twice);
    EXPECT_EQ(field(), scaled(bricks, bricks.columns[0] * 2, bricks.rows[0], Length::um(100)));
    EXPECT_EQ(field().columns[1], bricks.columns[1] * 2);
    window->document().history().undo();
    EXPECT_EQ(field(), bricks);
    click("pattern-chequer");
    EXPECT_EQ(find<QLabel>("squaresLabel")->text(), QStringLiteral("Squares"));
}

TEST_F(EntryTest, NothingMovesWhereAPatternOrACountIsRefused) {
    const auto place = [this](const char* name) {
        QCoreApplication::sendPostedEvents();
        return find(name)->mapTo(window.get(), QPoint());
    };
    const QPoint before = place("pattern-basket");
    click("pattern-mortar-bricks");
    EXPECT_EQ(place("pattern-basket"), before);
    type("downEntry", QStringLiteral("eight"));
    EXPECT_TRUE(find<QLabel>("fieldNote")->text().contains(QStringLiteral("1 to 64")));
    EXPECT_EQ(place("pattern-basket"), before);
    EXPECT_GE(find("fieldNote")->height(),
              find<QLabel>("fieldNote")->heightForWidth(find("fieldNote")->width()));
}

TEST_F(EntryTest, LimitsAreWrittenAsLengthsThatAreTaken) {
    click(find("units")->findChildren<QAbstractButton*>().front());
    type("thicknessEntry", QStringLiteral("99"));
    const QString fault = find<LengthField>("thickness")->faultText();
    // 5 and 200 mm, to the next 64th inside.
    EXPECT_TRUE(fault.contains(QStringLiteral("from 13/64 in to 7 55/64 in")))
        << fault.toStdString();
    EXPECT_FALSE(fault.contains(QStringLiteral("to ≈"))) << fault.toStdString();
}

TEST_F(EntryTest, LeavingAnEntryEndsTheStep) {
    type("thicknessEntry", QStringLiteral("41"));
    QTest::keyClick(find<QLineEdit>("thicknessEntry"), Qt::Key_Tab);
    type("thicknessEntry", QStringLiteral("42"));
    EXPECT_EQ(window->document().history().count(), 2);
}

TEST_F(EntryTest, TheWheelChangesNoEntry) {
    const Project before = project();
    for (auto* line : window->findChildren<QLineEdit*>()) {
        line->setFocus();
        QWheelEvent wheel(QPointF(5, 5), line->mapToGlobal(QPointF(5, 5)), {}, {0, 120},
                          Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
        QCoreApplication::sendEvent(line, &wheel);
    }
    EXPECT_EQ(project(), before);
}

TEST_F(EntryTest, UnitsChangeTheWritingAndNotTheBoard) {
    const Board before = project().board;
    type("thicknessEntry", QStringLiteral("1 1/2 in"));
    click(find("units")->findChildren<QAbstractButton*>().front());
    EXPECT_EQ(project().notation.unit, Unit::Inches);
    EXPECT_EQ(find<LengthField>("thickness")->line()->text(), QStringLiteral("1 1/2 in"));
    EXPECT_EQ(project().board.field, before.field);
    EXPECT_EQ(project().shop, inchShop()) << "a shop that nobody changed goes along";
    type("thicknessEntry", QStringLiteral("1 5/8"));
    EXPECT_EQ(project().board.thickness, Length::inch(13, 8));
}

TEST_F(EntryTest, AShopThatWasChangedKeepsItsSettings) {
    find<QAbstractButton>("allowancesHead")->click();
    type("setting-kerf-entry", QStringLiteral("2.8"));
    const Shop own = project().shop;
    find<QAbstractButton>("unitsHead")->click();
    click(find("unitChoice")->findChildren<QAbstractButton*>().front());
    EXPECT_EQ(project().notation.unit, Unit::Inches);
    EXPECT_EQ(project().shop, own);
}

TEST_F(EntryTest, TheFinestFractionIsTheMakersChoice) {
    find<QAbstractButton>("unitsHead")->click();
    click(find("unitChoice")->findChildren<QAbstractButton*>()[0]);
    type("thicknessEntry", QStringLiteral("1 33/64"));
    QTest::keyClick(find<QLineEdit>("thicknessEntry"), Qt::Key_Return);
    click(find("fractions")->findChildren<QAbstractButton*>()[1]);
    EXPECT_EQ(project().notation.denominator, 16);
    EXPECT_EQ(find<QLineEdit>("thicknessEntry")->text(), QStringLiteral("≈ 1 1/2 in"));
    EXPECT_EQ(project().board.thickness, Length::inch(97, 64));
    window->document().history().undo();
    EXPECT_EQ(project().notation.denominator, 64);
    EXPECT_FALSE(find("decimals")->isVisible());
}

TEST_F(EntryTest, SettingsAreMadeWhenTheirSectionIsOpened) {
    EXPECT_EQ(window->findChild<QWidget*>(QStringLiteral("setting-kerf")), nullptr);
    find<QAbstractButton>("allowancesHead")->click();
    type("setting-kerf-entry", QStringLiteral("2,8"));
    EXPECT_EQ(project().shop.kerf, Length::um(2'800));
    QTest::keyClick(find<QLineEdit>("setting-kerf-entry"), Qt::Key_Return);
    type("setting-kerf-entry", QStringLiteral("0"));
    EXPECT_TRUE(find<LengthField>("setting-kerf")->isFaulty());
    EXPECT_EQ(project().shop.kerf, Length::um(2'800));
    type("spareSlicesEntry", QStringLiteral("3"));
    EXPECT_EQ(project().shop.spareSlices, 3);
}

}  // namespace
}  // namespace kerfwright
