// Wood figure on the screen: textures as pixels, and one call that fills a shape.
#pragma once

#include "core/figure/figuredface.h"
#include "core/figure/texture.h"
#include "core/figure/tints.h"

#include <QColor>
#include <QPolygonF>
#include <QSize>

#include <array>
#include <cstdint>
#include <vector>

QT_BEGIN_NAMESPACE
class QImage;
class QPainter;
QT_END_NAMESPACE

namespace kerfwright {

/// How woods are shown.
struct FigureStyle {
    bool on = true;  ///< else each wood is one colour
    Finish finish = Finish::Oiled;
    friend bool operator==(const FigureStyle&, const FigureStyle&) = default;
};

/// A colour for each tone, opaque.
using FigureTable = std::array<std::uint32_t, 256>;
FigureTable figureTable(const Wood& wood, Finish finish, double contrast = 1);
/// Of the wood where it has no figure.
QColor flatColour(const Wood& wood, Finish finish);

/// Which way a face shows the grain.
enum class FaceGrain {
    End,     ///< end grain
    Across,  ///< grain runs left and right
    Down,    ///< grain runs up and down
};

/// The figure on a shape.
struct FigureFill {
    FaceGrain grain = FaceGrain::End;
    std::uint32_t seed = 1;  ///< which stick: the same shows the same rings
    double pixelsPerMm = 1;  ///< of the painter's own units
    Finish finish = Finish::Oiled;
    double contrast = 1;  ///< less is calmer
};

/// `size` in device pixels, `step` mm a pixel.
QImage figureImage(const Wood& wood, const FigureFill& fill, QSize size, double step);

/// Fills `shape`, in the painter's units, with figure that begins at its top left corner; for
/// pictures of a few pieces, since it is made at once, some 50 ns a pixel. For the screen: other
/// devices may drop it.
void paintFigure(QPainter& painter, const QPolygonF& shape, const Wood& wood,
                 const FigureFill& fill);

/// The figure of a whole drawing.
struct DrawingFigure {
    std::vector<FiguredFace> faces;
    std::vector<Wood> woods;  ///< of the drawing
    Finish finish = Finish::Oiled;
};
/// Fills the pixels whose middle lies in a face. `corner`: the drawing's mm at the image's top left
/// corner. The image is opaque there afterwards; it has 32 bits a pixel. Made at once.
void paintFaces(QImage& image, const DrawingFigure& figure, double pixelsPerMm, Point corner);
/// The woods in the colours of the finish, without figure.
std::vector<Wood> finishedWoods(std::vector<Wood> woods, Finish finish);

}  // namespace kerfwright
