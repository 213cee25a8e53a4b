// Looks for all ways to glue the board, on a thread of its own and only when asked: the search can
// take a second. What was found stays until the wish changes.
#pragma once

#include "core/bench/alternatives.h"
#include "ui/document/planner.h"

#include <QObject>
#include <QThreadPool>

#include <atomic>
#include <memory>

namespace kerfwright {

class Comparer : public QObject {
    Q_OBJECT

public:
    struct Compared {
        ProjectPtr project;
        Alternatives ways;
    };
    enum class State { Idle, Working, Done, Impossible };

    explicit Comparer(Planner& planner, QObject* parent = nullptr);
    ~Comparer() override;

    State state() const { return state_; }
    /// The last comparison; it may be of an older wish while a new one is made. Null before.
    std::shared_ptr<const Compared> last() const { return last_; }
    QString fault() const { return fault_; }
    SearchProgress progress() const { return progress_; }

    /// Compares the ways to glue the planned board, unless that is done or under way.
    void compare();
    /// Ends the search with what it has.
    void stop() { stopAsked_ = true; }

Q_SIGNALS:
    void changed();

private:
    void wishChanged();
    void finished(quint64 generation, const std::shared_ptr<const Compared>& compared,
                  const QString& fault);

    Planner& planner_;
    QThreadPool pool_;
    State state_ = State::Idle;
    std::shared_ptr<const Compared> last_;
    ProjectPtr asked_;
    QString fault_;
    SearchProgress progress_;
    std::atomic<bool> stopAsked_ = false;
    quint64 generation_ = 0;
    bool running_ = false;
    bool again_ = false;
};

}  // namespace kerfwright
