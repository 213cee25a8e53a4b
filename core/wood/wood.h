// Woods as the plan needs them: what they are called, how they look on paper, what they weigh, how
// they move, and in what section their timber is to be had.
#pragma once

#include "core/drawing/colour.h"
#include "core/measure/length.h"
#include "core/measure/notation.h"
#include "core/measure/result.h"
#include "core/wood/price.h"

#include <string>
#include <vector>

namespace kerfwright {

/// Greatest cross-section of rough timber that the maker can get, thickness by width.
struct Section {
    Length thickness;
    Length width;
    friend bool operator==(const Section&, const Section&) = default;
};

/// Percent of the green dimension, from green to ovendry; 0 where not known.
struct Shrinkage {
    double radial = 0;
    double tangential = 0;
    double volumetric = 0;
    friend bool operator==(const Shrinkage&, const Shrinkage&) = default;
};

/// Change for every 1 % of moisture, as a part of the dimension, from 6 to 14 % moisture; 0 where
/// not known.
struct MovementCoefficients {
    double radial = 0;
    double tangential = 0;
    friend bool operator==(const MovementCoefficients&, const MovementCoefficients&) = default;
};

enum class Pores { Unknown, Ring, SemiRing, Diffuse };
/// Whether end grain takes in water: the pores are small or plugged, or they are open.
enum class PoreEnds { Unknown, Closed, Open };
/// The classes of the Wood Handbook, table 10-1.
enum class Gluing { Unknown, Easily, Well, Satisfactorily, WithDifficulty };
/// How the maker's timber is sawn: where the rings lie in the wide face of a plank.
enum class Rings { Unknown, Flat, Rift, Quarter };

/// Where each value is from, or "value from memory"; empty where the value is not known. The
/// source of the density is `Wood::source`.
struct WoodSources {
    std::string shrinkage;
    std::string movement;
    std::string hardness;
    std::string pores;
    std::string gluing;
    std::string reactions;
    std::string food;
    friend bool operator==(const WoodSources&, const WoodSources&) = default;
};

struct Wood {
    std::string key;     ///< stable name in files: lower case letters, digits and '-'
    std::string name;    ///< "Hard maple"
    std::string letter;  ///< one or two capitals that stand for it on paper without colour
    Colour colour;       ///< the project's own judgement, not measured
    double density = 0;  ///< kg/m3 at 12 % moisture; 0 where not known
    Section timber;      ///< rough
    std::string source;  ///< where the density is from, or "value from memory"

    std::string botanical = {};  ///< "Acer saccharum"; empty where not known
    Shrinkage shrinkage = {};
    MovementCoefficients movement = {};
    double hardness = 0;  ///< N, side hardness; it says nothing of end grain; 0 where not known
    Pores pores = Pores::Unknown;
    PoreEnds poreEnds = PoreEnds::Unknown;
    Gluing gluing = Gluing::Unknown;
    std::string reactions = {};  ///< as reported of those who work it; empty: none was found
    std::string food = {};       ///< a word on boards for food; empty: none was found
    Rings rings = Rings::Unknown;
    Price price = {};
    WoodSources sources = {};
    friend bool operator==(const Wood&, const Wood&) = default;
};

/// What the values of a wood may be; wider than any wood is.
struct WoodLimits {
    static constexpr double density = 2000;  ///< kg/m3; wood substance itself is about 1500
    static constexpr double shrinkage = 30;  ///< percent
    static constexpr double movement = 0.02;
    static constexpr double hardness = 50'000;  ///< N
    static constexpr std::int64_t price = greatestPrice;
};

/// Woods that come with the program, from resources/woods.json, in the order of that file and under
/// their English names.
const std::vector<Wood>& woodCatalogue();
/// What a wood of the catalogue is called in the language that is spoken.
std::string spokenName(const Wood& catalogued);
/// A wood of the catalogue as a project takes it over: with name, reactions and word on food in the
/// language spoken, which from then on are the maker's.
Wood takenOver(Wood catalogued);
/// Null where the catalogue has no such key.
const Wood* findWood(const std::vector<Wood>& woods, const std::string& key);
/// -1 where there is no such key.
int woodIndex(const std::vector<Wood>& woods, const std::string& key);

/// Everything wrong, in the order of the woods: keys that are malformed or used twice, empty names,
/// letters that are not one or two capitals or stand for two woods, numbers outside `WoodLimits`,
/// a section of 0 or less. Lengths are written in `notation`.
std::vector<Fault> faults(const std::vector<Wood>& woods,
                          const Notation& notation = Notation::millimetres());

}  // namespace kerfwright
