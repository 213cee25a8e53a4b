// A quote on paper, on the terminal and as JSON. It is not part of the cut sheets: the bench needs
// no prices, and the customer no overheads.
#pragma once

#include "core/bench/quote.h"
#include "core/project/project.h"
#include "core/sheets/sheets.h"

#include <string>
#include <vector>

namespace kerfwright {

inline constexpr int quoteJsonVersion = 1;

/// For the maker: every line with its working.
std::vector<Page> reckoningPages(const Project& project, const Job& job, const Quote& quote,
                                 Paper paper);
/// For the customer: the board and what is asked for it. Of a quote that is incomplete it names no
/// price and says what is missing.
std::vector<Page> quotePages(const Project& project, const Job& job, const Quote& quote,
                             Paper paper);

/// The reckoning as a table.
std::string quoteText(const Project& project, const Quote& quote);
/// Described in DEVELOPERS.md.
std::string quoteJson(const Project& project, const Job& job, const Quote& quote);

/// "174 g at 12.00 € a kg": of a line that is no sum.
std::string amountOf(const QuoteLine& line);
/// "14.32 €"; "not known" where it is not.
std::string amountWords(const QuoteLine& line, const std::string& currency);
/// What stands above or below every reckoning: how it is rounded, and what timber is counted.
std::string reckoningRule(const Quote& quote);

}  // namespace kerfwright
