// In a window of 1024 × 700 pixels nothing is cut off, whichever way the words run; and what is
// mirrored for words from right to left is the window, never the board.
#include "core/sheets/sheets.h"
#include "core/words/catalogue.h"
#include "tests/ui/window/everyplace.h"
#include "ui/document/language.h"
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
#include <QSplitter>
#include <QTabBar>
#include <QTest>
#include <QToolBar>
#include <QToolButton>

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

/// In each language, on the narrowest panel: longer words must wrap, since the form never scrolls
/// sideways.
class FormRoomTest : public EveryPlace, public testing::WithParamInterface<const char*> {
protected:
    FormRoomTest() {
        speakLanguage(QString::fromLatin1(GetParam()));
        window = makeWindow();
        window->resize(1024, 700);
    }
    ~FormRoomTest() override {
        window.reset();
        speak(nullptr);
    }

    void edit(const std::function<void(Project&)>& how) {
        const auto fault = window->document().edit(QStringLiteral("board"), entry::none, how);
        EXPECT_FALSE(fault) << fault->text();
        EXPECT_TRUE(planned());
        for (int i = 0; i < 5; ++i) {
            QCoreApplication::sendPostedEvents();
            QCoreApplication::processEvents();
        }
    }

    void expectTheFormFits(const std::string& board) {
        auto* form = find<WishForm>("wish");
        const int room = form->viewport()->width();
        EXPECT_LE(form->widget()->width(), room) << board;
        EXPECT_LE(form->widget()->minimumSizeHint().width(), room) << board;
        for (QWidget* part : form->widget()->findChildren<QWidget*>()) {
            if (part->isVisible()) {
                const int left = part->mapTo(form->widget(), QPoint()).x();
                EXPECT_TRUE(left >= 0 && left + part->width() <= room)
                    << about(QString::fromStdString(board), *part) << " from " << left << " over "
                    << part->width() << " of " << room;
            }
        }
    }
};

TEST_P(FormRoomTest, TheFormIsNeverWiderThanItsPanel) {
    ASSERT_TRUE(planned());
    openSections();
    auto* form = find<WishForm>("wish");
    auto* splitter = qobject_cast<QSplitter*>(form->parentWidget());
    ASSERT_NE(splitter, nullptr);
    splitter->setSizes({form->minimumWidth(), 1024, 300});
    const Project began = project();
    for (const Build build : {Build::EndGrain, Build::LongGrain}) {
        for (const Unit unit : {Unit::Inches, Unit::Millimetres}) {
            edit([&](Project& changed) {
                changed.board.border = began.board.border;
                changed.board.border.width = Length();
                changed.board.build = build;
                changed.notation.unit = unit;
            });
            expectTheFormFits("no border");
            for (QAbstractButton* design : find("borderKind")->findChildren<QAbstractButton*>()) {
                if (!design->isEnabled()) {
                    continue;
                }
                edit([&](Project& changed) {
                    changed.board.border.inlayWidth = Length();
                    changed.board.border.splineThickness = Length();
                    changed.board.border.gap.reset();
                });
                design->click();
                const std::string name = GetParam() + (" " + design->text().toStdString());
                for (const Housing housing : {Housing::Groove, Housing::Rebate}) {
                    const bool dressed = housing == Housing::Rebate;
                    edit([&](Project& changed) {
                        Border& border = changed.board.border;
                        border.housing = housing;
                        if (dressed && border.isFrame() && border.isThere()) {
                            border.inlayWidth = Length::mm(3);
                            border.splineThickness = Length::mm(3);
                        }
                        if (dressed && border.has(BorderDesign::FloatingFrame)) {
                            border.gap = Length::mm(5);
                        }
                    });
                    expectTheFormFits(name);
                }
            }
        }
    }
}

TEST_P(FormRoomTest, AllTabsOfTheBenchAreInSight) {
    for (const int width : {1024, 1280, 1440}) {
        window->resize(width, 860);
        ASSERT_TRUE(planned());
        QCoreApplication::processEvents();
        QTabBar* tabs = window->bench().tabBar();
        for (int tab = 0; tab < tabs->count(); ++tab) {
            EXPECT_TRUE(tabs->rect().contains(tabs->tabRect(tab)))
                << tabs->tabText(tab).toStdString() << " at " << width;
            EXPECT_GE(tabs->tabRect(tab).width(),
                      tabs->fontMetrics().horizontalAdvance(tabs->tabText(tab)) + 6);
        }
        for (auto* arrow : tabs->findChildren<QToolButton*>()) {
            EXPECT_FALSE(arrow->isVisible()) << width;
        }
    }
}

TEST_P(FormRoomTest, ButtonsOfDialogsShowAllTheirWords) {
    int looked = 0;
    visitDialogs([&](const QString& part, QWidget& top) {
        for (auto* button : top.findChildren<QAbstractButton*>()) {
            if (button->isVisible() && button->window() == &top && !button->text().isEmpty()) {
                ++looked;
                EXPECT_GE(button->width(), leastWidth(*button)) << about(part, *button);
            }
        }
    });
    EXPECT_GT(looked, 10);
}

INSTANTIATE_TEST_SUITE_P(Languages, FormRoomTest, testing::Values("en", "de"),
                         [](const testing::TestParamInfo<const char*>& info) {
                             return std::string(info.param);
                         });

}  // namespace
}  // namespace kerfwright
