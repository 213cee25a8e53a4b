// The bench itself: the workpieces that lie about, what has become dust, and one function per kind
// of step. Each function says what keeps the step from being carried out, or nothing.
#pragma once

#include "core/board/board.h"
#include "core/glueup/steps.h"
#include "core/replay/profile.h"
#include "core/replay/solid.h"
#include "core/replay/trace.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace kerfwright {

class Bench {
public:
    /// List and board must outlive the bench.
    Bench(const StepList& list, const Board& board, const FieldSeason& season);

    /// Carries out the step; faults without the step's number. The bench is of no more use once
    /// there was one.
    std::vector<std::string> carryOut(const Step& step);

    /// What must hold when the list has been carried out, the top view included.
    std::vector<std::string> finish(bool mergeLike);

    /// Notes every workpiece there from now on; must outlive the bench.
    void noteIn(Trace& trace) { trace_ = &trace; }
    void noteRest();

    /// Everything weighed so far; whole after `finish`.
    const Ledger& ledger() const { return ledger_; }
    /// Of the finished board, border included; 0 where there is no field.
    Length width() const;
    Length height() const;
    Length thickness() const;

private:
    enum class Kind { Strip, Panel, Slice, Spare, Field };

    struct Workpiece {
        std::string_view label;
        Solid solid;
        Kind kind = Kind::Strip;
        std::string_view madeFor;  ///< strips: the panel they were milled for
        bool gone = false;         ///< glued into another one, or cut up to the end
        bool flattened = false;
        bool cut = false;        ///< slices were cut off it
        bool marginRow = false;  ///< slices: cut in a step for margin rows
        bool forPanel = false;   ///< slices: cut as lengths for other panels
    };

    /// A rail of the border, from the first cut in its blank.
    struct RailState {
        Corner stock;  ///< of the blank: width, length, thickness
        int wood = 0;
        Profile profile;
        std::optional<Slab> groove, ledge, inlay;  ///< what was cut
        bool inlaid = false;
        bool cut = false;
        Length length;                 ///< once cut; long point to long point where mitred
        std::optional<Corner> tongue;  ///< width, length, thickness
    };

    void run(const Mill& step);
    void run(const Glue& step);
    void run(const Take& step);
    void run(const Flatten& step);
    void run(const SquareEnd& step);
    void run(const Crosscut& step);
    void run(const BringToSize& step);
    void run(const TrimField& step);
    void run(const CutChannel& step);
    void run(const GlueIn& step);
    void run(const CutRails& step);
    void run(const FitBorder& step);
    void run(const KeyCorners& step);

    void millLine(const Mill& step, const MillLine& line);
    /// Takes the part off the bench, as it lies; false (and a fault) where it is not to be had.
    bool takeUp(const Laid& laid, std::string_view result, bool forField, Solid& taken);
    void putField(std::string_view label, Solid solid);
    /// A slice that came off a panel, or nothing where the panel is too short.
    void bringToSize(const std::string& label, const Sizing& sizing);
    bool cutOne(std::string_view label, Workpiece& panel, const Crosscut& step, Kind kind);
    BorderSides sides() const;
    RailState* openRail(std::string_view label);
    void cutRailChannel(const CutChannel& step, std::string_view label);
    void cutFieldChannel(const CutChannel& step);
    Area glueTongue(const GlueIn& step, const Workpiece& stick, RailState& rail);
    Area glueInlay(const GlueIn& step, const Workpiece& stick, RailState& rail);
    void checkGaps(const FitBorder& step);
    void layRail(const FitBorder& step, const Rail& written, Length inside, bool across,
                 const Workpiece& field);
    void checkHousing(const FitBorder& step, const RailState& rail, bool across,
                      const Corner& field, const std::string& name);
    void checkGlued(const FitBorder& step, Area edges, Length thickness);
    void checkPins(const FitBorder& step, const BorderSides& on);
    void noteMarginRow(const std::string& part);
    void checkMarginRows();
    void weighRest();
    void closeLedger();

    Workpiece* find(std::string_view label);
    /// The field, if that is what `label` names and it may still be worked on.
    Workpiece* openField(std::string_view label);
    /// A panel that may still be worked on: glued, or a strip that is a panel by itself.
    Workpiece* openPanel(std::string_view label);
    Workpiece* put(std::string_view label, Kind kind, Solid solid);

    /// `name` is to be said in the context "figure".
    bool check(const Figure& figure, const char* name);
    bool checkKerf(const Figure& kerf);
    void checkSize(const Figure& written, Length actual, const char* name);
    void fault(std::string text) { faults_.push_back(std::move(text)); }

    void noteReady(const Workpiece& workpiece);

    const StepList& list_;
    const Board& board_;
    Trace* trace_ = nullptr;
    std::vector<Workpiece> workpieces_;
    std::unordered_map<std::string_view, std::size_t> places_;
    std::vector<std::string> faults_;
    Ledger ledger_;

    bool kerfKnown_ = false;
    Length kerf_;  ///< of the first cut; there is one blade
    bool fieldLaid_ = false;
    std::size_t field_ = 0;
    enum class Margin : std::uint8_t { None, Row, NotSliced };
    std::vector<Margin> marginRows_;  ///< for each part of the field, in order
    bool trimmed_ = false;
    Length margin_;
    bool bordered_ = false;
    Length boardWidth_, boardHeight_;
    FieldSeason season_;
    std::unordered_map<std::string_view, RailState> rails_;
    std::optional<Slab> fieldChannel_;  ///< out: in from the field's edge
    bool fieldLedge_ = false;           ///< that channel is a rebate below
    bool keyed_ = false;
};

}  // namespace kerfwright
