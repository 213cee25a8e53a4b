#include "core/glueup/deep.h"

#include "core/glueup/allowances.h"
#include "core/glueup/copies.h"
#include "core/glueup/joints.h"
#include "core/glueup/nodes.h"
#include "core/measure/at.h"
#include "core/search/painted.h"
#include "core/words/say.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>

namespace kerfwright {
namespace {

using deep::Child;
using deep::Extent;
using deep::Node;
using deep::Nodes;
using deep::Order;
using deep::Sides;
using deep::stick;
using deep::sum;

class DeepPlanner {
public:
    DeepPlanner(const Construction& construction, Laying laying, const Board& board,
                const std::vector<Wood>& woods, const Shop& shop, const Notation& notation)
        : nodes_(deep::nodesOf(construction, laying))
        , board_(board)
        , woods_(woods)
        , shop_(shop)
        , notation_(notation)
        , endGrain_(laying == Laying::EndGrain)
        , across_(laying == Laying::GrainAcross)
        , orders_(nodes_.all.size()) {}

    Result<Plan> plan(const Construction& construction);

private:
    bool isPanel(const Node& node) const { return endGrain_ || node.isUniform(); }
    void addField();
    void order(const Child& child, Sides sides, Order order);
    std::optional<Fault> makePanels(int index);
    std::optional<Fault> makePanel(int index, const std::vector<Order>& load);
    std::optional<Fault> addSticks(int index, int panel, const Extent& hull, bool glued,
                                   bool trueSides);
    void makeAssembly(int index, const Order& wanted);
    void addStages(int index, int panel, std::vector<Order>& load, const Extent& hull);
    Figure lengthFor(const std::vector<Order>& load) const;
    bool fits(const std::vector<Order>& load) const {
        return lengthFor(load).value + shop_.endAllowance <= shop_.longestStrip;
    }
    int spares() const { return nodes_.field().children.size() > 1 ? shop_.spareSlices : 0; }
    std::optional<Fault> timberFault(const Part& strip) const;
    Plan done(const Construction& construction);

    Nodes nodes_;
    const Board& board_;
    const std::vector<Wood>& woods_;
    const Shop& shop_;
    const Notation& notation_;
    bool endGrain_;
    bool across_;
    std::vector<std::vector<Order>> orders_;  ///< by node
    std::vector<Part> parts_;                 ///< owners before what they use
    std::set<int> glued_;                     ///< kinds
    Plan plan_;
};

void DeepPlanner::addField() {
    const Node& node = nodes_.field();
    const bool several = node.children.size() > 1;
    Part field;
    field.role = Role::Field;
    field.label = noted("Field");
    field.width.add(TermKind::FieldSide, board_.field.width())
        .add(TermKind::TrimMargin, shop_.trimMargin, 2);
    field.length.add(TermKind::FieldSide, board_.field.height())
        .add(TermKind::TrimMargin, shop_.trimMargin, 2);
    const Length flattened = flattenedAfterwards(board_, shop_, several);
    field.thickness.add(TermKind::BoardThickness, board_.thickness)
        .add(TermKind::FieldFlattening, flattened);
    field.along = node.sideBySide != across_ ? GlueAlong::Width : GlueAlong::Down;
    field.uses.resize(node.children.size());
    parts_.push_back(std::move(field));
    const Figure margin{{TermKind::TrimMargin, shop_.trimMargin}};
    const Figure none;
    for (std::size_t i = 0; i < node.children.size(); ++i) {
        const Child& child = node.children[i];
        const bool first = i == 0;
        const bool last = i + 1 == node.children.size();
        Order wanted;
        wanted.use = static_cast<int>(i);
        wanted.forField = true;
        wanted.marginSides = int{first} + int{last};
        // Sides that are glued in the field: those of a slice are flat already, its ends are not.
        const bool ownSides = node.sideBySide == (child.placing.quarterTurns % 2 == 0);
        wanted.trueSides = several && ownSides;
        const bool beside = node.sideBySide;
        Sides sides{!beside || first ? margin : none, !beside || last ? margin : none,
                    beside || first ? margin : none, beside || last ? margin : none};
        if (endGrain_) {
            wanted.length = sliceLength(board_, shop_, Length(), 0);
        } else {
            wanted.thickness = parts_.front().thickness;
        }
        order(child, std::move(sides), std::move(wanted));
        Use& use = parts_.front().uses[i];
        const Node& part = nodes_[child.node];
        const Length row = part.across - child.trimFirst - child.trimLast;
        const bool alongRow = node.sideBySide == (child.placing.quarterTurns % 2 == 0);
        use.finished = alongRow ? row : part.down;
        use.lay = deep::layOf(across_ ? deep::transposedBack(child.placing) : child.placing,
                              endGrain_, true);
        if (across_ && nodes_[child.node].isUniform()) {
            use.lay.turnedOver = false;  // front and back of a slice are alike
        }
    }
}

/// Passes a copy's needs on to its node: `sides` are those of the owner's directions.
void DeepPlanner::order(const Child& child, Sides sides, Order wanted) {
    const Node& node = nodes_[child.node];
    sides = deep::laid(std::move(sides), inverse(child.placing));
    wanted.from = child.trimFirst;
    wanted.to = node.across - child.trimLast;
    wanted.extra.left = std::move(sides.left);
    wanted.extra.right = std::move(sides.right);
    const Figure down = sum(sum({{TermKind::RowHeight, node.down}}, sides.top), sides.bottom);
    if (endGrain_ && node.isUniform()) {
        wanted.thickness = wanted.thickness.value > Length() ? wanted.thickness : down;
    } else if (!endGrain_ && isPanel(node)) {
        // A panel that becomes part of a wider one goes into it as long as that is.
        wanted.length = wanted.length.value > Length() ? wanted.length : down;
    } else {
        wanted.extra.top = std::move(sides.top);
        wanted.extra.bottom = std::move(sides.bottom);
    }
    orders_[at(node.root)].push_back(std::move(wanted));
}

Figure DeepPlanner::lengthFor(const std::vector<Order>& load) const {
    std::vector<Length> lengths;
    Length spare;
    for (const Order& one : load) {
        lengths.push_back(one.length.value);
        spare = one.forField || !endGrain_ ? std::max(spare, one.length.value) : spare;
    }
    return stripLength(shop_, lengths, spare > Length() ? spares() : 0, spare);
}

std::optional<Fault> DeepPlanner::timberFault(const Part& strip) const {
    const Wood& wood = woods_[at(strip.wood)];
    const Length t = strip.roughThickness.value;
    const Length w = strip.roughWidth.value;
    const Length thick = wood.timber.thickness;
    const Length wide = wood.timber.width;
    if ((t <= thick && w <= wide) || (w <= thick && t <= wide)) {
        return std::nullopt;
    }
    return Fault{say("Timber of {1}", wood.name),
                 say("the greatest rough section is {1} × {2}; this plan needs more with its "
                     "allowances",
                     format(thick, notation_), format(wide, notation_)),
                 format(t, notation_) + " × " + format(w, notation_)};
}

/// Deals the copies out to as many panels as the longest strip makes necessary.
std::optional<Fault> DeepPlanner::makePanels(int index) {
    const Node& node = nodes_[index];
    std::vector<Order> wanted = std::move(orders_[at(index)]);
    // What is greater comes off first, then the stick goes down; short ones before long ones, since
    // the last is the harder to hold.
    std::stable_sort(wanted.begin(), wanted.end(), [&](const Order& a, const Order& b) {
        const auto rank = [&](const Order& wish) {
            const Length width = wish.high() - wish.low();
            const Length tall = wish.tall(node);
            return node.isUniform()
                       ? std::tuple(tall, area(width, Length::mm(1)), wish.length.value)
                       : std::tuple(Length(), area(tall, width), wish.length.value);
        };
        const auto [tallA, sizeA, lengthA] = rank(a);
        const auto [tallB, sizeB, lengthB] = rank(b);
        if (tallA != tallB) {
            return tallA > tallB;
        }
        return sizeA != sizeB ? sizeA > sizeB : lengthA < lengthB;
    });
    std::vector<std::vector<Order>> loads;
    for (Order& one : wanted) {
        if (!loads.empty()) {
            loads.back().push_back(one);
            if (fits(loads.back())) {
                continue;
            }
            loads.back().pop_back();
        }
        loads.push_back({std::move(one)});
        if (!fits(loads.back())) {
            return Fault{say("Longest strip"),
                         say("too short for this plan, which needs a strip of {1}",
                             format(lengthFor(loads.back()).value + shop_.endAllowance, notation_)),
                         format(shop_.longestStrip, notation_)};
        }
    }
    for (std::vector<Order>& load : loads) {
        if (auto fault = makePanel(index, load)) {
            return fault;
        }
    }
    return std::nullopt;
}

std::optional<Fault> DeepPlanner::makePanel(int index, const std::vector<Order>& load) {
    const Node& node = nodes_[index];
    Extent hull = deep::hullOf(node, load.begin(), load.end());
    // The row is glued whole, whatever is cut out of it.
    if (hull.low > Length()) {
        hull.low = Length();
        hull.left = Figure();
    }
    if (hull.high < node.across) {
        hull.high = node.across;
        hull.right = Figure();
    }
    const bool glued = node.isGlued();
    const bool trueSides =
        glued && shop_.truing > Length() &&
        std::any_of(load.begin(), load.end(), [](const Order& one) { return one.trueSides; });

    Part panel;
    panel.role = Role::Panel;
    panel.kind = index;
    panel.thickness = hull.thickness;
    if (glued) {
        panel.thickness.add(TermKind::PanelFlattening, shop_.panelFlattening);
        glued_.insert(index);
        ++plan_.assemblies;
    }
    panel.width = sum(sum(stick(node.across, node), hull.left), hull.right);
    panel.width.add(TermKind::Truing, trueSides ? shop_.truing : Length(), 2);
    panel.length = lengthFor(load);
    const int self = static_cast<int>(parts_.size());
    parts_.push_back(std::move(panel));
    if (auto fault = addSticks(index, self, hull, glued, trueSides)) {
        return fault;
    }
    parts_[at(self)].stages = deep::stagesOf(node, load, hull, spares(), endGrain_);
    for (std::size_t i = 0; i < load.size(); ++i) {
        Use& use = parts_[at(load[i].owner)].uses[at(load[i].use)];
        use.part = self;
        use.slice = static_cast<int>(i);
    }
    if (trueSides) {
        Sizing truing;
        truing.purpose = SizedFor::TrueSides;
        truing.from = parts_[at(self)].width;
        truing.to = sum(sum(stick(node.across, node), hull.left), hull.right);
        truing.offFirst = shop_.truing;
        truing.offLast = shop_.truing;
        std::vector<Sizing>& sized = parts_[at(self)].stages.front().sized;
        sized.insert(sized.begin(), std::move(truing));
    }
    return std::nullopt;
}

/// The strips of a panel, and orders for the lengths of other sticks that go into it.
std::optional<Fault> DeepPlanner::addSticks(int index, int self, const Extent& hull, bool glued,
                                            bool trueSides) {
    const Node& node = nodes_[index];
    const Figure none;
    Figure outerLeft = hull.left;
    Figure outerRight = hull.right;
    if (trueSides) {
        outerLeft.add(TermKind::Truing, shop_.truing);
        outerRight.add(TermKind::Truing, shop_.truing);
    }
    const Length offTop = half(shop_.panelFlattening);
    Figure top = hull.top;
    top.add(TermKind::HalfPanelFlattening, offTop);
    Figure bottom = hull.bottom;
    bottom.add(TermKind::HalfPanelFlattening, shop_.panelFlattening - offTop);

    const std::vector<Child> alone{{index, {}, {}, {}}};
    const std::vector<Child>& children = glued ? node.children : alone;
    parts_[at(self)].uses.resize(children.size());
    std::vector<Part> strips;
    for (std::size_t i = 0; i < children.size(); ++i) {
        const Child& child = children[i];
        const Node& part = nodes_[child.node];
        const Figure& left = i == 0 ? outerLeft : none;
        const Figure& right = i + 1 == children.size() ? outerRight : none;
        if (part.isGlued()) {
            Order wanted;
            wanted.owner = self;
            wanted.use = static_cast<int>(i);
            wanted.length = parts_[at(self)].length;
            if (node.isUniform()) {
                wanted.thickness = parts_[at(self)].thickness;
            }
            wanted.trueSides = true;
            order(child, {left, right, top, bottom}, std::move(wanted));
            parts_[at(self)].uses[i].lay = deep::layOf(child.placing, endGrain_, false);
            continue;
        }
        const bool turned = child.placing.quarterTurns % 2 != 0;
        Part strip;
        strip.role = Role::Strip;
        strip.kind = index;
        strip.wood = part.wood;
        strip.width =
            sum(sum({{TermKind::PieceWidth, turned ? part.down : part.across}}, left), right);
        strip.thickness = parts_[at(self)].thickness;
        strip.length = parts_[at(self)].length;
        strip.roughWidth = rough(strip.width, shop_);
        strip.roughThickness = rough(strip.thickness, shop_);
        strip.roughLength = roughLength(strip.length, shop_);
        if (auto fault = timberFault(strip)) {
            return fault;
        }
        // Marked by their place; `done` turns places round.
        parts_[at(self)].uses[i].part = -2 - static_cast<int>(strips.size());
        strips.push_back(std::move(strip));
        ++plan_.strips;
    }
    const int count = static_cast<int>(strips.size());
    for (Use& use : parts_[at(self)].uses) {
        if (use.part <= -2) {
            use.part = self + count - (-2 - use.part);
        }
    }
    for (auto strip = strips.rbegin(); strip != strips.rend(); ++strip) {
        parts_.push_back(std::move(*strip));
    }
    return std::nullopt;
}

/// Long grain, with end-to-end joints: glued by itself for this one copy.
void DeepPlanner::makeAssembly(int index, const Order& wanted) {
    const Node& node = nodes_[index];
    const Length truing = wanted.trueSides ? shop_.truing : Length();
    const auto truingOn = [&](Figure figure, int sides) {
        figure.add(TermKind::Truing, truing, sides);
        return figure;
    };
    Part part;
    part.role = Role::Panel;
    part.kind = index;
    part.keptWhole = true;
    part.along = node.sideBySide ? GlueAlong::Width : GlueAlong::Down;
    const Figure width =
        sum(sum({{TermKind::Stick, node.across}}, wanted.extra.left), wanted.extra.right);
    const Figure length =
        sum(sum({{TermKind::Stick, node.down}}, wanted.extra.top), wanted.extra.bottom);
    part.width = truingOn(width, 2);
    part.length = truingOn(length, 2);
    part.thickness = wanted.thickness;
    part.thickness.add(TermKind::PanelFlattening, shop_.panelFlattening);
    Stage stage{wanted.thickness};
    if (truing > Length()) {
        for (const SizedIn in : {SizedIn::Width, SizedIn::Length}) {
            Sizing sizing;
            sizing.in = in;
            sizing.from = in == SizedIn::Width ? part.width : part.length;
            sizing.to = in == SizedIn::Width ? width : length;
            sizing.offFirst = truing;
            sizing.offLast = truing;
            stage.sized.push_back(std::move(sizing));
        }
    }
    part.stages.push_back(std::move(stage));
    part.uses.resize(node.children.size());
    const Figure thickness = part.thickness;
    const int self = static_cast<int>(parts_.size());
    parts_.push_back(std::move(part));
    Use& own = parts_[at(wanted.owner)].uses[at(wanted.use)];
    own.part = self;
    own.slice = -1;
    glued_.insert(index);
    ++plan_.assemblies;

    const Figure none;
    const Sides outer{truingOn(wanted.extra.left, 1), truingOn(wanted.extra.right, 1),
                      truingOn(wanted.extra.top, 1), truingOn(wanted.extra.bottom, 1)};
    for (std::size_t i = 0; i < node.children.size(); ++i) {
        const Child& child = node.children[i];
        const bool first = i == 0;
        const bool last = i + 1 == node.children.size();
        const bool beside = node.sideBySide;
        Order copy;
        copy.owner = self;
        copy.use = static_cast<int>(i);
        copy.thickness = thickness;
        copy.trueSides = true;
        order(child,
              {!beside || first ? outer.left : none, !beside || last ? outer.right : none,
               beside || first ? outer.top : none, beside || last ? outer.bottom : none},
              std::move(copy));
        parts_[at(self)].uses[i].lay = deep::layOf(child.placing, false, false);
    }
}

Plan DeepPlanner::done(const Construction& construction) {
    // Parts after what they use, and names in that order.
    std::reverse(parts_.begin(), parts_.end());
    const int last = static_cast<int>(parts_.size()) - 1;
    int panels = 0;
    for (Part& part : parts_) {
        for (Use& use : part.uses) {
            use.part = last - use.part;
        }
        if (part.role != Role::Panel) {
            continue;
        }
        part.label = rows::panelLabel(panels++);
        int strips = 0;
        for (const Use& use : part.uses) {
            Part& strip = parts_[at(use.part)];
            if (strip.role == Role::Strip) {
                strip.label = part.isGlued() ? part.label + std::to_string(++strips) : part.label;
            }
        }
    }
    const Part& whole = parts_.back();
    plan_.byColumns = whole.along == GlueAlong::Width && whole.isGlued();
    plan_.grainDown = endGrain_ ? !plan_.byColumns : !across_;
    plan_.margin = shop_.trimMargin;
    plan_.panels = static_cast<int>(glued_.size());
    plan_.glueUps = plan_.panels + int{whole.isGlued()};
    plan_.assemblies += int{whole.isGlued()};
    plan_.parts = std::move(parts_);
    rows::listJoints(painted(construction), board_.field, plan_.extraJoints, plan_.omittedJoints);
    return std::move(plan_);
}

Result<Plan> DeepPlanner::plan(const Construction& construction) {
    addField();
    for (int i = static_cast<int>(nodes_.all.size()) - 2; i >= 0; --i) {
        if (orders_[at(i)].empty()) {
            continue;
        }
        if (isPanel(nodes_[i])) {
            if (auto fault = makePanels(i)) {
                return *fault;
            }
            continue;
        }
        for (const Order& wanted : std::vector<Order>(std::move(orders_[at(i)]))) {
            makeAssembly(i, wanted);
        }
    }
    return done(construction);
}

}  // namespace

Result<Plan> planOf(const Construction& construction, Laying laying, const Board& board,
                    const std::vector<Wood>& woods, const Shop& shop, const Notation& notation) {
    return DeepPlanner(construction, laying, board, woods, shop, notation).plan(construction);
}

}  // namespace kerfwright
