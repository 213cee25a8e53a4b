// Entries that take effect while they are typed.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/countfield.h"
#include "ui/window/lengthfield.h"

#include <QAbstractButton>
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
    type("thicknessEntry", QStringLiteral("1 5/8"));
    EXPECT_EQ(project().board.thickness, Length::inch(13, 8));
}

TEST_F(EntryTest, SettingsAreMadeWhenTheirSectionIsOpened) {
    EXPECT_EQ(window->findChild<QWidget*>(QStringLiteral("setting-kerf")), nullptr);
    find<QAbstractButton>("allowancesHead")->click();
    type("setting-kerf-entry", QStringLiteral("2,8"));
    EXPECT_EQ(project().shop.kerf, Length::um(2'800));
    type("setting-kerf-entry", QStringLiteral("0"));
    EXPECT_TRUE(find<LengthField>("setting-kerf")->isFaulty());
    EXPECT_EQ(project().shop.kerf, Length::um(2'800));
    type("spareSlicesEntry", QStringLiteral("3"));
    EXPECT_EQ(project().shop.spareSlices, 3);
}

}  // namespace
}  // namespace kerfwright
