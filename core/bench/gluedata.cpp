// The tables of glue.h.
#include "core/bench/glue.h"

namespace kerfwright {

const std::vector<ClampKind>& clampKinds() {
    static const std::vector<ClampKind> kinds{
        {"parallel-jaw", "Parallel-jaw clamp", 370},   {"one-hand", "One-hand clamp", 470},
        {"aluminium-bar", "Aluminium bar clamp", 680}, {"pipe", "¾ in pipe clamp", 1050},
        {"i-beam", "I-beam bar clamp", 1350},
    };
    return kinds;
}

const char* clampSource() {
    return "Average of two people, measured by Fine Woodworking, 2010; people reach from 60 to 140 "
           "% "
           "of it, and makers' ratings are higher";
}

// Uses and greatest moistures as a knowledge page quotes them from EN 204:2001; strengths (N/mm²,
// tested by EN 205) are values from memory.
const std::vector<WaterClassInfo>& waterClasses() {
    static const std::vector<WaterClassInfo> classes{
        {WaterClass::D1, "D1", "Indoors, where wood stays dry", 15, 10, 0},
        {WaterClass::D2, "D2",
         "Indoors, with running or condensed water now and then for a short time", 18, 10, 0},
        {WaterClass::D3, "D3",
         "Indoors, with water often for a short time or damp air; outdoors under cover", 0, 10, 2},
        {WaterClass::D4, "D4", "Indoors, with water often and for long; outdoors with a coat on it",
         0, 10, 4},
    };
    return classes;
}

const char* waterClassSource() {
    return "EN 204, quoted at second hand after its edition of 2001; the strengths: values from "
           "memory";
}

GlueAdvice glueFor(BoardUse use) {
    const auto advice = [](WaterClass grade, const char* why) {
        return GlueAdvice{grade, why,
                          std::string(waterClassSource()) + "; which use meets which class is the "
                                                            "project's own judgement"};
    };
    switch (use) {
    case BoardUse::Unsaid:
        return advice(WaterClass::D3, "What it is for has not been said; this class serves all but "
                                      "what is wet for long.");
    case BoardUse::ChessBoard:
    case BoardUse::DraughtsBoard:
    case BoardUse::DryRoom:
        return advice(WaterClass::D1, "It stays in a dry room.");
    case BoardUse::ServingBoard:
        return advice(WaterClass::D2, "Water reaches it now and then and is wiped off.");
    case BoardUse::KitchenBoard:
        return advice(WaterClass::D3,
                      "It is wetted and wiped day by day. No class stands soaking or "
                      "a dishwasher.");
    case BoardUse::Outdoors:
        break;
    }
    return advice(WaterClass::D4,
                  "It is wet for long. Even this class asks for a coat on the wood outdoors.");
}

}  // namespace kerfwright
