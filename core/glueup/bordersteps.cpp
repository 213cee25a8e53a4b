#include "core/glueup/bordersteps.h"

#include "core/glueup/allowances.h"
#include "core/words/say.h"

#include <algorithm>
#include <array>

namespace kerfwright {
namespace {

/// Labels of the parts at the four sides, clockwise from the top. They are English in every step
/// list; `shownLabel` says them.
using SideLabels = std::array<const char*, 4>;
constexpr SideLabels railLabels{noted("Top rail"), noted("Right rail"), noted("Bottom rail"),
                                noted("Left rail")};
constexpr SideLabels endLabels{noted("Top end"), noted("Right end"), noted("Bottom end"),
                               noted("Left end")};
constexpr SideLabels bandLabels{noted("Top band"), noted("Right band"), noted("Bottom band"),
                                noted("Left band")};
constexpr SideLabels tongueLabels{noted("Top tongue"), noted("Right tongue"),
                                  noted("Bottom tongue"), noted("Left tongue")};
constexpr SideLabels inlayLabels{noted("Top inlay"), noted("Right inlay"), noted("Bottom inlay"),
                                 noted("Left inlay")};
constexpr const char* splineLabel = noted("Spline stick");

bool runsAcross(std::size_t side) {
    return side % 2 == 0;
}

/// Length of the rails at top and bottom (`across`) or left and right.
Figure railFigure(const BorderFit& fit, const Board& board, bool across) {
    const Border& border = board.border;
    Figure figure{{TermKind::FieldSide, across ? board.field.width() : board.field.height()}};
    if (border.isFrame()) {
        figure.add(TermKind::Gap, (across ? fit.gapX : fit.gapY).value, 2)
            .add(TermKind::BorderWidth, border.width, 2);
    } else if (across && fit.surround.railX > Length()) {
        // Butted: top and bottom bands lie over the ends of the others.
        figure.add(TermKind::BorderWidth, fit.surround.railX, 2);
    }
    return figure;
}

const SideLabels& railLabelsOf(BorderDesign design) {
    return design == BorderDesign::BreadboardEnds ? endLabels
           : design == BorderDesign::EdgeBand     ? bandLabels
                                                  : railLabels;
}

class BorderWriter {
public:
    BorderWriter(StepList& list, const BorderFit& fit, const Board& board, const Shop& shop,
                 const BorderSides& sides, const std::string& field)
        : list_(list)
        , fit_(fit)
        , board_(board)
        , border_(board.border)
        , shop_(shop)
        , field_(field) {
        for (std::size_t side = 0; side < 4; ++side) {
            if (runsAcross(side) ? sides.topAndBottom : sides.leftAndRight) {
                used_.push_back(side);
            }
        }
        tongued_ = fit.tongueThickness.value > Length();
        ledged_ = fit.ledge.value > Length();
    }

    void operator()() {
        mill();
        channels();
        cut();
        if (tongued_) {
            glueTongues();
        }
        fitIt();
        if (keysCorners(board_)) {
            keyCorners();
        }
    }

private:
    void add(Work work) { list_.steps.push_back({std::move(work)}); }
    std::string railLabel(std::size_t side) const { return railLabelsOf(border_.design)[side]; }
    std::vector<Rail> rails() const {
        std::vector<Rail> all;
        for (const std::size_t side : used_) {
            all.push_back({railLabel(side), railFigure(fit_, board_, runsAcross(side))});
        }
        return all;
    }

    /// One line for each pair of opposite sides.
    void addPairs(Mill& mill, int wood, const SideLabels& labels, const Figure& thickness,
                  const Figure& width, const std::array<Figure, 2>& lengths) const {
        for (const bool across : {true, false}) {
            MillLine line;
            for (const std::size_t side : used_) {
                if (runsAcross(side) == across) {
                    line.strips.push_back(labels[side]);
                }
            }
            if (line.strips.empty()) {
                continue;
            }
            line.wood = wood;
            line.thickness = thickness;
            line.width = width;
            line.length = lengths[across ? 0 : 1];
            addLine(mill, std::move(line));
        }
    }
    void addLine(Mill& mill, MillLine line) const {
        line.roughThickness = rough(line.thickness, shop_);
        line.roughWidth = rough(line.width, shop_);
        line.roughLength = roughLength(line.length, shop_);
        kerfwright::account(list_.ledger, line);
        mill.lines.push_back(std::move(line));
    }

    void mill() {
        Mill mill;
        const std::array<Figure, 2> lengths{railFigure(fit_, board_, true),
                                            railFigure(fit_, board_, false)};
        const std::array<Figure, 2> blanks{railLength(shop_, lengths[0]),
                                           railLength(shop_, lengths[1])};
        const Figure thickness{{TermKind::BoardThickness, board_.thickness}};
        addPairs(mill, border_.wood, railLabelsOf(border_.design), thickness, fit_.railStock,
                 blanks);
        if (tongued_) {
            addPairs(mill, border_.wood, tongueLabels, fit_.tongueThickness, fit_.tongueWidth,
                     {tongueLength(true), tongueLength(false)});
        }
        if (border_.hasInlay()) {
            addPairs(mill, border_.inlayWood, inlayLabels, fit_.inlayHeight,
                     {{TermKind::Inlay, border_.inlayWidth}}, blanks);
        }
        if (keysCorners(board_)) {
            MillLine line;
            line.wood = border_.splineWood;
            line.strips = {splineLabel};
            line.thickness.add(TermKind::Joinery, border_.splineThickness);
            line.width = fit_.splineDepth;
            // The long side of a key is twice as long as its slot is deep.
            line.length = railLength(shop_, {{TermKind::Joinery, fit_.splineDepth.value, 8},
                                             {TermKind::Kerf, shop_.kerf, 3}});
            addLine(mill, std::move(line));
        }
        weigh(blanks, lengths);
        add(std::move(mill));
    }

    /// Round a floating field the tongues stop where the next groove runs.
    Figure tongueLength(bool across) const {
        if (!border_.isFrame()) {
            return railFigure(fit_, board_, across);
        }
        return {{TermKind::FieldSide, across ? board_.field.width() : board_.field.height()},
                {TermKind::FieldGroove, fit_.fieldGroove.value, -2}};
    }

    /// Area of a rail from above between two distances from its outer edge.
    Area seen(Length longPoint, Length from, Length to) const {
        return area(to - from, border_.isFrame() ? longPoint - from - to : longPoint);
    }

    void weigh(const std::array<Figure, 2>& blanks, const std::array<Figure, 2>& lengths) {
        Ledger& ledger = list_.ledger;
        const Length thick = board_.thickness;
        const Length stock = fit_.railStock.value;
        const Length visible = border_.width;
        for (const std::size_t side : used_) {
            const std::size_t pair = runsAcross(side) ? 0 : 1;
            const Length blank = blanks[pair].value;
            const Length length = lengths[pair].value;
            Volume cutOut;
            Volume kept = volume(seen(length, Length(), stock), thick);
            Volume inBlank = volume(stock, thick, blank);
            const auto channel = [&](Length from, Length to, Length high) {
                cutOut += volume(to - from, high, blank);
                kept -= volume(seen(length, from, to), high);
            };
            if (tongued_) {
                channel(stock - fit_.railGroove.value, stock, fit_.tongueThickness.value);
                const Length tongue = tongueLength(pair == 0).value;
                ledger.board += volume(fit_.tongueThickness.value, fit_.tongueWidth.value, tongue);
            }
            if (ledged_) {
                channel(visible, stock, thick - fit_.ledgeThickness.value);
            }
            if (border_.hasInlay()) {
                const Length from = visible - border_.inlayWidth;
                channel(from, visible, fit_.inlayDepth.value);
                kept += volume(seen(length, from, visible), fit_.inlayDepth.value);
                inBlank += volume(border_.inlayWidth, fit_.inlayDepth.value, blank);
                ledger.planed += volume(border_.inlayWidth,
                                        fit_.inlayHeight.value - fit_.inlayDepth.value, blank);
            }
            ledger.grooved += cutOut;
            ledger.board += kept;
            ledger.trimmed += inBlank - cutOut - kept;
        }
        if (tongued_ || ledged_) {
            const Volume out = fieldChannel();
            ledger.grooved += out;
            ledger.board -= out;
        }
        if (keysCorners(board_)) {
            const Length depth = fit_.splineDepth.value;
            const Volume keys = volume(depth, depth, border_.splineThickness) * 4;
            const Figure length =
                railLength(shop_, {{TermKind::Joinery, depth, 8}, {TermKind::Kerf, shop_.kerf, 3}});
            ledger.grooved += keys;
            ledger.trimmed += volume(depth, border_.splineThickness, length.value) - keys;
        }
    }

    Figure channelHeight() const { return tongued_ ? fit_.tongueThickness : fit_.ledgeThickness; }

    Volume fieldChannel() const {
        const Length width = board_.field.width();
        const Length height = board_.field.height();
        const Length deep = fit_.fieldGroove.value * 2;
        const Area whole = area(width, height);
        const Area inside = border_.isFrame()           ? area(width - deep, height - deep)
                            : runsAcross(used_.front()) ? area(width, height - deep)
                                                        : area(width - deep, height);
        return volume(Area(whole.squareNm() - inside.squareNm()), channelHeight().value);
    }

    void channels() {
        std::vector<std::string> rails;
        for (const std::size_t side : used_) {
            rails.push_back(railLabel(side));
        }
        if (ledged_) {
            Figure high{{TermKind::BoardThickness, board_.thickness}};
            high.add(TermKind::Ledge, fit_.ledgeThickness.value, -1);
            add(CutChannel{rails, ChannelFor::Ledge, 1, fit_.ledge, high, {}});
        }
        if (tongued_) {
            add(CutChannel{rails, ChannelFor::Tongue, 1, fit_.railGroove, fit_.tongueThickness,
                           fit_.tongueFromFace});
        }
        if (border_.hasInlay()) {
            const Length wide = border_.inlayWidth;
            add(CutChannel{
                rails, ChannelFor::Inlay, 1, {{TermKind::Inlay, wide}}, fit_.inlayDepth, {}});
            GlueIn glue;
            glue.purpose = ChannelFor::Inlay;
            for (const std::size_t side : used_) {
                glue.insets.push_back({inlayLabels[side], railLabels[side]});
                const Figure blank = railLength(shop_, railFigure(fit_, board_, runsAcross(side)));
                glue.glueFace += area(wide + fit_.inlayDepth.value, blank.value);
            }
            glue.proud.add(TermKind::Proud, fit_.inlayHeight.value - fit_.inlayDepth.value);
            add(std::move(glue));
        }
        if (tongued_ || ledged_) {
            CutChannel field;
            field.parts = {field_};
            field.purpose = tongued_ ? ChannelFor::Tongue : ChannelFor::Ledge;
            field.edges = border_.isFrame() ? 4 : 2;
            field.depth = fit_.fieldGroove;
            field.width = channelHeight();
            field.fromFace = fit_.tongueFromFace;
            if (ledged_) {
                field.fromFace.add(TermKind::BoardThickness, board_.thickness)
                    .add(TermKind::Ledge, fit_.ledgeThickness.value, -1);
            }
            add(std::move(field));
        }
    }

    void cut() { add(CutRails{border_.isFrame(), rails()}); }

    void glueTongues() {
        GlueIn glue;
        glue.purpose = ChannelFor::Tongue;
        for (const std::size_t side : used_) {
            glue.insets.push_back({tongueLabels[side], railLabel(side)});
            glue.glueFace += area(fit_.railGroove.value, tongueLength(runsAcross(side)).value) * 2;
        }
        glue.proud.add(TermKind::FieldGroove, fit_.tongueWidth.value - fit_.railGroove.value);
        add(std::move(glue));
    }

    void fitIt() {
        FitBorder fit;
        fit.part = field_;
        fit.rails = rails();
        fit.design = border_.design;
        fit.width.add(TermKind::BorderWidth, border_.width);
        const Surround& around = fit_.surround;
        fit.boardWidth.add(TermKind::FieldSide, board_.field.width())
            .add(TermKind::Gap, around.gapX, 2)
            .add(TermKind::BorderWidth, around.railX, 2);
        fit.boardHeight.add(TermKind::FieldSide, board_.field.height())
            .add(TermKind::Gap, around.gapY, 2)
            .add(TermKind::BorderWidth, around.railY, 2);
        fit.gapX = fit_.gapX;
        fit.gapY = fit_.gapY;
        const bool floats = border_.design == BorderDesign::FloatingFrame;
        const bool pinned = border_.design == BorderDesign::BreadboardEnds;
        fit.mustNotBeGlued = floats || pinned || (bindsTheField(board_) && !border_.cautionRead);
        if (!fit.mustNotBeGlued) {
            for (const Rail& rail : fit.rails) {
                const Length along = border_.isFrame() ? rail.longPoint.value - border_.width * 2
                                                       : rail.longPoint.value;
                fit.glueFace += area(along, board_.thickness);
            }
        }
        if (border_.isFrame() && (floats || !fit.mustNotBeGlued)) {
            fit.glueFace += area(diagonal(border_.width), board_.thickness) * 4;
        }
        fit.pinDiameter = fit_.pinDiameter;
        fit.pinFromEdge = fit_.pinFromEdge;
        fit.pins = fit_.pins;
        add(std::move(fit));
    }

    void keyCorners() {
        KeyCorners keys;
        keys.part = field_;
        keys.stick = splineLabel;
        keys.depth = fit_.splineDepth;
        keys.thickness.add(TermKind::Joinery, border_.splineThickness);
        keys.fromFace = fit_.splineFromFace;
        keys.glueFace = area(fit_.splineDepth.value, fit_.splineDepth.value) * 8;
        add(std::move(keys));
    }

    StepList& list_;
    const BorderFit& fit_;
    const Board& board_;
    const Border& border_;
    const Shop& shop_;
    const std::string& field_;
    std::vector<std::size_t> used_;  ///< sides that have a rail, clockwise from the top
    bool tongued_ = false;
    bool ledged_ = false;
};

}  // namespace

void addBorderSteps(StepList& list, const BorderFit& fit, const Board& board, const Shop& shop,
                    bool grainDown, const std::string& field) {
    BorderWriter(list, fit, board, shop, borderSides(board, grainDown), field)();
}

void account(Ledger& ledger, const MillLine& line) {
    const auto strips = static_cast<std::int64_t>(line.strips.size());
    const Area rough = area(line.roughThickness.value, line.roughWidth.value);
    const Area milled = area(line.thickness.value, line.width.value);
    ledger.timberIn += volume(rough, line.roughLength.value) * strips;
    ledger.planed +=
        Volume((rough.squareNm() - milled.squareNm()) * line.roughLength.value.nm()) * strips;
    ledger.trimmed += volume(milled, line.roughLength.value - line.length.value) * strips;
}

Figure longestRail(const BorderFit& fit, const Board& board, bool grainDown) {
    const BorderSides sides = borderSides(board, grainDown);
    Figure longest;
    for (const bool across : {true, false}) {
        if (across ? sides.topAndBottom : sides.leftAndRight) {
            const Figure rail = railFigure(fit, board, across);
            if (rail.value > longest.value) {
                longest = rail;
            }
        }
    }
    return longest;
}

}  // namespace kerfwright
