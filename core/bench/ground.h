// What a rule of the cautions looks at, and the words that rules share. Private to core/bench.
#pragma once

#include "core/bench/boardmovement.h"
#include "core/bench/cautions.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace kerfwright::rules {

/// A workpiece as it lies on the machine at one step.
struct Size {
    Length width, length, thickness;
    bool field = false;
};

/// The ground, and what really lies there when each step begins: a panel that went to the saw is
/// shorter at the sander.
struct Scene : Ground {
    explicit Scene(const Ground& ground);
    std::vector<std::optional<Size>> before;  ///< of the step's workpiece; empty where it has none
};

/// Calls `look(work, workpiece before the step or null, index of the step)` for each step that does
/// `Work`.
template <class Work, class Look>
void forEach(const Scene& on, Look look) {
    for (std::size_t i = 0; i < on.list.steps.size(); ++i) {
        if (const auto* work = std::get_if<Work>(&on.list.steps[i].work)) {
            look(*work, on.before[i] ? &*on.before[i] : nullptr, static_cast<int>(i));
        }
    }
}

/// A length as the maker reads it.
std::string text(const Scene& on, Length length);
/// "wood" where there is none of that index.
std::string woodName(const Scene& on, int wood);

using Found = std::vector<Caution>;

/// The slices of these panels, as rows of the field or, in a plan by columns, as its columns.
CautionPlace slicesOf(const Scene& on, const std::vector<std::string>& panels);
/// A row or column of the field as it was drawn, from one of the field as glued; empty where it
/// belongs to an end-grain band.
std::optional<int> drawnLine(const Scene& on, int line, bool isRow);
/// All pieces of these woods, and the border where it is of one of them.
CautionPlace piecesOf(const Scene& on, const std::vector<int>& woods);

/// The pieces that these joints run along or through.
CautionPlace piecesAt(const Scene& on, const std::vector<Joint>& joints);
/// Whether a millimetre is the maker's unit.
bool isMetric(const Scene& on);
/// The shop with one setting changed, as a remedy; none where the setting cannot be that.
std::vector<Remedy> withSetting(const Scene& on, Setting setting, Length value, std::string label);

/// "8 %", "8.5 %".
std::string percent(double moisture);
/// For facts: nothing that is said depends on finer parts of these.
Fact hundredths(std::string name, double value);
Fact micrometres(std::string name, double mm);
/// The keys of woods.
std::string woodKeys(const Scene& on, const std::vector<int>& woods);
/// A movement in words, on the grid of the notation: nothing here is cut to it.
std::string roundly(const Scene& on, double mm);
/// "4.1 mm to 9.3 mm", or one figure where both read the same: from the driest to the dampest.
std::string yearly(const Scene& on, const SeasonChange& change);
/// The same for facts: the least and the greatest.
std::vector<Fact> yearlyFacts(const std::string& name, const SeasonChange& change);

}  // namespace kerfwright::rules
