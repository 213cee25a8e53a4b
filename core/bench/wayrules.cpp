// The way that the maker chose to glue the board.
#include "core/bench/rules.h"
#include "core/words/say.h"

namespace kerfwright::rules {

// A way is kept by the parts that it is glued from. Another picture may have no such parts, and the
// plan that takes its place can have twice the glue-ups.
void lostWay(const Scene& on, Found& found) {
    if (on.choices.construction.empty() || on.plan.construction == on.choices.construction) {
        return;
    }
    Choices without = on.choices;
    without.construction.clear();
    found.push_back(
        {Severity::Caution,
         "lost-way",
         say("The way that was chosen is gone"),
         sayCount(on.plan.glueUps,
                  "The picture was changed since, and the chosen way does not make it. This plan "
                  "has {1} glue-up.",
                  "The picture was changed since, and the chosen way does not make it. This plan "
                  "has {1} glue-ups."),
         say("Look at the ways again: one that is like it may make the new picture. Or undo the "
             "change."),
         -1,
         {},
         {},
         {{say("Let go of the chosen way"), {}, {}, without, {}}}});
    found.back().said = {fact("way", on.choices.construction),
                         fact("glue-ups", std::int64_t{on.plan.glueUps})};
}

}  // namespace kerfwright::rules
