// The build in the window: the row of stages, a stage in the place of the board, and how both and
// the steps follow each other.
#include "core/sheets/filmpicture.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/document/text.h"
#include "ui/window/benchtabs.h"
#include "ui/window/buildfilm.h"
#include "ui/window/cardlist.h"
#include "ui/window/filework.h"
#include "ui/window/panels.h"
#include "ui/window/samples.h"
#include "ui/window/stagerow.h"
#include "ui/window/stageview.h"
#include "ui/window/stepspanel.h"
#include "ui/window/theme.h"
#include "ui/window/tones.h"

#include <QAccessible>
#include <QAction>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QProxyStyle>
#include <QScrollBar>
#include <QSettings>
#include <QSignalSpy>
#include <QTest>
#include <QToolButton>

namespace kerfwright {
namespace {

class FilmWindowTest : public WindowTest {
protected:
    FilmWindowTest() {
        film().setMoving(false);
        open(QStringLiteral("hut-draughts"));
    }

    void open(const QString& sample) {
        for (const QString& path : samplePaths()) {
            if (path.contains(sample)) {
                window->files().openSample(path);
            }
        }
        EXPECT_TRUE(planned());
        EXPECT_TRUE(QTest::qWaitFor([this] { return film().hasBegun(); }));
        EXPECT_TRUE(made());
    }
    bool made() {
        return QTest::qWaitFor([this] { return film().maker()->isCurrent() && row().count() > 0; },
                               10'000);
    }
    BuildFilm& film() const { return window->film(); }
    StageRow& row() const { return *film().row(); }
    StageView& view() const { return *film().view(); }
    CardList& steps() const { return *window->bench().steps()->list(); }
    const FilmStage& stage(int index) const { return row().stages().stage(index); }
    int last() const { return row().count() - 1; }
    QAction* action(const char* name) const {
        return window->findChild<QAction*>(QString::fromLatin1(name));
    }
    void clickStage(int index) {
        row().scrollTo(row().model()->index(index, 0));
        QTest::mouseClick(row().viewport(), Qt::LeftButton, Qt::NoModifier,
                          row().visualRect(row().model()->index(index, 0)).center());
    }
    void focusKey(Qt::Key key) { QTest::keyClick(QApplication::focusWidget(), key); }
};

TEST_F(FilmWindowTest, TheRowShowsEveryStageAndTheBoardIsTheLast) {
    EXPECT_TRUE(row().isVisible());
    EXPECT_EQ(row().count(), static_cast<int>(film().maker()->film()->film.stages.size()));
    EXPECT_EQ(row().chosen(), last());
    EXPECT_FALSE(film().isStageShown());
    EXPECT_TRUE(window->board().isVisible());
    EXPECT_TRUE(QTest::qWaitFor([this] { return row().hasAllPictures(); }));
    for (int index = 0; index < row().count(); ++index) {
        const QImage image = row().picture(index);
        std::set<QRgb> colours;
        for (int y = 0; y < image.height(); ++y) {
            for (int x = 0; x < image.width(); ++x) {
                colours.insert(image.pixel(x, y));
            }
        }
        EXPECT_GT(colours.size(), 4U) << stage(index).key;
    }
}

TEST_F(FilmWindowTest, ARowThatHoldsAllStagesDoesNotScroll) {
    constexpr int gap = 6;
    StageRow one;
    one.show();
    one.setFilm(film().maker()->film(), true);
    int looked = 0;
    for (int width = 400; width < 800; ++width) {
        one.resize(width, StageRow::tallHeight);
        one.doItemsLayout();
        const QModelIndex first = one.model()->index(0, 0);
        const QModelIndex end = one.model()->index(one.count() - 1, 0);
        const int all = one.visualRect(end).right() - one.visualRect(first).left() + 1 - gap;
        if (all > width) {
            continue;
        }
        ++looked;
        one.clearFocus();
        one.setFocus(Qt::TabFocusReason);
        one.scrollTo(end);
        EXPECT_EQ(one.horizontalScrollBar()->maximum(), 0) << width;
        EXPECT_GE(one.visualRect(first).left(), 0) << width;
    }
    EXPECT_GT(looked, 50);
}

TEST_F(FilmWindowTest, TheChosenStageStaysInSightInANarrowRow) {
    StageRow one;
    one.resize(330, StageRow::tallHeight);
    one.show();
    const auto seesChosen = [&one] {
        const QRect place = one.visualRect(one.model()->index(one.chosen(), 0));
        return place.left() >= 0 && place.right() - 6 <= one.viewport()->rect().right();
    };
    one.setFilm(film().maker()->film(), true);
    EXPECT_EQ(one.chosen(), one.count() - 1);
    EXPECT_TRUE(seesChosen());
    EXPECT_LT(one.cardSize().width(), 60) << "rather small cards than few";
    open(QStringLiteral("nested-squares-board"));
    one.setFilm(film().maker()->film(), true);
    EXPECT_EQ(one.chosen(), one.count() - 1);
    EXPECT_TRUE(seesChosen());
    one.resize(260, StageRow::tallHeight);
    QApplication::processEvents();
    EXPECT_TRUE(seesChosen());
}

TEST_F(FilmWindowTest, AClickShowsAStageAndMarksItsSteps) {
    clickStage(3);
    ASSERT_TRUE(film().isStageShown());
    EXPECT_TRUE(view().isVisible());
    EXPECT_FALSE(window->board().isVisible());
    EXPECT_EQ(find<QLabel>("stageTitle")->text(), toQt(stage(3).title));
    for (int step = 0; step < steps().count(); ++step) {
        const auto& own = stage(3).steps;
        EXPECT_EQ(steps().isMarked(step), std::find(own.begin(), own.end(), step) != own.end());
    }
    clickStage(last());
    EXPECT_FALSE(film().isStageShown());
    EXPECT_TRUE(window->board().isVisible());
    EXPECT_FALSE(steps().isMarked(stage(3).steps.front()));
}

TEST_F(FilmWindowTest, KeysAloneGoThroughTheWholeBuild) {
    window->board().setFocus();
    focusKey(Qt::Key_F9);
    ASSERT_TRUE(film().isStageShown());
    EXPECT_TRUE(view().hasFocus());
    EXPECT_EQ(view().stage(), 0);
    for (int index = 1; index < last(); ++index) {
        focusKey(Qt::Key_Right);
        EXPECT_EQ(view().stage(), index);
        EXPECT_EQ(row().chosen(), index);
    }
    focusKey(Qt::Key_Right);
    EXPECT_FALSE(film().isStageShown());
    EXPECT_TRUE(row().hasFocus());  // from where the way leads back
    focusKey(Qt::Key_Left);
    ASSERT_TRUE(film().isStageShown());
    EXPECT_EQ(view().stage(), last() - 1);
    focusKey(Qt::Key_Escape);
    EXPECT_FALSE(film().isStageShown());
    EXPECT_TRUE(window->board().hasFocus());
    EXPECT_EQ(row().chosen(), last());
}

TEST_F(FilmWindowTest, HomeEndAndTheButtonsStepToo) {
    film().play();
    focusKey(Qt::Key_PageDown);
    EXPECT_EQ(view().stage(), 1);
    focusKey(Qt::Key_Home);
    EXPECT_EQ(view().stage(), 0);
    EXPECT_FALSE(find("stageBack")->isEnabled());
    click("stageOn");
    EXPECT_EQ(view().stage(), 1);
    click("stageBack");
    EXPECT_EQ(view().stage(), 0);
    click("stageLeave");
    EXPECT_TRUE(window->board().isVisible());
    film().play();
    focusKey(Qt::Key_End);
    EXPECT_FALSE(film().isStageShown());
}

TEST_F(FilmWindowTest, AStepShowsItsStageInTheRow) {
    for (int step = 0; step < steps().count(); ++step) {
        steps().choose(step);
        EXPECT_EQ(row().marked(), stageOf(film().maker()->film()->film, step));
        EXPECT_FALSE(film().isStageShown());
    }
    steps().choose(-1);
    EXPECT_EQ(row().marked(), -1);
    clickStage(1);
    steps().choose(4);
    const int wanted = stageOf(film().maker()->film()->film, 4);
    EXPECT_EQ(view().stage(), wanted);
    EXPECT_EQ(row().chosen(), wanted);
}

TEST_F(FilmWindowTest, ADimensionOpensItsWorkingByMouseAndKey) {
    for (int index = 0; index < last(); ++index) {
        clickStage(index);
        for (std::size_t number = 0; number < stage(index).numbers.size(); ++number) {
            const QRect spot = view().canvas().spot(static_cast<int>(number));
            if (spot.isNull()) {
                continue;
            }
            QTest::mouseClick(&view().canvas(), Qt::LeftButton, Qt::NoModifier, spot.center());
            auto* popup = QApplication::activePopupWidget();
            ASSERT_NE(popup, nullptr) << stage(index).key << stage(index).numbers[number].label;
            EXPECT_EQ(popup->objectName(), QStringLiteral("workingPopup"));
            popup->close();
            break;
        }
        view().setFocus();
        focusKey(Qt::Key_Equal);
        auto* popup = QApplication::activePopupWidget();
        ASSERT_NE(popup, nullptr) << stage(index).key;
        popup->close();
        EXPECT_TRUE(view().isEnabled());
    }
}

TEST_F(FilmWindowTest, ATermOfADimensionLeadsToItsEntry) {
    clickStage(3);
    view().setFocus();
    focusKey(Qt::Key_Equal);
    QToolButton* link = nullptr;
    for (auto* one : QApplication::activePopupWidget()->findChildren<QToolButton*>()) {
        link = one->text().startsWith(QStringLiteral("Kerf")) ? one : link;
    }
    ASSERT_NE(link, nullptr);
    window->panels().setOpen(Panels::Wish, false);
    QTest::mouseClick(link, Qt::LeftButton);
    window->activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
    EXPECT_TRUE(window->panels().isOpen(Panels::Wish));
    EXPECT_TRUE(QTest::qWaitFor([this] {
        return QApplication::focusWidget() ==
               window->findChild<QLineEdit*>(QStringLiteral("setting-kerf-entry"));
    }));
}

TEST_F(FilmWindowTest, TheFilmFollowsTheWish) {
    clickStage(2);
    const QString before = view().accessibleDescription();
    type("thicknessEntry", QStringLiteral("52"));
    ASSERT_TRUE(planned());
    ASSERT_TRUE(made());
    clickStage(3);
    EXPECT_TRUE(view().accessibleDescription().contains(QStringLiteral("55 mm")))
        << view().accessibleDescription().toStdString();
    EXPECT_TRUE(film().isStageShown());
    // What cannot be planned stays in sight, as what it is: out of date.
    window->document().edit(QStringLiteral("no strip"), entry::none, [](Project& changed) {
        changed.shop.longestStrip = Length::mm(100);
        changed.board.thickness = Length::mm(150);
    });
    ASSERT_TRUE(QTest::qWaitFor(
        [this] { return window->planner().state() == Planner::State::Impossible; }));
    EXPECT_TRUE(row().isStale());
    EXPECT_GT(row().count(), 0);
    EXPECT_NE(before, view().accessibleDescription());
}

TEST_F(FilmWindowTest, ABorderTakenAwayLeadsBackToTheBoard) {
    clickStage(stageOf(film().maker()->film()->film, std::string("rails")));
    ASSERT_TRUE(film().isStageShown());
    window->document().edit(QStringLiteral("no border"), entry::none,
                            [](Project& changed) { changed.board.border.width = Length(); });
    ASSERT_TRUE(planned());
    ASSERT_TRUE(made());
    EXPECT_FALSE(film().isStageShown());
    EXPECT_EQ(row().chosen(), last());
}

TEST_F(FilmWindowTest, AnotherBoardBeginsWithTheBoard) {
    clickStage(2);
    open(QStringLiteral("basket-weave-block"));
    EXPECT_FALSE(film().isStageShown());
    EXPECT_GE(stageOf(film().maker()->film()->film, std::string("panel-B")), 0);
}

TEST_F(FilmWindowTest, TheRowFoldsAndIsRemembered) {
    window->resize(1280, 860);
    EXPECT_FALSE(row().isSlim());
    window->resize(1024, 700);
    EXPECT_TRUE(row().isSlim());
    EXPECT_TRUE(row().isVisible());
    clickStage(2);
    EXPECT_EQ(view().stage(), 2);
    film().leave();
    window->resize(720, 450);
    EXPECT_FALSE(row().isVisible());
    window->resize(1280, 860);
    EXPECT_TRUE(row().isVisible());
    EXPECT_TRUE(action("stageRowShown")->isChecked());
    action("stageRowShown")->trigger();
    EXPECT_FALSE(row().isVisible());
    const auto another = makeWindow();
    EXPECT_FALSE(another->film().isRowWanted());
    action("stageRowShown")->trigger();
    EXPECT_TRUE(row().isVisible());
    const auto third = makeWindow();
    EXPECT_TRUE(third->film().isRowWanted());
}

TEST_F(FilmWindowTest, WithoutTheRowThereIsStillTheFilm) {
    action("stageRowShown")->trigger();
    window->board().setFocus();
    focusKey(Qt::Key_F9);
    ASSERT_TRUE(QTest::qWaitFor([this] { return film().isStageShown(); }));
    focusKey(Qt::Key_Right);
    EXPECT_EQ(view().stage(), 1);
    focusKey(Qt::Key_Escape);
    EXPECT_TRUE(window->board().hasFocus());
}

/// A style of a system that wants nothing to move.
class StillStyle : public QProxyStyle {
public:
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* data) const override {
        return hint == SH_Widget_Animation_Duration
                   ? 0
                   : QProxyStyle::styleHint(hint, option, widget, data);
    }
};

TEST_F(FilmWindowTest, MotionIsTheMakersAndTheSystemsChoice) {
    EXPECT_FALSE(action("stagesMove")->isChecked());
    clickStage(4);
    EXPECT_FALSE(view().isMoving());
    EXPECT_EQ(view().canvas().progress(), 1);
    action("stagesMove")->trigger();
    EXPECT_TRUE(film().isMoving());
    view().setFocus();
    focusKey(Qt::Key_Right);
    EXPECT_TRUE(view().isMoving());
    EXPECT_TRUE(QTest::qWaitFor([this] { return !view().isMoving(); }));
    EXPECT_EQ(view().canvas().progress(), 1);
    focusKey(Qt::Key_Left);
    EXPECT_TRUE(view().isMoving());
    EXPECT_TRUE(QTest::qWaitFor([this] { return !view().isMoving(); }));
    EXPECT_EQ(view().canvas().progress(), 1);
    const auto another = makeWindow();
    EXPECT_TRUE(another->film().isMoving());
    StillStyle still;
    view().setStyle(&still);
    focusKey(Qt::Key_Right);
    EXPECT_FALSE(view().isMoving());
    view().setStyle(nullptr);
}

TEST_F(FilmWindowTest, ScreenReadersHearStagesAndDimensions) {
    const auto text = [](QWidget* widget, QAccessible::Text what) {
        return QAccessible::queryAccessibleInterface(widget)->text(what);
    };
    EXPECT_EQ(text(&row(), QAccessible::Name), QStringLiteral("Stages of the build"));
    const QString spoken = row().model()->index(3, 0).data(Qt::AccessibleTextRole).toString();
    EXPECT_TRUE(spoken.contains(QStringLiteral("Steps 5 to 7"))) << spoken.toStdString();
    clickStage(3);
    EXPECT_TRUE(text(&view(), QAccessible::Name).contains(QStringLiteral("Stage 4 of 10")));
    EXPECT_TRUE(text(&view(), QAccessible::Description).contains(QStringLiteral("43 mm")));
    for (auto* button : view().findChildren<QToolButton*>()) {
        EXPECT_FALSE(text(button, QAccessible::Name).isEmpty());
    }
}

TEST_F(FilmWindowTest, PicturesFollowTheTheme) {
    ASSERT_TRUE(QTest::qWaitFor([this] { return row().hasAllPictures(); }));
    clickStage(2);
    const QImage light = view().grab().toImage();
    setThemeChoice(ThemeChoice::Dark);
    applyTheme(*qApp);
    ASSERT_TRUE(QTest::qWaitFor([this] { return isDark(view().palette()); }));
    ASSERT_TRUE(QTest::qWaitFor([this] { return row().hasAllPictures(); }));
    const QImage dark = view().grab().toImage();
    EXPECT_GT(light.pixelColor(4, light.height() - 8).lightness(), 180);
    EXPECT_LT(dark.pixelColor(4, dark.height() - 8).lightness(), 80);
    setThemeChoice(ThemeChoice::Light);
    applyTheme(*qApp);
}

TEST_F(FilmWindowTest, F6GoesToTheStageInThePlaceOfTheBoard) {
    clickStage(2);
    find("bench")->setFocus();
    view().setFocus();
    focusKey(Qt::Key_F6);
    EXPECT_TRUE(find("bench")->isAncestorOf(QApplication::focusWidget()));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_F6, Qt::ShiftModifier);
    EXPECT_TRUE(view().hasFocus());
}

TEST_F(FilmWindowTest, ARowThatFitsShowsAllAndNoneHasAStandingBar) {
    open(QStringLiteral("hut-chess"));
    for (const QSize& size : {QSize(1440, 900), QSize(1024, 700)}) {
        window->resize(size);
        QCoreApplication::processEvents();
        EXPECT_FALSE(row().horizontalScrollBar()->isVisible());
        row().scrollTo(row().model()->index(last(), 0));
        const QRect sight = row().viewport()->rect();
        const QRect end = row().visualRect(row().model()->index(last(), 0));
        EXPECT_TRUE(sight.contains(end.adjusted(0, 0, -8, -2))) << size.width();
    }
    window->resize(1440, 900);
    QCoreApplication::processEvents();
    EXPECT_EQ(row().horizontalScrollBar()->maximum(), 0) << "all stages fit there";
    window->resize(1024, 700);
    QCoreApplication::processEvents();
    ASSERT_GT(row().horizontalScrollBar()->maximum(), 0);
    // An arrow at the end leads to the others.
    row().horizontalScrollBar()->setValue(0);
    QTest::mouseClick(&row(), Qt::LeftButton, Qt::NoModifier,
                      QPoint(row().width() - 5, row().height() / 2));
    EXPECT_GT(row().horizontalScrollBar()->value(), 0);
}

TEST_F(FilmWindowTest, ATitleHasTheWholeWidthOfANarrowStage) {
    open(QStringLiteral("hut-chess"));
    window->resize(1024, 700);
    QCoreApplication::processEvents();
    for (int at = 0; at < last(); ++at) {
        clickStage(at);
        QCoreApplication::processEvents();
        auto* title = find<QLabel>("stageTitle");
        EXPECT_LE(title->height(), 2 * title->fontMetrics().lineSpacing() + 4)
            << title->text().toStdString();
    }
}

}  // namespace
}  // namespace kerfwright
