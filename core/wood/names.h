// Names of a wood's enumerations, as they stand in the catalogue and in project files.
#pragma once

#include "core/wood/wood.h"

#include <array>
#include <string_view>

namespace kerfwright {

/// A value and its name in files.
template <class Value>
struct FileName {
    Value value;
    std::string_view text;
};

inline constexpr std::array poreNames{
    FileName<Pores>{Pores::Unknown, "unknown"}, FileName<Pores>{Pores::Ring, "ring"},
    FileName<Pores>{Pores::SemiRing, "semi-ring"}, FileName<Pores>{Pores::Diffuse, "diffuse"}};
inline constexpr std::array poreEndNames{FileName<PoreEnds>{PoreEnds::Unknown, "unknown"},
                                         FileName<PoreEnds>{PoreEnds::Closed, "closed"},
                                         FileName<PoreEnds>{PoreEnds::Open, "open"}};
inline constexpr std::array gluingNames{
    FileName<Gluing>{Gluing::Unknown, "unknown"}, FileName<Gluing>{Gluing::Easily, "easily"},
    FileName<Gluing>{Gluing::Well, "well"},
    FileName<Gluing>{Gluing::Satisfactorily, "satisfactorily"},
    FileName<Gluing>{Gluing::WithDifficulty, "with-difficulty"}};
inline constexpr std::array ringNames{
    FileName<Rings>{Rings::Unknown, "unknown"}, FileName<Rings>{Rings::Flat, "flat"},
    FileName<Rings>{Rings::Rift, "rift"}, FileName<Rings>{Rings::Quarter, "quarter"}};

}  // namespace kerfwright
