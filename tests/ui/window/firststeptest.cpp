// The first minutes: the gallery by mouse and keys, the tour, and places that are empty.
#include "core/project/patternproject.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/gallery.h"
#include "ui/window/panels.h"
#include "ui/window/tour.h"

#include <QAction>
#include <QLabel>
#include <QPushButton>
#include <QTest>

namespace kerfwright {
namespace {

class FirstStepTest : public WindowTest {
protected:
    BoardCard* patternCard(const char* key) {
        return find<BoardCard>((std::string("galleryPattern-") + key).c_str());
    }
    TourBubble* tour() { return window->findChild<TourBubble*>(); }
    bool isTourOver() {
        return QTest::qWaitFor([this] { return tour() == nullptr || !tour()->isVisible(); });
    }
    std::vector<BoardCard*> cards() {
        std::vector<BoardCard*> all;
        for (BoardCard* card : window->findChildren<BoardCard*>()) {
            all.push_back(card);
        }
        return all;
    }
};

TEST_F(FirstStepTest, EveryPatternHasACardThatBeginsABoard) {
    window->showGallery();
    for (const PatternInfo& info : patterns()) {
        const std::string name = "galleryPattern-" + std::string(info.key);
        EXPECT_NE(window->findChild<BoardCard*>(QString::fromStdString(name)), nullptr) << name;
        const Result<Project> begun = newProject(Unit::Inches, info.pattern);
        ASSERT_TRUE(begun.ok()) << info.key << ": " << begun.fault().text();
        EXPECT_TRUE(faults(*begun).empty()) << info.key;
    }
    auto* card = patternCard("bricks");
    find<Gallery>("gallery")->ensureWidgetVisible(card);
    click(card);
    EXPECT_FALSE(window->isGalleryShown());
    ASSERT_TRUE(project().recipe.has_value());
    EXPECT_EQ(project().recipe->pattern, Pattern::Bricks);
    EXPECT_TRUE(window->document().path().isEmpty());
    ASSERT_TRUE(planned());
}

TEST_F(FirstStepTest, ArrowsGoFromCardToCardAndEnterTakesIt) {
    window->showGallery();
    QCoreApplication::processEvents();
    const std::vector<BoardCard*> all = cards();
    ASSERT_GT(all.size(), 12u);
    all.front()->setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Right);
    EXPECT_TRUE(all[1]->hasFocus());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Left);
    EXPECT_TRUE(all[0]->hasFocus());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Left);
    EXPECT_TRUE(all[0]->hasFocus()) << "there is none before the first";
    // Down through the samples, into the patterns, and to the last row.
    BoardCard* first = patternCard(std::string(patterns().front().key).c_str());
    for (int i = 0; i < 20; ++i) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
    }
    auto* last = qobject_cast<BoardCard*>(QApplication::focusWidget());
    ASSERT_NE(last, nullptr);
    EXPECT_TRUE(last->objectName().startsWith(QStringLiteral("galleryPattern-")));
    EXPECT_GT(last->y(), first->y());
    EXPECT_FALSE(last->visibleRegion().isEmpty()) << "what the keys stand on is in sight";
    for (int i = 0; i < 20; ++i) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Up);
    }
    EXPECT_EQ(qobject_cast<BoardCard*>(QApplication::focusWidget())->y(), all.front()->y());
    patternCard("basket")->setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_FALSE(window->isGalleryShown());
    ASSERT_TRUE(project().recipe.has_value());
    EXPECT_EQ(project().recipe->pattern, Pattern::Basket);
}

TEST_F(FirstStepTest, TheTabKeyVisitsOneCardOfEachGroup) {
    window->showGallery();
    QCoreApplication::processEvents();
    int stops = 0;
    for (const BoardCard* card : cards()) {
        stops += card->focusPolicy() == Qt::StrongFocus ? 1 : 0;
    }
    EXPECT_EQ(stops, 2);
}

TEST_F(FirstStepTest, TheTourGoesThroughItsStepsByMouse) {
    ASSERT_TRUE(planned());
    find<QAction>("actionTour")->trigger();
    ASSERT_NE(tour(), nullptr);
    EXPECT_EQ(tour()->step(), 0);
    EXPECT_FALSE(find<QPushButton>("tourBack")->isEnabled());
    std::set<QPoint, bool (*)(const QPoint&, const QPoint&)> places(
        [](const QPoint& a, const QPoint& b) {
            return a.x() != b.x() ? a.x() < b.x() : a.y() < b.y();
        });
    for (int step = 0; step < TourBubble::count; ++step) {
        ASSERT_EQ(tour()->step(), step);
        EXPECT_TRUE(window->rect().contains(tour()->geometry()));
        EXPECT_FALSE(tour()->geometry().contains(tour()->anchor().center()))
            << "it does not lie on what it speaks of";
        EXPECT_GE(tour()->height(), tour()->sizeHint().height());
        places.insert(tour()->pos());
        click("tourNext");
    }
    EXPECT_EQ(places.size(), 3u);
    EXPECT_TRUE(isTourOver());
    find<QAction>("actionTour")->trigger();
    click("tourNext");
    click("tourBack");
    EXPECT_EQ(tour()->step(), 0) << "again from the menu";
    click("tourClose");
    EXPECT_TRUE(isTourOver());
}

TEST_F(FirstStepTest, TheTourGoesByKeysAndNeverBlocksTheWork) {
    ASSERT_TRUE(planned());
    find<QAction>("actionTour")->trigger();
    EXPECT_TRUE(find<QPushButton>("tourNext")->hasFocus());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_EQ(tour()->step(), 1);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Backtab, Qt::ShiftModifier);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    EXPECT_EQ(tour()->step(), 0);
    // A piece is painted under its eyes.
    const int other = woodAt(7, 7) == 0 ? 1 : 0;
    key(other == 0 ? Qt::Key_1 : Qt::Key_2);
    clickCell(7, 7);
    EXPECT_EQ(woodAt(7, 7), other);
    EXPECT_TRUE(tour()->isVisible());
    // What it speaks of is opened where it was folded away.
    window->panels().setOpen(Panels::Bench, false);
    click("tourNext");
    EXPECT_TRUE(window->panels().isOpen(Panels::Bench));
    window->resize(1024, 640);
    QCoreApplication::processEvents();
    EXPECT_TRUE(window->rect().contains(tour()->geometry()));
    // Wherever the keys are.
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    window->board().setFocus();
    QTest::keyClick(&window->board(), Qt::Key_Escape);
    EXPECT_TRUE(isTourOver());
}

TEST_F(FirstStepTest, TheFirstTourWaitsForTheGalleryAndTakesNoKeys) {
    window->showGallery();
    window->offerTour();
    EXPECT_EQ(tour(), nullptr);
    window->hideGallery();
    ASSERT_TRUE(QTest::qWaitFor([this] { return tour() != nullptr; }));
    EXPECT_TRUE(window->board().hasFocus());
    window->showGallery();
    window->hideGallery();
    click("tourClose");
    ASSERT_TRUE(isTourOver());
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    window->showGallery();
    window->hideGallery();
    QCoreApplication::processEvents();
    EXPECT_EQ(tour(), nullptr) << "once is enough";
}

TEST_F(FirstStepTest, EmptyPlacesSayWhatToDo) {
    // A board that was never planned: no strip is as long as its rows.
    Project hopeless = newProject(Unit::Millimetres);
    hopeless.shop.longestStrip = Length::mm(100);
    ASSERT_TRUE(faults(hopeless).empty());
    window->document().start(hopeless);
    ASSERT_TRUE(QTest::qWaitFor(
        [this] { return window->planner().state() == Planner::State::Impossible; }, 10'000));
    ASSERT_EQ(window->planner().last(), nullptr);
    for (int tab = 0; tab < window->bench().count(); ++tab) {
        window->bench().setCurrentIndex(tab);
        QCoreApplication::processEvents();
    }
    for (CardList* list : window->findChildren<CardList*>()) {
        ASSERT_EQ(list->count(), 0) << list->objectName().toStdString();
        EXPECT_GT(list->emptyText().size(), 30) << list->objectName().toStdString();
        EXPECT_FALSE(list->emptyText().startsWith(QStringLiteral("Nothing")))
            << list->objectName().toStdString() << ": nothing is known yet";
    }
    EXPECT_TRUE(find<QLabel>("cutListHead")->text().contains(QStringLiteral("once the board")));
    EXPECT_TRUE(find("planBanner")->isVisible() || !window->planner().fault().isEmpty());
    EXPECT_FALSE(find<QLabel>("rackEmpty")->text().isEmpty());
}

TEST_F(FirstStepTest, TheTourCoversNeitherThePatternsNorTheWoodsItSpeaksOf) {
    ASSERT_TRUE(planned());
    for (const QSize& size : {QSize(1024, 700), QSize(1440, 900)}) {
        window->resize(size);
        QCoreApplication::processEvents();
        find<QAction>("actionTour")->trigger();
        ASSERT_EQ(tour()->step(), 0);
        for (const char* name : {"wish", "chip1", "chip2"}) {
            const QWidget* spoken = find(name);
            const QRect place(spoken->mapTo(window.get(), QPoint()), spoken->size());
            EXPECT_FALSE(tour()->geometry().adjusted(12, 12, -12, -12).intersects(place))
                << name << " at " << size.width();
        }
        click("tourClose");
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
}

TEST_F(FirstStepTest, TheWayOutOfTheGallerySaysWhereItLeads) {
    window->showGallery();
    auto* out = find<QPushButton>("galleryClose");
    EXPECT_EQ(out->text(), QStringLiteral("Start with a plain chequer")) << "nothing was opened";
    window->hideGallery();
    window->editor().setWood(woodAt(0, 0) == 0 ? 1 : 0);
    clickCell(0, 0);
    window->showGallery();
    EXPECT_EQ(out->text(), QStringLiteral("Back to the open board"));
    for (const BoardCard* card : window->findChildren<BoardCard*>()) {
        EXPECT_TRUE(card->toolTip().contains(card->text()));
        EXPECT_TRUE(card->toolTip().contains(card->accessibleDescription()));
    }
}

}  // namespace
}  // namespace kerfwright
