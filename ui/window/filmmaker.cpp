#include "ui/window/filmmaker.h"

#include <QMetaObject>

namespace kerfwright {

namespace {

constexpr int afterTyping = 120;  // milliseconds without a new plan

}  // namespace

FilmMaker::FilmMaker(Planner& planner, QObject* parent)
    : QObject(parent)
    , planner_(planner) {
    pool_.setMaxThreadCount(1);
    pool_.setThreadPriority(QThread::LowPriority);
    delay_.setSingleShot(true);
    delay_.setInterval(afterTyping);
    connect(&delay_, &QTimer::timeout, this, &FilmMaker::run);
    connect(&planner, &Planner::changed, this, &FilmMaker::planChanged);
}

FilmMaker::~FilmMaker() {
    pool_.waitForDone();
}

void FilmMaker::setWanted(bool wanted) {
    wanted_ = wanted;
    if (wanted_ && !delay_.isActive()) {
        run();
    }
}

bool FilmMaker::isCurrent() const {
    return film_ && film_->planned == planner_.last() &&
           planner_.state() == Planner::State::Current;
}

void FilmMaker::planChanged() {
    if (!planner_.last() && film_) {
        film_.reset();
    } else if (film_) {
        delay_.start();
    } else {
        run();  // the first one is waited for
    }
    Q_EMIT changed();
}

void FilmMaker::run() {
    const PlannedPtr planned = planner_.last();
    if (!wanted_ || running_ || !planned || (film_ && film_->planned == planned)) {
        return;
    }
    running_ = true;
    pool_.start([this, planned] {
        auto made = std::make_shared<const MadeFilm>(
            MadeFilm{planned, makeFilm(*planned->project, planned->job)});
        QMetaObject::invokeMethod(
            this,
            [this, made] {
                running_ = false;
                if (made->planned == planner_.last()) {
                    film_ = made;
                    Q_EMIT changed();
                } else {
                    run();
                }
            },
            Qt::QueuedConnection);
    });
}

}  // namespace kerfwright
