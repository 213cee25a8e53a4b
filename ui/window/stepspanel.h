// The steps as cards. Choosing one lights up what it works on; its "=" opens the working.
#pragma once

#include "ui/document/planner.h"
#include "ui/window/cardlist.h"

#include <QTimer>
#include <QWidget>

namespace kerfwright {

class HoursBox;
class PlanBanner;
class Spotlight;

class StepsPanel : public QWidget {
    Q_OBJECT

public:
    StepsPanel(Planner& planner, Spotlight& spotlight, QWidget* parent = nullptr);

    CardList* list() const { return list_; }
    void chooseStep(int step);

Q_SIGNALS:
    /// The entry that a term of a working comes from.
    void termAsked(TermKind kind);
    /// The rate that a time comes from, by the key of its setting.
    void rateAsked(const QString& key);

private:
    void refresh();
    void chosen(int step);
    void follow();
    void openWorking(int step);

    Planner& planner_;
    Spotlight& spotlight_;
    PlanBanner* banner_;
    HoursBox* hours_;
    CardList* list_;
    PlannedPtr shown_;
    bool following_ = false;
    bool marked_ = false;  ///< by the spotlight; the stages of the build mark steps too
    QTimer slow_;          ///< a plan that takes long enough to be noticed is marked as stale
};

}  // namespace kerfwright
