// The steps as cards. Choosing one lights up what it works on; its "=" opens the working.
#pragma once

#include "ui/document/planner.h"
#include "ui/window/boardpainter.h"
#include "ui/window/cardlist.h"

#include <QTimer>
#include <QWidget>

namespace kerfwright {

class HoursBox;
class PlanBanner;

class StepsPanel : public QWidget {
    Q_OBJECT

public:
    explicit StepsPanel(Planner& planner, QWidget* parent = nullptr);

    CardList* list() const { return list_; }
    void chooseStep(int step);
    /// Marks the steps that make the piece under a point of the field, in mm; none for (-1, -1).
    void markStepsFor(QPoint cell, Length x, Length y);

Q_SIGNALS:
    void highlighted(const Highlight& highlight);
    /// The entry that a term of a working comes from.
    void termAsked(TermKind kind);
    /// The rate that a time comes from, by the key of its setting.
    void rateAsked(const QString& key);

private:
    void refresh();
    void chosen(int step);
    void openWorking(int step);

    Planner& planner_;
    PlanBanner* banner_;
    HoursBox* hours_;
    CardList* list_;
    PlannedPtr shown_;
    QTimer slow_;  ///< a plan that takes long enough to be noticed is marked as stale
};

}  // namespace kerfwright
