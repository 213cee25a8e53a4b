// The working of the numbers of a step: each term, what it is, and the entry it comes from.
#pragma once

#include "core/bench/hours.h"
#include "core/glueup/figure.h"
#include "ui/window/stepwords.h"

#include <QFrame>

QT_BEGIN_NAMESPACE
class QGridLayout;
class QScrollArea;
class QToolButton;
QT_END_NAMESPACE

namespace kerfwright {

/// Where a term comes from, as the link to it reads; empty for what is no entry of the form but
/// usual, or worked out from others.
QString termSource(TermKind kind);

class WorkingPopup : public QFrame {
    Q_OBJECT

public:
    /// Deletes itself when it is closed. `task`: the time of a step is shown too.
    WorkingPopup(const QString& title, const std::vector<StepFigure>& figures,
                 const Notation& notation, QWidget* parent, const BenchTask* task = nullptr);

    /// Opens beside `anchor`, in global coordinates, inside the screen.
    void openBeside(const QRect& anchor);

Q_SIGNALS:
    /// The maker asked for the entry that a term comes from.
    void termAsked(TermKind kind);
    /// The same for the rate of a time, by the key of its setting.
    void rateAsked(const QString& key);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void addFigure(const StepFigure& entry, const Notation& notation);
    void addTime(const BenchTask& task);
    QToolButton* link(const QString& source);
    void addHead(const QString& words);
    void addSum(const QString& words);
    void fit();

    QScrollArea* area_;
    QWidget* content_;
    QGridLayout* grid_;
    int row_ = 0;
};

}  // namespace kerfwright
