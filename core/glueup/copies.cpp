#include "core/glueup/copies.h"

#include <algorithm>
#include <utility>

namespace kerfwright::deep {
namespace {

const Figure& greater(const Figure& a, const Figure& b) {
    return a.value < b.value ? b : a;
}

Sizing sizingAcross(const Node& node, const Extent& from, const Extent& to, SizedFor purpose) {
    Sizing sizing;
    sizing.in = SizedIn::Width;
    sizing.purpose = purpose;
    sizing.offFirst = to.low - from.low;
    sizing.offLast = from.high - to.high;
    const auto width = [&](const Extent& extent) {
        const Length bare = extent.width() - extent.left.value - extent.right.value;
        return sum(sum(stick(bare, node), extent.left), extent.right);
    };
    sizing.from = width(from);
    sizing.to = width(to);
    return sizing;
}

Sizing sizingDown(const Node&, const Extent& from, const Extent& to) {
    Sizing sizing;
    sizing.in = SizedIn::Thickness;
    sizing.purpose = SizedFor::LessMargin;
    sizing.from = from.thickness;
    sizing.to = to.thickness;
    sizing.offFirst = from.bottom.value - to.bottom.value;
    sizing.offLast = from.top.value - to.top.value;
    return sizing;
}

}  // namespace

Sides laid(Sides sides, Placing placing) {
    if (placing.mirrored) {
        std::swap(sides.left, sides.right);
    }
    for (int i = 0; i < placing.quarterTurns; ++i) {
        sides = {std::move(sides.bottom), std::move(sides.top), std::move(sides.left),
                 std::move(sides.right)};
    }
    return sides;
}

Figure sum(Figure figure, const Figure& more) {
    for (const Term& term : more.terms) {
        const auto same =
            std::find_if(figure.terms.begin(), figure.terms.end(), [&](const Term& t) {
                return t.kind == term.kind && t.value == term.value;
            });
        if (same != figure.terms.end()) {
            same->times += term.times;
            figure.value += term.value * term.times;
        } else {
            figure.add(term.kind, term.value, term.times);
        }
    }
    return figure;
}

Figure stick(Length across, const Node& node) {
    return {{node.wood >= 0 ? TermKind::PieceWidth : TermKind::Stick, across}};
}

Extent hullOf(const Node& node, std::vector<Order>::const_iterator begin,
              std::vector<Order>::const_iterator end) {
    Extent hull;
    hull.low = begin->low();
    hull.high = begin->high();
    hull.left = begin->extra.left;
    hull.right = begin->extra.right;
    for (auto one = begin; one != end; ++one) {
        if (one->low() < hull.low) {
            hull.low = one->low();
            hull.left = one->extra.left;
        }
        if (one->high() > hull.high) {
            hull.high = one->high();
            hull.right = one->extra.right;
        }
        if (node.isUniform()) {
            hull.thickness = greater(hull.thickness, one->thickness);
        } else {
            hull.top = greater(hull.top, one->extra.top);
            hull.bottom = greater(hull.bottom, one->extra.bottom);
        }
    }
    if (!node.isUniform()) {
        hull.thickness = sum(sum({{TermKind::RowHeight, node.down}}, hull.top), hull.bottom);
    }
    return hull;
}

std::vector<Stage> stagesOf(const Node& node, const std::vector<Order>& load, const Extent& hull,
                            int spares, bool endGrain) {
    const bool uniform = node.isUniform();
    Extent now = hull;
    std::vector<Stage> stages{{now.thickness}};
    int slice = 0;
    for (auto one = load.cbegin(); one != load.cend(); ++one) {
        Extent rest = hullOf(node, one, load.cend());
        const bool lower = rest.thickness.value < now.thickness.value;
        const bool narrower = slice > 0 && (rest.low > now.low || rest.high < now.high);
        if (slice > 0 && (lower || narrower)) {
            Stage stage{uniform ? rest.thickness : now.thickness};
            if (lower && !uniform) {
                stage.sized.push_back(sizingDown(node, now, rest));
            }
            if (narrower) {
                stage.sized.push_back(sizingAcross(node, now, rest,
                                                   one->from > Length() || one->to < node.across
                                                       ? SizedFor::Window
                                                       : SizedFor::LessMargin));
            }
            stages.push_back(std::move(stage));
            now = std::move(rest);
        }
        const Extent own = hullOf(node, one, one + 1);
        std::vector<Sizing> sized;
        if (own.low > now.low || own.high < now.high) {
            sized.push_back(sizingAcross(node, now, own,
                                         one->from > Length() || one->to < node.across
                                             ? SizedFor::Window
                                             : SizedFor::LessMargin));
        }
        if (own.thickness.value < now.thickness.value) {
            sized.push_back(sizingDown(node, now, own));
        }
        std::vector<SliceRun>& runs = stages.back().runs;
        const auto same = [&](const SliceRun& run) {
            return run.length.value == one->length.value && run.marginSides == one->marginSides &&
                   run.forPanels == !one->forField && run.sized.size() == sized.size() &&
                   std::equal(sized.begin(), sized.end(), run.sized.begin(),
                              [](const Sizing& a, const Sizing& b) {
                                  return a.in == b.in && a.offFirst == b.offFirst &&
                                         a.offLast == b.offLast;
                              });
        };
        if (runs.empty() || !same(runs.back())) {
            SliceRun run;
            run.length = one->length;
            run.marginSides = one->forField ? one->marginSides : 0;
            run.forPanels = !one->forField;
            run.sized = std::move(sized);
            runs.push_back(std::move(run));
        }
        ++runs.back().count;
        ++slice;
    }
    // The spare slice is one more of the longest that go into the field.
    SliceRun* longest = nullptr;
    for (Stage& stage : stages) {
        for (SliceRun& run : stage.runs) {
            if ((!run.forPanels || !endGrain) &&
                (longest == nullptr || run.length.value >= longest->length.value)) {
                longest = &run;
            }
        }
    }
    if (longest != nullptr) {
        longest->spare = spares;
    }
    return stages;
}

}  // namespace kerfwright::deep
