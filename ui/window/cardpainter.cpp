#include "ui/window/cardpainter.h"

#include "ui/paint/painter.h"
#include "ui/window/focusring.h"
#include "ui/window/textblock.h"
#include "ui/window/tones.h"

#include <QPainter>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int outside = 4;  // between two cards, half of it on each side
constexpr int padding = 12;
constexpr int column = 28;  // of the number
constexpr int workingSize = 26;
constexpr int tickBox = 16;
constexpr int tickHeight = 26;  // of what can be pressed

QFont bigFont(const QFont& font) {
    QFont big = font;
    big.setBold(true);
    big.setPixelSize(pixelSizeOf(font) * 3 / 2);
    return big;
}

QFont boldFont(const QFont& font) {
    QFont bold = font;
    bold.setBold(true);
    return bold;
}

/// Pictures in rows, each with its title below; returns their height.
int addPictures(QPainter* painter, const std::vector<StagePicture>& pictures, QPoint corner,
                int room, const Tones& tones, const QFont& font) {
    constexpr int longest = 76;
    constexpr int gap = 10;
    const QFontMetrics metrics(font);
    int x = 0;
    int y = 0;
    int rowHeight = 0;
    for (const StagePicture& picture : pictures) {
        const Box& extent = picture.drawing.extent;
        const double scale = longest / std::max(extent.width, extent.height);
        const int width = static_cast<int>(extent.width * scale);
        const int height = static_cast<int>(extent.height * scale);
        const QString title = QString::fromStdString(picture.title);
        const int cell = std::max(width, metrics.horizontalAdvance(title));
        if (x > 0 && x + cell > room) {
            x = 0;
            y += rowHeight + gap;
            rowHeight = 0;
        }
        if (painter != nullptr) {
            painter->save();
            painter->translate(corner + QPoint(x, y));
            painter->scale(scale, scale);
            kerfwright::paint(*painter, picture.drawing, windowTheme(tones.dark));
            painter->restore();
            painter->setFont(font);
            painter->setPen(tones.quiet);
            painter->drawText(
                QRect(corner.x() + x, corner.y() + y + height + 2, cell, metrics.height()),
                Qt::AlignLeft | Qt::AlignTop, title);
        }
        rowHeight = std::max(rowHeight, height + 2 + metrics.height());
        x += cell + gap;
    }
    return pictures.empty() ? 0 : y + rowHeight + 4;
}

QString wayText(const CardWay& way) {
    return way.acts ? way.words : way.words + QStringLiteral(" ›");
}

QString tickWord() {
    return CardList::tr("Seen to");
}

/// From one way to the next.
int wayStep(const QFontMetrics& metrics) {
    return metrics.height() + 14;
}

}  // namespace

void paintTrailBar(QPainter& painter, const QRectF& row, const Tones& tones) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(tones.accent);
    painter.drawRoundedRect(QRectF(row.left() + 1, row.top() + 8, 3, row.height() - 16), 1.5, 1.5);
}

CardPainter::CardPainter(CardList* list)
    : QStyledItemDelegate(list)
    , list_(list) {}

QRect CardPainter::cardRect(const QRect& cell, const Card& card) const {
    const int above =
        card.section.isEmpty() ? 0 : QFontMetrics(boldFont(smallFont(list_->font()))).height() + 16;
    return cell.adjusted(8, outside + above, -8, -outside);
}

QRect CardPainter::tickRect(const QRect& cell, const Card& card) const {
    if (!card.ticked) {
        return QRect();
    }
    const QRect inner = cardRect(cell, card);
    const int width =
        tickBox + 7 + QFontMetrics(smallFont(list_->font())).horizontalAdvance(tickWord()) + 12;
    return QRect(inner.right() - padding - width + 6, inner.top() + padding - 5, width, tickHeight);
}

QRect CardPainter::workingRect(const QRect& cell, const Card& card) const {
    if (!card.working) {
        return QRect();
    }
    const QRect inner = cardRect(cell, card);
    // In line with the big number, or with the title where there is none.
    const int bottom = inner.bottom() - padding + 2 -
                       (card.warning.isEmpty() || card.big.isEmpty()
                            ? 0
                            : QFontMetrics(smallFont(list_->font())).height() + 4);
    const int top = card.big.isEmpty() ? inner.top() + padding - 5 : bottom - workingSize;
    return QRect(inner.right() - padding - workingSize + 8, top, workingSize, workingSize);
}

QRect CardPainter::wayRect(const QRect& cell, const Card& card, int way) const {
    const int count = static_cast<int>(card.ways.size());
    if (way < 0 || way >= count) {
        return QRect();
    }
    const QFontMetrics metrics(smallFont(list_->font()));
    const int left = cell.left() + 8 + padding + (card.number.isEmpty() ? 0 : column);
    const int room = cell.right() - 8 - padding - left;
    const int bottom = cell.bottom() - outside - padding - (count - 1 - way) * wayStep(metrics);
    const QString words = wayText(card.ways[static_cast<std::size_t>(way)]);
    // A pixel over: the width is rounded, and words that hardly do not fit would lose their end.
    return QRect(left, bottom - metrics.height() - 8,
                 std::min(room, metrics.horizontalAdvance(words) + 25), metrics.height() + 9);
}

int CardPainter::layOut(QPainter* painter, const Card& card, const QRect& cell,
                        const QPalette& palette) const {
    const Tones tones = tonesOf(palette);
    const QFont plain = list_->font();
    const QFont bold = boldFont(plain);
    const QFont small = smallFont(plain);
    const QRect inner = cardRect(cell, card);
    const int left = inner.left() + padding + (card.number.isEmpty() ? 0 : column);
    const int right = inner.right() - padding;
    TextColumn text{painter, left, inner.top() + padding};
    if (painter != nullptr && !card.number.isEmpty()) {
        painter->setFont(bold);
        painter->setPen(tones.accent);
        painter->drawText(QRect(inner.left() + padding, text.y, column, 40),
                          Qt::AlignLeft | Qt::AlignTop, card.number);
    }
    if (painter != nullptr && !card.section.isEmpty()) {
        painter->setFont(boldFont(small));
        painter->setPen(tones.quiet);
        painter->drawText(QRect(inner.left(), cell.top() + outside, inner.width(),
                                inner.top() - cell.top() - outside - 6),
                          Qt::AlignLeft | Qt::AlignBottom, card.section);
    }
    const QColor plainColour = card.isQuiet() ? tones.quiet : tones.text;
    const QColor titleColour = card.isQuiet()                     ? tones.quiet
                               : card.mood == Card::Mood::Danger  ? tones.danger
                               : card.mood == Card::Mood::Caution ? tones.caution
                                                                  : tones.text;
    const bool besideTitle = card.working && card.big.isEmpty();
    const QRect tick = tickRect(cell, card);
    text.add(card.heading(), bold, titleColour,
             besideTitle     ? right - workingSize
             : tick.isNull() ? right
                             : tick.left() - 6,
             3);
    if (!card.lapsed.isEmpty()) {
        text.add(QStringLiteral("↺ ") + card.lapsed, small, tones.caution, right, 2);
    }
    for (const QString& line : card.lines) {
        text.add(line, small, tones.quiet, right, 1);
    }
    if (card.pictures) {
        text.y += 5;
        text.y +=
            addPictures(painter, *card.pictures, QPoint(left, text.y), right - left, tones, small);
    }
    if (!card.remedy.isEmpty()) {
        text.y += 3;
        text.add(QStringLiteral("→ ") + card.remedy, small, plainColour, right, 0);
    }
    if (!card.big.isEmpty()) {
        const QFont big = bigFont(plain);
        const QFontMetrics metrics(big);
        text.y += 4;
        if (painter != nullptr) {
            const int edge = card.working ? right - workingSize + 2 : right;
            const QRect line(left, text.y, edge - left, metrics.height());
            painter->setFont(small);
            painter->setPen(tones.quiet);
            painter->drawText(line.adjusted(0, 0, 0, -3), Qt::AlignLeft | Qt::AlignBottom,
                              card.bigLabel);
            painter->setFont(big);
            painter->setPen(list_->isStale() ? tones.quiet : tones.text);
            painter->drawText(line, Qt::AlignRight | Qt::AlignBottom, card.big);
        }
        text.y += metrics.height();
    }
    if (!card.warning.isEmpty()) {
        text.y += 4;
        text.add(QStringLiteral("▲ ") + card.warning, small, tones.caution, right, 0);
    }
    const int count = static_cast<int>(card.ways.size());
    if (count > 0) {
        text.y += 6 + count * wayStep(QFontMetrics(small)) - 5;
    }
    for (int way = 0; painter != nullptr && way < count; ++way) {
        const CardWay& one = card.ways[static_cast<std::size_t>(way)];
        const QRect place = wayRect(cell, card, way);
        QRect inside = place;
        if (one.acts) {
            painter->setPen(QPen(list_->isStale() ? tones.edge : tones.accent, 1));
            painter->setBrush(tones.soft);
            painter->drawRoundedRect(QRectF(place).adjusted(0.5, 0.5, -0.5, -0.5), 5, 5);
            inside.adjust(12, 0, -12, 0);
        }
        painter->setFont(small);
        painter->setPen(one.acts ? (list_->isStale() ? tones.quiet : plainColour) : tones.accent);
        painter->drawText(
            inside, Qt::AlignLeft | Qt::AlignVCenter,
            QFontMetrics(small).elidedText(wayText(one), Qt::ElideRight, inside.width()));
    }
    return text.y + padding + outside - cell.top();
}

void CardPainter::paintTick(QPainter& painter, const QRect& cell, const Card& card,
                            const Tones& tones) const {
    const QRect place = tickRect(cell, card);
    const bool isOver = place.contains(list_->viewport()->mapFromGlobal(QCursor::pos()));
    if (isOver) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(tones.soft);
        painter.drawRoundedRect(place, 5, 5);
    }
    const QRectF box(place.left() + 6, place.top() + (tickHeight - tickBox) / 2.0, tickBox,
                     tickBox);
    painter.setPen(QPen(isOver ? tones.accent : tones.rim, 1.2));
    painter.setBrush(tones.entry);
    painter.drawRoundedRect(box.adjusted(0.6, 0.6, -0.6, -0.6), 3, 3);
    if (card.isQuiet()) {
        painter.setPen(QPen(tones.accent, 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        painter.setBrush(Qt::NoBrush);
        painter.drawPolyline(QPolygonF{box.topLeft() + QPointF(3.6, 8.4),
                                       box.topLeft() + QPointF(6.6, 11.4),
                                       box.topLeft() + QPointF(12.2, 4.8)});
    }
    painter.setFont(smallFont(list_->font()));
    painter.setPen(isOver ? tones.text : tones.quiet);
    painter.drawText(place.adjusted(6 + tickBox + 7, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                     tickWord());
}

QSize CardPainter::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const int width = list_->viewport()->width();
    const Card& card = list_->card(index.row());
    return QSize(width, layOut(nullptr, card, QRect(0, 0, width, 0), option.palette));
}

void CardPainter::paint(QPainter* painter, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const {
    const Tones tones = tonesOf(option.palette);
    const Card& card = list_->card(index.row());
    const QRectF frame = QRectF(cardRect(option.rect, card)).adjusted(0.5, 0.5, -0.5, -0.5);
    const bool chosen = list_->chosenCard() == index.row();
    painter->save();
    painter->setLayoutDirection(option.direction);
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(chosen ? QPen(tones.accent, 1.6) : QPen(tones.edge, 1));
    painter->setBrush(card.isQuiet() ? tones.surface : tones.entry);
    painter->drawRoundedRect(frame, 6, 6);
    if (list_->hasFocus() && list_->currentIndex() == index) {
        paintFocusRing(*painter, frame.adjusted(2, 2, -2, -2), tones);
    }
    if (list_->isMarked(index.row())) {
        paintTrailBar(*painter, frame, tones);
    }
    layOut(painter, card, option.rect, option.palette);
    if (card.ticked) {
        paintTick(*painter, option.rect, card, tones);
    }
    const QRect working = workingRect(option.rect, card);
    if (!working.isNull()) {
        const QPoint pointer = list_->viewport()->mapFromGlobal(QCursor::pos());
        if (working.contains(pointer)) {
            painter->setPen(Qt::NoPen);
            painter->setBrush(tones.soft);
            painter->drawRoundedRect(working, 5, 5);
        }
        painter->setFont(boldFont(list_->font()));
        painter->setPen(tones.accent);
        painter->drawText(working, Qt::AlignCenter, QStringLiteral("="));
    }
    painter->restore();
}

}  // namespace kerfwright
