// The fullest way to cut one blank, where every item has a value: the pricing of column generation.
// Private to core/timber.
//
// Exact for layouts whose sections are as long as the longest strip in them. Two levels: along the
// blank sections are chosen, across each section strips. Whatever can be moved left or down without
// meeting a defect may be; so sections begin at the end of another (and a kerf), or where a strip
// in them meets a defect on its left; strips begin above another, or above a defect.
#pragma once

#include "core/timber/pool.h"

#include <array>
#include <cstdint>
#include <map>
#include <unordered_map>
#include <utility>
#include <vector>

namespace kerfwright::cutting {

class Filler {
public:
    /// Both must outlive the filler.
    Filler(const Pool& pool, int blank);

    /// The greatest sum of values, with any number of each item. `values`: of each item, 0 or
    /// more. Sums are exact where the values are whole multiples of one power of two.
    double fill(const std::vector<double>& values, Pattern* pattern = nullptr);
    /// A good pattern with at most `limits` of each item; its value. It is no worse than what
    /// `pattern` holds before, where that is of this blank and within the limits.
    double fillWithin(const std::vector<double>& values, const std::vector<int>& limits,
                      Pattern& pattern);

    /// One way of strips across a section: which may lie where.
    struct Window {
        /// Of each way that is short enough, the sets of defects that block it, one set for each
        /// place along the section. A way with an empty set is free everywhere.
        std::vector<std::pair<int, std::vector<std::uint64_t>>> ways;
        bool operator<(const Window& other) const { return ways < other.ways; }
    };
    const std::vector<Nm>& lengths() const { return lengths_; }
    /// Where sections of a length may begin, besides at the end of others: start, index of length.
    const std::vector<std::pair<Nm, int>>& starts() const { return starts_; }
    int windowAt(Nm x, int length);
    const Window& window(int index) const { return windows_[static_cast<std::size_t>(index)]; }
    /// The lowest place from `y` on where the way is clear of the defects of one of its sets; -1:
    /// none.
    Nm lowest(const std::pair<int, std::vector<std::uint64_t>>& way, Nm y) const;
    /// Strips of a section that begins at x; ways and their lower edges.
    Stretch stretch(Nm x, Nm length, const std::vector<std::pair<int, Nm>>& strips) const;

private:
    /// What was laid up to a place.
    struct Label {
        Nm place = 0;
        double value = 0;
        int before = -1;
        int choice = -1;  ///< way, or length
        Nm from = 0;      ///< where that begins
        int own = -1;     ///< among `own_`, where limits asked for other strips than usual
    };
    struct Cross {
        double value = 0;
        std::vector<std::pair<int, Nm>> strips;
    };
    struct Later {
        Nm place;
        int label;
        bool operator<(const Later& other) const {
            return place != other.place ? place > other.place : label > other.label;
        }
    };
    double easily(const Window& window, const std::vector<int>* limits) const;
    double again(const Cross& before, const std::vector<int>* limits) const;
    /// The most that goes into some room, in steps.
    struct Steps {
        Nm unit = 1;
        std::vector<double> values;
        double within(Nm room) const;
    };
    void climb(const std::vector<std::pair<Nm, double>>& parts, Nm room, Steps& steps);
    const Steps& aboveIn(std::size_t ways);
    const Cross& crossIn(int window);
    const Cross& cross(Nm x, int length);
    const Cross& crossOf(const Label& label);
    void single(const Window& window, const std::vector<int>* limits, Cross& cross) const;
    void across(const Window& window, const std::vector<int>* limits, Cross& cross);
    void extend(int now, Nm x, int length);
    double along(const std::vector<double>& values, const std::vector<int>* limits,
                 Pattern* pattern);
    const Pattern* recall(const std::vector<double>& values, const std::vector<int>* limits);
    int findWindow(Nm x, int length);
    int number(Window window);

    const Pool& pool_;
    const Blank& blank_;
    int index_;
    std::vector<Nm> lengths_;
    std::vector<std::pair<Nm, int>> starts_;
    std::vector<Window> windows_;
    std::map<Window, int> known_;
    std::vector<std::unordered_map<Nm, int>> at_;  ///< of each length, windows by place
    std::vector<int> clear_;                       ///< of each length, the window without defects

    // Of the filling that is going on.
    const std::vector<double>* values_ = nullptr;
    const std::vector<int>* limits_ = nullptr;
    std::vector<Cross> memo_;           ///< of each window
    std::vector<std::int64_t> filled_;  ///< of each window, which filling its memo is of
    std::int64_t filling_ = 0;
    std::vector<Cross> own_;
    std::size_t owns_ = 0;
    std::vector<Label> cuts_, rips_;
    std::vector<Later> cutQueue_, ripQueue_;
    std::vector<int> left_;
    std::vector<double> density_;  ///< value of each way for its width and a kerf
    std::vector<int> order_;       ///< ways, the densest first
    Nm narrowest_ = 0;             ///< of all ways
    std::vector<Steps> above_;     ///< by the number of ways in a window
    Steps behind_;
    int best_ = 0;
    double floor_ = 0;

    std::array<Pattern, 12> memory_;  ///< what was found last
    std::size_t next_ = 0;
    Pattern hint_;
    double remembered_ = 0;  ///< value of what was recalled
};

}  // namespace kerfwright::cutting
