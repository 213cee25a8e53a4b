// What a piece of the board is, in words.
#pragma once

#include "core/bench/job.h"
#include "core/project/project.h"

#include <QPoint>
#include <QStringList>

namespace kerfwright {

/// Size, wood, strip and slice; `job` may be null.
QStringList pieceWords(const Project& project, const Job* job, QPoint cell, Length x, Length y);

}  // namespace kerfwright
