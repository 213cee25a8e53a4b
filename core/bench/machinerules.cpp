// What the machines of the shop do not take, or not safely.
#include "core/bench/rules.h"
#include "core/bench/spots.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright::rules {

namespace {

/// A panel that is longer by what is wanting leaves as much more behind the last slice.
std::vector<Remedy> longerTail(const Scene& on, Length wanting) {
    const Length tail =
        roundedUp(on.shop.tail + wanting, isMetric(on) ? Length::mm(1) : Length::inch(1, 16));
    return withSetting(on, Setting::Tail, tail, say("Leave a tail of {1}", text(on, tail)));
}

/// `never`: too short for the sander, else for a planer.
std::string tooShortTitle(const Spots& spots, bool never) {
    if (spots.worst().field) {
        return never ? say("The field is too short for the sander")
                     : say("The field is too short for a planer");
    }
    return never ? sayCount(spots.count(), "Panel {2} is too short for the sander",
                            "Panels {2} are too short for the sander", spots.names())
                 : sayCount(spots.count(), "Panel {2} is too short for a planer",
                            "Panels {2} are too short for a planer", spots.names());
}

std::string tooShortReason(const Scene& on, const Spots& spots, bool never) {
    const Spot& worst = spots.worst();
    const std::string length = text(on, worst.length);
    const std::string least = text(on, never ? on.shop.sanderShortest : on.shop.planerShortest);
    if (!spots.single()) {
        return never ? say("Panel {1} is {2} long when it goes to the flattening machine; yours "
                           "takes nothing under {3}.",
                           worst.label, length, least)
                     : say("Panel {1} is {2} long when it goes to the flattening machine; the "
                           "shortest to plane is set to {3}.",
                           worst.label, length, least);
    }
    if (worst.field) {
        return never ? sayIn("the field",
                             "It is {1} long when it goes to the flattening machine; yours takes "
                             "nothing under {2}.",
                             length, least)
                     : sayIn("the field",
                             "It is {1} long when it goes to the flattening machine; the shortest "
                             "to plane is set to {2}.",
                             length, least);
    }
    return never ? sayIn("the panel",
                         "It is {1} long when it goes to the flattening machine; yours takes "
                         "nothing under {2}.",
                         length, least)
                 : sayIn("the panel",
                         "It is {1} long when it goes to the flattening machine; the shortest to "
                         "plane is set to {2}.",
                         length, least);
}

}  // namespace

void wideForSander(const Scene& on, Found& found) {
    Spots panels(longer);
    Spots field(longer);
    forEach<Flatten>(on, [&](const Flatten& work, const Size* size, int step) {
        if (size == nullptr) {
            return;
        }
        // A field has no grain to follow through the machine and may go in by its lesser side.
        const Length width = size->field ? std::min(size->width, size->length) : size->width;
        if (width > on.shop.sanderWidth) {
            (size->field ? field : panels).add({work.part, step, width, size->field});
        }
    });
    for (const Spots* spots : {&panels, &field}) {
        if (spots->empty()) {
            continue;
        }
        const bool isField = spots == &field;
        const std::string width = text(on, spots->worst().length);
        const std::string most = text(on, on.shop.sanderWidth);
        found.push_back(
            {Severity::Caution, "wide-for-sander",
             isField ? say("The field is wider than the sander")
                     : sayCount(spots->count(), "Panel {2} is wider than the sander",
                                "Panels {2} are wider than the sander", spots->names()),
             isField ? sayIn("the field", "It is {1} wide; the flattening machine takes {2}.",
                             width, most)
             : spots->single()
                 ? sayIn("the panel", "It is {1} wide; the flattening machine takes {2}.", width,
                         most)
                 : say("Panel {1} is {2} wide; the flattening machine takes {3}.",
                       spots->worst().label, width, most),
             isField ? say("Flatten it with a router sled, or make the board smaller.")
                     : say("Flatten it with a router sled or by hand, glue strips into columns "
                           "instead of rows, or make the field narrower."),
             spots->worst().step, spots->steps(), slicesOf(on, spots->labels())});
        found.back().about = isField ? "field" : "panels";
        found.back().said = spots->facts(on.shop.sanderWidth);
    }
}

void thickForSaw(const Scene& on, Found& found) {
    Spots spots(longer);
    forEach<Crosscut>(on, [&](const Crosscut& work, const Size* size, int step) {
        if (size != nullptr && size->thickness > on.shop.sawDepth) {
            spots.add({work.part, step, size->thickness});
        }
    });
    if (!spots.empty()) {
        const std::string thickness = text(on, spots.worst().length);
        const std::string depth = text(on, on.shop.sawDepth);
        found.push_back(
            {Severity::Danger, "thick-for-saw",
             sayCount(spots.count(), "Panel {2} is thicker than the saw cuts",
                      "Panels {2} are thicker than the saw cuts", spots.names()),
             spots.single()
                 ? sayIn("the panel", "It is {1} thick; the saw cuts {2} deep.", thickness, depth)
                 : say("Panel {1} is {2} thick; the saw cuts {3} deep.", spots.worst().label,
                       thickness, depth),
             say("Crosscut at a bandsaw, or make the rows lower."), spots.worst().step,
             spots.steps(), slicesOf(on, spots.labels())});
        found.back().said = spots.facts(on.shop.sawDepth);
    }
}

// What is held at the last cut is the slice and what stays behind it.
void littleToHold(const Scene& on, Found& found) {
    Spots spots(shorter);
    forEach<Crosscut>(on, [&](const Crosscut& work, const Size*, int step) {
        const Length held = work.stop.value + work.left;
        if (held < on.shop.leastHeld) {
            spots.add({work.part, step, held});
        }
    });
    if (spots.empty()) {
        return;
    }
    const auto& worst =
        std::get<Crosscut>(on.list.steps[static_cast<std::size_t>(spots.worst().step)].work);
    found.push_back(
        {Severity::Danger, "little-to-hold",
         sayCount(spots.count(), "Panel {2} gets short at the saw",
                  "Panels {2} get short at the saw", spots.names()),
         say("At the last cut of panel {1} {2} is left: slice {3} and {4} behind it. The least "
             "that is safe to hold is set to {5}.",
             worst.part, text(on, spots.worst().length), text(on, worst.stop.value),
             text(on, worst.left), text(on, on.shop.leastHeld)),
         say("Use a crosscut sled with a stop block and a hold-down clamp, hands clear of the "
             "blade; or make the strips longer. Never use the rip fence and the mitre gauge "
             "together."),
         spots.worst().step, spots.steps(), slicesOf(on, spots.labels()),
         longerTail(on, on.shop.leastHeld - spots.worst().length)});
    found.back().said = spots.facts(on.shop.leastHeld);
    found.back().said.push_back(fact("slice", worst.stop.value));
    found.back().said.push_back(fact("left", worst.left));
}

void shortForSander(const Scene& on, Found& found) {
    const Length usual = on.shop.planerShortest;
    Spots tooShort(shorter);
    Spots isShort(shorter);
    Spots fieldTooShort(shorter);
    Spots fieldIsShort(shorter);
    forEach<Flatten>(on, [&](const Flatten& work, const Size* size, int step) {
        if (size == nullptr) {
            return;
        }
        const Length length = size->field ? std::max(size->width, size->length) : size->length;
        if (length < on.shop.sanderShortest) {
            (size->field ? fieldTooShort : tooShort).add({work.part, step, length, size->field});
        } else if (length < usual && work.face != Face::EndGrain &&
                   size->width <= on.shop.planerWidth) {
            // Else the plan sends it to no planer.
            (size->field ? fieldIsShort : isShort).add({work.part, step, length, size->field});
        }
    });
    for (const Spots* spots : {&tooShort, &fieldTooShort, &isShort, &fieldIsShort}) {
        if (spots->empty()) {
            continue;
        }
        const bool never = spots == &tooShort || spots == &fieldTooShort;
        const std::string remedy =
            spots->worst().field
                ? say("Fix it to a longer carrier board with glued runners, or flatten it with a "
                      "router sled.")
                : say("Make the panel longer (a higher tail in the shop settings, or more spare "
                      "slices), carry it on longer runners, or use a machine that takes it.");
        found.push_back({never ? Severity::Danger : Severity::Caution, "short-for-sander",
                         tooShortTitle(*spots, never), tooShortReason(on, *spots, never),
                         never ? remedy : say("Leave the planer out and sand it.") + " " + remedy,
                         spots->worst().step, spots->steps(), slicesOf(on, spots->labels()),
                         spots->worst().field
                             ? std::vector<Remedy>()
                             : longerTail(on, (never ? on.shop.sanderShortest : usual) -
                                                  spots->worst().length)});
        found.back().about = spots->worst().field ? "field" : "panels";
        found.back().about += never ? " too short" : " short";
        found.back().said = spots->facts(never ? on.shop.sanderShortest : usual);
    }
}

void shortSlices(const Scene& on, Found& found) {
    Spots spots(shorter);
    forEach<Crosscut>(on, [&](const Crosscut& work, const Size*, int step) {
        if (work.stop.value < on.shop.sliceShortest) {
            spots.add({work.part, step, work.stop.value});
        }
    });
    if (!spots.empty()) {
        found.push_back({Severity::Danger, "short-slices",
                         sayCount(spots.count(), "Panel {2} gives short slices",
                                  "Panels {2} give short slices", spots.names()),
                         say("Slices of panel {1} are {2} long; the shortest slice is set to {3}.",
                             spots.worst().label, text(on, spots.worst().length),
                             text(on, on.shop.sliceShortest)),
                         on.board.build == Build::EndGrain
                             ? say("Make the board thicker.")
                             : say("Make the rows higher, or merge rows of one wood."),
                         spots.worst().step, spots.steps(), slicesOf(on, spots.labels())});
        found.back().said = spots.facts(on.shop.sliceShortest);
    }
}

// What is brought to a size goes through planer or along the fence like any other piece.
void shortToSize(const Scene& on, Found& found) {
    Spots spots(shorter);
    const Length least = on.shop.planerShortest;
    forEach<BringToSize>(on, [&](const BringToSize& work, const Size* size, int step) {
        if (size != nullptr && size->length < least) {
            spots.add({work.parts.front(), step, size->length});
        }
    });
    if (spots.empty()) {
        return;
    }
    found.push_back(
        {Severity::Danger, "short-to-size", say("Parts too short to plane or rip to size"),
         say("{1} is {2} long when it is brought to its size; the shortest to plane or rip is set "
             "to {3}.",
             spots.worst().label, text(on, spots.worst().length), text(on, least)),
         say("Use a crosscut sled with a stop and a clamp, a shooting board, or the sander on a "
             "carrier; never feed a short piece along the rip fence or through a planer."),
         spots.worst().step, spots.steps()});
    found.back().said = spots.facts(least);
}

// Planing and ripping short pieces is how hands come near knives; a piece wider than long turns at
// the fence. Advice for one long blank is common practice, no source.
void shortStrips(const Scene& on, Found& found) {
    Spots spots(shorter);
    std::size_t count = 0;
    forEach<Mill>(on, [&](const Mill& work, const Size*, int step) {
        for (const MillLine& line : work.lines) {
            if (line.roughLength.value < on.shop.planerShortest) {
                count += line.strips.size();
                spots.add({work.panel, step, line.roughLength.value});
            }
        }
    });
    if (!spots.empty()) {
        found.push_back(
            {Severity::Danger, "short-strips", say("Strips too short to plane or rip one by one"),
             sayCount(count,
                      "{1} strip is shorter than {2}, which is set as the shortest; the shortest "
                      "is {3} rough.",
                      "{1} strips are shorter than {2}, which is set as the shortest; the shortest "
                      "is {3} rough.",
                      text(on, on.shop.planerShortest), text(on, spots.worst().length)),
             say("Mill and rip blanks that hold several strips of one size end to end, with a kerf "
                 "between, and crosscut them to length last. Never feed a piece along the fence by "
                 "its shorter side."),
             spots.worst().step, spots.steps(), slicesOf(on, spots.labels())});
        found.back().said = spots.facts(on.shop.planerShortest);
        found.back().said.push_back(fact("strips", static_cast<std::int64_t>(count)));
    }
}

// A rail is held at the mitre cut as a slice is at the crosscut: the shop's own limit.
void shortRails(const Scene& on, Found& found) {
    Spots spots(shorter);
    forEach<CutRails>(on, [&](const CutRails& work, const Size*, int step) {
        for (const Rail& rail : work.rails) {
            if (rail.longPoint.value < on.shop.leastHeld) {
                spots.add({rail.label, step, rail.longPoint.value});
            }
        }
    });
    if (!spots.empty()) {
        CautionPlace place;
        place.border = true;
        found.push_back(
            {Severity::Danger, "short-rails", say("Rails too short to hold at the saw"),
             sayCount(spots.count(),
                      "{1} rail is shorter than {2}, the least that is safe to hold; {3} is {4} "
                      "long.",
                      "{1} rails are shorter than {2}, the least that is safe to hold; {3} is {4} "
                      "long.",
                      text(on, on.shop.leastHeld), spots.worst().label,
                      text(on, spots.worst().length)),
             say("Cut both ends while the rail is part of a longer stick, or clamp it down and "
                 "keep hands clear of the blade."),
             spots.worst().step, spots.steps(), std::move(place)});
        found.back().said = spots.facts(on.shop.leastHeld);
    }
}

// 1/4 in: the narrowest rip with the usual push blocks (a magazine's article on thin parts).
void narrowRips(const Scene& on, Found& found) {
    const Length least = Length::inch(1, 4);
    Spots spots(shorter);
    std::size_t count = 0;
    forEach<Mill>(on, [&](const Mill& work, const Size*, int step) {
        for (const MillLine& line : work.lines) {
            if (line.width.value < least) {
                count += line.strips.size();
                spots.add({work.panel, step, line.width.value});
            }
        }
    });
    if (!spots.empty()) {
        found.push_back(
            {Severity::Danger, "narrow-rip", say("Very narrow strips to rip"),
             sayCount(count, "{1} strip is narrower than {2}; the narrowest is {3}.",
                      "{1} strips are narrower than {2}; the narrowest is {3}.", text(on, least),
                      text(on, spots.worst().length)),
             say("Rip each from the free side of a wider plank with a push block that lies flat on "
                 "it, or saw it at a bandsaw and bring it to width at the sander."),
             spots.worst().step, spots.steps(), slicesOf(on, spots.labels())});
        found.back().said = spots.facts(least);
        found.back().said.push_back(fact("strips", static_cast<std::int64_t>(count)));
    }
}

// 3/16 in: the thinnest that the manuals of two thickness planers give; others say 1/4 in.
void thinWork(const Scene& on, Found& found) {
    const Length least = Length::inch(3, 16);
    Spots spots(shorter);
    forEach<Mill>(on, [&](const Mill& work, const Size*, int step) {
        for (const MillLine& line : work.lines) {
            if (line.thickness.value < least) {
                spots.add({work.panel, step, line.thickness.value});
            }
        }
    });
    forEach<Flatten>(on, [&](const Flatten& work, const Size*, int step) {
        if (work.face == Face::LongGrain && work.to.value < least) {
            spots.add({work.part, step, work.to.value});
        }
    });
    if (!spots.empty()) {
        found.push_back(
            {Severity::Danger, "thin-work", say("Too thin for a planer"),
             say("Down to {1} has to be reached; under {2} planer knives lift and break the wood.",
                 text(on, spots.worst().length), text(on, least)),
             spots.worst().label.empty()
                 ? say("Saw it off the edge of a thicker stick and sand it, fixed to a flat "
                       "carrier board.")
                 : say("Fix it to a flat carrier board and sand it, or make the rows higher."),
             spots.worst().step, spots.steps(), slicesOf(on, spots.labels())});
        found.back().said = spots.facts(least);
    }
}

// The planner parts pieces that the timber cannot give; rails it does not part.
void thinStock(const Scene& on, Found& found) {
    Spots spots(longer);
    int wood = -1;
    forEach<Mill>(on, [&](const Mill& work, const Size*, int step) {
        for (const MillLine& line : work.lines) {
            const auto at = static_cast<std::size_t>(line.wood);
            if (line.wood < 0 || at >= on.woods.size()) {
                continue;
            }
            const auto [less, more] =
                std::minmax(on.woods[at].timber.thickness, on.woods[at].timber.width);
            const auto [thin, wide] = std::minmax(line.roughThickness.value, line.roughWidth.value);
            const bool known = less > Length() && more > Length();
            if (known && (thin > less || wide > more)) {
                wood = line.wood;
                spots.add({work.panel, step, thin > less ? thin : wide});
            }
        }
    });
    if (!spots.empty()) {
        const Section& timber = on.woods[static_cast<std::size_t>(wood)].timber;
        found.push_back({Severity::Danger, "thin-stock", say("Timber too small for its strips"),
                         say("Strips of {1} rough are wanted; {2} is to be had in {3} × {4}.",
                             text(on, spots.worst().length), woodName(on, wood),
                             text(on, timber.thickness), text(on, timber.width)),
                         say("Buy larger timber and say so in the wood's entry, or make it "
                             "smaller."),
                         spots.worst().step, spots.steps(), slicesOf(on, spots.labels())});
        found.back().said = spots.facts(timber.thickness);
        found.back().said.push_back(fact("timber-width", timber.width));
        found.back().said.push_back(fact("wood", woodKeys(on, {wood})));
    }
}

// Accounts of boards thrown and burst by thickness planers; no maker's manual is known that allows
// it. 1/64 in a pass: limit of school shops for drum sanders.
void endGrainFace(const Scene& on, Found& found) {
    forEach<Flatten>(on, [&](const Flatten& work, const Size*, int step) {
        if (work.face == Face::EndGrain) {
            found.push_back(
                {Severity::Danger, "end-grain-face",
                 say("End grain never through a thickness planer"),
                 say("{1} has to come off an end-grain face. Planer knives tear it and can throw "
                     "the board.",
                     text(on, work.from.value - work.to.value)),
                 say("Use a drum sander with passes of no more than {1}, or a router sled. Break "
                     "the edges first.",
                     text(on, isMetric(on) ? Length::um(400) : Length::inch(1, 64))),
                 step});
            found.back().about = work.part;
            found.back().said = {fact("comes-off", work.from.value - work.to.value)};
        }
    });
}

}  // namespace kerfwright::rules
