// The files that were open last, kept in the settings of the program.
#pragma once

#include <QStringList>

namespace kerfwright {

/// Newest first, at most eight, only those that are still there.
QStringList recentFiles();
void addRecentFile(const QString& path);
void clearRecentFiles();

}  // namespace kerfwright
