#include "ui/window/textblock.h"

#include <QFontMetrics>
#include <QGuiApplication>
#include <QPainter>
#include <QScreen>

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

int pixelSizeOf(const QFont& font) {
    if (font.pixelSize() > 0) {
        return font.pixelSize();
    }
    // As Qt reckons it. QFontInfo would first look for the font, which at the start takes as long
    // as all the rest.
    constexpr double pointsPerInch = 72;
    return qRound(font.pointSizeF() * QGuiApplication::primaryScreen()->logicalDotsPerInchY() /
                  pointsPerInch);
}

QFont smallFont(const QFont& font) {
    QFont small = font;
    small.setPixelSize(std::max(11, pixelSizeOf(font) - 1));
    return small;
}

}  // namespace kerfwright
