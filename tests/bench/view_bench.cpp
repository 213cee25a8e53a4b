// From a change of wood to the repainted board view. Planning is left out: it runs beside.
#include "tests/bench/pairs.h"
#include "ui/document/document.h"
#include "ui/document/planner.h"
#include "ui/window/boardeditor.h"
#include "ui/window/boardview.h"

#include <QImage>
#include <QPainter>

#include <chrono>
#include <memory>

namespace kerfwright::bench {
namespace {

constexpr int width = 1100;
constexpr int height = 1000;

/// The real view on a real document, painted onto an image of its size.
struct Scene {
    explicit Scene(int cells)
        : planner(document, std::chrono::hours(1))
        , editor(document)
        , view(document, planner, editor)
        , image(width, height, QImage::Format_ARGB32_Premultiplied) {
        document.start(randomProject(cells));
        view.resize(width, height);
        view.zoomToFit();
        paint();
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

}  // namespace

void addView() {
    for (const int cells : {10, 64}) {
        const auto scene = std::make_shared<Scene>(cells);
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
