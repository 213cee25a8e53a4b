// From a change of wood to the repainted board view. Planning is left out: it runs beside.
#include "core/figure/texture.h"
#include "tests/bench/pairs.h"
#include "ui/document/document.h"
#include "ui/document/planner.h"
#include "ui/window/boardeditor.h"
#include "ui/window/boardview.h"

#include <QCoreApplication>
#include <QImage>
#include <QPainter>

#include <chrono>
#include <memory>
#include <string>
#include <vector>

namespace kerfwright::bench {
namespace {

constexpr int width = 1100;
constexpr int height = 1000;

/// The real view on a real document, painted onto an image of its size.
struct Scene {
    Scene(int cells, bool figured)
        : planner(document, std::chrono::hours(1))
        , editor(document)
        , view(document, planner, editor)
        , image(width, height, QImage::Format_ARGB32_Premultiplied) {
        document.start(randomProject(cells));
        view.resize(width, height);
        view.zoomToFit();
        view.figure().setStyle({figured, Finish::Oiled});
        paint();
        // Without a plan every piece is a stick of its own: as many textures as there are pieces.
        while (figured && !view.figure().isComplete()) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
            paint();
        }
    }
    void paint() { view.render(&image); }
    void recolour() {
        document.edit(QStringLiteral("paint"), entry::paint, [](Project& project) {
            int& wood = project.board.field.pieces[project.board.field.pieces.size() / 2].wood;
            wood = (wood + 1) % static_cast<int>(project.woods.size());
        });
    }

    Document document;
    Planner planner;
    BoardEditor editor;
    BoardView view;
    QImage image;
};

/// As many antialiased, outlined rectangles as the field has pieces, on an image of the same size.
void paintRectangles(QImage& image, int cells) {
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(Qt::black, 1));
    const double side = static_cast<double>(height) / cells;
    for (int row = 0; row < cells; ++row) {
        for (int column = 0; column < cells; ++column) {
            painter.setBrush((row + column) % 2 == 0 ? Qt::lightGray : Qt::darkGray);
            painter.drawRect(QRectF(column * side, row * side, side, side));
        }
    }
}

/// A million pixels of end grain and a million of face grain.
template <class Make>
void makeTextures(const char* key, Make make) {
    const Wood& wood = *findWood(woodCatalogue(), key);
    const WoodLook look = lookOf(wood);
    const TimberCut cut = cutFor(5, Rings::Flat, 40, 40);
    static std::vector<std::uint8_t> tones(1000 * 1000);
    const TextureArea area{0, 0, 1000, 1000, 0.3};
    make(tones.data(), area, look, cut, cut.inTree({{0, 30, 0}, {1, 0, 0}, {0, 0, 1}}));
    make(tones.data(), area, look, cut, cut.inTree({{0, 0, 20}, {1, 0, 0}, {0, 1, 0}}));
}

}  // namespace

void addView() {
    for (const char* key : {"hard-maple", "white-oak", "padauk"}) {
        pair(
            std::string("2 Mpixel of figure, ") + key, {0, 0.5},
            [key] { makeTextures(key, figureTexture); }, "the same, one pixel at a time",
            [key] { makeTextures(key, figureTexturePlain); });
    }
    for (const int cells : {10, 32, 64}) {
        const auto scene = std::make_shared<Scene>(cells, true);
        const std::string size = std::to_string(cells) + " x " + std::to_string(cells);
        const auto baseline = [scene, cells] { paintRectangles(scene->image, cells); };
        const char* baselineName = "antialiased, outlined rectangles";
        pair(
            "paint the board with figure, " + size, {0, 4}, [scene] { scene->paint(); },
            baselineName, baseline);
        pair(
            "recolour and repaint with figure, " + size, {8, 0},
            [scene] {
                scene->recolour();
                scene->paint();
            },
            baselineName, baseline);
        pair(
            "raw to oiled and repaint, " + size, {8, 0},
            [scene] {
                FigureStyle style = scene->view.figure().style();
                style.finish = style.finish == Finish::Raw ? Finish::Oiled : Finish::Raw;
                scene->view.figure().setStyle(style);
                scene->paint();
            },
            baselineName, baseline);
    }
    for (const int cells : {10, 64}) {
        const auto scene = std::make_shared<Scene>(cells, false);
        const std::string size = std::to_string(cells) + " x " + std::to_string(cells);
        const auto baseline = [scene, cells] { paintRectangles(scene->image, cells); };
        const char* baselineName = "antialiased, outlined rectangles";
        pair(
            "paint the board view, " + size, {0, 4}, [scene] { scene->paint(); }, baselineName,
            baseline);
        pair(
            "recolour and repaint, " + size, {8, 0},
            [scene] {
                scene->recolour();
                scene->paint();
            },
            baselineName, baseline);
    }
}

}  // namespace kerfwright::bench
