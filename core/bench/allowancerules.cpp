// Allowances that a maker left out.
#include "core/bench/rules.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright::rules {
namespace {

bool isCrosscut(const StepList& list) {
    return std::any_of(list.steps.begin(), list.steps.end(), [](const Step& step) {
        return std::holds_alternative<Crosscut>(step.work);
    });
}

/// What a new shop begins with.
Length usual(const Scene& on, Setting setting) {
    return (isMetric(on) ? metricShop() : inchShop()).*(settingInfo(setting)->value);
}

}  // namespace

void noTrimMargin(const Scene& on, Found& found) {
    if (on.shop.trimMargin <= Length{}) {
        const Length margin = usual(on, Setting::TrimMargin);
        found.push_back(
            {Severity::Caution,
             "no-trim-margin",
             say("No trim margin"),
             say("The trim margin is {1}: strips that slip in the clamps cannot be sawn straight "
                 "afterwards.",
                 text(on, on.shop.trimMargin)),
             say("Set a trim margin, usually {1} a side.",
                 text(on, isMetric(on) ? Length::mm(3) : Length::inch(1, 8))),
             -1,
             {},
             {},
             withSetting(on, Setting::TrimMargin, margin,
                         say("Set a trim margin of {1}", text(on, margin)))});
        found.back().said = {fact("trim-margin", on.shop.trimMargin)};
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
        Remedy one{say("Cut one spare slice of each panel")};
        one.shop = on.shop;
        one.shop->spareSlices = 1;
        found.push_back({Severity::Note,
                         "no-spare-slice",
                         say("No spare slice"),
                         sayCount(panels,
                                  "0 spare slices are cut from {1} panel: one bad slice means "
                                  "another panel.",
                                  "0 spare slices are cut from {1} panels: one bad slice means "
                                  "another panel."),
                         say("Set one spare slice, unless timber is short."),
                         -1,
                         {},
                         {},
                         {one}});
        found.back().said = {fact("panels", static_cast<std::int64_t>(panels))};
    }
}

void noSquaringCut(const Scene& on, Found& found) {
    if (on.shop.squaringCut <= Length{} && isCrosscut(on.list)) {
        const Length cut = usual(on, Setting::SquaringCut);
        found.push_back({Severity::Caution,
                         "no-squaring-cut",
                         say("No squaring cut"),
                         say("The squaring cut is {1}: the first slice of each panel has the end "
                             "that the strips happened to have.",
                             text(on, on.shop.squaringCut)),
                         say("Set a squaring cut, or see that every strip is cut square and glued "
                             "flush at that end."),
                         -1,
                         {},
                         {},
                         withSetting(on, Setting::SquaringCut, cut,
                                     say("Set a squaring cut of {1}", text(on, cut)))});
        found.back().said = {fact("squaring-cut", on.shop.squaringCut)};
    }
}

}  // namespace kerfwright::rules
