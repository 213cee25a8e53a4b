// The step list looked up by workpiece, for sheets that show one workpiece at a time. Points into
// the step list, which must outlive it.
#pragma once

#include "core/glueup/steps.h"
#include "core/replay/trace.h"

#include <cstddef>
#include <map>
#include <string>
#include <vector>

namespace kerfwright {

/// A step with its number as the maker counts, from 1.
template <class Work>
struct Numbered {
    const Work* work = nullptr;
    int number = 0;
    explicit operator bool() const { return work != nullptr; }
    const Work* operator->() const { return work; }
};

struct StripRecord {
    std::string label;
    const MillLine* line = nullptr;
};

struct PanelRecord {
    std::string label;
    Numbered<Mill> mill;              ///< none where no strip was milled for it
    Numbered<Glue> glue;              ///< none where the panel is a single strip
    std::vector<StripRecord> strips;  ///< in the order of the glue-up; of a deep panel those alone
                                      ///< that were milled for it
    std::vector<int> later;           ///< numbers of the steps after the glue-up, in order
    bool deep = false;                ///< parts of other panels went into it

    Length width() const;
    const Figure& length() const { return glue ? glue->length : strips.front().line->length; }
    const Figure& thickness() const {
        return glue ? glue->thickness : strips.front().line->thickness;
    }
};

struct SliceRecord {
    std::size_t panel = 0;
    Length thickness;  ///< of the panel when the slice was cut
    Length length;     ///< the stop
};

/// A slice as it lies in the field.
struct RowRecord {
    std::string slice;
    Lay lay;
    Length height;                    ///< of the row; width of a column
    std::vector<StripRecord> strips;  ///< left to right, or top to bottom for a column; none in a
                                      ///< deep plan
    Solid solid;                      ///< as it lies; in a deep plan alone
};

struct Record {
    explicit Record(const StepList& list);
    /// Looks the workpieces up too, where panels are glued from parts of others.
    void follow(const Board& board, const FieldSeason& season);

    const StepList& list;
    std::vector<PanelRecord> panels;
    std::map<std::string, SliceRecord> slices;
    bool deep = false;  ///< some panel is, or slices are brought to a size of their own
    Trace solids;       ///< of a deep plan, once it was followed
    Numbered<Glue> finalGlue;
    Numbered<Take> take;
    Numbered<Flatten> flattenField;
    Numbered<TrimField> trim;
    Numbered<Mill> railMill;
    Numbered<FitBorder> border;

    bool byColumns() const { return finalGlue && finalGlue->along == GlueAlong::Width; }
    /// The slices in the order of the final glue-up. `asTold`: as the steps lay them; else as they
    /// would lie if nobody flipped any.
    std::vector<RowRecord> rows(bool endGrain, bool asTold) const;
    const Work& work(int number) const;
    bool isCutUp(const PanelRecord& panel) const;

private:
    PanelRecord& panel(const std::string& label);
    void noteSized(const BringToSize& work, int number);
};

/// In the order in which they are counted: A2 before A10, Z before AA. Labels without a number,
/// such as those of rails, are left where they are.
bool labelBefore(const std::string& a, const std::string& b);

/// "C" of "C-4" or "C": the panel that a part is, or was crosscut off.
std::string panelOf(const std::string& label);

/// Every label by itself: "A1, A2, A4".
std::string eachLabel(const std::vector<std::string>& labels);
/// Labels with a common beginning put together: "A1–A4, A6, B1", "A-1 to A-12".
std::string labelList(const std::vector<std::string>& labels);

}  // namespace kerfwright
