// In a window of 1024 × 700 pixels nothing is cut off, whichever way the words run; and what is
// mirrored for words from right to left is the window, never the board.
#include "core/sheets/sheets.h"
#include "tests/ui/window/everyplace.h"
#include "ui/paint/export.h"
#include "ui/window/benchtabs.h"
#include "ui/window/panels.h"
#include "ui/window/wishform.h"

#include <QAbstractButton>
#include <QAbstractScrollArea>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QPushButton>
#include <QTabBar>
#include <QTest>
#include <QToolBar>

namespace kerfwright {
namespace {

std::string about(const QString& part, const QWidget& widget) {
    return QStringLiteral("%1: %2 “%3” %4")
        .arg(part, QString::fromLatin1(widget.metaObject()->className()), widget.objectName(),
             widget.accessibleName())
        .toStdString();
}

bool isControl(const QWidget& widget) {
    return qobject_cast<const QAbstractButton*>(&widget) != nullptr ||
           qobject_cast<const QLineEdit*>(&widget) != nullptr ||
           qobject_cast<const QComboBox*>(&widget) != nullptr;
}

/// What of a widget is cut off by what it stands in; what can be scrolled to is not.
QString cutOff(const QWidget& widget, const QWidget& top) {
    QRect place = widget.rect();
    const QWidget* at = &widget;
    while (at != &top) {
        place.moveTo(at->mapToParent(place.topLeft()));
        const QWidget* parent = at->parentWidget();
        auto* area = qobject_cast<const QAbstractScrollArea*>(parent->parentWidget());
        const bool scrolls = area != nullptr && area->viewport() == parent;
        const QRect room = parent->rect();
        if (place.left() < room.left() || place.right() > room.right() ||
            (!scrolls && (place.top() < room.top() || place.bottom() > room.bottom()))) {
            return QString::fromLatin1(parent->metaObject()->className());
        }
        if (scrolls) {
            place = place.intersected(room);
            if (place.isEmpty()) {
                return QString();
            }
        }
        at = parent;
    }
    return QString();
}

/// A push button asks for more than its words and its picture need.
int leastWidth(const QAbstractButton& button) {
    if (qobject_cast<const QPushButton*>(&button) == nullptr) {
        return button.minimumSizeHint().width();
    }
    const int words = button.fontMetrics().size(Qt::TextShowMnemonic, button.text()).width();
    constexpr int sides = 8;
    return words + sides + (button.icon().isNull() ? 0 : button.iconSize().width() + 4);
}

class RoomTest : public EveryPlace, public testing::WithParamInterface<Qt::LayoutDirection> {
protected:
    RoomTest() {
        QApplication::setLayoutDirection(GetParam());
        window = makeWindow();
        window->resize(1024, 700);
    }
    ~RoomTest() override { QApplication::setLayoutDirection(Qt::LeftToRight); }
};

/// WCAG 2.1, 1.4.10 Reflow, for the smallest window that the program promises to work in.
TEST_P(RoomTest, NothingIsCutOffOrLaidOverSomethingElse) {
    ASSERT_TRUE(QTest::qWaitFor([this] { return window->size() == QSize(1024, 700); }));
    int looked = 0;
    visitAll([&](const QString& part, QWidget& top) {
        // Sections in sections get their places one after the other.
        for (int i = 0; i < 5; ++i) {
            QCoreApplication::sendPostedEvents();
            QCoreApplication::processEvents();
        }
        EXPECT_LE(top.width(), 1024) << part.toStdString();
        EXPECT_LE(top.height(), 700) << part.toStdString();
        std::vector<QWidget*> controls;
        for (QWidget* widget : top.findChildren<QWidget*>()) {
            const bool own = widget->isVisible() && widget->window() == &top &&
                             qobject_cast<QTabBar*>(widget->parentWidget()) == nullptr;
            if (own && isControl(*widget)) {
                controls.push_back(widget);
            }
        }
        for (QWidget* control : controls) {
            ++looked;
            const QString by = cutOff(*control, top);
            EXPECT_TRUE(by.isEmpty()) << about(part, *control) << " by " << by.toStdString();
            auto* button = qobject_cast<QAbstractButton*>(control);
            if (button != nullptr && !button->text().isEmpty()) {
                EXPECT_GE(control->width(), leastWidth(*button)) << about(part, *control);
            }
            EXPECT_GE(control->height(), std::min(control->minimumSizeHint().height(), 28))
                << about(part, *control);
            for (QWidget* other : controls) {
                const bool within = other->isAncestorOf(control) || control->isAncestorOf(other);
                if (other < control && !within &&
                    other->parentWidget() == control->parentWidget()) {
                    EXPECT_FALSE(other->geometry().intersects(control->geometry()))
                        << about(part, *control) << " over " << about(part, *other);
                }
            }
        }
        for (QLabel* label : top.findChildren<QLabel*>()) {
            if (!label->isVisible() || label->window() != &top || label->text().isEmpty()) {
                continue;
            }
            for (QWidget* control : controls) {
                if (control->parentWidget() == label->parentWidget()) {
                    EXPECT_FALSE(control->geometry().intersects(label->geometry()))
                        << about(part, *control) << " over “" << label->text().toStdString() << "”";
                }
            }
        }
    });
    EXPECT_GT(looked, 2000);
}

TEST_P(RoomTest, PanelsStandOnTheirSideAndTheBoardOnItsFeet) {
    ASSERT_TRUE(planned());
    const bool mirrored = GetParam() == Qt::RightToLeft;
    const auto left = [this](QWidget* widget) { return widget->mapTo(window.get(), QPoint()).x(); };
    EXPECT_EQ(left(find("wish")) > left(&window->board()), mirrored);
    EXPECT_EQ(left(find("bench")) < left(&window->board()), mirrored);
    const QRect first = window->menuBar()->actionGeometry(window->menuBar()->actions().front());
    const QRect last = window->menuBar()->actionGeometry(window->menuBar()->actions().back());
    EXPECT_EQ(first.left() > last.left(), mirrored);

    // Columns count from the left, and so do painting, marking and the keys.
    EXPECT_LT(cellCentre(0, 0).x(), cellCentre(1, 0).x());
    window->editor().setWood(2);
    clickCell(0, 0);
    EXPECT_EQ(woodAt(0, 0), 2);
    window->editor().setMark(QRect(0, 0, 1, 1));
    key(Qt::Key_Right);
    EXPECT_EQ(window->editor().mark(), QRect(1, 0, 1, 1));
    EXPECT_EQ(window->board().layoutDirection(), Qt::LeftToRight);
    const QImage image = window->board().grab().toImage();
    const QColor painted = image.pixelColor(cellCentre(0, 0) + QPoint(4, 4));
    const QColor opposite = image.pixelColor(
        cellCentre(static_cast<int>(field().columns.size()) - 1, 0) + QPoint(4, 4));
    EXPECT_NE(painted, opposite);
}

TEST_P(RoomTest, PaperIsTheSameWhicheverWayTheWindowReads) {
    ASSERT_TRUE(planned());
    const std::vector<Page> pages = sheets(project(), window->planner().last()->job, Paper::A4);
    ASSERT_FALSE(pages.empty());
    const QByteArray here = toPng(pages[0].drawing, 4, paperTheme());
    QApplication::setLayoutDirection(Qt::LeftToRight);
    EXPECT_TRUE(here == toPng(pages[0].drawing, 4, paperTheme()));
}

INSTANTIATE_TEST_SUITE_P(Words, RoomTest, testing::Values(Qt::LeftToRight, Qt::RightToLeft),
                         [](const testing::TestParamInfo<Qt::LayoutDirection>& info) {
                             return info.param == Qt::LeftToRight ? "LeftToRight" : "RightToLeft";
                         });

}  // namespace
}  // namespace kerfwright
