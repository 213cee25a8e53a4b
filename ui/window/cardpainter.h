// How a card looks.
#pragma once

#include "ui/window/cardlist.h"

#include <QStyledItemDelegate>

namespace kerfwright {

struct Tones;

/// The quiet bar along the left of a row that belongs to what is chosen elsewhere.
void paintTrailBar(QPainter& painter, const QRectF& row, const Tones& tones);

class CardPainter : public QStyledItemDelegate {
    Q_OBJECT

public:
    explicit CardPainter(CardList* list);
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    /// Of the "=" on a card that fills `cell`.
    QRect workingRect(const QRect& cell, const Card& card) const;
    /// Of one of the ways at the foot of such a card.
    QRect wayRect(const QRect& cell, const Card& card, int way) const;
    /// Of the tick on such a card, with its word; null where it has none.
    QRect tickRect(const QRect& cell, const Card& card) const;

private:
    /// What is left of the cell for the card, below the heading that stands above some.
    QRect cardRect(const QRect& cell, const Card& card) const;
    void paintTick(QPainter& painter, const QRect& cell, const Card& card,
                   const Tones& tones) const;

    /// Paints where `painter` is not null; returns the height that the card needs in `width`.
    int layOut(QPainter* painter, const Card& card, const QRect& cell,
               const QPalette& palette) const;

    CardList* list_;
};

}  // namespace kerfwright
