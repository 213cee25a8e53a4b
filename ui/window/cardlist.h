// A list of cards: steps, cautions. One view paints them all, so that a plan of hundreds of steps
// costs no widgets.
#pragma once

#include "core/sheets/stagepictures.h"
#include "ui/window/keylist.h"

#include <QAbstractListModel>
#include <QString>
#include <QStringList>

#include <memory>
#include <optional>
#include <set>
#include <vector>

namespace kerfwright {

/// Something to press at the foot of a card.
struct CardWay {
    QString words;
    bool acts = false;  ///< changes the board, and looks like a button; else leads somewhere else
    friend bool operator==(const CardWay&, const CardWay&) = default;
};

struct Card {
    enum class Mood { Plain, Note, Caution, Danger };
    QString number;
    QString title;
    QStringList lines;
    QString bigLabel;
    QString big;
    QString warning;                 ///< with a triangle, in the colour of cautions
    QString remedy;                  ///< what to do, after an arrow
    std::vector<CardWay> ways = {};  ///< one below the other
    bool working = false;            ///< has numbers whose working can be opened
    /// Small pictures in a row, below the lines; wrapped where there is no room for all.
    std::shared_ptr<const std::vector<StagePicture>> pictures = {};
    Mood mood = Mood::Plain;
    /// Whether it is ticked as seen to; empty: it has no tick. One that is ticked looks quiet.
    std::optional<bool> ticked = {};
    QString lapsed = {};   ///< below the title: why a tick of before does not count
    QString section = {};  ///< a heading above it, with which other cards begin
    friend bool operator==(const Card&, const Card&) = default;
    bool isQuiet() const { return ticked.value_or(false); }
    /// The title, after a word for the mood: colour alone would not tell it.
    QString heading() const;
    /// Everything on it, for screen readers.
    QString spoken() const;
};

class CardModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;
    int rowCount(const QModelIndex& parent = QModelIndex()) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    const Card& card(int row) const { return cards_[static_cast<std::size_t>(row)]; }
    void setCards(std::vector<Card> cards);

private:
    std::vector<Card> cards_;
};

class CardList : public KeyList {
    Q_OBJECT

public:
    explicit CardList(QWidget* parent = nullptr);

    /// Keeps the chosen card where it has the same place and title.
    void setCards(std::vector<Card> cards);
    int count() const { return model_->rowCount(); }
    const Card& card(int row) const { return model_->card(row); }
    /// -1 where none is chosen. The card that the keys stand on is not chosen by that alone.
    int chosenCard() const;
    /// -1 lets go of the choice.
    void choose(int row);
    /// The keys stand on that card, without choosing it; -1: on none.
    void goTo(int row);
    /// Cards with a quiet bar at their side.
    void setMarked(const std::set<int>& rows);
    bool isMarked(int row) const { return marked_.contains(row); }
    /// What the list says where there are no cards.
    void setEmptyText(const QString& text);
    const QString& emptyText() const { return emptyText_; }
    /// The cards are of a plan that is out of date.
    void setStale(bool stale);
    bool isStale() const { return stale_; }
    /// Where the "=" of a card is painted, in the viewport.
    QRect workingRect(int row) const;
    /// Where one of the ways is painted, in the viewport; null where the card has none.
    QRect wayRect(int row, int way = 0) const;
    /// Where the tick of a card is painted, in the viewport; null where it has none.
    QRect tickRect(int row) const;

Q_SIGNALS:
    /// -1 where the choice was given up.
    void chosen(int row);
    void workingAsked(int row);
    void wayAsked(int row, int way);
    void tickAsked(int row);

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    QItemSelectionModel::SelectionFlags selectionCommand(const QModelIndex& index,
                                                         const QEvent* event) const override;

private:
    /// The way of that card which is painted there; -1: none.
    int wayAt(int row, QPoint at) const;

    CardModel* model_;
    std::set<int> marked_;
    QString emptyText_;
    bool stale_ = false;
    int pressedWorking_ = -1;
    int pressedTick_ = -1;
    int pressedWay_ = -1;  ///< of the card `pressedCard_`
    int pressedCard_ = -1;
};

}  // namespace kerfwright
