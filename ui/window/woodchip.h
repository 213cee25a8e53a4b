// A small patch of a wood, for lists.
#pragma once

#include "core/drawing/colour.h"

#include <QIcon>
#include <QWidget>

namespace kerfwright {

/// Sharp at the pixel ratio of `widget`, outlined for its palette.
QIcon woodChip(Colour colour, const QWidget& widget);

}  // namespace kerfwright
