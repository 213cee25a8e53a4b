// A problem of layout in plain whole numbers of nanometres: one wood, trims taken off, equal strips
// and equal planks taken together. Private to core/timber.
#pragma once

#include "core/timber/layout.h"

#include <cstdint>
#include <vector>

namespace kerfwright::cutting {

using Nm = std::int64_t;

/// Strips that are alike.
struct Item {
    std::vector<int> wanted;  ///< lines of the demand, in order
    Nm length = 0;
    int count = 0;
    Volume volume;  ///< of one
};

/// An item as it can lie on a blank.
struct Way {
    int item = 0;
    Nm width = 0;  ///< across the blank
    bool onEdge = false;
};

struct Box {
    Nm left = 0, right = 0, low = 0, high = 0;
    friend bool operator==(const Box&, const Box&) = default;
};

/// Planks that are alike: the part of them that trims leave, from 0.
struct Blank {
    std::vector<int> planks;  ///< of the rack, in order
    Nm length = 0, width = 0;
    std::vector<Box> defects;
    std::vector<Way> ways;
    std::int64_t cost = 0;
    int count() const { return static_cast<int>(planks.size()); }
};

struct Pool {
    Nm kerf = 0;
    std::vector<Item> items;
    std::vector<Blank> blanks;  ///< those that something fits on
};

struct Strip {
    int item = 0;
    Nm x = 0, y = 0;
    bool onEdge = false;
};

struct Stretch {
    Nm x = 0, length = 0;
    std::vector<Strip> strips;
};

/// How a blank is cut.
struct Pattern {
    int blank = 0;
    std::vector<Stretch> stretches;
    std::vector<int> counts;  ///< of each item
    bool isEmpty() const { return stretches.empty(); }
};

/// Everything of one wood, with its lines of the demand merged and its alike planks counted.
Pool poolOf(const std::string& wood, const Rack& rack, const Demand& demand, const CutRules& rules,
            CostIn in);

}  // namespace kerfwright::cutting
