// What belongs together in a job: a piece of the board, the strips and slices it was, the steps
// that made it, its lines of the cut list, the planks it came from and the cautions about it.
//
// What connects them is the timber: two things belong together where some bit of timber is in both,
// so whatever is in the trail of a thing has that thing in its own. Cautions name their steps
// themselves. Things of one sort are not told apart by that, so a step has no other step in its
// trail, and a piece no other piece; parts do: a strip has the slices that it runs through.
#pragma once

#include "core/bench/job.h"
#include "core/timber/timber.h"

#include <set>
#include <string>
#include <unordered_map>
#include <vector>

namespace kerfwright {

/// What is lit up on the board, by the grid of the field that was wished.
struct Highlight {
    /// Before the first and after the last, -1 and their number, is the end-grain band.
    std::set<int> rows, columns;
    std::set<int> pieces;  ///< indices into the field
    bool field = false;    ///< the whole field
    bool border = false;
    bool isEmpty() const {
        return rows.empty() && columns.empty() && pieces.empty() && !field && !border;
    }
    friend bool operator==(const Highlight&, const Highlight&) = default;
};

/// Where on the board a caution is about.
Highlight highlightOf(const CautionPlace& place);

/// Strips that are alike in wood, size and use, as one line of the cut list. Panel: empty for the
/// border.
struct CutListLine {
    std::string panel;
    MillLine strips;
};
std::vector<CutListLine> cutListOf(const StepList& steps);

/// Something of a job that can be pointed at.
struct Subject {
    enum class Kind { None, Piece, Border, Part, Step, CutLine, Caution, Plank };
    Kind kind = Kind::None;
    int index = -1;          ///< of the wished field's piece, the step, the cut list's line or the
                             ///< caution
    std::string label = {};  ///< of the plank; of the part (strip, slice, panel, rail, field), or
                             ///< of several sawn in one length: "Top rail + Right rail"

    bool isNone() const { return kind == Kind::None; }
    friend bool operator==(const Subject&, const Subject&) = default;
};
/// The parts that a label names, one or several.
std::vector<std::string> partsNamed(const std::string& label);

struct Trail {
    std::set<int> pieces;
    bool border = false;
    std::set<std::string> parts;  ///< labels of strips, rails, slices, panels and the field
    std::set<int> steps;
    std::set<int> cutLines;
    std::set<int> cautions;
    std::set<std::string> planks;  ///< labels
    Highlight place;  ///< the same on the board, whole rows and columns where they are whole

    bool isEmpty() const { return *this == Trail(); }
    friend bool operator==(const Trail&, const Trail&) = default;
};

enum class PartSort { None, Strip, Rail, Slice, Panel, Field };

/// All the trails of one job. Costs as much as a replay to make where the plan has more than two
/// levels, and little else; keeps nothing of what it was made from.
class Trails {
public:
    /// `wished`: the field as drawn. `timber`: where the strips lie; null: no planks.
    Trails(const Job& job, const Field& wished, const TimberPlan* timber = nullptr);

    /// Empty where the job has no such thing.
    Trail of(const Subject& subject) const;
    PartSort sortOf(const std::string& part) const;

private:
    /// Numbers of bits of timber, sorted. A bit is one strip in one slice, or a part of the border.
    using Bits = std::vector<int>;

    int idOf(const std::string& label);
    void nameParts(const Job& job);
    void addBit(const std::vector<std::string>& labels, int use);
    void followRows(const Job& job, const Field& wished);
    void followDeep(const Job& job, const Field& wished);
    void addSpares(const Job& job);
    void addSteps(const Job& job);
    void addCautions(const Job& job, const Field& wished);
    void addPlanks(const TimberPlan& timber);
    Bits bitsOfParts(const std::vector<std::string>& labels) const;
    Bits bitsOf(const Subject& subject) const;
    Highlight placeOf(const std::vector<bool>& hit) const;

    std::vector<int> useOf_;  ///< of each bit: the field's use that it is in; -1: none
    std::vector<std::string> labels_;
    std::vector<PartSort> sorts_;
    std::unordered_map<std::string, int> ids_;
    std::unordered_map<std::string, std::string> cutFrom_;  ///< slice or length: its panel
    std::string field_;                                     ///< its label
    std::vector<Bits> ofPart_, ofPiece_, ofUse_, ofStep_, ofCutLine_, ofCaution_, ofPlank_;
    Bits ofBorder_;
    std::vector<bool> wholeField_;  ///< steps
    std::vector<std::vector<int>> stepsOfCaution_;
    std::vector<Highlight> placeOfCaution_;
    std::vector<std::string> planks_;
    std::vector<std::vector<int>> linesOfUse_;  ///< of the wished field
    bool byColumns_ = false;
    bool hasBand_ = false;
};

}  // namespace kerfwright
