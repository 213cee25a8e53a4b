// Keeps a proven plan beside the document. Planning runs on a thread of its own; the last good plan
// stays at hand, marked as stale, while a new one is made and when the wish cannot be built.
#pragma once

#include "core/bench/job.h"
#include "ui/document/document.h"

#include <QObject>
#include <QThreadPool>
#include <QTimer>

#include <chrono>
#include <memory>

namespace kerfwright {

/// A job together with the project it is for.
struct Planned {
    ProjectPtr project;
    Job job;
};
using PlannedPtr = std::shared_ptr<const Planned>;

class Planner : public QObject {
    Q_OBJECT

public:
    enum class State {
        Working,     ///< the plan for the project as it stands is being made
        Current,     ///< `last()` is the plan for the project as it stands
        Impossible,  ///< the project cannot be planned; `fault()` says why
    };

    /// A burst of edits is planned once, `delay` after the last.
    explicit Planner(Document& document, std::chrono::milliseconds delay,
                     QObject* parent = nullptr);
    ~Planner() override;

    State state() const { return state_; }
    /// The last good plan; null where there was none since the document was opened.
    PlannedPtr last() const { return last_; }
    /// Why there is no plan, in words; empty unless `Impossible`.
    QString fault() const { return fault_; }

Q_SIGNALS:
    void changed();

private:
    void wishChanged();
    void run();
    void finished(quint64 generation, const PlannedPtr& planned, const QString& fault);

    Document& document_;
    QTimer delay_;
    QThreadPool pool_;
    State state_ = State::Working;
    PlannedPtr last_;
    ProjectPtr asked_;  ///< what the plan at hand or in the making is for
    QString fault_;
    quint64 generation_ = 0;
    bool running_ = false;
};

}  // namespace kerfwright
