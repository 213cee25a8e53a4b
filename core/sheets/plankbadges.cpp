#include "core/sheets/plankbadges.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {
namespace {

constexpr double badgeGap = 0.5;   // mm round a plate
constexpr double badgeStep = 0.5;  // mm between the places that are tried

class BadgeSetter {
public:
    BadgeSetter(const Box& plank, const std::vector<Box>& taken, double type)
        : plank_(plank)
        , taken_(taken)
        , type_(type) {}

    void add(const CutToNumber& cut) {
        const double high = type_ * 1.16;
        const double wide = std::max(high, textWidth(cut.number, type_, true) + type_ * 0.42);
        const Box& line = cut.cut;
        const Point middle{line.x + line.width / 2, line.y + line.height / 2};
        std::optional<Box> place;
        if (cut.along) {
            const double begin = std::clamp(middle.x - wide / 2, plank_.x, line.x + badgeGap);
            const double end =
                std::min(std::max(line.right() - wide, begin), plank_.right() - wide);
            for (double x = begin; x <= end && !place; x += badgeStep) {
                place = ifFree({x, middle.y - high / 2, wide, high});
            }
        } else {
            const Box at{line.x - badgeGap - wide, middle.y - high / 2, wide, high};
            for (double x = at.x; x >= plank_.x && x > at.x - 4 * wide && !place; x -= badgeStep) {
                place = ifFree({x, at.y, wide, high});
            }
        }
        Badge badge{{}, cut.number};
        if (!place) {
            place = nearest(middle, wide, high);
            badge.leader = place ? std::optional(onCut(line, *place)) : std::nullopt;
        }
        // A plank that is full to the last spot has its number all the same.
        badge.box =
            place.value_or(Box{std::min(cut.along ? line.x + badgeGap : line.x - badgeGap - wide,
                                        plank_.right() - wide),
                               middle.y - high / 2, wide, high});
        badges.push_back(std::move(badge));
    }

    std::vector<Badge> badges;

private:
    bool isFree(const Box& box) const {
        const Box wider{box.x - badgeGap / 2, box.y - badgeGap / 4, box.width + badgeGap,
                        box.height + badgeGap / 2};
        return std::none_of(taken_.begin(), taken_.end(),
                            [&](const Box& other) { return overlap(wider, other); }) &&
               std::none_of(badges.begin(), badges.end(),
                            [&](const Badge& other) { return overlap(wider, other.box); });
    }
    std::optional<Box> ifFree(const Box& box) const {
        return isFree(box) ? std::optional(box) : std::nullopt;
    }

    /// The free spot of the plank that is closest.
    std::optional<Box> nearest(const Point& to, double wide, double high) const {
        std::optional<Box> best;
        double least = 0;
        for (double y = plank_.y; y <= plank_.bottom() - high; y += badgeStep) {
            for (double x = plank_.x + badgeGap; x <= plank_.right() - wide; x += badgeStep) {
                const Box box{x, y, wide, high};
                const double far = std::hypot(x + wide / 2 - to.x, y + high / 2 - to.y);
                if ((!best || far < least) && isFree(box)) {
                    best = box;
                    least = far;
                }
            }
        }
        return best;
    }

    static Point onCut(const Box& cut, const Box& badge) {
        return {std::clamp(badge.x + badge.width / 2, cut.x, cut.right()),
                std::clamp(badge.y + badge.height / 2, cut.y, cut.bottom())};
    }

    const Box& plank_;
    const std::vector<Box>& taken_;
    double type_;
};

}  // namespace

bool overlap(const Box& a, const Box& b) {
    constexpr double touch = 1e-6;
    return a.x < b.right() - touch && b.x < a.right() - touch && a.y < b.bottom() - touch &&
           b.y < a.bottom() - touch;
}

std::vector<Badge> placeBadges(const std::vector<CutToNumber>& cuts, const Box& plank,
                               const std::vector<Box>& taken, double type) {
    BadgeSetter setter(plank, taken, type);
    for (const CutToNumber& cut : cuts) {
        setter.add(cut);
    }
    return std::move(setter.badges);
}

void drawBadges(Drawing& drawing, const std::vector<Badge>& badges, double type) {
    for (const Badge& badge : badges) {
        if (badge.leader) {
            drawing.marks.emplace_back(
                Line{{badge.box.x + badge.box.width / 2, badge.box.y + badge.box.height / 2},
                     *badge.leader,
                     {.line = Ink::Cut, .lineWidth = 0.2}});
        }
    }
    for (const Badge& badge : badges) {
        const Box& box = badge.box;
        drawing.marks.emplace_back(Rectangle{
            box, box.height / 2, {.fill = Ink::Paper, .line = Ink::Cut, .lineWidth = 0.2}});
        drawing.marks.emplace_back(
            Text{.at = {box.x + box.width / 2, box.y + box.height / 2 + type * 0.365},
                 .text = badge.number,
                 .size = type,
                 .align = Align::Centre,
                 .bold = true,
                 .style = {.line = Ink::Text}});
    }
}

}  // namespace kerfwright
