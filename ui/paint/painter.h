// The one place where a `Drawing` meets a device.
#pragma once

#include "core/drawing/drawing.h"

#include <QColor>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace kerfwright {

/// Colours for the roles of a drawing.
struct Theme {
    QColor paper, text, quiet, rule, joint, extraJoint, cut, waste, accent, warning, band;
    friend bool operator==(const Theme&, const Theme&) = default;
};

/// Black on white, for paper and for pictures of paper, in light and dark mode alike.
Theme paperTheme();
/// For drawings that lie on the window's own surfaces.
Theme windowTheme(bool dark);

/// Paints with the painter's transform, in which 1 unit is 1 mm. Touches no widget and keeps no
/// state, so it may run on any thread. Restores the painter.
void paint(QPainter& painter, const Drawing& drawing, const Theme& theme);

}  // namespace kerfwright
