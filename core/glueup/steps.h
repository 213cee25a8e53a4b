// What the maker does, in order, as data. The paper, the window and the virtual bench read the same
// records; none of them looks at the plan again.
//
// The bench's own directions are those of the page: x runs to the right along the row, y down the
// page along the grain of a stick, z up. Strips of a panel lie side by side along x, first strip
// left. A panel is crosscut across y, from its squared end, which is the one at y = 0.
#pragma once

#include "core/glueup/borderfit.h"
#include "core/glueup/plan.h"

#include <string>
#include <variant>
#include <vector>

namespace kerfwright {

/// Strips that are equal in wood and size.
struct MillLine {
    int wood = 0;
    std::vector<std::string> strips;  ///< labels, one a strip
    Figure roughThickness, roughWidth, roughLength;
    Figure thickness, width, length;
};

/// Mill and rip strips.
struct Mill {
    std::string panel;  ///< for which panel; empty for the parts of the border, rails first
    std::vector<MillLine> lines;
};

struct Laid {
    std::string part;  ///< label of a strip or of a slice
    Lay lay;
};

/// Glue parts, in order, into one workpiece.
struct Glue {
    std::string result;  ///< label of the workpiece
    bool final = false;  ///< the glue-up that makes the field
    GlueAlong along = GlueAlong::Width;
    std::vector<Laid> parts;
    Figure width, length, thickness;  ///< of the result: x, y, z
    Area glueFace;                    ///< all joints together, one side of each
};

/// A field of one slice is not glued: the slice is only laid as it will lie in the board.
struct Take {
    std::string result;
    Laid part;
    Figure width, length, thickness;
};

enum class Face { LongGrain, EndGrain };
enum class Purpose {
    AfterGlueUp,  ///< a panel, both faces true and parallel
    RowHeight,    ///< a panel, down to the height of its rows
    Finished,     ///< the field, down to the thickness of the board
};

/// Bring a workpiece to a thickness, taking from both faces.
struct Flatten {
    std::string part;
    Face face = Face::LongGrain;
    Purpose purpose = Purpose::AfterGlueUp;
    Figure from, to;
};

/// Square one end of a panel: `waste` and a kerf come off.
struct SquareEnd {
    std::string part;
    Figure waste;
    Figure kerf;
    Length left;  ///< of the panel, after the cut
};

/// Crosscut slices at one stop setting.
struct Crosscut {
    std::string part;
    Figure stop;
    Figure kerf;
    std::vector<std::string> slices;  ///< labels in cutting order
    std::vector<std::string> spares;  ///< labels, cut after those
    /// These slices carry the trim margin of an outermost row; never so for a field of one slice.
    bool marginRows = false;
    Length left;  ///< of the panel, after the last cut
    /// They are lengths of a stick that go into other panels, not slices for the field.
    bool forPanels = false;
};

/// Take panels, or lengths of one, down to a size at one setting. The length of what is sawn off
/// includes the kerf.
struct BringToSize {
    std::vector<std::string> parts;
    Sizing sizing;
};

/// Saw the trim margin off the four sides of the field.
struct TrimField {
    std::string part;
    Figure margin;         ///< each side
    Figure width, height;  ///< of the field afterwards: x, y
};

/// What a groove or a rebate is for.
enum class ChannelFor {
    Tongue,  ///< groove in the middle of an edge
    Ledge,   ///< rail: rebate down to the ledge; field: rebate below, which lies on it
    Inlay,   ///< rebate along the rail's inside edge, open at the top face
};

/// Cut a groove or a rebate along the inside edge of rails, or along edges of the field, at one
/// setting. Rails are cut in the blank, from end to end.
struct CutChannel {
    std::vector<std::string> parts;
    ChannelFor purpose = ChannelFor::Tongue;
    int edges = 1;    ///< of each part: 1 of a rail; 4 of a field, or the 2 at which its grain ends
    Figure depth;     ///< in from the edge
    Figure width;     ///< along the part's thickness
    Figure fromFace;  ///< from the top face to the channel; 0 where it is open there
};

/// A stick and the rail it goes into.
struct Inset {
    std::string stick;
    std::string rail;
};

/// Glue sticks into the channels of rails: inlay into the blanks, tongues into rails cut to length.
struct GlueIn {
    ChannelFor purpose = ChannelFor::Tongue;
    std::vector<Inset> insets;
    /// Tongue: how far it stands out of the rail. Inlay: how far it stands over the top face; that
    /// is levelled once the glue has set.
    Figure proud;
    Area glueFace;  ///< tongue: both cheeks in the rail; inlay: below it and at its back
};

/// One rail of the border.
struct Rail {
    std::string label;  ///< of the milled strip it is cut from
    Figure longPoint;   ///< long point to long point; where it is not mitred, its length
};

/// Cut the rails to length.
struct CutRails {
    bool mitred = true;  ///< 45° at both ends; else square
    std::vector<Rail> rails;
};

/// Put the rails round the field, in order: top, right, bottom, left, as far as there are any.
struct FitBorder {
    std::string part;         ///< the field
    std::vector<Rail> rails;  ///< with the lengths they were cut to
    Figure width;             ///< of the visible rail
    Figure boardWidth, boardHeight;
    /// The rails are not glued to the field: it floats, or is pinned, or it moves and the caution
    /// has not been read.
    bool mustNotBeGlued = true;
    BorderDesign design = BorderDesign::FixedFrame;
    Figure gapX = {}, gapY = {};  ///< between field and rail; 0 where they touch
    /// Glued in this step: edges of the field, and mitres as wide as the visible rail. 0 where
    /// nothing is to be glued.
    Area glueFace = {};
    Figure pinDiameter = {};     ///< breadboard ends
    Figure pinFromEdge = {};     ///< from the field's edge to the middle of a pin
    std::vector<Pin> pins = {};  ///< of one end; the other has the same
};

/// Saw a slot across each corner of the closed frame, square to the corner, and glue a key into it:
/// a triangle, trimmed flush. All keys come from one stick.
struct KeyCorners {
    std::string part;  ///< the field in its frame
    std::string stick;
    Figure depth;      ///< of the slot, from the corner inwards
    Figure thickness;  ///< of slot and key
    Figure fromFace;   ///< from the top face to the slot
    Area glueFace;     ///< both faces of four keys
};

using Work = std::variant<Mill, Glue, Take, Flatten, SquareEnd, Crosscut, BringToSize, TrimField,
                          CutChannel, GlueIn, CutRails, FitBorder, KeyCorners>;

struct Step {
    Work work;
};

/// Where the timber goes. `timberIn` equals the sum of the others.
struct Ledger {
    Volume timberIn;
    Volume board;    ///< in the finished board
    Volume kerf;     ///< sawn to dust by squaring cuts and crosscuts
    Volume planed;   ///< milled, flattened and sanded off
    Volume trimmed;  ///< squaring waste, ends, trim margin, mitres; with the kerf of those cuts
    Volume spare;    ///< spare slices
    Volume offcut;   ///< ends of panels left after the last slice
    Volume grooved = {};  ///< out of grooves, rebates and slots

    Volume out() const { return board + kerf + planed + trimmed + spare + offcut + grooved; }
    friend bool operator==(const Ledger&, const Ledger&) = default;
};

struct StepList {
    std::vector<Step> steps;
    std::vector<Joint> extraJoints;    ///< as in the plan
    std::vector<Joint> omittedJoints;  ///< as in the plan
    Ledger ledger;                     ///< as reckoned by the planner; the bench weighs for itself
};

/// The steps of a plan, border included. Pin holes are not weighed: a pin fills its own.
StepList steps(const Plan& plan, const Board& board, const Shop& shop);

/// "1.5 mm off each side", "3 mm off the left side": as the workpiece lay when it was glued.
std::string sizingWords(const Sizing& sizing, const Notation& notation);

/// The label of a workpiece, strip or spare as it is shown: those that are words are said in the
/// maker's language, "Field", "Top rail", "A-spare"; letters and numbers stay, "A", "A3", "A-1". So
/// do the board and the plus of "2: Top rail + 2: Right rail".
std::string shownLabel(const std::string& label);

/// "Glue panel A", "Cut the two margin slices", ...: the step in a few words, without numbers that
/// someone sets a machine to.
std::string title(const Step& step);
/// The workpiece that a step is about ("A", "Field"); empty for work on the parts of a border.
const std::string& workpiece(const Step& step);

}  // namespace kerfwright
