// Numbers of the entries of the tab "Timber", as `Document::edit` takes them.
#pragma once

#include "ui/document/document.h"

namespace kerfwright::entry {

inline constexpr int yard = 900;    ///< plus which of its lists
inline constexpr int sawing = 920;  ///< plus which of the settings

}  // namespace kerfwright::entry
