#include "core/bench/standing.h"

#include "core/words/say.h"

#include <algorithm>
#include <numeric>

namespace kerfwright {
namespace {

bool isAbout(const SeenTo& entry, const Caution& caution) {
    return entry.rule == caution.key && entry.about == caution.about;
}

}  // namespace

Standing standingOf(const Caution& caution, const std::vector<SeenTo>& seenTo) {
    Standing standing = Standing::Open;
    for (const SeenTo& entry : seenTo) {
        if (isAbout(entry, caution)) {
            if (entry.said == caution.said) {
                return Standing::SeenTo;
            }
            standing = Standing::Lapsed;
        }
    }
    return standing;
}

std::string standingWords(Standing standing) {
    switch (standing) {
    case Standing::Open:
        return {};
    case Standing::Lapsed:
        return say("was seen to before its numbers changed");
    case Standing::SeenTo:
        return say("seen to");
    }
    return {};
}

void seeTo(std::vector<SeenTo>& seenTo, const Caution& caution) {
    SeenTo entry{caution.key, caution.about, caution.said};
    std::erase(seenTo, entry);
    if (seenTo.size() >= SeenToLimits::entries) {
        seenTo.erase(seenTo.begin());
    }
    seenTo.push_back(std::move(entry));
}

void reopen(std::vector<SeenTo>& seenTo, const Caution& caution) {
    std::erase_if(seenTo, [&](const SeenTo& entry) { return isAbout(entry, caution); });
}

CautionCount countOf(const std::vector<Caution>& cautions, const std::vector<SeenTo>& seenTo) {
    CautionCount count;
    for (const Caution& caution : cautions) {
        if (standingOf(caution, seenTo) == Standing::SeenTo) {
            ++count.seenTo;
        } else {
            ++count.open;
            count.openDangers += caution.severity == Severity::Danger ? 1 : 0;
        }
    }
    return count;
}

std::string countWords(const CautionCount& count) {
    if (count.seenTo == 0) {
        return count.open == 0
                   ? say("No cautions")
                   : sayCount(static_cast<std::size_t>(count.open), "{1} caution", "{1} cautions");
    }
    // Translators: of cautions.
    return say("{1} open · {2} seen to", count.open, count.seenTo);
}

std::vector<int> openFirst(const std::vector<Caution>& cautions,
                           const std::vector<SeenTo>& seenTo) {
    std::vector<int> order(cautions.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_partition(order.begin(), order.end(), [&](int i) {
        return standingOf(cautions[static_cast<std::size_t>(i)], seenTo) != Standing::SeenTo;
    });
    return order;
}

}  // namespace kerfwright
