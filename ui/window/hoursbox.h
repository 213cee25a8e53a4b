// How long the board takes and how the work falls into sessions, at the head of the steps.
#pragma once

#include "ui/document/planner.h"
#include "ui/window/formsection.h"

QT_BEGIN_NAMESPACE
class QLabel;
QT_END_NAMESPACE

namespace kerfwright {

class HoursBox : public FormSection {
    Q_OBJECT

public:
    explicit HoursBox(Planner& planner, QWidget* parent = nullptr);

private:
    void refresh();

    Planner& planner_;
    QLabel* words_;
    PlannedPtr shown_;
};

}  // namespace kerfwright
