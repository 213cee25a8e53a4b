#include "ui/window/buildfilm.h"

#include "ui/window/boardview.h"
#include "ui/window/cardlist.h"
#include "ui/window/stagerow.h"
#include "ui/window/stageview.h"

#include <QApplication>
#include <QSettings>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace kerfwright {

namespace {

constexpr int lowWindow = 760;      // below it the row is one line of names
constexpr int veryLowWindow = 600;  // below it there is none

QString rowKey() {
    return QStringLiteral("stages/row");
}
QString movingKey() {
    return QStringLiteral("stages/moving");
}

}  // namespace

BuildFilm::BuildFilm(Planner& planner, QStackedWidget& middle, BoardView& board, QWidget& room)
    : QObject(&middle)
    , planner_(planner)
    , middle_(middle)
    , board_(board)
    , room_(room) {
    const QSettings settings;
    rowWanted_ = settings.value(rowKey(), true).toBool();
    moving_ = settings.value(movingKey(), true).toBool();
    room_.setObjectName(QStringLiteral("stageRoom"));
    fit();
}

void BuildFilm::begin(CardList& steps) {
    if (hasBegun()) {
        return;
    }
    steps_ = &steps;
    maker_ = new FilmMaker(planner_, this);
    row_ = new StageRow(&room_);
    row_->setLetters(letters_);
    auto* layout = new QVBoxLayout(&room_);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(row_);
    connect(maker_, &FilmMaker::changed, this, &BuildFilm::refresh);
    connect(row_, &StageRow::picked, this, &BuildFilm::picked);
    connect(row_, &StageRow::left, this, &BuildFilm::leave);
    connect(steps_, &CardList::chosen, this, &BuildFilm::stepChosen);
    row_->show();
    fit();
}

int BuildFilm::lastStage() const {
    const FilmPtr film = maker_->film();
    return film ? static_cast<int>(film->film.stages.size()) - 1 : -1;
}

void BuildFilm::setRowWanted(bool wanted) {
    if (wanted != rowWanted_) {
        rowWanted_ = wanted;
        QSettings().setValue(rowKey(), wanted);
        fit();
        Q_EMIT changed();
    }
}

void BuildFilm::setMoving(bool moving) {
    if (moving != moving_) {
        moving_ = moving;
        QSettings().setValue(movingKey(), moving);
        Q_EMIT changed();
    }
}

void BuildFilm::setLetters(bool on) {
    letters_ = on;
    if (row_ != nullptr) {
        row_->setLetters(on);
    }
    if (view_ != nullptr) {
        view_->setLetters(on);
    }
}

void BuildFilm::fitInto(int windowHeight) {
    height_ = windowHeight;
    fit();
}

void BuildFilm::fit() {
    const bool slim = height_ < lowWindow;
    const bool there = rowWanted_ && height_ >= veryLowWindow;
    if (!there && row_ != nullptr && row_->hasFocus()) {
        middle_.currentWidget()->setFocus(Qt::OtherFocusReason);
    }
    room_.setFixedHeight(slim ? StageRow::slimHeight : StageRow::tallHeight);
    room_.setVisible(there);
    if (row_ != nullptr) {
        row_->setSlim(slim);
        maker_->setWanted(there || isStageShown() || playing_);
    }
}

bool BuildFilm::isStageShown() const {
    return view_ != nullptr && middle_.currentWidget() == view_;
}

void BuildFilm::refresh() {
    const FilmPtr film = maker_->film();
    const bool current = maker_->isCurrent();
    const bool other = film != row_->stages().film();
    row_->setFilm(film, current);
    if (other && film && steps_->chosenCard() >= 0) {
        row_->setMarked(stageOf(film->film, steps_->chosenCard()));
    }
    if (!film) {
        if (isStageShown()) {
            leave();
        }
        return;
    }
    if (playing_) {
        playing_ = false;
        row_->choose(0);
        show(0, false);
        view_->setFocus(Qt::OtherFocusReason);
    } else if (isStageShown()) {
        const FilmPtr before = view_->film();
        const auto at = static_cast<std::size_t>(view_->stage());
        const int again = before ? stageOf(film->film, before->film.stages[at].key) : 0;
        view_->setFilm(film, current);
        if (again < 0) {
            leave();  // a panel that there is no more
        } else if (film != before) {
            view_->showStage(again, false);
            row_->choose(again);
        }
    } else {
        row_->choose(lastStage(), false);
    }
}

void BuildFilm::makeView() {
    if (view_ == nullptr) {
        view_ = new StageView(&middle_);
        view_->setLetters(letters_);
        middle_.addWidget(view_);
        connect(view_, &StageView::stepAsked, this, [this](int stage) {
            row_->choose(stage);
            picked(stage);
        });
        connect(view_, &StageView::leaveAsked, this, &BuildFilm::leave);
        connect(view_, &StageView::termAsked, this, &BuildFilm::termAsked);
    }
}

void BuildFilm::play() {
    if (!hasBegun()) {
        return;
    }
    if (maker_->film()) {
        row_->choose(0);
        picked(0);
        view_->setFocus(Qt::OtherFocusReason);
    } else {
        playing_ = true;
        fit();
    }
}

void BuildFilm::show(int stage, bool moving) {
    makeView();
    view_->setFilm(maker_->film(), maker_->isCurrent());
    view_->showStage(stage, moving);
    maker_->setWanted(true);  // nobody may have looked for a while
    const bool before = isStageShown();
    // The focus goes on from the board to what stands in its place.
    const bool focus = board_.hasFocus();
    middle_.setCurrentWidget(view_);
    if (focus) {
        view_->setFocus(Qt::OtherFocusReason);
    }
    if (!before) {
        Q_EMIT changed();
    }
}

void BuildFilm::picked(int stage) {
    if (!maker_->film()) {
        return;
    }
    if (stage == lastStage()) {
        // The finished board is the board itself. Who stepped there goes back from the row.
        const QWidget* focus = QApplication::focusWidget();
        const bool stepped = row_->hasFocus() || (view_ != nullptr && focus != nullptr &&
                                                  (view_ == focus || view_->isAncestorOf(focus)));
        leave();
        if (stepped && room_.isVisible()) {
            row_->setFocus(Qt::OtherFocusReason);
        }
        return;
    }
    show(stage, moving_);
    leading_ = true;
    const std::vector<int>& steps =
        maker_->film()->film.stages[static_cast<std::size_t>(stage)].steps;
    const std::set<int> marked(steps.begin(), steps.end());
    if (!marked.contains(steps_->chosenCard())) {
        steps_->choose(-1);
    }
    steps_->setMarked(marked);
    leading_ = false;
}

void BuildFilm::leave() {
    if (!hasBegun()) {
        return;
    }
    const bool shown = isStageShown();
    const QWidget* focus = QApplication::focusWidget();
    const bool back = row_->hasFocus() ||
                      (shown && focus != nullptr && (view_ == focus || view_->isAncestorOf(focus)));
    if (shown) {
        steps_->setMarked({});
        middle_.setCurrentWidget(&board_);
    }
    if (lastStage() >= 0) {
        row_->choose(lastStage(), false);
    }
    if (back) {
        board_.setFocus(Qt::OtherFocusReason);
    }
    if (shown) {
        fit();
        Q_EMIT changed();
    }
}

void BuildFilm::stepChosen(int step) {
    if (leading_ || !maker_->film()) {
        return;
    }
    const int stage = step >= 0 ? stageOf(maker_->film()->film, step) : -1;
    row_->setMarked(stage);
    if (stage >= 0 && isStageShown() && stage != view_->stage()) {
        row_->choose(stage);
        view_->showStage(stage, false);
        const std::vector<int>& steps =
            maker_->film()->film.stages[static_cast<std::size_t>(stage)].steps;
        steps_->setMarked(std::set<int>(steps.begin(), steps.end()));
    }
}

}  // namespace kerfwright
