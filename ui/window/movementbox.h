// What the wood of this board does in a year, what the board weighs, and what its glue-ups take.
#pragma once

#include "ui/document/planner.h"
#include "ui/window/formsection.h"

#include <QLabel>

namespace kerfwright {

class MovementBox : public FormSection {
    Q_OBJECT

public:
    MovementBox(Planner& planner, QWidget* parent = nullptr);
    QString text() const { return words_->text(); }

private:
    void refresh();

    Planner& planner_;
    QLabel* words_;
    PlannedPtr shown_;
};

}  // namespace kerfwright
