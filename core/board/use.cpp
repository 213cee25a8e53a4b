#include "core/board/use.h"

namespace kerfwright {

const BoardUseInfo& info(BoardUse use) {
    return boardUses[static_cast<std::size_t>(use)];
}

std::vector<Fault> faults(const BoardPurpose& purpose, const Notation& notation) {
    if (purpose.foot < Length() || purpose.foot > greatestFoot) {
        return {
            {"Foot of the pieces",
             "must be from 0 to " + formatGreatest(greatestFoot, notation) + ", 0 where not said",
             formatExact(purpose.foot, notation)}};
    }
    return {};
}

}  // namespace kerfwright
