// A number that someone sets a machine to, together with its working.
#pragma once

#include "core/shop/shop.h"

#include <string>
#include <vector>

namespace kerfwright {

/// What a term of a working stands for. `termName` puts it in words.
enum class TermKind {
    PieceWidth,  ///< of the piece, or of the part of it that this strip makes
    RowHeight,   ///< of the row (or column, where columns are glued) as drawn
    BoardThickness,
    BorderWidth,
    FieldSide,
    TrimMargin,
    PanelFlattening,
    HalfPanelFlattening,  ///< one face's share
    FieldFlattening,
    Truing,  ///< off one side of a panel that goes into another glue-up
    Stick,   ///< the pieces of a panel that becomes part of another one, together
    Milling,
    EndAllowance,
    SquaringCut,
    Kerf,
    Slices,
    SpareSlices,
    Tail,
    RoundingUp,     ///< what was added to reach a whole step
    HalfGrowth,     ///< of the field from build to the dampest season, one side's share
    HalfShrinkage,  ///< of the field from build to the driest season, one side's share
    PinGrowth,      ///< of the field between its middle and a pin, to the dampest season
    PinShrinkage,   ///< the same, to the driest season
    Clearance,      ///< so that nothing binds
    OwnGap,         ///< as the maker wishes it
    Gap,            ///< between field and rail
    Hold,           ///< of tongue or ledge that must stay below the field
    RailGroove,
    FieldGroove,
    Ledge,
    TongueReach,  ///< out of the end and into the field
    Joinery,      ///< a size that is usual for such a joint
    Inlay,
    Proud,  ///< that stands over and is levelled
    PinRadius,
    RoundingFine,  ///< what was added to reach a step of the fence
};

struct Term {
    TermKind kind;
    Length value;   ///< one of them
    int times = 1;  ///< how often it is added
    friend bool operator==(const Term&, const Term&) = default;
};

/// `value` is always the sum of `times * value` over the terms; the virtual bench checks it.
struct Figure {
    Length value;
    std::vector<Term> terms;

    Figure() = default;
    Figure(std::initializer_list<Term> list);
    /// Adds a term, unless it adds nothing.
    Figure& add(TermKind kind, Length length, int times = 1);
    /// Rounds the value up to a multiple of `step` and notes what that added.
    Figure& roundUp(Length step);
    Length sumOfTerms() const;
    friend bool operator==(const Figure&, const Figure&) = default;
};

/// "kerf", "trim margin", ...: what is said behind a length.
std::string termName(TermKind kind);
/// The setting that a term comes from, `Setting::None` for those of the board.
Setting settingOf(TermKind kind);
/// "45 mm piece + 3 mm trim margin = 48 mm"
std::string working(const Figure& figure, const Notation& notation);

}  // namespace kerfwright
