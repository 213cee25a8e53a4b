// What a first start takes for granted, by the country that the desktop is set to. What the maker
// chose once is kept elsewhere and goes before it.
#pragma once

#include "core/measure/notation.h"
#include "core/sheets/sheets.h"

#include <QLocale>

namespace kerfwright {

/// Inches where lengths are sold by the inch. Not in the United Kingdom: it keeps miles, but its
/// timber is sold in mm.
Unit usualUnit(const QLocale& locale = QLocale());

/// US Letter in the countries of which the Unicode CLDR says so (supplemental data, paperSize),
/// else A4.
Paper usualPaper(const QLocale& locale = QLocale());

}  // namespace kerfwright
