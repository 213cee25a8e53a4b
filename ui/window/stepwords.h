// A step of the list as it stands on its card: what to do, and the numbers that a machine is set
// to.
#pragma once

#include "core/glueup/steps.h"
#include "core/project/project.h"
#include "core/sheets/record.h"

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

/// Puts the steps of one list into words. List and project must outlive it.
class StepWriter {
public:
    StepWriter(const StepList& list, const Project& project);
    StepWords describe(int step) const;

private:
    Record record_;
    const Project& project_;
};

/// thickness × width × length, with the unit once.
QString sizeText(Length thickness, Length width, Length length, const Notation& notation);

}  // namespace kerfwright
