// What the plan warns of while the board is still a wish. One function per rule (rules.h).
#pragma once

#include "core/bench/boardmovement.h"
#include "core/bench/conditions.h"
#include "core/bench/glue.h"
#include "core/board/board.h"
#include "core/board/seento.h"
#include "core/glueup/steps.h"
#include "core/shop/shop.h"

#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

enum class Severity {
    Note,     ///< worth knowing
    Caution,  ///< likely to cost a board or an hour
    Danger,   ///< can hurt someone or will ruin the board
};

/// As it is called in JSON and among facts: "note", "caution", "danger".
std::string keyOf(Severity severity);

/// Where on the board, by the indices of its field. All empty: the whole board.
struct CautionPlace {
    std::vector<int> pieces;
    std::vector<int> rows;
    std::vector<int> columns;
    bool border = false;
    friend bool operator==(const CautionPlace&, const CautionPlace&) = default;
};

/// A change of the project that does away with a caution: the new values as a whole, so that it can
/// be put in with one click and undone. Only what is there changes.
struct Remedy {
    std::string label;  ///< for a button: "Use a floating frame"
    std::optional<Board> board = {};
    std::optional<Shop> shop = {};
    std::optional<Choices> choices = {};
    std::optional<Conditions> conditions = {};
    friend bool operator==(const Remedy&, const Remedy&) = default;
};

struct Caution {
    Severity severity = Severity::Note;
    std::string key;     ///< stable name of the rule: "border-moves"
    std::string title;   ///< one line
    std::string reason;  ///< with the number
    std::string remedy;  ///< what to do
    int step = -1;       ///< index into the step list where it is worst; -1: the whole board
    std::vector<int> steps = {};  ///< all the steps it is about, in order; empty: the whole board
    CautionPlace place = {};
    std::vector<Remedy> remedies = {};  ///< the best first; empty: only the maker can do it
    /// Tells cautions of one rule apart, however their numbers change; empty: the only one.
    std::string about = {};
    /// Every number and place that it rests upon, and how severe it is.
    std::vector<Fact> said = {};
};

/// "step 4", "steps 4, 9 and 14"; empty where the caution is about the whole board. Steps from 1.
std::string whichSteps(const Caution& caution);

/// What the rules look at. Nothing of it is kept.
struct Ground {
    const Board& wish;   ///< as drawn: places and remedies are about this one
    const Board& board;  ///< as glued: an end-grain band is part of its field
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

/// In order of severity, then of steps. No two have one `key` and one `about`.
std::vector<Caution> cautions(const Ground& ground);

/// The usual words on working safely, for every sheet. They defer to the machine's manual, local
/// rules and trained people.
std::vector<std::string> safetyWords();

}  // namespace kerfwright
