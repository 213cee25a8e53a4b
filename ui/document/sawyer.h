// Keeps a layout of the board's strips on the maker's planks, beside the window: on a thread of its
// own, and only once somebody asked for one. Better layouts are shown as they are found; a stopped
// search keeps the best so far. What was found stays, marked as stale, until there is a newer one.
#pragma once

#include "core/timber/timber.h"
#include "ui/document/planner.h"

#include <QObject>
#include <QThreadPool>
#include <QTimer>

#include <atomic>
#include <chrono>
#include <memory>

namespace kerfwright {

/// A timber plan together with the project and the plan that it is for.
struct Sawn {
    ProjectPtr project;
    PlannedPtr planned;
    TimberPlan plan;
    bool isFinal = true;  ///< else only demand, rules and the best layout so far are filled in
};
using SawnPtr = std::shared_ptr<const Sawn>;

class Sawyer : public QObject {
    Q_OBJECT

public:
    enum class State {
        Asleep,      ///< nobody asked yet
        Working,     ///< the layout for the project as it stands is being made
        Current,     ///< `last()` is the layout for the project as it stands
        Impossible,  ///< there is no plan to lay out, or the rack has faults: `fault()`
    };

    /// A burst of edits is laid out once, `delay` after the last.
    Sawyer(Document& document, Planner& planner, std::chrono::milliseconds delay,
           QObject* parent = nullptr);
    ~Sawyer() override;

    State state() const { return state_; }
    bool isAwake() const { return state_ != State::Asleep; }
    /// The last layout, or the best so far of the one in the making; null before the first.
    SawnPtr last() const { return last_; }
    QString fault() const { return fault_; }
    /// Share of the work, 0 to 1.
    double progress() const { return progress_; }

    /// From now on there is a layout for every project.
    void wake();
    /// Ends the search with the best so far.
    void stop() { stopAsked_ = true; }

Q_SIGNALS:
    void changed();

private:
    void wishChanged();
    void run();
    void cancel();
    void told(quint64 generation, double done, const SawnPtr& better);
    void finished(quint64 generation, const SawnPtr& sawn, const QString& fault);

    Document& document_;
    Planner& planner_;
    QTimer delay_;
    QThreadPool pool_;
    State state_ = State::Asleep;
    SawnPtr last_;
    ProjectPtr project_;  ///< what the layout at hand or in the making is for
    PlannedPtr planned_;
    QString fault_;
    double progress_ = 0;
    std::atomic<bool> stopAsked_ = false;  ///< keep the best so far
    std::atomic<bool> cancelled_ = false;  ///< nobody wants the result
    std::atomic<bool> telling_ = false;    ///< a report is on its way to the window
    quint64 generation_ = 0;
    bool running_ = false;
};

}  // namespace kerfwright
