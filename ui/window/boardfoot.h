// Below the board: chips to paint with, a line that says what the mouse and the keys do just now,
// and the seasons, or what is marked. Its height never depends on what is marked, so that the board
// stays put.
#pragma once

#include "ui/document/planner.h"
#include "ui/window/boardeditor.h"

#include <QWidget>

namespace kerfwright {

class BoardView;
class ChipBar;
class FaultNote;
class MarkBar;
class RegionActions;
class SeasonBar;

class BoardFoot : public QWidget {
    Q_OBJECT

public:
    BoardFoot(Document& document, Planner& planner, BoardEditor& editor, BoardView& board,
              QWidget* parent = nullptr);

    RegionActions& regionActions() { return *actions_; }

    /// In a low window all of it shares one row, where that is wide enough.
    void setLow(bool low);
    QSize sizeHint() const override { return QSize(400, height()); }
    QSize minimumSizeHint() const override { return QSize(240, height()); }

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QString hint() const;
    QString shortened(const QString& words) const;
    void place();

    Document& document_;
    BoardEditor& editor_;
    BoardView& board_;
    RegionActions* actions_;
    ChipBar* chips_;
    FaultNote* hint_;
    SeasonBar* season_;  ///< where the marks are, as long as there are none
    MarkBar* marks_;
    bool low_ = false;
};

}  // namespace kerfwright
