#include "core/timber/rails.h"

#include "core/measure/at.h"
#include "core/timber/demand.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace kerfwright {
namespace {

auto kindOf(const WantedStrips& strips) {
    return std::tie(strips.board, strips.wood, strips.thickness, strips.width);
}

}  // namespace

Rails::Rails(const Demand& demand, bool inLengths)
    : demand_(demand) {
    for (std::size_t i = 0; i < demand.strips.size(); ++i) {
        const WantedStrips& line = demand.strips[i];
        if (!line.isRail || !line.plank.empty()) {
            continue;
        }
        auto group = std::find_if(groups_.begin(), groups_.end(),
                                  [&](const Group& each) { return isOf(each, line); });
        if (group == groups_.end()) {
            group = groups_.insert(groups_.end(), Group());
        }
        for (std::string& label : labelsOf(line)) {
            group->rails.push_back({static_cast<int>(i), std::move(label)});
        }
    }
    for (Group& group : groups_) {
        // The steps name top and bottom before left and right; round the board they alternate.
        if (group.rails.size() == 4) {
            std::swap(group.rails[1], group.rails[2]);
        }
        if (inLengths && group.rails.size() > 1) {
            group.lengths = RailLengths::OneLength;
        }
    }
}

bool Rails::isOf(const Group& group, const WantedStrips& strips) const {
    return strips.isRail && strips.plank.empty() &&
           kindOf(demand_.strips[at(group.rails.front().line)]) == kindOf(strips);
}

std::vector<WantedStrips> Rails::linesOf(const Group& group, Length kerf) const {
    std::vector<WantedStrips> lines;
    const std::size_t share =
        group.lengths == RailLengths::Pairs ? group.rails.size() / 2 : group.rails.size();
    for (std::size_t i = 0; i < group.rails.size(); i += share) {
        WantedStrips whole = demand_.strips[at(group.rails[i].line)];
        whole.count = 1;
        whole.label = group.rails[i].label;
        for (std::size_t k = i + 1; k < i + share; ++k) {
            whole.label += " + " + group.rails[k].label;
            whole.length += demand_.strips[at(group.rails[k].line)].length + kerf;
        }
        // Halves of a border are alike where the rails are in pairs.
        const auto like = std::find_if(lines.begin(), lines.end(), [&](const WantedStrips& line) {
            return line.length == whole.length;
        });
        if (like == lines.end()) {
            lines.push_back(whole);
        } else {
            like->label += ", " + whole.label;
            ++like->count;
        }
    }
    return lines;
}

Demand Rails::demand(Length kerf) const {
    Demand demand;
    for (const Group& group : groups_) {
        if (group.lengths != RailLengths::Single) {
            for (WantedStrips& line : linesOf(group, kerf)) {
                demand.strips.push_back(std::move(line));
            }
        }
    }
    for (const WantedStrips& line : demand_.strips) {
        const bool inLength = std::any_of(groups_.begin(), groups_.end(), [&](const Group& group) {
            return group.lengths != RailLengths::Single && isOf(group, line);
        });
        if (!inLength) {
            demand.strips.push_back(line);
        }
    }
    return demand;
}

bool Rails::shorten(Group& group) const {
    if (group.lengths == RailLengths::Single) {
        return false;
    }
    const bool pairs = group.lengths == RailLengths::OneLength && group.rails.size() % 2 == 0 &&
                       group.rails.size() > 2;
    group.lengths = pairs ? RailLengths::Pairs : RailLengths::Single;
    return true;
}

void Rails::shorten(const std::function<bool(const WantedStrips&)>& fits, Length kerf) {
    for (Group& group : groups_) {
        const auto tooLong = [&] {
            const std::vector<WantedStrips> lines = linesOf(group, kerf);
            return !std::all_of(lines.begin(), lines.end(), fits);
        };
        while (group.lengths != RailLengths::Single && tooLong()) {
            shorten(group);
        }
    }
}

bool Rails::shortenMissing(const Demand& demand, const std::vector<int>& missing) {
    bool shortened = false;
    for (Group& group : groups_) {
        for (std::size_t i = 0; i < demand.strips.size(); ++i) {
            if (missing[i] > 0 && isOf(group, demand.strips[i])) {
                shortened = shorten(group) || shortened;
                break;
            }
        }
    }
    return shortened;
}

void Rails::makeSingle() {
    for (Group& group : groups_) {
        group.lengths = RailLengths::Single;
    }
}

bool Rails::allSingle() const {
    return std::all_of(groups_.begin(), groups_.end(),
                       [](const Group& group) { return group.lengths == RailLengths::Single; });
}

RailLengths Rails::lengths() const {
    RailLengths shortest = RailLengths::None;
    for (const Group& group : groups_) {
        if (group.rails.size() > 1) {
            shortest = std::max(shortest, group.lengths);
        }
    }
    return shortest;
}

}  // namespace kerfwright
