#include "core/board/use.h"

#include "core/words/say.h"

namespace kerfwright {

const BoardUseInfo& info(BoardUse use) {
    return boardUses[static_cast<std::size_t>(use)];
}

std::vector<Fault> faults(const BoardPurpose& purpose, const Notation& notation) {
    if (purpose.foot < Length() || purpose.foot > greatestFoot) {
        return {
            {say("Foot of the pieces"),
             say("must be from 0 to {1}, 0 where not said", formatGreatest(greatestFoot, notation)),
             formatExact(purpose.foot, notation)}};
    }
    return {};
}

}  // namespace kerfwright
