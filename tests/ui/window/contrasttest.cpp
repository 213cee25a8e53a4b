// Contrast after WCAG 2.1 in light and in dark: 4.5 : 1 for words (1.4.3), 3 : 1 for the edges of
// controls and for what says where the keys are (1.4.11).
#include "core/wood/wood.h"
#include "ui/paint/painter.h"
#include "ui/window/boardpainter.h"
#include "ui/window/quietcombo.h"
#include "ui/window/segmented.h"
#include "ui/window/theme.h"
#include "ui/window/tones.h"

#include <QApplication>
#include <QCheckBox>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSlider>
#include <QTest>
#include <QVBoxLayout>

#include <gtest/gtest.h>

namespace kerfwright {
namespace {

constexpr double forWords = 4.5;
constexpr double forEdges = 3;

struct Named {
    const char* name;
    QColor colour;
};

std::vector<Named> groundsOf(const Tones& tones) {
    return {{"panel", tones.surface},
            {"round the board", tones.surround},
            {"entry", tones.entry},
            {"chosen", tones.soft},
            {"button under the pointer", mixed(tones.entry, tones.accent, 0.06)},
            {"tool under the pointer", mixed(tones.surface, tones.text, 0.06)},
            {"segment under the pointer", mixed(tones.surround, tones.text, 0.06)},
            {"segments", tones.dark ? tones.surround : mixed(tones.surround, tones.edge, 0.25)}};
}

class ContrastTest : public testing::TestWithParam<ThemeChoice> {
protected:
    QPalette palette() const {
        return GetParam() == ThemeChoice::Dark ? darkPalette() : lightPalette();
    }
};

// Values of the table that the W3C gives for greys on white, and of the definition itself.
TEST(Contrast, IsTheRatioOfWcag) {
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21, 1e-9);
    EXPECT_NEAR(contrast(Qt::white, Qt::black), 21, 1e-9);
    EXPECT_NEAR(contrast(QColor(0x76, 0x76, 0x76), Qt::white), 4.54, 0.005);
    EXPECT_NEAR(contrast(QColor(0x77, 0x77, 0x77), Qt::white), 4.48, 0.005);
    EXPECT_NEAR(contrast(QColor(0x94, 0x94, 0x94), Qt::white), 3.03, 0.005);
    EXPECT_NEAR(contrast(QColor(255, 0, 0), Qt::white), 4.00, 0.005);
}

TEST_P(ContrastTest, WordsReadOnEveryGround) {
    const Tones tones = tonesOf(palette());
    for (const Named& ground : groundsOf(tones)) {
        for (const Named& ink :
             {Named{"text", tones.text}, Named{"quiet", tones.quiet}, Named{"accent", tones.accent},
              Named{"caution", tones.caution}, Named{"danger", tones.danger}}) {
            EXPECT_GE(contrast(ink.colour, ground.colour), forWords)
                << ink.name << " on " << ground.name;
        }
    }
    using enum QPalette::ColorRole;
    for (const auto& [ink, ground] :
         {std::pair{HighlightedText, Highlight}, std::pair{ToolTipText, ToolTipBase},
          std::pair{ButtonText, Button}, std::pair{Text, Base}, std::pair{Link, Window},
          std::pair{PlaceholderText, Base}}) {
        EXPECT_GE(contrast(palette().color(ink), palette().color(ground)), forWords)
            << ink << " on " << ground;
    }
}

TEST_P(ContrastTest, EdgesAndTheFocusStandOutOfEveryGround) {
    const Tones tones = tonesOf(palette());
    for (const Named& ground : groundsOf(tones)) {
        EXPECT_GE(contrast(tones.rim, ground.colour), forEdges) << ground.name;
        EXPECT_GE(contrast(tones.accent, ground.colour), forEdges) << ground.name;
    }
}

TEST_P(ContrastTest, WordsAndLinesOfDrawingsReadOnTheirGround) {
    const bool dark = GetParam() == ThemeChoice::Dark;
    for (const Theme& theme : {paperTheme(), windowTheme(dark)}) {
        for (const QColor& ground : {theme.paper, theme.band}) {
            EXPECT_GE(contrast(theme.text, ground), forWords);
            EXPECT_GE(contrast(theme.quiet, ground), forWords);
            EXPECT_GE(contrast(theme.warning, ground), forWords);
            EXPECT_GE(contrast(theme.accent, ground), forWords);
            EXPECT_GE(contrast(theme.cut, ground), forEdges);
            EXPECT_GE(contrast(theme.waste, ground), forEdges);
            EXPECT_GE(contrast(theme.extraJoint, ground), forEdges);
        }
    }
    // The window's drawings lie on its panels.
    const Theme theme = windowTheme(dark);
    const Tones tones = tonesOf(palette());
    for (const QColor& ground : {tones.surface, tones.surround, tones.entry}) {
        EXPECT_GE(contrast(theme.text, ground), forWords);
        EXPECT_GE(contrast(theme.quiet, ground), forWords);
    }
}

TEST(Contrast, WordsOnAnyWoodAreReadable) {
    for (const Wood& wood : woodCatalogue()) {
        const QColor colour = toQColor(wood.colour);
        EXPECT_GE(contrast(readableOn(colour), colour), forWords) << wood.name;
    }
    for (int red = 0; red < 256; red += 15) {
        for (int green = 0; green < 256; green += 15) {
            for (int blue = 0; blue < 256; blue += 15) {
                const QColor colour(red, green, blue);
                ASSERT_GE(contrast(readableOn(colour), colour), forWords)
                    << colour.name().toStdString();
            }
        }
    }
}

/// Of the first line that a row of pixels meets from outside to its middle.
double edgeContrast(QWidget& control, QWidget& ground) {
    const QImage image = ground.grab().toImage();
    const QRect place(control.mapTo(&ground, QPoint()), control.size());
    const QColor outside = image.pixelColor(place.left() - 3, place.center().y());
    double best = 1;
    // Up to the middle of a box, or to the end of a slider that has none.
    for (int x = place.left(); x < place.left() + 14; ++x) {
        best = std::max(best, contrast(image.pixelColor(x, place.center().y()), outside));
    }
    return best;
}

TEST_P(ContrastTest, ControlsAreSeenForWhatTheyAre) {
    setThemeChoice(GetParam());
    applyTheme(*qApp);
    for (const QPalette::ColorRole ground : {QPalette::Window, QPalette::AlternateBase}) {
        QWidget panel;
        panel.setAutoFillBackground(true);
        panel.setBackgroundRole(ground);
        auto* column = new QVBoxLayout(&panel);
        column->setContentsMargins(20, 20, 20, 20);
        auto* other = new QPushButton(QStringLiteral("first"));
        column->addWidget(other);
        auto* slider = new QSlider(Qt::Horizontal);
        slider->setValue(50);
        auto* list = new QListWidget;
        const std::vector<QWidget*> controls{new QLineEdit,
                                             new QPushButton(QString()),
                                             new QCheckBox(QStringLiteral("on")),
                                             new QuietCombo(QStringLiteral("Which"), &panel),
                                             slider,
                                             list};
        for (QWidget* control : controls) {
            column->addWidget(control);
        }
        panel.show();
        panel.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&panel));
        other->setFocus();
        QCoreApplication::processEvents();
        for (QWidget* control : controls) {
            EXPECT_GE(edgeContrast(*control, panel), forEdges)
                << control->metaObject()->className() << " on " << ground;
        }
    }
    setThemeChoice(ThemeChoice::Light);
    applyTheme(*qApp);
}

INSTANTIATE_TEST_SUITE_P(Both, ContrastTest, testing::Values(ThemeChoice::Light, ThemeChoice::Dark),
                         [](const testing::TestParamInfo<ThemeChoice>& info) {
                             return info.param == ThemeChoice::Dark ? "Dark" : "Light";
                         });

}  // namespace
}  // namespace kerfwright
