// A rack as a table that a spreadsheet opens.
//
// One row a kind of plank, after a row of headings. Headings in any order and any case; all but the
// first four may be left out, others are refused:
//
//   wood       key of the wood ("hard-maple")
//   thickness  measured; the heading names the unit of bare numbers: "thickness mm", "width (in)",
//   width      "length [mm]"; lengths may name units of their own ("1 3/4 in")
//   length
//   label      what is chalked on the plank; made up ("P7": of the seventh row) where empty
//   count      planks that are alike, 1 where empty; their labels get "-1", "-2" behind
//   price      of one plank, "12.50"
//   offcut     "yes" or "no" (or empty)
//   defects    "x; y; length; width" with bars between: "1334; 48; 43; 45 | 999; 3; 28; 21"; the
//              heading names the unit
//   note
//
// Columns are parted by commas, semicolons or tabs, whichever the headings use. A field that holds
// such a mark, a quote or a line break stands in quotes, quotes within doubled. Both decimal marks
// are read. Empty rows are skipped. Lines end with LF or CR LF; a mark of byte order is skipped.
#pragma once

#include "core/timber/rack.h"

#include <string>
#include <string_view>

namespace kerfwright {

/// All planks, or the first fault, named by line and column: "Line 7, column 3 (width)".
Result<Rack> rackFromCsv(std::string_view text);

/// Columns as above, parted by semicolons; exact: `rackFromCsv` gives the same rack back, but for
/// spaces around its texts.
std::string rackToCsv(const Rack& rack, Unit unit);

}  // namespace kerfwright
