// For the programs that are started by the benchmark: they say when their first window was painted
// and how much memory they take, and end.
#pragma once

#include <QApplication>

namespace kerfwright::bench {

/// Watches `application`. After the first paint of a window and `settle` ms more, prints two
/// numbers, the monotonic clock at the first paint in ns and the resident memory in KiB, and ends
/// the loop.
void reportFirstPaint(QApplication& application, int settle);

}  // namespace kerfwright::bench
