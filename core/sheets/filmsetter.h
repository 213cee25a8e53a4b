// Sets the bodies, labels and dimensions of one stage. Its parts stand in several files: strips and
// panels in filmparts.cpp, the field in filmfield.cpp, the border in filmborder.cpp.
#pragma once

#include "core/sheets/filmscene.h"

#include <algorithm>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace kerfwright {

class SceneSetter {
public:
    SceneSetter(const Film& film, int stage, double progress)
        : film_(film)
        , stage_(film.stages[static_cast<std::size_t>(stage)])
        , p_(eased(progress))
        , linear_(progress) {}

    Scene operator()();

private:
    using Fate = SceneBlock::Fate;
    static constexpr double apart = 14;  // mm between workpieces that lie apart

    static double mm(Length length) { return length.toMm(); }
    static double mixed(double from, double to, double share) { return from + (to - from) * share; }
    /// The share of a part of the way: 0 up to `from`, 1 after `to`.
    static double share(double progress, double from, double to) {
        return std::clamp((progress - from) / (to - from), 0.0, 1.0);
    }
    static double gapOf(double size) { return std::clamp(size * 0.45, 4.0, apart); }
    /// The middle of a solid at the size it has later, where something came off both faces.
    static Solid thinned(const Solid& solid, Length thickness);

    const Traced* solid(const std::string& label) const {
        const auto found = film_.solids.find(label);
        return found == film_.solids.end() ? nullptr : &found->second;
    }
    std::string bare(Length length) const { return formatBare(length, film_.project.notation); }
    std::string text(Length length) const { return format(length, film_.project.notation); }

    template <class Kind, class Use>
    void each(Use use) const {
        for (const int index : stage_.steps) {
            if (const auto* work =
                    std::get_if<Kind>(&film_.list.steps[static_cast<std::size_t>(index)].work)) {
                use(*work);
            }
        }
    }

    /// The number of the stage that is this size.
    int number(Measured what, Length value) const {
        for (std::size_t i = 0; i < stage_.numbers.size(); ++i) {
            const StageNumber& one = stage_.numbers[i];
            if (one.what == what && one.figure.value == value) {
                return static_cast<int>(i);
            }
        }
        return -1;
    }
    void size(SceneSize::Way way, double from, double to, double edge, Length value, Measured what,
              int level = 0) {
        scene_.sizes.push_back({way, from, to, edge, value, number(what, value), level});
    }
    void across(double from, double to, double edge, Length value, Measured what, int level = 0) {
        size(SceneSize::Way::Across, from, to, edge, value, what, level);
    }
    void down(double from, double to, double edge, Length value, Measured what, int level = 0) {
        size(SceneSize::Way::Down, from, to, edge, value, what, level);
    }
    /// The height of a body whose near lower edge lies at `y` and ends at `x`.
    void up(double y, double x, Length value, Measured what) {
        size(SceneSize::Way::Up, y - filmTilt * mm(value), y, x, value, what);
    }

    SceneBlock& put(Solid body, std::string label, double x, double y, Fate fate = Fate::GoesOn) {
        SceneBlock& block = scene_.blocks.emplace_back();
        block.middle = {x + mm(body.size[X]) / 2, y + mm(body.size[Y]) / 2, mm(body.size[Z]) / 2};
        block.solid = std::move(body);
        block.label = std::move(label);
        block.fate = fate;
        return block;
    }

    void timber();
    void strips();
    const MillLine* lineOf(const std::string& label) const;
    /// As they are glued, which is not the order in which they are milled.
    std::vector<std::string> stripOrder() const;
    void panel();
    /// The parts of a glue-up as they lie, `share` of the usual gap between them.
    void spread(const Glue& glue, double share, Length thickness);
    void cut();

    /// The parts of the field in order; whether they lie one below the other.
    std::vector<Laid> order(bool& down) const;
    void laidOut();
    void field();
    void trimmed();

    void railParts();
    /// The board with its rails `out` of their widths away from their place.
    void whole(double out);
    void addRails(const FitBorder& fit, bool mitred, const Box& board, const Point& rails,
                  double away, double thick);

    const Film& film_;
    const FilmStage& stage_;
    double p_;       ///< eased
    double linear_;  ///< not yet: every slice has its own way
    Scene scene_;
};

}  // namespace kerfwright
