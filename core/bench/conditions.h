// What a board is built under and what it lives in, beside the shop's machines.
#pragma once

#include "core/board/use.h"
#include "core/shop/benchrates.h"
#include "core/shop/glueshop.h"
#include "core/wood/moisture.h"

#include <vector>

namespace kerfwright {

struct Conditions {
    Climate climate;
    GlueShop glue;
    BoardPurpose purpose;
    BenchRates rates;
    friend bool operator==(const Conditions&, const Conditions&) = default;
};

/// Everything wrong, in the order of the members; lengths are written in `notation`.
std::vector<Fault> faults(const Conditions& conditions, const Notation& notation);

}  // namespace kerfwright
