// The tab "Timber" by mouse and keys: planks added, marked and taken from files, strips pinned,
// searches stopped, offcuts put back, the largest board used.
#include "core/timber/rackcsv.h"
#include "tests/source.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/boardspage.h"
#include "ui/window/buypage.h"
#include "ui/window/cardlist.h"
#include "ui/window/cutsview.h"
#include "ui/window/plankcanvas.h"
#include "ui/window/plankeditor.h"
#include "ui/window/racklist.h"
#include "ui/window/rackpage.h"
#include "ui/window/sheetspanel.h"
#include "ui/window/sheetspreview.h"
#include "ui/window/timberpanel.h"

#include <QAction>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QListWidget>
#include <QMenu>
#include <QPushButton>
#include <QScrollBar>
#include <QTabBar>
#include <QTest>

namespace kerfwright {
namespace {

class TimberTest : public WindowTest {
protected:
    void openTab() {
        QTabBar* bar = window->bench().tabBar();
        QTest::mouseClick(bar, Qt::LeftButton, Qt::NoModifier,
                          bar->tabRect(BenchTabs::TimberTab).center());
        ASSERT_EQ(window->bench().currentIndex(), BenchTabs::TimberTab);
    }
    TimberPanel& panel() { return *window->bench().timber(); }
    RackList& rackList() { return *panel().rack()->list(); }
    const Rack& rack() const { return project().timber.rack; }
    void showPage(TimberPanel::Page page) {
        QTest::keyClick(window.get(), Qt::Key_Escape);
        panel().showPage(page);
        QCoreApplication::processEvents();
    }
    /// Waits for the layout of the project as it stands.
    bool sawn() {
        return QTest::qWaitFor(
            [this] { return window->sawyer().state() == Sawyer::State::Current; }, 60'000);
    }
    const TimberPlan& plan() { return window->sawyer().last()->plan; }
    QString words() { return find<QLabel>("timberWords")->text(); }

    QString fileWith(const char* name, const QByteArray& content) {
        const QString path = inFolder(name);
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        EXPECT_EQ(file.write(content), content.size());
        return path;
    }
    void takeFile(const char* name, const QByteArray& content) {
        answers.read = fileWith(name, content);
        find<QAction>("takePlanks")->trigger();
    }
    /// Enough of all woods for the board, from a file.
    void fillRack(int planks = 4, int length = 1400) {
        QByteArray table = "wood;thickness mm;width mm;length mm;label\n";
        int number = 0;
        for (const Wood& wood : project().woods) {
            for (int i = 0; i < planks; ++i) {
                table += QByteArray::fromStdString(wood.key) + ";60;150;" +
                         QByteArray::number(length + 50 * i) + ";P" + QByteArray::number(++number) +
                         "\n";
            }
        }
        takeFile("rack.csv", table);
        ASSERT_TRUE(answers.told.isEmpty()) << answers.told.join(QLatin1Char(' ')).toStdString();
    }
    PlankEditor* editor() { return window->findChild<PlankEditor*>(); }
};

TEST_F(TimberTest, AnEmptyRackSaysWhatToDoAndStillGivesAShoppingList) {
    ASSERT_TRUE(planned());
    EXPECT_FALSE(window->sawyer().isAwake()) << "nobody asked for a layout yet";
    openTab();
    EXPECT_TRUE(find<QPushButton>("firstPlank")->isVisible());
    EXPECT_TRUE(find<QPushButton>("firstFile")->isVisible());
    ASSERT_TRUE(sawn());
    click("onlyShopping");
    EXPECT_EQ(panel().page(), TimberPanel::Buy);
    EXPECT_GT(panel().buy()->list()->count(), 0);
    EXPECT_FALSE(panel().buy()->list()->card(0).big.isEmpty());
    EXPECT_TRUE(words().contains(QStringLiteral("have to be bought"))) << words().toStdString();
}

TEST_F(TimberTest, APlankIsAddedByKeys) {
    openTab();
    click("addPlank");
    ASSERT_NE(editor(), nullptr);
    type("plankLabelEntry", QStringLiteral("Barn 1"));
    type("plankThicknessEntry", QStringLiteral("35,5"));
    type("plankWidthEntry", QStringLiteral("6 in"));
    type("plankLengthEntry", QStringLiteral("1.2 m"));
    type("plankPriceEntry", QStringLiteral("42,50"));
    QTest::keyClick(find("plankPriceEntry"), Qt::Key_Return);
    ASSERT_EQ(rack().planks.size(), 1u);
    const Plank& plank = rack().planks.front();
    EXPECT_EQ(plank.label, "Barn 1");
    EXPECT_EQ(plank.thickness, Length::um(35'500));
    EXPECT_EQ(plank.width, Length::inch(6));
    EXPECT_EQ(plank.length, Length::mm(1200));
    EXPECT_EQ(plank.price, 4250);
    EXPECT_EQ(window->document().history().undoText(), QStringLiteral("add plank"));
    EXPECT_EQ(rackList().count(), 1);
    window->document().history().undo();
    EXPECT_TRUE(rack().planks.empty());
}

TEST_F(TimberTest, ALabelThatIsTakenIsRefusedInWords) {
    openTab();
    fillRack();
    ASSERT_GT(rack().planks.size(), 1u);
    panel().rack()->edit(0);
    ASSERT_NE(editor(), nullptr);
    type("plankLabelEntry", QString::fromStdString(rack().planks[1].label));
    click("plankKeep");
    EXPECT_TRUE(find<QLabel>("plankFault")->isVisible());
    EXPECT_EQ(rack().planks[0].label, "P1");
    click("plankCancel");
}

TEST_F(TimberTest, KnotsAreDrawnMovedTypedAndTakenAway) {
    openTab();
    click("addPlank");
    ASSERT_NE(editor(), nullptr);
    PlankCanvas* canvas = editor()->canvas();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(editor()));
    const auto at = [&](int x, int y) {
        return canvas->seenAt(Length::mm(x), Length::mm(y)).toPoint();
    };
    const auto drag = [&](QPoint from, QPoint to) {
        QTest::mousePress(canvas, Qt::LeftButton, Qt::NoModifier, from);
        QTest::mouseMove(canvas, (from + to) / 2);
        QTest::mouseMove(canvas, to);
        QTest::mouseRelease(canvas, Qt::LeftButton, Qt::NoModifier, to);
    };
    drag(at(600, 120), at(700, 60));
    ASSERT_EQ(editor()->plank().defects.size(), 1u);
    Defect knot = editor()->plank().defects[0];
    EXPECT_NEAR(knot.x.toMm(), 600, 4);
    EXPECT_NEAR(knot.y.toMm(), 60, 4);
    EXPECT_NEAR(knot.length.toMm(), 100, 5);
    EXPECT_NEAR(knot.width.toMm(), 60, 5);
    // Dragging what is there moves it, and not beyond the plank.
    drag(at(650, 90), at(650, 149));
    ASSERT_EQ(editor()->plank().defects.size(), 1u);
    EXPECT_EQ(editor()->plank().defects[0].y + knot.width, editor()->plank().width);
    EXPECT_EQ(editor()->plank().defects[0].length, knot.length);
    // A second one by keys alone.
    canvas->setFocus();
    QTest::keyClick(canvas, Qt::Key_Insert);
    ASSERT_EQ(editor()->plank().defects.size(), 2u);
    const Defect second = editor()->plank().defects[1];
    QTest::keyClick(canvas, Qt::Key_Left);
    QTest::keyClick(canvas, Qt::Key_Up, Qt::ShiftModifier);
    EXPECT_EQ(editor()->plank().defects[1].x, second.x - Length::mm(1));
    EXPECT_EQ(editor()->plank().defects[1].width, second.width + Length::mm(1));
    // Typed.
    EXPECT_EQ(find<QListWidget>("defects")->currentRow(), 1);
    type("defectXEntry", QStringLiteral("250"));
    EXPECT_EQ(editor()->plank().defects[1].x, Length::mm(250));
    // One that leaves the plank is refused when the plank is kept.
    type("defectXEntry", QStringLiteral("5000"));
    click("plankKeep");
    EXPECT_TRUE(find<QLabel>("plankFault")->isVisible());
    EXPECT_TRUE(rack().planks.empty());
    canvas->setFocus();
    QTest::keyClick(canvas, Qt::Key_Delete);
    ASSERT_EQ(editor()->plank().defects.size(), 1u);
    click("plankKeep");
    ASSERT_EQ(rack().planks.size(), 1u);
    EXPECT_EQ(rack().planks[0].defects.size(), 1u);
}

TEST_F(TimberTest, PlanksAreDuplicatedAndRemovedByKeys) {
    openTab();
    fillRack(1);
    const auto before = rack().planks.size();
    rackList().choose(0);
    QTest::keyClick(&rackList(), Qt::Key_D, Qt::ControlModifier);
    ASSERT_EQ(rack().planks.size(), before + 1);
    EXPECT_EQ(rack().planks.back().length, rack().planks[0].length);
    EXPECT_NE(rack().planks.back().label, rack().planks[0].label);
    QTest::keyClick(&rackList(), Qt::Key_Delete);
    EXPECT_EQ(rack().planks.size(), before);
    QTest::keyClick(&rackList(), Qt::Key_Home);
    QTest::keyClick(&rackList(), Qt::Key_Return);
    ASSERT_NE(editor(), nullptr);
    QTest::keyClick(editor(), Qt::Key_Escape);
}

TEST_F(TimberTest, AFileIsTakenWholeWithCommaDecimalsAndAnySeparator) {
    openTab();
    takeFile("a.csv", "label\twood\tthickness mm\twidth mm\tlength mm\tdefects mm\n"
                      "A\thard-maple\t32,5\t150\t2000\t100; 20; 30; 40\n");
    ASSERT_TRUE(answers.told.isEmpty()) << answers.told.join(QLatin1Char(' ')).toStdString();
    ASSERT_EQ(rack().planks.size(), 1u);
    EXPECT_EQ(rack().planks[0].thickness, Length::um(32'500));
    EXPECT_EQ(rack().planks[0].defects.size(), 1u);
    // The same labels again get others; one undo takes a file back.
    find<QAction>("takePlanks")->trigger();
    ASSERT_EQ(rack().planks.size(), 2u);
    EXPECT_EQ(rack().planks[1].label, "A-2");
    window->document().history().undo();
    EXPECT_EQ(rack().planks.size(), 1u);
}

TEST_F(TimberTest, BadFilesAreToldByLineAndColumnAndLeaveTheRackAlone) {
    openTab();
    const std::pair<QByteArray, const char*> bad[] = {
        {"wood;thickness mm;width mm\nhard-maple;32;150\n", "length"},
        {"wood,thickness mm,width mm,length mm\nhard-maple,32,150,2000\nhard-maple,32,wide,2000\n",
         "Line 3, column 3"},
        {"wood;thickness mm;width mm;length mm;defects mm\nhard-maple;32;150;2000;1990; 0; 40; "
         "10\n",
         "Line 2"},
        {"wood;thickness mm;width mm;length mm\nhard-maple;0;150;2000\n", "Line 2"},
        {"", "Line"},
    };
    for (const auto& [table, named] : bad) {
        answers.told.clear();
        takeFile("bad.csv", table);
        ASSERT_EQ(answers.told.size(), 1) << table.constData();
        EXPECT_TRUE(answers.told.front().contains(QString::fromLatin1(named)))
            << answers.told.front().toStdString();
        EXPECT_TRUE(rack().planks.empty());
    }
    answers.told.clear();
    answers.read = inFolder("missing.csv");
    find<QAction>("takePlanks")->trigger();
    EXPECT_EQ(answers.told.size(), 1);
}

TEST_F(TimberTest, ThousandsOfRowsAreTakenAndTooManyRefused) {
    openTab();
    QByteArray table = "wood;thickness mm;width mm;length mm\n";
    for (int i = 0; i < 5000; ++i) {
        table += "yew-of-somewhere;32;150;" + QByteArray::number(500 + i) + "\n";
    }
    takeFile("many.csv", table);
    EXPECT_EQ(rack().planks.size(), 5000u);
    EXPECT_EQ(rackList().count(), 5000);
    QByteArray more = "wood;thickness mm;width mm;length mm;count\nhard-maple;32;150;500;16000\n";
    takeFile("more.csv", more);
    EXPECT_EQ(rack().planks.size(), 5000u);
    EXPECT_EQ(answers.told.size(), 1);
}

TEST_F(TimberTest, TheRackIsWrittenAndReadBackExactly) {
    openTab();
    fillRack();
    answers.write = inFolder("out");
    find<QAction>("writeRack")->trigger();
    QFile file(inFolder("out.csv"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const Result<Rack> read = rackFromCsv(file.readAll().toStdString());
    ASSERT_TRUE(read.ok()) << read.fault().text();
    EXPECT_EQ(*read, rack());
}

TEST_F(TimberTest, StripsAreLaidOutAndShown) {
    openTab();
    fillRack();
    ASSERT_TRUE(sawn());
    ASSERT_TRUE(plan().layout.isComplete());
    EXPECT_TRUE(words().contains(QStringLiteral("Proven best"))) << words().toStdString();
    panel().showPage(TimberPanel::Cuts);
    EXPECT_GE(panel().cuts()->plankCount(), static_cast<int>(plan().layout.planks.size()));
    EXPECT_TRUE(find<QLabel>("sawSafety")->text().contains(QStringLiteral("manual")));
    // Taking planks away leaves a shortage, in words, with what to buy.
    panel().showPage(TimberPanel::RackOf);
    rackList().setFocus();
    rackList().choose(0);
    QTest::keyClick(&rackList(), Qt::Key_Delete);
    QTest::keyClick(&rackList(), Qt::Key_Delete);
    QTest::keyClick(&rackList(), Qt::Key_Delete);
    QTest::keyClick(&rackList(), Qt::Key_Delete);
    EXPECT_EQ(rack().planks.size(), project().woods.size() * 4 - 4);
    ASSERT_TRUE(sawn());
    ASSERT_FALSE(plan().layout.isComplete());
    const QString shortage = find<QLabel>("shortage")->text();
    EXPECT_TRUE(shortage.contains(QStringLiteral("Missing: "))) << shortage.toStdString();
}

TEST_F(TimberTest, WhatStandsBelowThePlanksScrollsWithThem) {
    openTab();
    fillRack();
    ASSERT_TRUE(sawn());
    panel().showPage(TimberPanel::Cuts);
    CutsView& cuts = *panel().cuts();
    auto* safety = find<QLabel>("sawSafety");
    auto* print = find<QPushButton>("printPlanks");
    ASSERT_TRUE(cuts.viewport()->isAncestorOf(safety));
    ASSERT_TRUE(QTest::qWaitFor([&] { return cuts.verticalScrollBar()->maximum() > 200; }));
    EXPECT_EQ(cuts.geometry().bottom(), cuts.parentWidget()->rect().bottom());
    cuts.verticalScrollBar()->setValue(0);
    EXPECT_TRUE(print->visibleRegion().isEmpty());
    print->setFocus(Qt::TabFocusReason);
    EXPECT_EQ(print->visibleRegion().boundingRect(), print->rect());
    cuts.verticalScrollBar()->setValue(cuts.verticalScrollBar()->maximum());
    EXPECT_EQ(safety->visibleRegion().boundingRect(), safety->rect());
    EXPECT_GE(safety->height(), safety->heightForWidth(safety->width()));
    // Opening the form makes room for it.
    const int before = cuts.verticalScrollBar()->maximum();
    click("sawingHead");
    EXPECT_TRUE(QTest::qWaitFor([&] { return cuts.verticalScrollBar()->maximum() > before + 60; }));
}

TEST_F(TimberTest, AStripIsDraggedToAnotherPlankAndUnpinnedByKeys) {
    openTab();
    fillRack();
    ASSERT_TRUE(sawn());
    panel().showPage(TimberPanel::Cuts);
    CutsView& cuts = *panel().cuts();
    const QString strip = cuts.stripName(0, 0);
    const QString own = cuts.plankLabel(0);
    // Onto another plank of the same wood.
    int target = -1;
    const auto woodOf = [&](const QString& label) {
        for (const Plank& plank : rack().planks) {
            if (QString::fromStdString(plank.label) == label) {
                return plank.wood;
            }
        }
        return std::string();
    };
    for (int i = 1; i < cuts.plankCount(); ++i) {
        if (woodOf(cuts.plankLabel(i)) == woodOf(own)) {
            target = i;
        }
    }
    ASSERT_GE(target, 0);
    const QString other = cuts.plankLabel(target);
    QWidget* paper = cuts.viewport();
    cuts.choose(0, 0);
    const QPoint from = cuts.stripRect(0, 0).center().toPoint();
    QTest::mousePress(paper, Qt::LeftButton, Qt::NoModifier, from);
    QTest::mouseMove(paper, from + QPoint(0, 20));
    QTest::mouseMove(paper, cuts.plankRect(target).center().toPoint());
    QTest::mouseRelease(paper, Qt::LeftButton, Qt::NoModifier,
                        cuts.plankRect(target).center().toPoint());
    ASSERT_EQ(project().timber.pins.size(), 1u);
    EXPECT_EQ(QString::fromStdString(project().timber.pins[0].strip), strip);
    EXPECT_EQ(QString::fromStdString(project().timber.pins[0].plank), other);
    ASSERT_TRUE(sawn());
    EXPECT_TRUE(plan().lostPins.empty());
    bool there = false;
    for (int i = 0; i < cuts.plankCount(); ++i) {
        for (int k = 0; k < cuts.stripCount(i); ++k) {
            there = there || (cuts.stripName(i, k) == strip && cuts.plankLabel(i) == other);
        }
    }
    EXPECT_TRUE(there) << "the pinned strip lies where it was dropped";
    // The choice went with it; Delete unpins.
    cuts.setFocus();
    ASSERT_GE(cuts.chosenStrip(), 0);
    EXPECT_EQ(cuts.stripName(cuts.chosenPlank(), cuts.chosenStrip()), strip);
    QTest::keyClick(&cuts, Qt::Key_Delete);
    EXPECT_TRUE(project().timber.pins.empty());
}

TEST_F(TimberTest, AStripIsPinnedByItsMenu) {
    openTab();
    fillRack();
    ASSERT_TRUE(sawn());
    panel().showPage(TimberPanel::Cuts);
    CutsView& cuts = *panel().cuts();
    cuts.setFocus();
    QTest::keyClick(&cuts, Qt::Key_Right);
    ASSERT_GE(cuts.chosenStrip(), 0);
    const QString strip = cuts.stripName(cuts.chosenPlank(), cuts.chosenStrip());
    QTest::keyClick(&cuts, Qt::Key_Return);
    auto* menu = cuts.findChild<QMenu*>(QStringLiteral("stripMenu"));
    ASSERT_NE(menu, nullptr);
    QTest::keyClick(menu, Qt::Key_Down);
    QTest::keyClick(menu, Qt::Key_Return);
    ASSERT_EQ(project().timber.pins.size(), 1u);
    EXPECT_EQ(QString::fromStdString(project().timber.pins[0].strip), strip);
    ASSERT_TRUE(sawn());
    EXPECT_TRUE(find<QPushButton>("unpinAll")->isVisible());
    click("unpinAll");
    EXPECT_TRUE(project().timber.pins.empty());
}

TEST_F(TimberTest, ASearchIsStoppedAndKeepsTheBestSoFar) {
    openTab();
    // Knotty planks of many lengths, so that there is something to search.
    QByteArray table = "wood;thickness mm;width mm;length mm;defects mm\n";
    for (const Wood& wood : project().woods) {
        for (int i = 0; i < 40; ++i) {
            table += QByteArray::fromStdString(wood.key) + ";60;" +
                     QByteArray::number(96 + 7 * (i % 9)) + ";" +
                     QByteArray::number(560 + 37 * (i % 13)) + ";" +
                     QByteArray::number(120 + 11 * (i % 17)) + "; 20; 30; 25\n";
        }
    }
    takeFile("knots.csv", table);
    type("acrossEntry", QStringLiteral("24"));
    type("downEntry", QStringLiteral("24"));
    auto* stop = find<QPushButton>("stopSawing");
    const bool seen = QTest::qWaitFor(
        [&] { return stop->isVisible() || window->sawyer().state() == Sawyer::State::Current; },
        60'000);
    ASSERT_TRUE(seen);
    if (stop->isVisible()) {
        click(stop);
    }
    ASSERT_TRUE(sawn());
    EXPECT_FALSE(stop->isVisible());
    EXPECT_FALSE(words().isEmpty());
}

TEST_F(TimberTest, KeptOffcutsTakeThePlaceOfThePlanks) {
    openTab();
    fillRack();
    ASSERT_TRUE(sawn());
    const std::size_t before = rack().planks.size();
    const std::size_t cut = plan().layout.planks.size();
    std::size_t offcuts = 0;
    for (const PlankCuts& cuts : plan().layout.planks) {
        offcuts += cuts.offcuts.size();
    }
    ASSERT_GT(offcuts, 0u);
    find<QAction>("putOffcutsBack")->trigger();
    ASSERT_EQ(rack().planks.size(), before - cut + offcuts);
    EXPECT_TRUE(rack().planks.back().isOffcut);
    EXPECT_EQ(rack().planks.back().price, 0) << "no price is made up";
    window->document().history().undo();
    EXPECT_EQ(rack().planks.size(), before);
}

TEST_F(TimberTest, TheLargestBoardIsUsedWithOneClick) {
    openTab();
    fillRack();
    ASSERT_TRUE(sawn());
    panel().showPage(TimberPanel::Boards);
    click("findLargest");
    ASSERT_TRUE(QTest::qWaitFor([&] { return !panel().boards()->finder().isWorking(); }, 60'000));
    ASSERT_TRUE(panel().boards()->finder().largest().has_value())
        << panel().boards()->finder().fault().toStdString();
    const Field largest = panel().boards()->finder().largest()->field.field;
    auto* use = find<QPushButton>("useLargest");
    ASSERT_TRUE(use->isVisible());
    EXPECT_TRUE(use->text().startsWith(QStringLiteral("Use ")));
    click(use);
    EXPECT_EQ(field(), largest);
    ASSERT_TRUE(planned());
    ASSERT_TRUE(sawn());
    EXPECT_TRUE(plan().layout.isComplete());
}

TEST_F(TimberTest, SamplesAreJudgedAndOpenedWithTheRack) {
    openTab();
    fillRack(6, 2400);
    ASSERT_TRUE(sawn());
    const Rack mine = rack();
    panel().showPage(TimberPanel::Boards);
    click("judgeSamples");
    ASSERT_TRUE(QTest::qWaitFor([&] { return !panel().boards()->finder().isWorking(); }, 120'000));
    const auto& verdicts = panel().boards()->finder().verdicts();
    ASSERT_GT(verdicts.size(), 5u);
    CardList* list = panel().boards()->list();
    ASSERT_EQ(list->count(), static_cast<int>(verdicts.size()));
    answers.unsaved = Dialogs::Unsaved::Discard;
    const QString name = verdicts.front().name;
    list->scrollTo(list->model()->index(0, 0));
    QTest::mouseClick(list->viewport(), Qt::LeftButton, Qt::NoModifier, list->wayRect(0).center());
    EXPECT_EQ(QString::fromStdString(project().titles.name), name);
    EXPECT_EQ(rack(), mine);
}

TEST_F(TimberTest, TheYardIsSetAndItsFaultsAreTold) {
    openTab();
    ASSERT_TRUE(sawn());
    panel().showPage(TimberPanel::Buy);
    click("yardHead");
    type("yardWidthsEntry", QStringLiteral("120; 8 in, 90"));
    EXPECT_EQ(project().timber.yard.widths,
              (std::vector<Length>{Length::mm(90), Length::mm(120), Length::inch(8)}));
    type("yardWidthsEntry", QStringLiteral("wide"));
    EXPECT_EQ(project().timber.yard.widths.size(), 3u);
    auto* tally = find<QComboBox>("tally");
    tally->setFocus();
    QTest::keyClick(tally, Qt::Key_End);
    EXPECT_EQ(project().timber.yard.tally, Tally::Retail);
}

TEST_F(TimberTest, PlankCutsComeOnPaper) {
    openTab();
    fillRack();
    ASSERT_TRUE(sawn());
    panel().showPage(TimberPanel::Cuts);
    click("printPlanks");
    EXPECT_EQ(window->bench().currentIndex(), BenchTabs::Sheets);
    bool cuts = false;
    bool list = false;
    for (const Page& page : find<SheetsPreview>("sheets")->pages()) {
        cuts = cuts || page.key == "plank-cuts";
        list = list || page.key == "timber-list";
    }
    EXPECT_TRUE(cuts);
    EXPECT_TRUE(list);
}

/// All of what a maker does with timber, in one go: a rack from a table, knots, strips on planks,
/// paper; then a plank is gone, and the rest is bought or the board made smaller.
TEST_F(TimberTest, FromATableToPaperAndWithOnePlankLess) {
    window = makeWindow(
        QString::fromStdString((sourceFolder() / "samples" / "hut-draughts.kerfwright").string()));
    ASSERT_TRUE(planned());
    openTab();
    fillRack(1, 2800);
    ASSERT_EQ(rack().planks.size(), project().woods.size());

    rackList().setFocus();
    QTest::keyClick(&rackList(), Qt::Key_Home);
    QTest::keyClick(&rackList(), Qt::Key_Return);
    ASSERT_NE(editor(), nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowExposed(editor()));
    PlankCanvas* canvas = editor()->canvas();
    for (const int x : {300, 900}) {
        const QPoint from = canvas->seenAt(Length::mm(x), Length::mm(60)).toPoint();
        const QPoint to = canvas->seenAt(Length::mm(x + 40), Length::mm(30)).toPoint();
        QTest::mousePress(canvas, Qt::LeftButton, Qt::NoModifier, from);
        QTest::mouseMove(canvas, to);
        QTest::mouseRelease(canvas, Qt::LeftButton, Qt::NoModifier, to);
    }
    ASSERT_EQ(editor()->plank().defects.size(), 2u);
    click("plankKeep");
    ASSERT_EQ(rack().planks[0].defects.size(), 2u);

    ASSERT_TRUE(sawn());
    ASSERT_TRUE(plan().layout.isComplete()) << words().toStdString();
    EXPECT_TRUE(words().contains(QStringLiteral("Proven best"))) << words().toStdString();
    showPage(TimberPanel::Cuts);
    click("printPlanks");
    answers.write = inFolder("planks.pdf");
    click("savePdf");
    EXPECT_TRUE(QFile::exists(inFolder("planks.pdf")));

    openTab();
    showPage(TimberPanel::RackOf);
    rackList().setFocus();
    QTest::keyClick(&rackList(), Qt::Key_Home);
    QTest::keyClick(&rackList(), Qt::Key_Delete);
    ASSERT_EQ(rack().planks.size(), project().woods.size() - 1);
    ASSERT_TRUE(sawn());
    EXPECT_FALSE(plan().layout.isComplete());
    EXPECT_FALSE(plan().shopping.lines.empty());
    showPage(TimberPanel::Buy);
    EXPECT_GT(panel().buy()->list()->count(), 0);
    window->document().history().undo();
    ASSERT_TRUE(sawn());
    // The board shrinks with what there is.
    window->document().edit(QStringLiteral("short plank"), entry::none, [](Project& changed) {
        changed.timber.rack.planks.front().length = Length::mm(1'200);
        changed.timber.rack.planks.front().defects.clear();
    });
    ASSERT_TRUE(sawn());
    panel().showPage(TimberPanel::Boards);
    click("findLargest");
    ASSERT_TRUE(QTest::qWaitFor([&] { return !panel().boards()->finder().isWorking(); }, 60'000));
    ASSERT_TRUE(panel().boards()->finder().largest().has_value())
        << panel().boards()->finder().fault().toStdString();
}

}  // namespace
}  // namespace kerfwright
