// Allowances that a maker left out.
#include "core/bench/rules.h"

#include <algorithm>

namespace kerfwright::rules {
namespace {

bool isCrosscut(const StepList& list) {
    return std::any_of(list.steps.begin(), list.steps.end(), [](const Step& step) {
        return std::holds_alternative<Crosscut>(step.work);
    });
}

/// What a new shop begins with.
std::vector<Remedy> usual(const Scene& on, Setting setting, const char* label) {
    const Length value = (isMetric(on) ? metricShop() : inchShop()).*(settingInfo(setting)->value);
    return withSetting(on, setting, value, label + text(on, value));
}

}  // namespace

void noTrimMargin(const Scene& on, Found& found) {
    if (on.shop.trimMargin <= Length{}) {
        found.push_back(
            {Severity::Caution,
             "no-trim-margin",
             "No trim margin",
             "The trim margin is " + text(on, on.shop.trimMargin) +
                 ": strips that slip in the clamps cannot be sawn straight afterwards.",
             "Set a trim margin, usually " +
                 text(on, on.notation.unit == Unit::Inches ? Length::inch(1, 8) : Length::mm(3)) +
                 " a side.",
             -1,
             {},
             {},
             usual(on, Setting::TrimMargin, "Set a trim margin of ")});
    }
}

void noSpareSlice(const Scene& on, Found& found) {
    // A field of one slice gets no spare one, whatever the setting.
    const bool severalSlices =
        std::any_of(on.list.steps.begin(), on.list.steps.end(), [](const Step& step) {
            const auto* glue = std::get_if<Glue>(&step.work);
            return glue != nullptr && glue->final;
        });
    if (on.shop.spareSlices == 0 && severalSlices) {
        const auto panels = static_cast<std::size_t>(
            std::count_if(on.plan.parts.begin(), on.plan.parts.end(),
                          [](const Part& part) { return part.role == Role::Panel; }));
        Remedy one{"Cut one spare slice of each panel"};
        one.shop = on.shop;
        one.shop->spareSlices = 1;
        found.push_back({Severity::Note,
                         "no-spare-slice",
                         "No spare slice",
                         "0 spare slices are cut from " + counted(panels, "panel", "panels") +
                             ": one bad slice means another panel.",
                         "Set one spare slice, unless timber is short.",
                         -1,
                         {},
                         {},
                         {one}});
    }
}

void noSquaringCut(const Scene& on, Found& found) {
    if (on.shop.squaringCut <= Length{} && isCrosscut(on.list)) {
        found.push_back({Severity::Caution,
                         "no-squaring-cut",
                         "No squaring cut",
                         "The squaring cut is " + text(on, on.shop.squaringCut) +
                             ": the first slice of each panel has the end that the strips happened "
                             "to have.",
                         "Set a squaring cut, or see that every strip is cut square and glued "
                         "flush at that end.",
                         -1,
                         {},
                         {},
                         usual(on, Setting::SquaringCut, "Set a squaring cut of ")});
    }
}

}  // namespace kerfwright::rules
