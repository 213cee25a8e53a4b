// What a timber plan says: how many strips lie where, how good that is, what is missing.
#pragma once

#include "core/measure/notation.h"
#include "core/timber/timber.h"

#include <string>
#include <vector>

namespace kerfwright {

/// Rails that are sawn in one length are counted each.
int stripCount(const Demand& demand);
int missingCount(const TimberPlan& plan);

/// "28 × 48 × 620 mm": thickness × width × length.
std::string sizeWords(Length thickness, Length width, Length length, const Notation& notation);
std::string sizeWords(const Plank& plank, const Notation& notation);
std::string sizeWords(const WantedStrips& strips, const Notation& notation);

/// By the woods of the project or of the catalogue; the key where neither knows it.
std::string woodName(const std::string& key, const std::vector<Wood>& woods);

/// "All 20 strips lie on 4 of 6 planks. Proven best: …", or how many strips find no place.
std::string layoutWords(const TimberPlan& plan);
/// How good a layout is, in a sentence: "Proven best: …", "At most 1.3 % above the best …".
std::string verdict(const Layout& layout);
/// The same of what is to buy.
std::string shoppingVerdict(const ShoppingList& list);

/// Where it is told what to buy: in the window's list, or on the slip for the yard.
enum class Shopping { Panel, Slip };
/// What is missing, by wood: "Missing: 4 × Cherry and 8 × Wenge. …"; empty where nothing is.
std::string shortageInBrief(const TimberPlan& plan, const std::vector<Wood>& woods,
                            Shopping told = Shopping::Panel);

/// One sentence a wood of which strips are missing: "3 strips of Walnut 28 × 48 × 620 mm do not
/// fit: buy 1 plank 32 × 150 × 1000 mm." Before the shopping is known it says what is missing only.
std::vector<std::string> shortageWords(const TimberPlan& plan, const std::vector<Wood>& woods,
                                       const Notation& notation);

}  // namespace kerfwright
