// The panels at the sides of the board: open or folded away, as the maker likes and as far as the
// window is wide enough; and the way from one to the next by key.
#pragma once

#include <QObject>

#include <array>

QT_BEGIN_NAMESPACE
class QSplitter;
class QStackedWidget;
class QWidget;
QT_END_NAMESPACE

namespace kerfwright {

class Panels : public QObject {
    Q_OBJECT

public:
    enum Side { Wish, Bench };

    /// `splitter` holds the wish, what stands round `board`, and the bench, in this order.
    Panels(QSplitter& splitter, QWidget& wish, QWidget& board, QWidget& bench);

    /// What the board stands in, where something else may be shown in its place.
    void setPlaceOfBoard(QStackedWidget& place) { place_ = &place; }

    bool isOpen(Side side) const;
    /// In which all that the bench has is just in sight, and in which it stands at its ease.
    void setRoomOfBench(int least, int comfortable);
    /// As the maker asks. Where there is room for one only, the other is folded away.
    void setOpen(Side side, bool open);
    /// Folds away what has no room in a window of `width` pixels, and opens it again later.
    void fitInto(int width);
    /// Moves the focus to the next or the previous of wish, board and bench that is open.
    void goOn(bool forward);
    /// Makes the panel that has the focus wider by so many pixels, or narrower: what the mouse does
    /// at its edge.
    void widen(int by);

    /// In the program's settings.
    void save() const;
    void restore();

Q_SIGNALS:
    void changed();

private:
    struct Panel {
        QWidget* widget;
        bool wanted;       ///< by the maker, whether there is room for it or not
        int width;         ///< when it was last open
        bool own = false;  ///< the maker made it as wide as it is
    };

    int room() const;
    /// As long as the maker has not made it wider or narrower.
    int usualWidth(Side side, int window) const;
    /// The board, or what is shown in its place.
    QWidget& middle() const;
    void apply();

    QSplitter& splitter_;
    QWidget& board_;
    QStackedWidget* place_ = nullptr;
    std::array<Panel, 2> panels_;
    Side latest_ = Wish;  ///< opened last; stays where there is room for one only
    int width_ = 1440;    ///< of the window
    int snugBench_ = 0;
    int easyBench_ = 0;
};

}  // namespace kerfwright
