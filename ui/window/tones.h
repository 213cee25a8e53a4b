// The few colours of the window beside the palette's own, all derived from the palette in force.
#pragma once

#include <QColor>
#include <QPalette>

namespace kerfwright {

struct Tones {
    QColor surface;   ///< panels
    QColor surround;  ///< around the board
    QColor entry;     ///< ground of entries and cards
    QColor text;
    QColor quiet;  ///< secondary text
    QColor edge;   ///< hairlines, which mean nothing
    QColor rim;    ///< edges of controls: at least 3 : 1 on every ground (WCAG 2.1, 1.4.11)
    QColor accent;
    QColor soft;  ///< accent, as a ground
    QColor caution;
    QColor danger;
    bool dark = false;
};

bool isDark(const QPalette& palette);
Tones tonesOf(const QPalette& palette);
/// `a` with `share` (0 to 1) of `b` in it.
QColor mixed(const QColor& a, const QColor& b, double share);
/// The outline of a patch of `wood` on the form, seen on the wood and on the form, light or dark.
QColor outlineOf(const QColor& wood, const Tones& tones);
/// Dark or light, whichever reads better on `ground`.
QColor readableOn(const QColor& ground);
/// Contrast ratio, 1 to 21 (WCAG 2.1).
double contrast(const QColor& a, const QColor& b);

}  // namespace kerfwright
