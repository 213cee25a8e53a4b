#include "ui/window/textblock.h"

#include <QFontInfo>
#include <QFontMetrics>
#include <QPainter>

#include <algorithm>

namespace kerfwright {

void TextColumn::add(const QString& words, const QFont& font, const QColor& colour, int right,
                     int gap) {
    const QRect room(left, y, std::max(20, right - left), 10000);
    const QRect used = QFontMetrics(font).boundingRect(room, Qt::TextWordWrap, words);
    if (painter != nullptr) {
        painter->setFont(font);
        painter->setPen(colour);
        // A paragraph runs the way of its own words.
        const Qt::LayoutDirection before = painter->layoutDirection();
        painter->setLayoutDirection(words.isRightToLeft() ? Qt::RightToLeft : Qt::LeftToRight);
        painter->drawText(room, Qt::TextWordWrap, words);
        painter->setLayoutDirection(before);
    }
    y += used.height() + gap;
}

QFont smallFont(const QFont& font) {
    QFont small = font;
    small.setPixelSize(std::max(11, QFontInfo(font).pixelSize() - 1));
    return small;
}

}  // namespace kerfwright
