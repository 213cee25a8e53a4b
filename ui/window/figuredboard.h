// A small board with figure, made in one go: for pictures that are made beside the window and kept.
#pragma once

#include "core/project/project.h"
#include "ui/paint/figure.h"

#include <QImage>

namespace kerfwright {

/// `scale` in pixels per mm, `ratio` device pixels per pixel. As `paintBoard` paints it, so that
/// one can take the other's place, but each piece has figure of its own. Touches no widget; up to
/// 50 ns a device pixel.
QImage figuredBoard(const Project& project, const Surround& surround, double scale, double ratio,
                    Finish finish);

}  // namespace kerfwright
