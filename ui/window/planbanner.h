// Says, above the plan, that it is out of date, and why.
#pragma once

#include "ui/document/planner.h"

#include <QWidget>

QT_BEGIN_NAMESPACE
class QLabel;
QT_END_NAMESPACE

namespace kerfwright {

class PlanBanner : public QWidget {
    Q_OBJECT

public:
    explicit PlanBanner(Planner& planner, QWidget* parent = nullptr);
    QString text() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void refresh();

    Planner& planner_;
    QLabel* words_;
};

}  // namespace kerfwright
