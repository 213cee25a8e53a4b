// Paragraphs one below the other, painted, or only measured where there is no painter.
#pragma once

#include <QColor>
#include <QFont>
#include <QString>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace kerfwright {

/// Where the next paragraph begins; a list's delegate lays out and paints with the same calls.
struct TextColumn {
    QPainter* painter;  ///< null: measure
    int left;
    int y;

    /// Adds `words`, wrapped at `right`, and `gap` pixels of room below.
    void add(const QString& words, const QFont& font, const QColor& colour, int right, int gap);
};

/// Of the letters, without a look at the fonts that there are.
int pixelSizeOf(const QFont& font);
/// A pixel smaller than `font`, and still readable.
QFont smallFont(const QFont& font);

}  // namespace kerfwright
