// The tables of glue.h.
#include "core/bench/glue.h"
#include "core/words/say.h"

namespace kerfwright {

const std::vector<ClampKind>& clampKinds() {
    static const std::vector<ClampKind> kinds{
        {"parallel-jaw", noted("Parallel-jaw clamp"), 370},
        {"one-hand", noted("One-hand clamp"), 470},
        {"aluminium-bar", noted("Aluminium bar clamp"), 680},
        {"pipe", noted("¾ in pipe clamp"), 1050},
        {"i-beam", noted("I-beam bar clamp"), 1350},
    };
    return kinds;
}

std::string clampSource() {
    return say("Average of two people, measured by Fine Woodworking, 2010; people reach from 60 to "
               "140 % of it, and makers' ratings are higher");
}

// Uses and greatest moistures as a knowledge page quotes them from EN 204:2001; strengths (N/mm²,
// tested by EN 205) are values from memory.
const std::vector<WaterClassInfo>& waterClasses() {
    static const std::vector<WaterClassInfo> classes{
        {WaterClass::D1, "D1", noted("Indoors, where wood stays dry"), 15, 10, 0},
        {WaterClass::D2, "D2",
         noted("Indoors, with running or condensed water now and then for a short time"), 18, 10,
         0},
        {WaterClass::D3, "D3",
         noted("Indoors, with water often for a short time or damp air; outdoors under cover"), 0,
         10, 2},
        {WaterClass::D4, "D4",
         noted("Indoors, with water often and for long; outdoors with a coat on it"), 0, 10, 4},
    };
    return classes;
}

std::string waterClassSource() {
    return say(
        "EN 204, quoted at second hand after its edition of 2001; the strengths: values from "
        "memory");
}

GlueAdvice glueFor(BoardUse use) {
    const auto advice = [](WaterClass grade, std::string why) {
        return GlueAdvice{grade, std::move(why),
                          say("{1}; which use meets which class is the project's own judgement",
                              waterClassSource())};
    };
    switch (use) {
    case BoardUse::Unsaid:
        return advice(WaterClass::D3,
                      say("What it is for has not been said; this class serves all but what is "
                          "wet for long."));
    case BoardUse::ChessBoard:
    case BoardUse::DraughtsBoard:
    case BoardUse::DryRoom:
        return advice(WaterClass::D1, say("It stays in a dry room."));
    case BoardUse::ServingBoard:
        return advice(WaterClass::D2, say("Water reaches it now and then and is wiped off."));
    case BoardUse::KitchenBoard:
        return advice(WaterClass::D3, say("It is wetted and wiped day by day. No class stands "
                                          "soaking or a dishwasher."));
    case BoardUse::Outdoors:
        break;
    }
    return advice(WaterClass::D4, say("It is wet for long. Even this class asks for a coat on the "
                                      "wood outdoors."));
}

}  // namespace kerfwright
