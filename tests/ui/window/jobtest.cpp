// The whole job by mouse and keys: from a wish to a printed cut sheet, saved, reopened, gone on
// with.
#include "core/project/file.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/cutlist.h"
#include "ui/window/sheetspanel.h"
#include "ui/window/sheetspreview.h"
#include "ui/window/stepspanel.h"
#include "ui/window/woodlist.h"

#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QFile>
#include <QLineEdit>
#include <QTabBar>
#include <QTest>
#include <QToolButton>

namespace kerfwright {
namespace {

class JobTest : public WindowTest {
protected:
    void clickTab(int tab) {
        QTabBar* bar = window->bench().tabBar();
        QTest::mouseClick(bar, Qt::LeftButton, Qt::NoModifier, bar->tabRect(tab).center());
        ASSERT_EQ(window->bench().currentIndex(), tab);
    }
};

TEST_F(JobTest, FromAWishToPrintedSheets) {
    // A new board, and a pattern.
    QTest::keyClick(window.get(), Qt::Key_N, Qt::ControlModifier);
    EXPECT_FALSE(window->document().isModified());
    click("pattern-plain");
    for (int column = 0; column < 8; ++column) {
        EXPECT_EQ(woodAt(column, 0), woodAt(0, 0));
    }
    click("pattern-chequer");
    EXPECT_NE(woodAt(0, 0), woodAt(1, 0));

    // Painting.
    click("chip2");
    ASSERT_EQ(window->editor().wood(), 1);
    clickCell(0, 0);
    drag(cellCentre(0, 7), cellCentre(7, 7));
    EXPECT_EQ(woodAt(0, 0), 1);
    EXPECT_EQ(woodAt(4, 7), 1);

    // Another wood in the place of the first: pointing shows it, Enter takes it.
    const std::string before = project().woods[0].key;
    click(find<WoodRow>("wood1")->replaceButton());
    auto* chooser = window->findChild<QWidget*>(QStringLiteral("woodChooser"));
    ASSERT_NE(chooser, nullptr);
    auto* search = chooser->findChild<QLineEdit*>(QStringLiteral("woodSearch"));
    ASSERT_NE(search, nullptr);
    QTest::keyClicks(search, QStringLiteral("zebra"));
    EXPECT_EQ(project().woods[0].key, before) << "a preview changes nothing";
    QTest::keyClick(search, Qt::Key_Return);
    EXPECT_NE(project().woods[0].key, before);
    EXPECT_NE(project().woods[0].name.find("ebra"), std::string::npos);

    // Sizes and border.
    type("cellWidthEntry", QStringLiteral("40"));
    type("cellHeightEntry", QStringLiteral("4.2 cm"));
    type("thicknessEntry", QStringLiteral("36"));
    EXPECT_EQ(field().columns[5], Length::mm(40));
    EXPECT_EQ(field().rows[5], Length::mm(42));
    click(find("borderKind")->findChildren<QAbstractButton*>()[2]);  // fixed: without a gap
    type("borderWidthEntry", QStringLiteral("30"));
    EXPECT_EQ(project().board.border.width, Length::mm(30));
    EXPECT_EQ(sizeOf(project().board, surroundOf(project().board, true, {}, {})).width,
              Length::mm(8 * 40 + 60));
    find<QAbstractButton>("titlesHead")->click();
    type("nameEntry", QStringLiteral("Tea tray"));

    // The steps and the working of one of them.
    ASSERT_TRUE(planned());
    EXPECT_EQ(window->planner().last()->job.totals.width, Length::mm(380));
    CardList* steps = window->bench().steps()->list();
    ASSERT_GT(steps->count(), 5);
    int crosscut = -1;
    for (int i = 0; i < steps->count() && crosscut < 0; ++i) {
        if (steps->card(i).bigLabel == QStringLiteral("stop at")) {
            crosscut = i;
        }
    }
    ASSERT_GE(crosscut, 0);
    EXPECT_FALSE(steps->card(crosscut).big.isEmpty());
    steps->choose(crosscut);
    steps->scrollTo(steps->currentIndex());
    QTest::mouseClick(steps->viewport(), Qt::LeftButton, Qt::NoModifier,
                      steps->workingRect(crosscut).center());
    auto* popup = window->findChild<QWidget*>(QStringLiteral("workingPopup"));
    ASSERT_NE(popup, nullptr);
    QToolButton* toSetting = nullptr;
    for (auto* link : popup->findChildren<QToolButton*>()) {
        if (link->text().startsWith(
                QString::fromUtf8(settingInfo(Setting::FieldFlattening)->name))) {
            toSetting = link;
        }
    }
    ASSERT_NE(toSetting, nullptr);
    QTest::mouseClick(toSetting, Qt::LeftButton);
    // The offscreen platform leaves no window active when a popup closes.
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    EXPECT_TRUE(QTest::qWaitFor([&] {
        return QApplication::focusWidget() ==
               window->findChild<QLineEdit*>(QStringLiteral("setting-field-flattening-entry"));
    }));

    // The cut list and the cautions.
    clickTab(BenchTabs::CutListTab);
    EXPECT_GT(find<CutList>("cutList")->count(), 1);
    clickTab(BenchTabs::Cautions);
    EXPECT_GT(window->bench().cautions()->count(), 0) << "a border round end grain is warned of";

    // The sheets, as PDF and as SVG.
    clickTab(BenchTabs::Sheets);
    EXPECT_GE(find<SheetsPreview>("sheets")->pages().size(), 5u);
    answers.write = inFolder("tray");
    click("savePdf");
    QFile pdf(inFolder("tray.pdf"));
    ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
    EXPECT_TRUE(pdf.readAll().startsWith("%PDF-"));
    answers.folder = inFolder("svg");
    ASSERT_TRUE(QDir().mkpath(answers.folder));
    click("saveSvg");
    EXPECT_EQ(static_cast<std::size_t>(QDir(answers.folder).entryList(QDir::Files).size()),
              find<SheetsPreview>("sheets")->pages().size());
    answers.write = inFolder("tray.png");
    click("savePicture");
    ASSERT_TRUE(QTest::qWaitFor([this] { return QFile::exists(inFolder("tray.png")); }, 20'000));
    const QImage picture(inFolder("tray.png"));
    EXPECT_EQ(std::max(picture.width(), picture.height()), 2400);

    // Saved, reopened, gone on with.
    answers.write = inFolder("tray.kerfwright");
    QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
    ASSERT_FALSE(window->document().isModified());
    const Project saved = project();
    EXPECT_TRUE(window->close());
    EXPECT_TRUE(answers.told.isEmpty()) << answers.told.join(QLatin1Char('|')).toStdString();

    window = makeWindow(inFolder("tray.kerfwright"));
    EXPECT_EQ(project(), saved);
    EXPECT_TRUE(window->windowTitle().startsWith(QStringLiteral("tray.kerfwright")));
    type("thicknessEntry", QStringLiteral("38"));
    ASSERT_TRUE(planned());
    EXPECT_EQ(window->planner().last()->job.totals.thickness, Length::mm(38));
    QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(readProject(inFolder("tray.kerfwright").toStdString())->board.thickness,
              Length::mm(38));
}

TEST_F(JobTest, UndoAndRedoNameWhatTheyDoAndReachEveryEdit) {
    const Project start = project();
    click("pattern-stripes");
    click("pattern-basket");
    type("thicknessEntry", QStringLiteral("37"));
    click(find("build")->findChildren<QAbstractButton*>()[1]);
    const Project end = project();
    auto* undo = window->findChild<QAction*>(QStringLiteral("actionUndo"));
    ASSERT_NE(undo, nullptr);
    EXPECT_EQ(undo->text(), QStringLiteral("Undo change build"));
    window->board().setFocus();
    for (int i = 0; i < 4; ++i) {
        QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    }
    EXPECT_EQ(project(), start);
    EXPECT_FALSE(undo->isEnabled());
    for (int i = 0; i < 4; ++i) {
        QTest::keyClick(window.get(), Qt::Key_Y, Qt::ControlModifier);
    }
    EXPECT_EQ(project(), end);
}

TEST_F(JobTest, TryingPatternsOneAfterAnotherComesBackToTheSame) {
    click("pattern-chequer");
    const Field chequer = field();
    for (const PatternInfo& info : patterns()) {
        const std::string name = "pattern-" + std::string(info.key);
        click(name.c_str());
        EXPECT_TRUE(faults(project()).empty()) << name;
        ASSERT_TRUE(project().recipe) << name;
        EXPECT_EQ(project().recipe->pattern, info.pattern) << name;
    }
    click("pattern-chequer");
    EXPECT_EQ(field(), chequer);
}

TEST_F(JobTest, AWishThatCannotBePlannedIsSaidSoAndTheLastPlanStays) {
    ASSERT_TRUE(planned());
    const int steps = window->bench().steps()->list()->count();
    // The rails of a border would be longer than any strip to be had.
    click(find("borderKind")->findChildren<QAbstractButton*>()[1]);
    find<QAbstractButton>("machinesHead")->click();
    type("setting-longest-strip-entry", QStringLiteral("100"));
    ASSERT_TRUE(QTest::qWaitFor(
        [this] { return window->planner().state() == Planner::State::Impossible; }, 10'000));
    EXPECT_TRUE(find("planBanner")->isVisible());
    EXPECT_EQ(window->bench().steps()->list()->count(), steps);
    EXPECT_TRUE(window->bench().steps()->list()->isStale());
    answers.write = inFolder("never.pdf");
    QTest::keyClick(window.get(), Qt::Key_E, Qt::ControlModifier);
    EXPECT_EQ(answers.told.size(), 1);
    EXPECT_FALSE(QFile::exists(inFolder("never.pdf")));
    window->document().history().undo();
    ASSERT_TRUE(planned());
    EXPECT_FALSE(find("planBanner")->isVisible());
    EXPECT_FALSE(window->bench().steps()->list()->isStale());
}

TEST_F(JobTest, WoodsAreAddedAndRemoved) {
    const std::size_t before = project().woods.size();
    click("addWood");
    auto* search = window->findChild<QLineEdit*>(QStringLiteral("woodSearch"));
    ASSERT_NE(search, nullptr);
    QTest::keyClicks(search, QStringLiteral("teak"));
    QTest::keyClick(search, Qt::Key_Return);
    ASSERT_EQ(project().woods.size(), before + 1);
    EXPECT_EQ(window->editor().wood(), static_cast<int>(before)) << "what was added paints";
    auto* row = find<WoodRow>(qPrintable(QStringLiteral("wood%1").arg(before + 1)));
    EXPECT_FALSE(find<WoodRow>("wood1")->removeButton()->isEnabled()) << "it is in the board";
    click(row->removeButton());
    EXPECT_EQ(project().woods.size(), before);
    EXPECT_TRUE(faults(project()).empty());
}

}  // namespace
}  // namespace kerfwright
