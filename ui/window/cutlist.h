// The strips to mill, as a table.
#pragma once

#include "ui/document/planner.h"

#include <QTableWidget>

namespace kerfwright {

class CutList : public QTableWidget {
    Q_OBJECT

public:
    explicit CutList(Planner& planner, QWidget* parent = nullptr);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void refresh();

    Planner& planner_;
    PlannedPtr shown_;
};

}  // namespace kerfwright
