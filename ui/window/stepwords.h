// A step of the list as it stands on its card: what to do, and the numbers that a machine is set
// to.
#pragma once

#include "core/glueup/steps.h"
#include "core/project/project.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace kerfwright {

/// A number with its working and what it is.
struct StepFigure {
    QString label;
    Figure figure;
};

struct StepWords {
    QString title;
    QStringList lines;
    QString bigLabel;  ///< of the number that is set: "stop at"
    QString big;       ///< "43.0 mm"; empty where several numbers are set
    QString warning;   ///< something not to be missed; usually empty
    std::vector<StepFigure> figures;
};

StepWords describe(const Step& step, const Project& project);

/// thickness × width × length, with the unit once.
QString sizeText(Length thickness, Length width, Length length, const Notation& notation);

}  // namespace kerfwright
