// What the stages of the film are called. Private to core/sheets.
#pragma once

#include "core/sheets/film.h"

namespace kerfwright {

/// Key, name, title and words of every stage, from its kind, its steps and its parts.
void nameStages(Film& film);

}  // namespace kerfwright
