// How the field is glued: a directed acyclic graph of parts.
//
// A part is a strip of one wood, a panel (sticks glued side by side that are then crosscut), or the
// field itself. Parts name the parts they are glued from, which slice of a panel is used, and how
// it is laid. A panel may be glued from lengths of other panels, to any depth: `planField` makes
// plans of two levels, strips to panels to field, and `planOf` (deep.h) those of any construction.
#pragma once

#include "core/board/board.h"
#include "core/board/joint.h"
#include "core/glueup/borderfit.h"
#include "core/glueup/figure.h"
#include "core/measure/result.h"
#include "core/shop/shop.h"

#include <string>
#include <vector>

namespace kerfwright {

/// How a part lies in the glue-up that uses it, applied in this order. All are turns in space,
/// never reflections.
struct Lay {
    bool stoodUp = false;     ///< rolled a quarter turn about its row: end grain faces up
    bool turnedOver = false;  ///< half turn about its row: the other face up
    bool flipped = false;     ///< half turn about the vertical: end for end, same face up
    bool turned = false;      ///< quarter turn about the vertical, clockwise seen from above
    bool rolled = false;      ///< a stick, before all else: a quarter turn about its length,
                              ///< clockwise seen from its near end (y greatest)
    friend bool operator==(const Lay&, const Lay&) = default;
};

enum class RowChoice { Best, Rows, Columns };

/// What the maker decides about the plan.
struct Choices {
    RowChoice rows = RowChoice::Best;  ///< glue strips into rows, or into columns
    bool mergeLike = false;            ///< pieces of one wood side by side may be made of one strip
    /// Key of one of the constructions that the search found (constructions.h); empty: rows or
    /// columns as `rows` says. It is passed over where the picture has no such construction.
    std::string construction = {};
    /// Most parts in one glue-up that the search looks for; 0: any number. From the glue's open
    /// time, so that a construction has the same key wherever it is looked for.
    int mostParts = 0;
    friend bool operator==(const Choices&, const Choices&) = default;
};

using PartIndex = int;

/// On the bench x runs right along the row, y down the page along the grain.
enum class GlueAlong {
    Width,  ///< side by side to the right (x)
    Down,   ///< one below the other on the page (y)
};

enum class Role {
    Strip,  ///< a stick of one wood
    Panel,  ///< sticks glued side by side, or a single strip, to be crosscut
    Field,  ///< the patterned part; the last part of every plan
};

struct Use {
    PartIndex part = -1;
    int slice = -1;  ///< which slice of a panel, in cutting order; -1: the whole part
    Lay lay;
    Length finished = {};  ///< of the field's uses: how much of the finished field it makes, along
                           ///< the direction of the final glue-up
};

/// Across which of its sizes a part is taken down.
enum class SizedIn { Width, Length, Thickness };

enum class SizedFor {
    TrueSides,   ///< a panel that goes into another glue-up: straight, square, to width
    LessMargin,  ///< what other copies of the same stick need and this one does not
    Window,      ///< a row that is part of a longer panel is cut out of it
};

/// A part is taken down to a size, a named amount off each of two opposite sides.
struct Sizing {
    SizedIn in = SizedIn::Width;
    SizedFor purpose = SizedFor::TrueSides;
    Figure from, to;
    Length offFirst;  ///< off the left side, the squared end or the lower face
    Length offLast;   ///< off the opposite one
};

/// Slices, or longer lengths, cut at one stop setting.
struct SliceRun {
    Figure length;
    int count = 0;                   ///< used in the board
    int spare = 0;                   ///< cut at the same setting, after those
    int marginSides = 0;             ///< how many sides of each slice become the field's outer edge
    bool forPanels = false;          ///< lengths that go into other panels, not into the field
    std::vector<Sizing> sized = {};  ///< each of them, once it is cut
};

/// What happens between two flattenings of a panel: it is brought to a thickness and to a width,
/// then slices are cut.
struct Stage {
    Figure thickness;
    std::vector<SliceRun> runs = {};
    std::vector<Sizing> sized = {};  ///< the whole panel, after it was flattened
};

struct Part {
    Role role = Role::Strip;
    std::string label;  ///< strip "A3", panel "A", field "Field"

    // Strips
    int wood = -1;
    Figure roughThickness, roughWidth, roughLength;

    /// Strips: milled. Panels: as glued. Field: as glued, where length is its other side
    /// (width along x, length along y).
    Figure width, thickness, length;

    // Panels and field
    std::vector<Use> uses;      ///< in order; a panel of one strip has one use and no glue-up
    std::vector<Stage> stages;  ///< panels only
    bool keptWhole = false;     ///< long grain, with end-to-end joints: sized, but not crosscut
    GlueAlong along = GlueAlong::Width;  ///< how a panel's uses are joined
    int kind = 0;  ///< panels with the same strips in the same order share a kind

    bool isGlued() const { return uses.size() > 1; }
};

struct Plan {
    std::vector<Part> parts;  ///< every part stands after the parts it uses; the field is last
    bool byColumns = false;   ///< the final glue-up joins columns (else rows)
    bool grainDown = true;    ///< long grain: it runs along the field's columns
    std::vector<Joint> extraJoints;  ///< inside a piece, sorted
    std::vector<Joint>
        omittedJoints;  ///< between two pieces of one wood, drawn but not made; sorted
    Length margin;      ///< trim margin used on each side of the field

    int glueUps = 0;           ///< kinds of glue-up; equal panels count once
    int assemblies = 0;        ///< glue-ups that are actually clamped
    int panels = 0;            ///< kinds of glued panel
    int strips = 0;            ///< strips of wood to mill, border not included
    std::string decidedBy;     ///< why rows or columns, in a sentence
    std::string construction;  ///< key of the construction, where it was one of the search's
    BorderFit border;          ///< sizes of the border; its parts are not among `parts`

    const Part& field() const { return parts.back(); }
};

/// For every use of the field, whether its part is one of those panels or was glued from one.
std::vector<bool> usesFrom(const Plan& plan, const std::vector<std::string>& panels);
/// The lines of the field's grid that those uses of the field make, or reach into: its columns
/// where columns are joined last, else its rows.
std::vector<int> linesOf(const Plan& plan, const Field& field, const std::vector<bool>& uses);
/// The use of the field that makes what lies so far from its left edge, or from its top; -1: none.
int useAt(const Plan& plan, Length at);

/// Plans the field of a valid board, which has no end-grain band any more: see `asGlued`. Faults
/// (naming the entry) where no strip could be had: a board thicker than any section, a slice longer
/// than the longest strip. Lengths in the faults are written in `notation`.
Result<Plan> planField(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                       const Choices& choices, const Notation& notation = Notation::millimetres(3));

/// Adds the border to a field's plan, once it is known how far that field moves. Faults of
/// `fitBorder`, and where no rail could be had.
Result<Plan> withBorder(Plan plan, const Board& board, const std::vector<Wood>& woods,
                        const Shop& shop, const FieldSeason& season,
                        const Notation& notation = Notation::millimetres(3));

/// Both, for a field that moves by `season` whichever way it is planned.
Result<Plan> plan(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                  const Choices& choices, const Notation& notation = Notation::millimetres(3),
                  const FieldSeason& season = {});

}  // namespace kerfwright
