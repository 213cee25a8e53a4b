// Where the keys are, shown the same way everywhere.
#pragma once

#include "ui/window/tones.h"

#include <QPainter>

namespace kerfwright {

/// Begins to notice whether keys or mouse are at work; so far neither is.
void watchKeysAndMouse();
/// Whether a key that goes somewhere was pressed after the mouse was.
bool focusIsByKeys();

/// After a click one knows where the keys are; in an entry they are wanted all the same.
enum class FocusRing { ByKeys, Always };

/// A solid ring of two pixels just inside of `rect`: seen on every ground of the palette, and
/// beside a thinner line that says what is chosen (WCAG 2.1, 2.4.7 and 1.4.11). After a click it is
/// a hairline, until the keys go on.
void paintFocusRing(QPainter& painter, const QRectF& rect, const Tones& tones, double radius = 4,
                    FocusRing ring = FocusRing::ByKeys);

}  // namespace kerfwright
