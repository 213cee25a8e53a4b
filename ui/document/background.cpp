#include "ui/document/background.h"

#include <QMetaObject>

#include <utility>

namespace kerfwright {

void Errand::say(std::function<void()> action) const {
    QMetaObject::invokeMethod(
        background_,
        [errand = *this, action = std::move(action)] {
            if (errand.stopAsked_ == errand.background_->current_.stopAsked_) {
                action();
            }
        },
        Qt::QueuedConnection);
}

void Errand::mention(std::function<void()> action) const {
    if (!mentioning_->exchange(true)) {
        say([mentioning = mentioning_, action = std::move(action)] {
            *mentioning = false;
            action();
        });
    }
}

Background::Background(QObject* parent)
    : QObject(parent) {
    pool_.setMaxThreadCount(1);
}

Background::~Background() {
    stop();
    pool_.waitForDone();
}

void Background::stop() {
    *current_.stopAsked_ = true;
}

void Background::drop() {
    stop();
    current_ = Errand();
    isWorking_ = false;
}

void Background::begin(std::function<void(const Errand&)> work) {
    drop();
    current_.background_ = this;
    isWorking_ = true;
    pool_.start([errand = current_, work = std::move(work)] {
        work(errand);
        errand.say([background = errand.background_] {
            background->isWorking_ = false;
            Q_EMIT background->ended();
        });
    });
}

}  // namespace kerfwright
