// A small patch of a wood, for lists.
#pragma once

#include "core/wood/wood.h"

#include <QIcon>
#include <QWidget>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace kerfwright {

/// Sharp at the pixel ratio of `widget`, outlined for its palette.
QIcon woodChip(Colour colour, const QWidget& widget);
/// With the figure that the wood shows along the grain, as the View menu says.
QIcon woodChip(const Wood& wood, const QWidget& widget);

/// Fills a rounded rectangle with the wood in the same way; the pen draws its outline.
void paintWood(QPainter& painter, const QRectF& rect, double radius, const Wood& wood);
/// What such a patch is where it has no figure.
QColor shownColour(const Wood& wood);

}  // namespace kerfwright
