#include "core/drawing/geometry.h"
#include "core/sheets/boardview.h"
#include "ui/paint/export.h"
#include "ui/paint/painter.h"

#include <QFont>
#include <QFontDatabase>
#include <QFontInfo>
#include <QFontMetricsF>
#include <QImage>
#include <QPainter>

#include <gtest/gtest.h>

#include <cmath>

using namespace kerfwright;

namespace {

Drawing sheetOf(double width, double height, std::vector<Mark> marks) {
    Drawing drawing;
    drawing.extent = {0, 0, width, height};
    drawing.marks = std::move(marks);
    drawing.woods = {Colour{240, 220, 180}, Colour{60, 40, 30}};
    return drawing;
}

QColor at(const QImage& image, double pixelsPerMm, double x, double y) {
    return image.pixelColor(static_cast<int>(x * pixelsPerMm), static_cast<int>(y * pixelsPerMm));
}

/// The box of what is painted, in mm.
QRectF inked(const QImage& image, double pixelsPerMm) {
    int left = image.width();
    int right = -1;
    int top = image.height();
    int bottom = -1;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            if (qAlpha(image.pixel(x, y)) > 40) {
                left = std::min(left, x);
                right = std::max(right, x);
                top = std::min(top, y);
                bottom = std::max(bottom, y);
            }
        }
    }
    return {left / pixelsPerMm, top / pixelsPerMm, (right + 1 - left) / pixelsPerMm,
            (bottom + 1 - top) / pixelsPerMm};
}

Text textMark(const std::string& words, double x, double y, Align align) {
    Text text;
    text.at = {x, y};
    text.text = words;
    text.size = 10;
    text.align = align;
    text.style.line = Ink::Text;
    return text;
}

}  // namespace

TEST(Painter, HasTheFontThatTheSheetsAreMeasuredFor) {
    EXPECT_TRUE(QFontDatabase::families().contains(QStringLiteral("DejaVu Sans")));
}

// The core's table of advances against Qt's own reading of the font. No “fi”: the bold font has a
// ligature for it, which is a hair narrower.
TEST(Painter, FindsTextAsWideAsTheCoreSays) {
    const char* const samples[] = {"Thickness × width × length", "≈ 1 3/4 in",
                                   "½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ ′ ″ ² ³",      "Gluing — panel A–D… 45°",
                                   "▸ △ ↔ ↕ ↻ ☐ “as it is”",     "0123456789.,+-=/()%·ÄÖÜäöüßéñ"};
    for (const bool bold : {false, true}) {
        QFont font(QStringLiteral("DejaVu Sans"));
        font.setPixelSize(2048);
        font.setBold(bold);
        font.setKerning(false);
        font.setHintingPreference(QFont::PreferNoHinting);
        for (const char* sample : samples) {
            const double qt = QFontMetricsF(font).horizontalAdvance(QString::fromUtf8(sample));
            EXPECT_NEAR(textWidth(sample, 2048, bold), qt, qt * 0.003) << sample << bold;
        }
    }
}

TEST(Painter, ResolvesRolesByTheTheme) {
    const Theme theme = paperTheme();
    const Drawing drawing =
        sheetOf(40, 10,
                {Rectangle{{0, 0, 10, 10}, 0, {.fill = Ink::Accent}},
                 Rectangle{{10, 0, 10, 10}, 0, {.fill = Ink::Wood, .wood = 1}},
                 Shape{{{20, 0}, {30, 0}, {30, 10}, {20, 10}}, true, {.fill = Ink::Band}}});
    const QImage image = toImage(drawing, 4, theme);
    EXPECT_EQ(at(image, 4, 5, 5), theme.accent);
    EXPECT_EQ(at(image, 4, 15, 5), QColor(60, 40, 30));
    EXPECT_EQ(at(image, 4, 25, 5), theme.band);
    EXPECT_EQ(at(image, 4, 35, 5).alpha(), 0);  // transparent where nothing is painted
}

TEST(Painter, TakesTheLineThatReadsOnAWood) {
    Drawing drawing;
    drawing.extent = {0, 0, 20, 10};
    drawing.woods = {Colour{240, 220, 180}, Colour{60, 40, 30}};
    for (int wood = 0; wood < 2; ++wood) {
        drawing.marks.emplace_back(Line{{wood * 10.0, 5},
                                        {wood * 10.0 + 10, 5},
                                        {.line = Ink::WoodLine, .lineWidth = 4, .wood = wood}});
    }
    const QImage image = toImage(drawing, 4, paperTheme());
    EXPECT_LT(at(image, 4, 5, 5).lightness(), 60);
    EXPECT_GT(at(image, 4, 15, 5).lightness(), 200);
}

TEST(Painter, MeasuresLineWidthsInMillimetres) {
    const Drawing drawing =
        sheetOf(20, 20, {Line{{0, 10}, {20, 10}, {.line = Ink::Text, .lineWidth = 2}}});
    const QRectF box = inked(toImage(drawing, 10, paperTheme()), 10);
    EXPECT_NEAR(box.height(), 2, 0.11);
    EXPECT_NEAR(box.top(), 9, 0.11);
}

TEST(Painter, LeavesNoSeamBetweenPieces) {
    // At an odd scale the edges fall between pixels.
    std::vector<Mark> pieces;
    for (int i = 0; i < 10; ++i) {
        pieces.emplace_back(Rectangle{{i * 1.7, 0, 1.7, 5}, 0, {.fill = Ink::Wood, .wood = i % 2}});
    }
    const QImage image = toImage(sheetOf(17, 5, std::move(pieces)), 7.3, paperTheme());
    for (int x = 0; x < image.width() - 1; ++x) {
        EXPECT_EQ(image.pixelColor(x, 10).alpha(), 255) << x;
    }
}

TEST(Painter, AlignsText) {
    const std::string words = "HHHH";
    const double width = textWidth(words, 10, false);
    const double slack = 1.2;  // the side bearings of an H and the antialiasing
    const QRectF left = inked(
        toImage(sheetOf(100, 20, {textMark(words, 50, 15, Align::Left)}), 10, paperTheme()), 10);
    const QRectF centre = inked(
        toImage(sheetOf(100, 20, {textMark(words, 50, 15, Align::Centre)}), 10, paperTheme()), 10);
    const QRectF right = inked(
        toImage(sheetOf(100, 20, {textMark(words, 50, 15, Align::Right)}), 10, paperTheme()), 10);
    EXPECT_NEAR(left.left(), 50, slack);
    EXPECT_NEAR(left.right(), 50 + width, slack);
    EXPECT_NEAR(centre.center().x(), 50, 0.2);
    EXPECT_NEAR(right.right(), 50, slack);
    EXPECT_NEAR(left.bottom(), 15, 0.15);         // stands on its baseline
    EXPECT_NEAR(left.height(), 10 * 0.729, 0.2);  // capitals of DejaVu Sans are 1493/2048 em high
}

TEST(Painter, TurnsText) {
    Text text = textMark("HHHH", 10, 50, Align::Centre);
    text.degrees = -90;
    const QRectF box = inked(toImage(sheetOf(20, 100, {text}), 10, paperTheme()), 10);
    EXPECT_NEAR(box.center().y(), 50, 0.2);
    EXPECT_NEAR(box.right(), 10, 0.15);
    EXPECT_GT(box.height(), 20);
}

TEST(Painter, SqueezesTextThatIsTooWide) {
    Text text = textMark("HHHHHHHH", 5, 15, Align::Left);
    text.maxWidth = 20;
    const QRectF box = inked(toImage(sheetOf(100, 20, {text}), 10, paperTheme()), 10);
    EXPECT_LE(box.right(), 25.1);
    EXPECT_GT(box.right(), 23);
    EXPECT_NEAR(box.height(), 10 * 0.729, 0.2);  // narrower, not lower
    text.maxWidth = 1000;
    EXPECT_GT(inked(toImage(sheetOf(100, 20, {text}), 10, paperTheme()), 10).width(), 50);
}

TEST(Painter, RestoresThePainter) {
    QImage image(50, 50, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(3, 3);
    painter.setPen(QPen(Qt::red, 7));
    const QTransform before = painter.transform();
    paint(painter,
          sheetOf(
              10, 10,
              {textMark("x", 1, 1, Align::Left), Rectangle{{0, 0, 5, 5}, 0, {.fill = Ink::Text}}}),
          paperTheme());
    EXPECT_EQ(painter.transform(), before);
    EXPECT_EQ(painter.pen(), QPen(Qt::red, 7));
    EXPECT_FALSE(painter.testRenderHint(QPainter::Antialiasing));
}

TEST(Themes, ReadInLightAndDark) {
    for (const Theme& theme : {paperTheme(), windowTheme(false), windowTheme(true)}) {
        for (const QColor& ink :
             {theme.text, theme.quiet, theme.accent, theme.warning, theme.extraJoint}) {
            EXPECT_GT(std::abs(ink.lightness() - theme.paper.lightness()), 80)
                << ink.name().toStdString();
        }
    }
    EXPECT_EQ(paperTheme().paper, QColor(Qt::white));
}
