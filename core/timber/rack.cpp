#include "core/timber/rack.h"

#include "core/wood/price.h"
#include "core/words/say.h"

#include <set>
#include <utility>

namespace kerfwright {
namespace {

void checkSize(std::vector<PlankFault>& found, PlankEntry entry, Length size, Length greatest,
               const Notation& notation) {
    if (size <= Length()) {
        found.push_back({entry, 0, say("must be more than 0"), formatExact(size, notation)});
    } else if (size > greatest) {
        found.push_back({entry, 0, say("must be at most {1}", formatGreatest(greatest, notation)),
                         formatExact(size, notation)});
    }
}

bool isWithin(Length from, Length size, Length whole) {
    return from >= Length() && from + size <= whole;
}

void checkDefect(std::vector<PlankFault>& found, std::size_t number, const Defect& defect,
                 const Plank& plank, const Notation& notation) {
    const auto text = [&](Length length) { return formatExact(length, notation); };
    const auto add = [&](std::string rule, std::string value) {
        found.push_back({PlankEntry::Defects, number, std::move(rule), std::move(value)});
    };
    if (defect.length <= Length() || defect.width <= Length()) {
        add(say("must be larger than 0 both ways"),
            text(defect.length) + " x " + text(defect.width));
        return;
    }
    if (!isWithin(defect.x, defect.length, plank.length)) {
        add(say("must lie on the plank, whose length is {1}", text(plank.length)),
            say("from {1} to {2}", text(defect.x), text(defect.x + defect.length)));
    }
    if (!isWithin(defect.y, defect.width, plank.width)) {
        add(say("must lie on the plank, whose width is {1}", text(plank.width)),
            say("from {1} to {2}", text(defect.y), text(defect.y + defect.width)));
    }
}

std::string entryName(const std::string& where, const PlankFault& fault) {
    switch (fault.entry) {
    case PlankEntry::Wood:
        return say("{1}, wood", where);
    case PlankEntry::Thickness:
        return say("{1}, thickness", where);
    case PlankEntry::Width:
        return say("{1}, width", where);
    case PlankEntry::Length:
        return say("{1}, length", where);
    case PlankEntry::Price:
        return say("{1}, price", where);
    case PlankEntry::Defects:
        break;
    }
    return fault.defect == 0 ? say("{1}, defects", where)
                             : say("{1}, defect {2}", where, fault.defect);
}

}  // namespace

std::vector<PlankFault> plankFaults(const Plank& plank, const Notation& notation) {
    std::vector<PlankFault> found;
    if (plank.wood.empty()) {
        found.push_back({PlankEntry::Wood, 0, say("must be named"), ""});
    }
    checkSize(found, PlankEntry::Thickness, plank.thickness, RackLimits::thickness, notation);
    checkSize(found, PlankEntry::Width, plank.width, RackLimits::width, notation);
    checkSize(found, PlankEntry::Length, plank.length, RackLimits::length, notation);
    if (plank.price < 0 || plank.price > RackLimits::price) {
        found.push_back({PlankEntry::Price, 0,
                         say("must be from 0 to {1}", formatMoney(RackLimits::price)),
                         formatMoney(plank.price)});
    }
    if (plank.defects.size() > RackLimits::defects) {
        found.push_back({PlankEntry::Defects, 0, say("must be at most {1}", RackLimits::defects),
                         std::to_string(plank.defects.size())});
    }
    for (std::size_t i = 0; i < plank.defects.size(); ++i) {
        checkDefect(found, i + 1, plank.defects[i], plank, notation);
    }
    return found;
}

std::vector<Fault> faults(const Plank& plank, const std::string& where, const Notation& notation) {
    std::vector<Fault> found;
    for (PlankFault& fault : plankFaults(plank, notation)) {
        found.push_back({entryName(where, fault), std::move(fault.rule), std::move(fault.value)});
    }
    return found;
}

std::vector<Fault> faults(const Rack& rack, const Notation& notation) {
    std::vector<Fault> found;
    if (rack.planks.size() > RackLimits::planks) {
        found.push_back({say("Rack"), say("must hold at most {1} planks", RackLimits::planks),
                         std::to_string(rack.planks.size())});
    }
    std::set<std::string> labels;
    for (std::size_t i = 0; i < rack.planks.size(); ++i) {
        const Plank& plank = rack.planks[i];
        const bool named = !plank.label.empty();
        const std::string where = say("Plank {1}", named ? plank.label : std::to_string(i + 1));
        if (!named) {
            found.push_back({say("{1}, label", where), say("must not be empty"), ""});
        } else if (!labels.insert(plank.label).second) {
            found.push_back(
                {say("{1}, label", where), say("must be on one plank only"), plank.label});
        }
        const std::vector<Fault> own = faults(plank, where, notation);
        found.insert(found.end(), own.begin(), own.end());
    }
    return found;
}

Rack priced(Rack rack, const std::vector<Wood>& woods) {
    for (Plank& plank : rack.planks) {
        const Wood* wood = findWood(woods, plank.wood);
        if (plank.price == 0 && wood != nullptr) {
            const Volume timber = volume(plank.thickness, plank.width, plank.length);
            plank.price = cost(timber, wood->price).value_or(0);
        }
    }
    return rack;
}

}  // namespace kerfwright
