#include "ui/paint/figure.h"

#include <QImage>
#include <QPainter>

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace kerfwright
