// The shop: what each machine takes off, and what it takes at all.
#pragma once

#include "core/measure/notation.h"

#include <vector>

namespace kerfwright {

/// Every length that a working can name. `None` marks terms that come from the board.
enum class Setting {
    None,
    Kerf,
    FieldFlattening,
    PanelFlattening,
    TrimMargin,
    Truing,
    SquaringCut,
    Tail,
    Milling,
    EndAllowance,
    LengthStep,
    PlanerWidth,
    PlanerShortest,
    SanderWidth,
    SanderShortest,
    SawDepth,
    LeastHeld,
    LongestStrip,
    SliceShortest,
};

struct Shop {
    // Allowances
    Length kerf;             ///< wood lost to the saw blade; more than 0
    Length fieldFlattening;  ///< off the board's thickness after the final glue-up, both faces
                             ///< together
    Length panelFlattening;  ///< off a panel's thickness after its glue-up, both faces together
    Length trimMargin;       ///< on each side of the field, sawn off after the final glue-up
    Length truing;           ///< off each side of a panel that goes into another glue-up
    Length squaringCut;      ///< waste of the cut that squares a panel's end; 0: no squaring cut
    Length tail;             ///< left over at the other end, to hold on to
    Length milling;          ///< per dimension, from rough to milled
    Length endAllowance;     ///< extra rough length of a strip, sawn off when it is milled
    Length lengthStep;       ///< strip lengths are rounded up to a multiple of this; more than 0
    int spareSlices = 1;     ///< extra slices per panel, 0 to 20

    // What the machines take
    Length planerWidth;     ///< widest panel that the thickness planer takes
    Length planerShortest;  ///< shortest piece to plane, to joint or to rip
    Length sanderWidth;     ///< widest panel or field that can be flattened
    Length sanderShortest;  ///< shortest workpiece that the flattening machine takes
    Length sawDepth;        ///< thickest panel that the saw cuts through
    Length leastHeld;       ///< shortest workpiece that is safe to hold at the saw
    Length longestStrip;    ///< longest strip that timber and machines allow
    Length sliceShortest;   ///< shortest slice that is crosscut off a panel

    friend bool operator==(const Shop&, const Shop&) = default;
};

/// A shop that measures in millimetres. Values are common practice where no source stands beside
/// them in shop.cpp.
Shop metricShop();
/// A shop that measures in inches.
Shop inchShop();

/// One row of the settings: what it is called, where it lives, what it may be.
struct SettingInfo {
    Setting setting;
    const char* key;    ///< in files: "trim-margin"
    const char* name;   ///< on screen and in workings, to be said: "Trim margin"
    const char* about;  ///< one sentence for the pointer, to be said
    Length Shop::*value;
    Length least;     ///< inclusive
    Length greatest;  ///< inclusive
};
/// All lengths of the shop, in the order a form shows them. `spareSlices` is not among them.
const std::vector<SettingInfo>& shopSettings();
const SettingInfo* settingInfo(Setting setting);

/// Everything wrong, in the order of `shopSettings()`; lengths in the faults are written in
/// `notation`.
std::vector<Fault> faults(const Shop& shop, const Notation& notation);

}  // namespace kerfwright
