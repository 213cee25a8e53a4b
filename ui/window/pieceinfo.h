// Where in the job a piece of the board comes from.
#pragma once

#include "core/bench/job.h"
#include "core/project/project.h"
#include "ui/window/boardpainter.h"

#include <QPoint>
#include <QStringList>

#include <string>
#include <vector>

namespace kerfwright {

struct Origin {
    std::string slice;  ///< label, as in the step list
    std::string panel;  ///< label of the panel it is cut from
    std::string strip;  ///< label of the strip
    bool flipped = false;
    bool turnedOver = false;
    bool isKnown() const { return !slice.empty(); }
};

/// Of the piece under a point of the field, which is the one that was wished.
Origin originOf(const Job& job, const Field& field, QPoint cell, Length x, Length y);

/// Labels of the slices in the order in which they make the field.
std::vector<std::string> sliceOrder(const StepList& list);

/// Size, wood, strip and slice in words; `job` may be null.
QStringList pieceWords(const Project& project, const Job* job, QPoint cell, Length x, Length y);

/// The rows or columns of the wished field that a step works on.
Highlight highlightOf(const Job& job, const Field& field, const Step& step);
/// Where on the board a caution is about.
Highlight highlightOf(const CautionPlace& place);

/// Steps that make or cut what a piece comes from.
std::vector<int> stepsFor(const Job& job, const Origin& origin);

}  // namespace kerfwright
