// Plans several boards together, beside the window.
#pragma once

#include "core/batch/batch.h"
#include "ui/document/background.h"

#include <QObject>
#include <QString>

#include <memory>
#include <vector>

namespace kerfwright {

class Batcher : public QObject {
    Q_OBJECT

public:
    explicit Batcher(QObject* parent = nullptr);

    bool isWorking() const { return work_.isWorking(); }
    /// Share of the work, 0 to 1.
    double progress() const { return progress_; }
    /// Null before there is one, and where there is none for the boards asked for: `fault()`.
    std::shared_ptr<const Batch> last() const { return last_; }
    QString fault() const { return fault_; }

    /// At least one board; the first lends its shop and its rack.
    void plan(std::vector<Project> projects);
    /// Ends the search with the best so far.
    void stop() { work_.stop(); }
    void forget();

Q_SIGNALS:
    void changed();

private:
    double progress_ = 0;
    std::shared_ptr<const Batch> last_;
    QString fault_;
    Background work_;
};

}  // namespace kerfwright
