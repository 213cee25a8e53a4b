// The film of the build in the window: the row of stages below the board, the stage that is shown
// large in its place, and how both follow the steps and lead them.
#pragma once

#include "ui/window/filmmaker.h"

#include <QObject>

QT_BEGIN_NAMESPACE
class QStackedWidget;
QT_END_NAMESPACE

namespace kerfwright {

class BoardView;
class CardList;
class StageRow;
class StageView;

class BuildFilm : public QObject {
    Q_OBJECT

public:
    /// `middle` holds the board; `room` is kept free for the row from the start, so that the board
    /// does not jump when the row comes.
    BuildFilm(Planner& planner, QStackedWidget& middle, BoardView& board, QWidget& room);

    /// Makes the row. Call after the window was painted for the first time.
    void begin(CardList& steps);
    bool hasBegun() const { return steps_ != nullptr; }

    /// Whether the maker wants the row; kept in the settings.
    bool isRowWanted() const { return rowWanted_; }
    void setRowWanted(bool wanted);
    /// Whether stages come about before one's eyes; kept in the settings.
    bool isMoving() const { return moving_; }
    void setMoving(bool moving);
    void setLetters(bool on);
    /// Folds the row to names in a low window, and away in a very low one.
    void fitInto(int windowHeight);

    /// Shows the first stage, for the arrow keys to go on from.
    void play();
    void leave();
    bool isStageShown() const;
    FilmMaker* maker() const { return maker_; }
    StageRow* row() const { return row_; }
    StageView* view() const { return view_; }

Q_SIGNALS:
    void changed();
    /// The entry that a term of a working comes from.
    void termAsked(TermKind kind);

private:
    void fit();
    void refresh();
    void makeView();
    void show(int stage, bool moving);
    void picked(int stage);
    void stepChosen(int step);
    int lastStage() const;

    Planner& planner_;
    QStackedWidget& middle_;
    BoardView& board_;
    QWidget& room_;
    CardList* steps_ = nullptr;
    FilmMaker* maker_ = nullptr;
    StageRow* row_ = nullptr;
    StageView* view_ = nullptr;
    bool rowWanted_ = true;
    bool moving_ = true;
    bool letters_ = false;
    bool leading_ = false;  ///< the steps follow just now
    bool playing_ = false;  ///< the film was asked for before there was one
    int height_ = 900;
};

}  // namespace kerfwright
