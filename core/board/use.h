// What a board is for: it decides how far water and food matter, and which sizes a game asks for.
#pragma once

#include "core/measure/length.h"
#include "core/measure/notation.h"
#include "core/measure/result.h"
#include "core/words/say.h"

#include <array>
#include <vector>

namespace kerfwright {

enum class BoardUse {
    Unsaid,
    ChessBoard,
    DraughtsBoard,
    DryRoom,       ///< picture, shelf, table top
    ServingBoard,  ///< splashed now and then: tray, lamp stand
    KitchenBoard,  ///< wetted and wiped day by day
    Outdoors,      ///< or wet for long; with a coat on it
};

struct BoardUseInfo {
    BoardUse use = BoardUse::Unsaid;
    const char* key = "";    ///< in files
    const char* name = "";   ///< on screen, to be said
    const char* about = "";  ///< one sentence for the pointer, to be said
    bool food = false;       ///< food lies on it
    bool game = false;       ///< pieces stand on its squares
};
/// In the order of the enumeration, which is that of a form.
inline constexpr std::array boardUses{
    BoardUseInfo{BoardUse::Unsaid, "unsaid", noted("Not said"),
                 noted("Rules on food and games stay silent."), false, false},
    BoardUseInfo{BoardUse::ChessBoard, "chess", noted("Chess board"),
                 noted("Squares and contrast are held against what players need."), false, true},
    BoardUseInfo{BoardUse::DraughtsBoard, "draughts", noted("Draughts board"),
                 noted("Squares and contrast are held against what players need."), false, true},
    BoardUseInfo{BoardUse::DryRoom, "dry-room", noted("Dry room"),
                 noted("A picture, a shelf, a table top: it is dusted, not washed."), false, false},
    BoardUseInfo{BoardUse::ServingBoard, "serving", noted("Serving board"),
                 noted("Food lies on it; water reaches it now and then and is wiped off."), true,
                 false},
    BoardUseInfo{BoardUse::KitchenBoard, "kitchen", noted("Kitchen board"),
                 noted("Food is cut on it; it is wetted and wiped day by day."), true, false},
    BoardUseInfo{BoardUse::Outdoors, "outdoors", noted("Outdoors or wet for long"),
                 noted("It gets a coat against the weather."), false, false},
};
const BoardUseInfo& info(BoardUse use);

struct BoardPurpose {
    BoardUse use = BoardUse::Unsaid;
    /// Widest foot of the pieces that stand on the squares: the king's, or a man of draughts. 0:
    /// not said.
    Length foot;
    friend bool operator==(const BoardPurpose&, const BoardPurpose&) = default;
};
inline constexpr Length greatestFoot = Length::mm(200);

/// A foot below 0 or above `greatestFoot`; lengths are written in `notation`.
std::vector<Fault> faults(const BoardPurpose& purpose, const Notation& notation);

}  // namespace kerfwright
