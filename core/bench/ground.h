// What a rule of the cautions looks at, and the words that rules share. Private to core/bench.
#pragma once

#include "core/bench/boardmovement.h"
#include "core/bench/cautions.h"

#include <map>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace kerfwright::rules {

/// A length as the maker reads it.
std::string text(const Ground& on, Length length);
/// "wood" where there is none of that index.
std::string woodName(const Ground& on, int wood);

/// A workpiece as it lies on the machine at one step.
struct Size {
    Length width, length, thickness;
    bool field = false;
};

/// Walks through the step list and keeps the size of every workpiece, so that a rule can ask what
/// is really there when a step begins: a panel that went to the saw is shorter at the sander.
class Sizes {
public:
    const Size* of(const std::string& label) const {
        const auto found = sizes_.find(label);
        return found == sizes_.end() ? nullptr : &found->second;
    }

    void after(const Step& step) {
        std::visit([this](const auto& work) { take(work); }, step.work);
    }

private:
    void take(const Mill& work) {
        for (const MillLine& line : work.lines) {
            for (const std::string& strip : line.strips) {
                sizes_[strip] = {line.width.value, line.length.value, line.thickness.value, false};
            }
        }
    }
    void take(const Glue& work) {
        sizes_[work.result] = {work.width.value, work.length.value, work.thickness.value,
                               work.final};
    }
    void take(const Take& work) {
        sizes_[work.result] = {work.width.value, work.length.value, work.thickness.value, true};
    }
    void take(const Flatten& work) { sizes_[work.part].thickness = work.to.value; }
    void take(const SquareEnd& work) { sizes_[work.part].length = work.left; }
    void take(const Crosscut& work) {
        const Size whole = sizes_[work.part];
        for (const auto* labels : {&work.slices, &work.spares}) {
            for (const std::string& slice : *labels) {
                sizes_[slice] = {whole.width, work.stop.value, whole.thickness, false};
            }
        }
        sizes_[work.part].length = work.left;
    }
    void take(const TrimField& work) {
        sizes_[work.part].width = work.width.value;
        sizes_[work.part].length = work.height.value;
    }
    void take(const FitBorder& work) {
        sizes_[work.part].width = work.boardWidth.value;
        sizes_[work.part].length = work.boardHeight.value;
    }

    std::map<std::string, Size> sizes_;
};

/// Calls `look(work, sizes before the step, index of the step)` for each step that does `Work`.
template <class Work, class Look>
void forEach(const StepList& list, Look look) {
    Sizes sizes;
    for (std::size_t i = 0; i < list.steps.size(); ++i) {
        if (const auto* work = std::get_if<Work>(&list.steps[i].work)) {
            look(*work, sizes, static_cast<int>(i));
        }
        sizes.after(list.steps[i]);
    }
}

using Found = std::vector<Caution>;

/// "A", "A and B", "A, B and C".
std::string listed(const std::vector<std::string>& names);
/// The slices of these panels, as rows of the field or, in a plan by columns, as its columns.
CautionPlace slicesOf(const Ground& on, const std::vector<std::string>& panels);
/// All pieces of these woods.
CautionPlace piecesOf(const Ground& on, const std::vector<int>& woods);
/// The pieces that these joints run along or through.
CautionPlace piecesAt(const Ground& on, const std::vector<Joint>& joints);
/// Whether a millimetre is the maker's unit.
bool isMetric(const Ground& on);
/// The shop with one setting changed, as a remedy; none where the setting cannot be that.
std::vector<Remedy> withSetting(const Ground& on, Setting setting, Length value, std::string label);

std::string counted(std::size_t count, std::string_view one, std::string_view many);
/// "8 %", "8.5 %".
std::string percent(double moisture);
/// A movement in words, on the grid of the notation: nothing here is cut to it.
std::string roundly(const Ground& on, double mm);
/// "4.1 mm to 9.3 mm", or one figure where both read the same: from the driest to the dampest.
std::string yearly(const Ground& on, const SeasonChange& change);

}  // namespace kerfwright::rules
