// What the plan warns of while the board is still a wish. One function per rule (rules.h).
#pragma once

#include "core/bench/boardmovement.h"
#include "core/bench/conditions.h"
#include "core/bench/glue.h"
#include "core/board/board.h"
#include "core/glueup/steps.h"
#include "core/shop/shop.h"

#include <string>
#include <vector>

namespace kerfwright {

enum class Severity {
    Note,     ///< worth knowing
    Caution,  ///< likely to cost a board or an hour
    Danger,   ///< can hurt someone or will ruin the board
};

struct Caution {
    Severity severity = Severity::Note;
    std::string key;     ///< stable name of the rule: "border-moves"
    std::string title;   ///< one line
    std::string reason;  ///< with the number
    std::string remedy;  ///< what to do
    int step = -1;       ///< index into the step list where it is worst; -1: the whole board
    std::vector<int> steps = {};  ///< all the steps it is about, in order; empty: the whole board
};

/// "step 4", "steps 4, 9 and 14"; empty where the caution is about the whole board. Steps from 1.
std::string whichSteps(const Caution& caution);

/// What the rules look at. Nothing of it is kept.
struct Ground {
    const Board& board;
    const std::vector<Wood>& woods;
    const Shop& shop;
    const Choices& choices;
    const Conditions& conditions;
    const Plan& plan;
    const StepList& list;
    const BoardMovement& movement;  ///< in the climate of `conditions`
    const GlueNeeds& glue;          ///< with the glue of `conditions`
    const Notation& notation;       ///< that lengths are written in
};

/// In order of severity, then of steps.
std::vector<Caution> cautions(const Ground& ground);

/// The usual words on working safely, for every sheet. They defer to the machine's manual, local
/// rules and trained people.
const std::vector<std::string>& safetyWords();

}  // namespace kerfwright
