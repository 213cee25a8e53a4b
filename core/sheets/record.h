// The step list looked up by workpiece, for sheets that show one workpiece at a time. Points into
// the step list, which must outlive it.
#pragma once

#include "core/glueup/steps.h"

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
    Numbered<Mill> mill;
    Numbered<Glue> glue;              ///< none where the panel is a single strip
    std::vector<StripRecord> strips;  ///< in the order of the glue-up
    std::vector<int> later;           ///< numbers of the steps after the glue-up, in order

    Length width() const;
    const Figure& length() const { return strips.front().line->length; }
    const Figure& thickness() const { return strips.front().line->thickness; }
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
    std::vector<StripRecord> strips;  ///< left to right, or top to bottom for a column
};

struct Record {
    explicit Record(const StepList& list);

    const StepList& list;
    std::vector<PanelRecord> panels;
    std::map<std::string, SliceRecord> slices;
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

private:
    PanelRecord& panel(const std::string& label);
};

/// In the order in which they are counted: A2 before A10, Z before AA. Labels without a number,
/// such as those of rails, are left where they are.
bool labelBefore(const std::string& a, const std::string& b);

/// Labels with a common beginning put together: "A1–A4, A6, B1", "A-1 to A-12".
std::string labelList(const std::vector<std::string>& labels);

}  // namespace kerfwright
