#pragma once

#include <QStringList>

namespace kerfwright {

/// The warnings of Qt since the test began or since the last call. A test that expects one takes
/// it and looks at it; what is left at the end of a test fails it.
QStringList takeWarnings();

}  // namespace kerfwright
