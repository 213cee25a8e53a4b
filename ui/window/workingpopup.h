// The working of the numbers of a step: each term, what it is, and the entry it comes from.
#pragma once

#include "core/glueup/figure.h"
#include "ui/window/stepwords.h"

#include <QFrame>

namespace kerfwright {

class WorkingPopup : public QFrame {
    Q_OBJECT

public:
    /// Deletes itself when it is closed.
    WorkingPopup(const QString& title, const std::vector<StepFigure>& figures,
                 const Notation& notation, QWidget* parent);

    /// Opens beside `anchor`, in global coordinates, inside the screen.
    void openBeside(const QRect& anchor);

Q_SIGNALS:
    /// The maker asked for the entry that a term comes from.
    void termAsked(TermKind kind);

protected:
    void paintEvent(QPaintEvent* event) override;
};

}  // namespace kerfwright
