// Pictures for the tests, and what a construction looks like, found the other way round: from a
// point of the field back to the strip that lies there.
#pragma once

#include "core/search/construction.h"
#include "core/search/picture.h"

#include <string>
#include <vector>

namespace kerfwright::searching {

/// One piece a cell, one letter a wood ('A' is wood 0), one text a row.
Field cells(const std::vector<std::string>& rows, Length width = Length::mm(40),
            Length height = Length::mm(40));

/// One piece for every rectangle of one letter; woods as given for the letters from 'a' on, or
/// all of wood 0 where none are given.
Field pieces(const std::vector<std::string>& rows, const std::vector<int>& woods,
             Length side = Length::mm(40));

/// Everything in which the construction is not the picture or not sound, in words; empty: nothing.
std::string mistakes(const Construction& construction, const Picture& picture);

}  // namespace kerfwright::searching
