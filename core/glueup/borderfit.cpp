#include "core/glueup/borderfit.h"

#include "core/words/say.h"

#include <algorithm>
#include <optional>

namespace kerfwright {
namespace {

/// Usual sizes of such joinery, in round numbers of the shop's own measure. Common practice, no
/// source, all of them.
struct Usual {
    Length step;        ///< of a fence that is set by hand
    Length clearance;   ///< left when wood is as large as it gets
    Length hold;        ///< of tongue or ledge below the field when that is smallest
    Length railGroove;  ///< depth where the rail is wide enough for it
    Length thickest;    ///< tongue or ledge
    Length thinnest;    ///< tongue, ledge, or what is left beside a groove
    Length inlayDepth;
    Length proud;       ///< of an inlay before it is levelled
    Length reach;       ///< of a pinned tongue into the field; twice a whole number of steps
    Length pin;         ///< diameter
    Length pinFromEnd;  ///< of the outermost pins
    Length pinSpacing;  ///< at most
};

/// A shop whose strips are rounded to whole 1/64 in and not to whole half millimetres measures in
/// inches. Not the notation: looking at a plan in other units must not change it.
bool inInches(const Shop& shop) {
    return shop.lengthStep.nm() % Length::inch(1, 64).nm() == 0 &&
           shop.lengthStep.nm() % Length::um(500).nm() != 0;
}

Usual usualIn(const Shop& shop) {
    if (inInches(shop)) {
        return {Length::inch(1, 64), Length::inch(1, 64), Length::inch(3, 16), Length::inch(5, 16),
                Length::inch(3, 8),  Length::inch(1, 8),  Length::inch(1, 8),  Length::inch(1, 64),
                Length::inch(5, 8),  Length::inch(1, 4),  Length::inch(3, 2),  Length::inch(6)};
    }
    return {Length::um(500), Length::um(500), Length::mm(5),  Length::mm(8),
            Length::mm(10),  Length::mm(3),   Length::mm(3),  Length::um(500),
            Length::mm(16),  Length::mm(6),   Length::mm(40), Length::mm(150)};
}

Length roundedDown(Length length, Length step) {
    return Length::nm(length.nm() - length.nm() % step.nm());
}
Length part(Length length, std::int64_t of) {
    return Length::nm(length.nm() / of);
}
Figure& roundFine(Figure& figure, Length step) {
    return figure.add(TermKind::RoundingFine, roundedUp(figure.value, step) - figure.value);
}
/// So that twice the half is never less than the whole.
Length upperHalf(Length length) {
    return Length::nm((length.nm() + 1) / 2);
}

class Fitter {
public:
    Fitter(const Board& board, const Shop& shop, bool grainDown, const FieldSeason& season,
           const Notation& notation)
        : board_(board)
        , border_(board.border)
        , grainDown_(grainDown)
        , season_(season)
        , notation_(notation)
        , usual_(usualIn(shop))
        , shop_(shop) {}

    Result<BorderFit> operator()() {
        if (border_.isThere()) {
            fit();
        }
        if (fault_) {
            return *fault_;
        }
        return std::move(fit_);
    }

private:
    void refuse(const char* entry, std::string rule, Length value) {
        if (!fault_) {
            fault_ = Fault{say(entry), std::move(rule), format(value, notation_)};
        }
    }
    void refuseBuild(std::string rule) {
        const bool endGrain = board_.build == Build::EndGrain;
        fault_ = Fault{say("Border"), std::move(rule),
                       endGrain ? say("an end-grain build") : say("a long-grain build")};
    }
    std::string atLeast(Length length) const { return formatLeast(length, notation_); }
    std::string atMost(Length length) const { return formatGreatest(length, notation_); }

    void fit() {
        const bool endGrain = board_.build == Build::EndGrain;
        if (border_.design == BorderDesign::EndGrainBand && !endGrain) {
            return refuseBuild(
                say("an end-grain band needs an end-grain build, it moves as that does"));
        }
        if (border_.design == BorderDesign::BreadboardEnds && endGrain) {
            return refuseBuild(
                say("breadboard ends need a long-grain build, they lie across its grain"));
        }
        fit_.gapX = gapFor(border_, season_.growthX, shop_);
        fit_.gapY = gapFor(border_, season_.growthY, shop_);
        fit_.railStock.add(TermKind::BorderWidth, border_.width);
        if (border_.design == BorderDesign::FloatingFrame) {
            float_();
        } else if (border_.design == BorderDesign::BreadboardEnds) {
            pinned();
        }
        if (border_.hasInlay()) {
            inlay();
        }
        if (border_.hasSplines()) {
            splines();
        }
        fit_.surround = surroundOf(board_, grainDown_, fit_.gapX.value, fit_.gapY.value);
    }

    void float_() {
        const Length gap = std::max(fit_.gapX.value, fit_.gapY.value);
        const Length shrinkage = std::max(season_.shrinkageX, season_.shrinkageY);
        fit_.fieldGroove.add(TermKind::Gap, gap)
            .add(TermKind::Hold, usual_.hold)
            .add(TermKind::HalfShrinkage, upperHalf(shrinkage));
        roundFine(fit_.fieldGroove, usual_.step);
        const Length side = std::min(board_.field.width(), board_.field.height());
        if (fit_.fieldGroove.value * 4 > side) {
            return refuse(
                noted("Border"),
                say("too small a field to float: its edges need {1} of groove or rebate on "
                    "each side, and that is at most a quarter of the shorter side",
                    format(fit_.fieldGroove.value, notation_)),
                side);
        }
        if (border_.housing == Housing::Groove) {
            tongue();
            fit_.tongueWidth.add(TermKind::RailGroove, fit_.railGroove.value)
                .add(TermKind::FieldGroove, fit_.fieldGroove.value);
        } else {
            const Length thickness =
                std::min(usual_.thickest, roundedDown(part(board_.thickness, 3), usual_.step));
            if (thickness < usual_.thinnest) {
                return refuse(noted("Thickness"),
                              say("must be at least {1} for a ledge below the field",
                                  atLeast(usual_.thinnest * 3)),
                              board_.thickness);
            }
            fit_.ledgeThickness.add(TermKind::Joinery, thickness);
            fit_.ledge = fit_.fieldGroove;
            fit_.railStock.add(TermKind::Ledge, fit_.ledge.value);
        }
    }

    /// Grooves in the middle of the thickness, for a tongue of a third of it at most.
    void tongue() {
        const Length thickness =
            std::min(usual_.thickest, roundedDown(part(board_.thickness, 3), usual_.step));
        if (thickness < usual_.thinnest) {
            return refuse(
                noted("Thickness"),
                say("must be at least {1} for a groove in its edges", atLeast(usual_.thinnest * 3)),
                board_.thickness);
        }
        fit_.tongueThickness.add(TermKind::Joinery, thickness);
        fit_.tongueFromFace.add(TermKind::Joinery,
                                roundedDown(half(board_.thickness - thickness), usual_.step));
        const Length depth =
            std::min(usual_.railGroove, roundedDown(part(border_.width, 3), usual_.step));
        if (depth < usual_.thinnest) {
            return refuse(
                noted("Border width"),
                say("must be at least {1} for a groove in the rail", atLeast(usual_.thinnest * 3)),
                border_.width);
        }
        fit_.railGroove.add(TermKind::Joinery, depth);
    }

    void pinned() {
        tongue();
        fit_.fieldGroove.add(TermKind::TongueReach, usual_.reach)
            .add(TermKind::Clearance, usual_.clearance);
        const Length along = grainDown_ ? board_.field.height() : board_.field.width();
        const Length across = grainDown_ ? board_.field.width() : board_.field.height();
        if (fit_.fieldGroove.value * 4 > along) {
            refuse(noted("Border"),
                   say("too short a field for breadboard ends: along the grain it must be at least "
                       "{1}",
                       atLeast(fit_.fieldGroove.value * 4)),
                   along);
        }
        if (across < usual_.pinFromEnd * 3) {
            refuse(noted("Border"),
                   say("too narrow a field for breadboard ends: across the grain it must be at "
                       "least {1}",
                       atLeast(usual_.pinFromEnd * 3)),
                   across);
        }
        if (fault_) {
            return;
        }
        fit_.tongueWidth.add(TermKind::RailGroove, fit_.railGroove.value)
            .add(TermKind::TongueReach, usual_.reach);
        fit_.pinDiameter.add(TermKind::Joinery, usual_.pin);
        fit_.pinFromEdge.add(TermKind::TongueReach, half(usual_.reach));
        const Length middle = half(across);
        const Length outermost = roundedDown(middle - usual_.pinFromEnd, usual_.step);
        const std::int64_t each =
            roundedUp(outermost, usual_.pinSpacing).nm() / usual_.pinSpacing.nm();
        for (std::int64_t i = -each; i <= each; ++i) {
            const Length away = roundedDown(part(outermost * (i < 0 ? -i : i), each), usual_.step);
            fit_.pins.push_back(pin(middle, away, i < 0, across));
        }
    }

    Pin pin(Length middle, Length away, bool before, Length across) const {
        Pin pin;
        pin.at.add(TermKind::Joinery, before ? middle - away : middle + away);
        pin.outward.add(TermKind::PinRadius, half(usual_.pin));
        pin.inward = pin.outward;
        if (away == Length()) {
            return pin;
        }
        const auto share = [&](Length whole) {
            const auto product = static_cast<detail::Wide>(whole.nm()) * away.nm();
            return Length::nm(static_cast<std::int64_t>((product + across.nm() - 1) / across.nm()));
        };
        pin.outward.add(TermKind::PinGrowth, share(grainDown_ ? season_.growthX : season_.growthY))
            .add(TermKind::Clearance, usual_.clearance);
        pin.inward
            .add(TermKind::PinShrinkage,
                 share(grainDown_ ? season_.shrinkageX : season_.shrinkageY))
            .add(TermKind::Clearance, usual_.clearance);
        roundFine(pin.outward, usual_.step);
        roundFine(pin.inward, usual_.step);
        return pin;
    }

    void inlay() {
        const Length room = border_.width - fit_.railGroove.value;
        if (border_.inlayWidth > half(room)) {
            return refuse(noted("Inlay width"),
                          say("must be at most {1}, half of what the rail has beside its groove",
                              atMost(half(room))),
                          border_.inlayWidth);
        }
        // What is above the groove, or above the ledge, or half of a whole rail.
        Length solid = half(board_.thickness);
        if (fit_.tongueFromFace.value > Length()) {
            solid = fit_.tongueFromFace.value - half(usual_.thinnest);
        }
        const Length depth = std::min(usual_.inlayDepth, roundedDown(solid, usual_.step));
        if (depth <= Length()) {
            return refuse(noted("Thickness"), say("too thin for an inlay above the groove"),
                          board_.thickness);
        }
        fit_.inlayDepth.add(TermKind::Joinery, depth);
        fit_.inlayHeight.add(TermKind::Inlay, depth).add(TermKind::Proud, usual_.proud);
    }

    void splines() {
        const Length most = roundedDown(part(board_.thickness, 3), usual_.step);
        if (border_.splineThickness > most) {
            return refuse(noted("Spline thickness"),
                          say("must be at most {1}, a third of the board's", atMost(most)),
                          border_.splineThickness);
        }
        // On the slant it stays clear of a groove, which is a third of the rail at most.
        fit_.splineDepth.add(TermKind::Joinery, half(border_.width));
        fit_.splineFromFace.add(TermKind::Joinery,
                                half(board_.thickness - border_.splineThickness));
    }

    const Board& board_;
    const Border& border_;
    bool grainDown_;
    FieldSeason season_;
    const Notation& notation_;
    Usual usual_;
    const Shop& shop_;
    BorderFit fit_;
    std::optional<Fault> fault_;
};

}  // namespace

Figure gapFor(const Border& border, Length growth, const Shop& shop) {
    Figure gap;
    if (!border.has(BorderDesign::FloatingFrame)) {
        return gap;
    }
    if (border.gap) {
        return gap.add(TermKind::OwnGap, *border.gap);
    }
    const Usual usual = usualIn(shop);
    gap.add(TermKind::HalfGrowth, upperHalf(growth)).add(TermKind::Clearance, usual.clearance);
    return roundFine(gap, usual.step);
}

Result<BorderFit> fitBorder(const Board& board, const Shop& shop, bool grainDown,
                            const FieldSeason& season, const Notation& notation) {
    return Fitter(board, shop, grainDown, season, notation)();
}

}  // namespace kerfwright
