// Wood figure on the board, and its switches.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/gallery.h"
#include "ui/window/sheetspanel.h"
#include "ui/window/woodchip.h"

#include <QAction>
#include <QClipboard>
#include <QFile>
#include <QGuiApplication>
#include <QImage>
#include <QMimeData>
#include <QSettings>
#include <QTest>

#include <cmath>
#include <set>

namespace kerfwright {
namespace {

class FigureTest : public WindowTest {
protected:
    FigureTest() {
        EXPECT_TRUE(planned());
        EXPECT_TRUE(complete());
    }
    BoardView& board() { return window->board(); }
    bool complete() {
        return QTest::qWaitFor(
            [this] {
                board().grab();
                return board().figure().isComplete();
            },
            20'000);
    }
    /// What is seen of a piece, joints left out.
    QImage piece(int column, int row) {
        const QRectF cell = board().geometry().cells(QRect(column, row, 1, 1));
        const QRect inside = cell.adjusted(2, 2, -3, -3).toRect();
        return board().grab(inside).toImage().convertToFormat(QImage::Format_RGB32);
    }
    static std::size_t colours(const QImage& image) {
        std::set<QRgb> all;
        for (int y = 0; y < image.height(); ++y) {
            for (int x = 0; x < image.width(); ++x) {
                all.insert(image.pixel(x, y));
            }
        }
        return all.size();
    }
    static double lightness(const QImage& image) {
        double sum = 0;
        for (int y = 0; y < image.height(); ++y) {
            for (int x = 0; x < image.width(); ++x) {
                sum += qGray(image.pixel(x, y));
            }
        }
        return sum / (image.width() * image.height());
    }
    /// Mean difference of the channels.
    static double apart(const QImage& a, const QImage& b) {
        double sum = 0;
        const int width = std::min(a.width(), b.width());
        const int height = std::min(a.height(), b.height());
        for (int y = 0; y < height; ++y) {
            for (int x = 0; x < width; ++x) {
                sum += std::abs(qGray(a.pixel(x, y)) - qGray(b.pixel(x, y)));
            }
        }
        return sum / (width * height);
    }
};

TEST_F(FigureTest, IsSeenOnEveryPieceAndStaysNearTheWoodsColour) {
    for (const auto& [column, row] : {std::pair(0, 0), {1, 0}, {3, 4}, {7, 7}}) {
        const QImage seen = piece(column, row);
        EXPECT_GT(colours(seen), 12u) << column << ", " << row;
        const Wood& wood = project().woods[static_cast<std::size_t>(woodAt(column, row))];
        EXPECT_NEAR(lightness(seen), qGray(toQColor(wood.colour).rgb()), 22) << wood.key;
    }
}

TEST_F(FigureTest, CanBeSwitchedOffByKeysAndIsRemembered) {
    key(Qt::Key_G, Qt::ControlModifier);
    EXPECT_EQ(colours(piece(2, 2)), 1u);
    EXPECT_FALSE(find<QAction>("actionFigure")->isChecked());
    EXPECT_FALSE(keptFigureStyle().on);
    window = makeWindow();
    EXPECT_FALSE(find<QAction>("actionFigure")->isChecked());
    ASSERT_TRUE(planned());
    EXPECT_EQ(colours(piece(2, 2)), 1u);
    key(Qt::Key_G, Qt::ControlModifier);
    EXPECT_TRUE(complete());
    EXPECT_GT(colours(piece(2, 2)), 12u);
    EXPECT_TRUE(keptFigureStyle().on);
}

TEST_F(FigureTest, IsPalerRawThanOiledAndTheSameOtherwise) {
    const QImage oiled = piece(0, 0);
    find<QAction>("actionOiled")->trigger();
    // Another table of colours: nothing has to be waited for.
    const QImage raw = piece(0, 0);
    EXPECT_TRUE(board().figure().isComplete());
    EXPECT_GT(lightness(raw), lightness(oiled) + 2);
    EXPECT_EQ(keptFigureStyle().finish, Finish::Raw);
    find<QAction>("actionOiled")->trigger();
    EXPECT_EQ(piece(0, 0), oiled);
    EXPECT_EQ(keptFigureStyle().finish, Finish::Oiled);
}

TEST_F(FigureTest, WithoutFigureIsPalerRawToo) {
    find<QAction>("actionFigure")->trigger();
    const double oiled = lightness(piece(0, 0));
    find<QAction>("actionOiled")->trigger();
    EXPECT_GT(lightness(piece(0, 0)), oiled + 2);
}

TEST_F(FigureTest, ShowsAPaintedPieceInItsNewWoodAtOnceAndOthersAsBefore) {
    const QImage beside = piece(5, 5);
    const int other = 1 - woodAt(2, 3);
    window->editor().setWood(other);
    clickCell(2, 3);
    const Wood& wood = project().woods[static_cast<std::size_t>(other)];
    EXPECT_NEAR(lightness(piece(2, 3)), qGray(toQColor(wood.colour).rgb()), 22);
    EXPECT_EQ(piece(5, 5), beside);
    ASSERT_TRUE(planned());
    ASSERT_TRUE(complete());
    EXPECT_GT(colours(piece(2, 3)), 12u);
}

TEST_F(FigureTest, StaysUnderLettersAndHatchButCalmer) {
    const double strong = apart(piece(0, 0), piece(0, 0).mirrored(true, false));
    find<QAction>("actionLetters")->trigger();
    EXPECT_TRUE(complete());
    const QImage lettered = piece(0, 0);
    EXPECT_GT(colours(lettered), 12u);
    find<QAction>("actionFigure")->trigger();
    const QImage plain = piece(0, 0);
    // Letter and hatch are where they were; what differs is the wood between them.
    const double calm = apart(lettered, plain);
    EXPECT_GT(calm, 0.3);
    EXPECT_LT(calm, std::max(6.0, strong));
}

TEST_F(FigureTest, FollowsTheZoom) {
    board().zoomBy(3);
    ASSERT_TRUE(complete());
    const QPoint middle = board().rect().center();
    const QImage seen =
        board().grab(QRect(middle, QSize(60, 60))).toImage().convertToFormat(QImage::Format_RGB32);
    EXPECT_GT(colours(seen), 20u);
    board().zoomToFit();
    ASSERT_TRUE(complete());
    EXPECT_GT(colours(piece(1, 1)), 12u);
}

TEST_F(FigureTest, GoesWithTheBorderRoundTheBoard) {
    window->document().edit(QStringLiteral("border"), entry::none, [](Project& changed) {
        changed.board.border.width = Length::mm(30);
        changed.board.border.design = BorderDesign::FloatingFrame;
        changed.board.border.wood = 1;
    });
    ASSERT_TRUE(planned());
    ASSERT_TRUE(complete());
    const BoardGeometry& geometry = board().geometry();
    const QRect outer = geometry.board().toRect();
    const int rail = static_cast<int>(geometry.inside().left() - geometry.board().left());
    ASSERT_GT(rail, 8);
    const auto grab = [this](const QRect& rect) {
        return board().grab(rect).toImage().convertToFormat(QImage::Format_RGB32);
    };
    // Tones change across a rail and hardly along it.
    const auto change = [](const QImage& image, QPoint by) {
        double sum = 0;
        for (int y = 0; y + by.y() < image.height(); ++y) {
            for (int x = 0; x + by.x() < image.width(); ++x) {
                sum +=
                    std::abs(qGray(image.pixel(x, y)) - qGray(image.pixel(x + by.x(), y + by.y())));
            }
        }
        return sum;
    };
    const QImage top = grab(QRect(outer.center().x() - 40, outer.top() + 2, 80, rail - 4));
    const QImage left = grab(QRect(outer.left() + 2, outer.center().y() - 40, rail - 4, 80));
    EXPECT_GT(change(top, {0, 1}), 1.5 * change(top, {1, 0}));
    EXPECT_GT(change(left, {1, 0}), 1.5 * change(left, {0, 1}));
}

/// The middle of one piece of the saved or copied board, which has no border.
QImage middleOf(const QImage& picture) {
    const int side = picture.width() / 16;
    return picture.copy(picture.width() / 2 + side / 4, picture.height() / 2 + side / 4, side, side)
        .convertToFormat(QImage::Format_RGB32);
}

TEST_F(FigureTest, GoesIntoTheSavedPictureAsTheMenuSays) {
    const auto saved = [this](const char* name) {
        answers.write = inFolder(name);
        window->bench().sheets()->savePicture();
        EXPECT_TRUE(QTest::qWaitFor([this] { return QFile::exists(answers.write); }, 20'000));
        return middleOf(QImage(answers.write));
    };
    const QImage oiled = saved("oiled.png");
    EXPECT_GT(colours(oiled), 30u);
    find<QAction>("actionOiled")->trigger();
    EXPECT_GT(lightness(saved("raw.png")), lightness(oiled) + 2);
    find<QAction>("actionFigure")->trigger();
    const QImage plain = saved("plain.png");
    EXPECT_EQ(colours(plain), 1u);
    EXPECT_GT(lightness(plain), lightness(oiled) + 2) << "still raw";
}

TEST_F(FigureTest, IsSavedThoughTheWindowIsClosedAtOnce) {
    answers.write = inFolder("late.png");
    window->bench().sheets()->savePicture();
    window.reset();
    EXPECT_GT(colours(middleOf(QImage(answers.write))), 30u);
    window = makeWindow();
}

TEST_F(FigureTest, ComesToTheClipboardOnceItIsMade) {
    const auto copied = [] {
        return middleOf(
            qvariant_cast<QImage>(QGuiApplication::clipboard()->mimeData()->imageData()));
    };
    window->bench().sheets()->copyPicture();
    EXPECT_EQ(colours(copied()), 1u) << "at once, and plain";
    EXPECT_TRUE(QTest::qWaitFor([&] { return colours(copied()) > 30; }, 20'000));
    EXPECT_TRUE(
        QGuiApplication::clipboard()->mimeData()->hasFormat(QStringLiteral("image/svg+xml")));
}

TEST_F(FigureTest, LeavesWhatWasCopiedInTheMeantime) {
    window->bench().sheets()->copyPicture();
    QGuiApplication::clipboard()->setText(QStringLiteral("mine"));
    answers.write = inFolder("after.png");
    window->bench().sheets()->savePicture();  // comes after the copy
    EXPECT_TRUE(QTest::qWaitFor([this] { return QFile::exists(answers.write); }, 20'000));
    QCoreApplication::sendPostedEvents();
    EXPECT_EQ(QGuiApplication::clipboard()->text(), QStringLiteral("mine"));
}

TEST_F(FigureTest, ComesToTheGalleryAfterItsFirstPaint) {
    window->showGallery();
    auto* card = window->findChild<BoardCard*>();
    ASSERT_NE(card, nullptr);
    const auto shown = [card] {
        // Of the board, which lies in the middle of the card's upper part.
        return card->grab(QRect(card->width() / 2 - 40, 80, 80, 40)).toImage();
    };
    const std::size_t plain = colours(shown());
    EXPECT_LT(plain, 12u) << "at once, and plain";
    EXPECT_TRUE(QTest::qWaitFor([&] { return colours(shown()) > 60; }, 20'000));
    EXPECT_FALSE(card->wantsPicture());
    const QImage oiled = shown();
    find<QAction>("actionOiled")->trigger();
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return colours(shown()) > 60 && lightness(shown()) > lightness(oiled) + 2; },
        20'000));
    find<QAction>("actionFigure")->trigger();
    EXPECT_EQ(colours(shown()), plain);
    EXPECT_GT(lightness(shown()), lightness(oiled) + 2) << "still raw";
}

TEST_F(FigureTest, IsSeenOnTheChipsOfTheWoods) {
    auto* chip = find("chip1");
    const auto shown = [chip] { return chip->grab(QRect(12, 8, 18, 10)).toImage(); };
    EXPECT_GT(colours(shown()), 12u);
    const double oiled = lightness(shown());
    find<QAction>("actionFigure")->trigger();
    EXPECT_EQ(colours(shown()), 1u);
    find<QAction>("actionOiled")->trigger();
    EXPECT_GT(lightness(shown()), oiled + 2);
    const Wood& wood = project().woods.front();
    const auto chipColours = [&](int side) {
        return colours(woodChip(wood, *window).pixmap(side, side).toImage().copy(4, 4, 10, 10));
    };
    EXPECT_EQ(chipColours(18), 1u);
    find<QAction>("actionFigure")->trigger();
    EXPECT_GT(chipColours(18), 3u);
}

}  // namespace
}  // namespace kerfwright
