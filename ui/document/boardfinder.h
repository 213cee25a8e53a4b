// Looks, beside the window, for the boards that a rack suffices for: the largest of the board that
// is open, and which of a list of boards can be made at all.
#pragma once

#include "core/bench/largestboard.h"
#include "ui/document/background.h"
#include "ui/document/planner.h"

#include <QObject>

#include <memory>
#include <optional>
#include <vector>

namespace kerfwright {

/// What a project's board wants of a rack in the project's own shop.
Result<Demand> demandOfBoard(const Project& project);

class BoardFinder : public QObject {
    Q_OBJECT

public:
    struct Candidate {
        QString key;  ///< of whoever asked
        QString name;
        std::shared_ptr<const Project> project;
    };
    struct Verdict {
        QString key, name;
        int strips = 0;
        int missing = 0;
        bool isSure = false;  ///< no layout has fewer missing
        QString fault;        ///< it cannot be planned in this shop
        bool fits() const { return fault.isEmpty() && missing == 0; }
    };

    explicit BoardFinder(QObject* parent = nullptr);

    bool isWorking() const { return work_.isWorking(); }
    double progress() const { return progress_; }
    /// Of the last search; empty where nothing was found, or the search was for verdicts.
    const std::optional<LargestBoard>& largest() const { return largest_; }
    /// Why there is no largest board, in words.
    QString fault() const { return fault_; }
    const std::vector<Verdict>& verdicts() const { return verdicts_; }

    void findLargest(const ProjectPtr& project, Growth growth);
    /// Boards in the shop, and on the rack, of `project`.
    void judge(const ProjectPtr& project, const std::vector<Candidate>& candidates);
    /// Ends the search with what it has.
    void stop() { work_.stop(); }
    /// Forgets what was found: it was for another rack or board.
    void forget();

Q_SIGNALS:
    void changed();

private:
    void clear();

    double progress_ = 0;
    std::optional<LargestBoard> largest_;
    QString fault_;
    std::vector<Verdict> verdicts_;
    Background work_;
};

}  // namespace kerfwright
