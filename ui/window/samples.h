// The sample boards that come inside the program.
#pragma once

#include "core/project/project.h"

#include <QString>
#include <QStringList>

namespace kerfwright {

/// Resource paths, in the order of their names.
QStringList samplePaths();
Result<Project> readSample(const QString& resource);

}  // namespace kerfwright
