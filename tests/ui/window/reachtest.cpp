// Everything can be reached by key and has a name.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/buildfilm.h"
#include "ui/window/figurelayer.h"
#include "ui/window/filmmaker.h"
#include "ui/window/stagerow.h"
#include "ui/window/theme.h"
#include "ui/window/tones.h"

#include <QAbstractButton>
#include <QAccessible>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QScrollBar>
#include <QTest>

#include <algorithm>
#include <set>

namespace kerfwright {
namespace {

class ReachTest : public WindowTest {
protected:
    void openAll() {
        for (const char* head : {"titlesHead", "allowancesHead", "machinesHead", "placeHead",
                                 "glueHead", "unitsHead"}) {
            find<QAbstractButton>(head)->click();
        }
        click(find("borderKind")->findChildren<QAbstractButton*>()[1]);
        window->editor().setMark(QRect(0, 0, 2, 1));
        ASSERT_TRUE(planned());
    }
    /// Sections in sections get their places one after the other: whether all words of the form
    /// have got room in the end.
    bool settled() const {
        auto* form = find<QScrollArea>("wish");
        const auto labels = form->findChildren<QLabel*>();
        return QTest::qWaitFor([&] {
            QWidget* content = form->widget();
            const int wanted =
                std::max(content->heightForWidth(content->width()), form->viewport()->height());
            return content->height() == wanted &&
                   std::all_of(labels.begin(), labels.end(), [](QLabel* label) {
                       return !label->isVisible() || !label->wordWrap() ||
                              label->height() >= label->heightForWidth(label->width());
                   });
        });
    }
};

TEST_F(ReachTest, EveryWidgetThatTakesTheFocusHasAName) {
    openAll();
    for (int tab = 0; tab < window->bench().count(); ++tab) {
        window->bench().setCurrentIndex(tab);
        for (QWidget* widget : window->findChildren<QWidget*>()) {
            if (!widget->isVisible() || (widget->focusPolicy() & Qt::TabFocus) == 0) {
                continue;
            }
            QAccessibleInterface* reader = QAccessible::queryAccessibleInterface(widget);
            ASSERT_NE(reader, nullptr);
            EXPECT_FALSE(reader->text(QAccessible::Name).isEmpty())
                << widget->metaObject()->className() << ' ' << widget->objectName().toStdString();
        }
    }
}

TEST_F(ReachTest, EveryEntryHasANameOfItsOwnToFindItBy) {
    openAll();
    std::set<QString> names;
    for (QLineEdit* line : window->findChildren<QLineEdit*>()) {
        EXPECT_FALSE(line->objectName().isEmpty()) << line->accessibleName().toStdString();
        EXPECT_TRUE(names.insert(line->objectName()).second) << line->objectName().toStdString();
    }
}

TEST_F(ReachTest, TabVisitsEveryEntryOnce) {
    openAll();
    auto* first = find<QLineEdit>("cellWidthEntry");
    first->setFocus();
    std::vector<QWidget*> visited;
    for (int i = 0; i < 400; ++i) {
        QWidget* focused = QApplication::focusWidget();
        ASSERT_NE(focused, nullptr);
        if (i > 0 && focused == first) {
            break;
        }
        visited.push_back(focused);
        QTest::keyClick(focused, Qt::Key_Tab);
    }
    EXPECT_EQ(std::set<QWidget*>(visited.begin(), visited.end()).size(), visited.size());
    for (QLineEdit* line : window->findChildren<QLineEdit*>()) {
        if (line->isVisible() && line->isEnabled()) {
            EXPECT_EQ(std::count(visited.begin(), visited.end(), line), 1)
                << line->objectName().toStdString();
        }
    }
    EXPECT_EQ(std::count(visited.begin(), visited.end(), &window->board()), 1);
    // The order of the form: what stands below comes later.
    const auto place = [&](const char* name) {
        return std::find(visited.begin(), visited.end(), find<QWidget>(name)) - visited.begin();
    };
    EXPECT_LT(place("cellWidthEntry"), place("cellHeightEntry"));
    EXPECT_LT(place("cellHeightEntry"), place("acrossEntry"));
    EXPECT_LT(place("acrossEntry"), place("thicknessEntry"));
    EXPECT_LT(place("thicknessEntry"), place("borderWidthEntry"));
    EXPECT_LT(place("borderWidthEntry"), place("setting-kerf-entry"));
}

TEST_F(ReachTest, FitsASmallScreen) {
    openAll();
    QCoreApplication::processEvents();
    EXPECT_LE(window->minimumSizeHint().width(), 1024);
    EXPECT_LE(window->minimumSizeHint().height(), 700);
}

TEST_F(ReachTest, TextReadsOnItsGroundInLightAndDark) {
    // Contrast of WCAG 2.1, 1.4.3: at least 4.5 for text of this size.
    const auto luminance = [](const QColor& colour) {
        const auto part = [](double c) {
            return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
        };
        return 0.2126 * part(colour.redF()) + 0.7152 * part(colour.greenF()) +
               0.0722 * part(colour.blueF());
    };
    const auto contrast = [&](const QColor& a, const QColor& b) {
        const double x = luminance(a);
        const double y = luminance(b);
        return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
    };
    for (const QPalette& palette : {lightPalette(), darkPalette()}) {
        const Tones tones = tonesOf(palette);
        for (const QColor& ground : {tones.surface, tones.surround, tones.entry}) {
            for (const QColor& ink :
                 {tones.text, tones.quiet, tones.accent, tones.caution, tones.danger}) {
                EXPECT_GE(contrast(ink, ground), 4.5)
                    << ink.name().toStdString() << " on " << ground.name().toStdString();
            }
        }
        EXPECT_GE(contrast(palette.color(QPalette::HighlightedText), tones.accent), 4.5);
    }
}

/// The least width that the window gives the form, and less.
TEST_F(ReachTest, ANarrowFormCutsNothingOff) {
    ASSERT_TRUE(planned());
    auto* form = find<QScrollArea>("wish");
    for (const char* head :
         {"allowancesHead", "machinesHead", "placeHead", "glueHead", "unitsHead", "titlesHead"}) {
        find<QAbstractButton>(head)->click();
    }
    for (const int width : {288, 260}) {
        form->setMinimumWidth(width);
        form->setMaximumWidth(width);
        window->resize(1100, 450);
        QCoreApplication::sendPostedEvents();
        ASSERT_TRUE(QTest::qWaitFor([&] { return form->width() == width; }));
        EXPECT_EQ(form->widget()->width(), form->viewport()->width())
            << "needs " << form->widget()->minimumSizeHint().width();
        EXPECT_GT(form->verticalScrollBar()->maximum(), 0);
        for (auto* button : form->findChildren<QAbstractButton*>()) {
            if (button->isVisible() && !button->text().isEmpty()) {
                EXPECT_LE(button->minimumSizeHint().width(), button->width())
                    << button->text().toStdString();
            }
        }
        EXPECT_TRUE(settled()) << width;
    }
}

TEST_F(ReachTest, DarkAndLightRepaintTheSameWindow) {
    ASSERT_TRUE(planned());
    setThemeChoice(ThemeChoice::Light);
    applyTheme(*qApp);
    ASSERT_TRUE(QTest::qWaitFor([this] { return !isDark(window->palette()); }));
    ASSERT_TRUE(settled());
    // They come beside the window.
    ASSERT_TRUE(QTest::qWaitFor([this] {
        const BuildFilm& film = window->film();
        return film.hasBegun() && film.maker()->isCurrent() && film.row()->count() > 0 &&
               film.row()->hasAllPictures() && window->board().figure().isComplete();
    }));
    const QImage light = window->grab().toImage();
    setThemeChoice(ThemeChoice::Dark);
    applyTheme(*qApp);
    ASSERT_TRUE(QTest::qWaitFor([this] { return isDark(window->palette()); }));
    EXPECT_NE(window->grab().toImage(), light);
    setThemeChoice(ThemeChoice::Light);
    applyTheme(*qApp);
    ASSERT_TRUE(QTest::qWaitFor([this] { return !isDark(window->palette()); }));
    ASSERT_TRUE(settled());
    // The pictures of the film and the figure of the woods are made anew beside the window.
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->grab().toImage() == light; }));
}

}  // namespace
}  // namespace kerfwright
