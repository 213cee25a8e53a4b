#include "core/bench/ground.h"

#include "core/measure/number.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace kerfwright::rules {
namespace {

/// Walks through the step list and keeps the size of every workpiece.
class Sizes {
public:
    const Size* of(const std::string& label) const {
        const auto found = sizes_.find(label);
        return found == sizes_.end() ? nullptr : &found->second;
    }

    void after(const Step& step) {
        std::visit([this](const auto& work) { take(work); }, step.work);
    }

private:
    void take(const Mill& work) {
        for (const MillLine& line : work.lines) {
            for (const std::string& strip : line.strips) {
                sizes_[strip] = {line.width.value, line.length.value, line.thickness.value, false};
            }
        }
    }
    void take(const Glue& work) {
        sizes_[work.result] = {work.width.value, work.length.value, work.thickness.value,
                               work.final};
    }
    void take(const Take& work) {
        sizes_[work.result] = {work.width.value, work.length.value, work.thickness.value, true};
    }
    void take(const Flatten& work) { sizes_[work.part].thickness = work.to.value; }
    void take(const SquareEnd& work) { sizes_[work.part].length = work.left; }
    void take(const Crosscut& work) {
        const Size whole = sizes_[work.part];
        for (const auto* labels : {&work.slices, &work.spares}) {
            for (const std::string& slice : *labels) {
                sizes_[slice] = {whole.width, work.stop.value, whole.thickness, false};
            }
        }
        sizes_[work.part].length = work.left;
    }
    void take(const BringToSize& work) {
        for (const std::string& part : work.parts) {
            Size& size = sizes_[part];
            (work.sizing.in == SizedIn::Width    ? size.width
             : work.sizing.in == SizedIn::Length ? size.length
                                                 : size.thickness) = work.sizing.to.value;
        }
    }
    void take(const TrimField& work) {
        sizes_[work.part].width = work.width.value;
        sizes_[work.part].length = work.height.value;
    }
    void take(const CutChannel&) {}
    void take(const GlueIn&) {}
    void take(const CutRails& work) {
        for (const Rail& rail : work.rails) {
            sizes_[rail.label].length = rail.longPoint.value;
        }
    }
    void take(const KeyCorners&) {}
    void take(const FitBorder& work) {
        sizes_[work.part].width = work.boardWidth.value;
        sizes_[work.part].length = work.boardHeight.value;
    }

    std::map<std::string, Size> sizes_;
};

}  // namespace

Scene::Scene(const Ground& ground)
    : Ground(ground) {
    Sizes sizes;
    before.reserve(list.steps.size());
    for (const Step& step : list.steps) {
        const Size* size = sizes.of(workpiece(step));
        before.push_back(size == nullptr ? std::nullopt : std::optional(*size));
        sizes.after(step);
    }
}

std::string text(const Scene& on, Length length) {
    return format(length, on.notation);
}

std::string woodName(const Scene& on, int wood) {
    const auto at = static_cast<std::size_t>(wood);
    return wood >= 0 && at < on.woods.size() ? on.woods[at].name : say("wood");
}

namespace {

/// How many lines of the field as glued lie outside the one that was drawn, on each side.
int ringOf(const Scene& on) {
    return static_cast<int>(on.board.field.rows.size() - on.wish.field.rows.size()) / 2;
}

}  // namespace

std::optional<int> drawnLine(const Scene& on, int line, bool isRow) {
    const int drawn = line - ringOf(on);
    const std::vector<Length>& lines = isRow ? on.wish.field.rows : on.wish.field.columns;
    return drawn >= 0 && drawn < static_cast<int>(lines.size()) ? std::optional(drawn)
                                                                : std::nullopt;
}

CautionPlace slicesOf(const Scene& on, const std::vector<std::string>& panels) {
    CautionPlace place;
    if (on.plan.parts.empty()) {
        return place;
    }
    // Timber of the border belongs to no panel.
    place.border = std::find(panels.begin(), panels.end(), std::string()) != panels.end();
    const bool isRow = !on.plan.byColumns;
    for (const int line : linesOf(on.plan, on.board.field, usesFrom(on.plan, panels))) {
        if (const std::optional<int> drawn = drawnLine(on, line, isRow)) {
            (isRow ? place.rows : place.columns).push_back(*drawn);
        } else {
            place.border = true;
        }
    }
    return place;
}

CautionPlace piecesOf(const Scene& on, const std::vector<int>& woods) {
    CautionPlace place;
    const Border& border = on.wish.border;
    place.border =
        border.isThere() && std::find(woods.begin(), woods.end(), border.wood) != woods.end();
    const std::vector<Piece>& pieces = on.wish.field.pieces;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (std::find(woods.begin(), woods.end(), pieces[i].wood) != woods.end()) {
            place.pieces.push_back(static_cast<int>(i));
        }
    }
    return place;
}

CautionPlace piecesAt(const Scene& on, const std::vector<Joint>& joints) {
    const Field& field = on.wish.field;
    const Length ring = ringOf(on) > 0 ? on.wish.border.width : Length();
    const std::vector<int> map = pieceMap(field);
    const int columns = static_cast<int>(field.columns.size());
    CautionPlace place;
    const auto add = [&](Length x, Length y) {
        const int column = columnAt(field, x - ring);
        const int row = rowAt(field, y - ring);
        if (column >= 0 && row >= 0) {
            place.pieces.push_back(map[static_cast<std::size_t>(row * columns + column)]);
        }
    };
    constexpr Length beside = Length::nm(1);
    for (const Joint& joint : joints) {
        const Length middle = half(joint.from + joint.to);
        for (const Length at : {joint.at - beside, joint.at}) {
            joint.vertical ? add(at, middle) : add(middle, at);
        }
    }
    std::sort(place.pieces.begin(), place.pieces.end());
    place.pieces.erase(std::unique(place.pieces.begin(), place.pieces.end()), place.pieces.end());
    return place;
}

bool isMetric(const Scene& on) {
    return on.notation.unit == Unit::Millimetres;
}

std::vector<Remedy> withSetting(const Scene& on, Setting setting, Length value, std::string label) {
    const SettingInfo* info = settingInfo(setting);
    if (info == nullptr || value < info->least || value > info->greatest) {
        return {};
    }
    Remedy remedy{std::move(label)};
    remedy.shop = on.shop;
    (*remedy.shop).*(info->value) = value;
    return {std::move(remedy)};
}

Fact hundredths(std::string name, double value) {
    return {std::move(name) + "-hundredths", std::int64_t{std::llround(value * 100)}};
}

Fact micrometres(std::string name, double mm) {
    return {std::move(name) + "-um", std::int64_t{std::llround(mm * 1000)}};
}

std::string woodKeys(const Scene& on, const std::vector<int>& woods) {
    std::string keys;
    for (const int wood : woods) {
        const auto at = static_cast<std::size_t>(wood);
        keys += (keys.empty() ? "" : " ") + (at < on.woods.size() ? on.woods[at].key : "");
    }
    return keys;
}

std::vector<Fact> yearlyFacts(const std::string& name, const SeasonChange& change) {
    return {micrometres(name + "-least", change.toDampest.least - change.toDriest.greatest),
            micrometres(name + "-greatest", change.toDampest.greatest - change.toDriest.least)};
}

std::string percent(double moisture) {
    return formatNumber(static_cast<double>(std::lround(moisture * 10)) / 10) + " %";
}

std::string roundly(const Scene& on, double mm) {
    const std::int64_t step = on.notation.step().nm();
    return text(on, Length::nm(std::llround(mm * 1e6 / static_cast<double>(step)) * step));
}

std::string yearly(const Scene& on, const SeasonChange& change) {
    // Ends of a range that belong together: what swells most also shrinks most.
    const std::string least = roundly(on, change.toDampest.least - change.toDriest.greatest);
    const std::string greatest = roundly(on, change.toDampest.greatest - change.toDriest.least);
    return least == greatest ? least : say("{1} to {2}", least, greatest);
}

}  // namespace kerfwright::rules
