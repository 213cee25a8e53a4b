#include "ui/paint/export.h"

#include <QImage>
#include <QPainter>

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace kerfwright {
namespace {

const Wood& wood(const char* key) {
    return *findWood(woodCatalogue(), key);
}

std::set<QRgb> colours(const QImage& image) {
    std::set<QRgb> all;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            all.insert(image.pixel(x, y));
        }
    }
    return all;
}

TEST(FigureOnScreen, FillsTheShapeAndNothingElse) {
    QImage image(120, 100, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    const QPolygonF shape({{20, 10}, {100, 10}, {80, 70}, {40, 70}});
    paintFigure(painter, shape, wood("cherry"), {FaceGrain::Across, 4, 2});
    painter.end();
    EXPECT_EQ(image.pixelColor(10, 40).alpha(), 0);
    EXPECT_EQ(image.pixelColor(24, 60).alpha(), 0);
    EXPECT_EQ(image.pixelColor(60, 40).alpha(), 255);
    EXPECT_EQ(image.pixelColor(22, 11).alpha(), 255);
    EXPECT_GT(colours(image.copy(45, 12, 30, 50)).size(), 10u);
}

TEST(FigureOnScreen, IsAsSharpAsTheScreen) {
    QImage image(200, 200, QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(2);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    paintFigure(painter, QRectF(10, 10, 80, 80), wood("white-oak"), {FaceGrain::End, 4, 2});
    painter.end();
    // The same as the texture pixel by pixel, at the corner where the shape begins.
    const QImage texture =
        figureImage(wood("white-oak"), {FaceGrain::End, 4, 2}, QSize(160, 160), 0.25);
    EXPECT_EQ(image.copy(20, 20, 160, 160).convertToFormat(QImage::Format_RGB32), texture);
}

TEST(FigureOnScreen, HasTheColoursOfItsWoodAndFinish) {
    for (const Wood& one : woodCatalogue()) {
        for (const Finish finish : {Finish::Raw, Finish::Oiled}) {
            const FigureTable table = figureTable(one, finish);
            const std::set<QRgb> known(table.begin(), table.end());
            for (const QRgb colour :
                 colours(figureImage(one, {FaceGrain::Down, 9, 1, finish}, QSize(30, 30), 0.4))) {
                EXPECT_EQ(known.count(colour), 1u);
                EXPECT_EQ(qAlpha(colour), 255);
            }
        }
        EXPECT_EQ(flatColour(one, Finish::Oiled),
                  QColor(one.colour.red, one.colour.green, one.colour.blue));
    }
}

TEST(FigureOnScreen, OfNothingIsNothing) {
    QImage image(10, 10, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    paintFigure(painter, QPolygonF(), wood("cherry"), {});
    painter.end();
    EXPECT_EQ(colours(image), std::set<QRgb>{0});
    EXPECT_TRUE(figureImage(wood("cherry"), {}, QSize(0, 5), 1).isNull());
}

/// A square of 20 mm with a triangle beside it, a line between, and a label.
Drawing twoWoods() {
    Drawing drawing;
    drawing.extent = {0, 0, 40, 20};
    drawing.woods = {wood("cherry").colour, wood("hard-maple").colour};
    drawing.marks = {Rectangle{{0, 0, 20, 20}, 0, {.fill = Ink::Wood, .wood = 0}},
                     Shape{{{20, 0}, {40, 0}, {20, 20}}, true, {.fill = Ink::Wood, .wood = 1}},
                     Line{{20, 0}, {20, 20}, {.line = Ink::Joint, .lineWidth = 2}}};
    return drawing;
}

DrawingFigure figureOfTwo() {
    DrawingFigure figure;
    figure.woods = {wood("cherry"), wood("hard-maple")};
    const TimberCut cut = cutFor(7, Rings::Unknown, 20, 20);
    const FacePlane face = cut.inTree({{0, 0, 20}, {1, 0, 0}, {0, 0, -1}});
    figure.faces = {{{{0, 0}, {20, 0}, {20, 20}, {0, 20}}, 0, cut, face},
                    {{{20, 0}, {40, 0}, {20, 20}}, 1, cut, face}};
    return figure;
}

TEST(FigureOfADrawing, TakesThePlaceOfPlainWoodBelowTheLines) {
    const Drawing drawing = twoWoods();
    const DrawingFigure figure = figureOfTwo();
    const QImage plain = toImage(drawing, 5, paperTheme());
    const QImage figured = toImage(drawing, 5, paperTheme(), figure);
    ASSERT_EQ(figured.size(), plain.size());
    EXPECT_EQ(colours(plain.copy(0, 0, 94, 100)).size(), 1u);
    const FigureTable table = figureTable(figure.woods[0], Finish::Oiled);
    const std::set<QRgb> known(table.begin(), table.end());
    const std::set<QRgb> square = colours(figured.copy(0, 0, 94, 100));
    EXPECT_GT(square.size(), 20u);
    for (const QRgb colour : square) {
        EXPECT_EQ(known.count(colour), 1u);
    }
    EXPECT_GT(colours(figured.copy(106, 0, 40, 40)).size(), 20u);
    EXPECT_EQ(figured.pixelColor(100, 50), paperTheme().joint);
    EXPECT_EQ(figured.pixelColor(190, 90).alpha(), 0) << "beside the triangle";
}

TEST(FigureOfADrawing, IsTheSameWhereverItIsCutOff) {
    DrawingFigure figure = figureOfTwo();
    figure.faces.resize(1);
    QImage whole(200, 200, QImage::Format_RGB32);
    whole.fill(Qt::black);
    paintFaces(whole, figure, 10, {0, 0});
    QImage upper(200, 120, QImage::Format_RGB32);
    upper.fill(Qt::black);
    paintFaces(upper, figure, 10, {0, 0});
    EXPECT_EQ(upper, whole.copy(0, 0, 200, 120));
    QImage placed(240, 230, QImage::Format_RGB32);
    placed.fill(Qt::black);
    paintFaces(placed, figure, 10, {-4, -3});
    EXPECT_EQ(placed.copy(40, 30, 200, 200), whole);
    EXPECT_EQ(placed.pixel(39, 60), QColor(Qt::black).rgb());
}

TEST(FigureOfADrawing, IsCalmerWithLessContrast) {
    const auto range = [](double contrast) {
        FigureFill fill;
        fill.contrast = contrast;
        int least = 255;
        int greatest = 0;
        for (const QRgb colour : colours(figureImage(wood("white-oak"), fill, {60, 60}, 0.3))) {
            least = std::min(least, qGray(colour));
            greatest = std::max(greatest, qGray(colour));
        }
        return greatest - least;
    };
    EXPECT_LT(range(0.4), range(1));
    EXPECT_EQ(range(0), 0);
}

}  // namespace
}  // namespace kerfwright
