#include "core/bench/cautions.h"
#include "core/words/say.h"

namespace kerfwright {

std::vector<std::string> safetyWords() {
    return {
        say("Guard and riving knife on the saw wherever the cut allows it; push sticks and push "
            "blocks within reach before the machine starts."),
        say("Keep to the least length, width and thickness that each machine takes, for every "
            "workpiece on the way and not only for finished parts."),
        say("Short workpieces go on a sled with a stop block and a hold-down clamp. Never rip "
            "fence and mitre gauge together."),
        say("End grain never goes through a thickness planer."),
        say("Extraction on, and a dust mask: fine dust harms, and that of some woods is an "
            "irritant."),
        say("Goggles and ear defenders; no gloves, loose sleeves or long hair near a turning "
            "blade."),
        say("This paper gives sizes and an order of work. The machine's manual and the local rules "
            "come first; whoever is unsure asks a trained person."),
    };
}

}  // namespace kerfwright
