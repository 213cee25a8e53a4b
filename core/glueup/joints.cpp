#include "core/glueup/joints.h"

#include <algorithm>
#include <map>
#include <set>

namespace kerfwright::rows {
namespace {

/// Collects joints, joining those that go on within the same pieces.
class JointList {
public:
    void add(const Joint& joint, int owner) {
        if (!joints_.empty() && lastOwner_ == owner && joints_.back().vertical == joint.vertical &&
            joints_.back().at == joint.at && joints_.back().to == joint.from) {
            joints_.back().to = joint.to;
            return;
        }
        joints_.push_back(joint);
        lastOwner_ = owner;
    }

    std::vector<Joint> sorted(bool transpose) && {
        for (Joint& joint : joints_) {
            joint.vertical = joint.vertical != transpose;
        }
        std::sort(joints_.begin(), joints_.end());
        return std::move(joints_);
    }

private:
    std::vector<Joint> joints_;
    int lastOwner_ = -1;
};

}  // namespace

void listJoints(Draft& draft) {
    const Field& field = draft.field;
    const std::vector<int> map = pieceMap(field);
    const std::vector<Length> xs = edges(field.columns);
    const std::vector<Length> ys = edges(field.rows);
    const std::size_t columns = field.columns.size();
    const int pieces = static_cast<int>(field.pieces.size());
    const auto piece = [&](std::size_t column, std::size_t row) {
        return map[row * columns + column];
    };
    const auto pair = [&](int a, int b) { return a * pieces + b; };

    std::vector<Length> lines{Length()};
    std::vector<std::vector<Length>> made;  // where each band has joints along x
    made.reserve(draft.bands.size());
    for (const Band& band : draft.bands) {
        const std::vector<Span>& strips = draft.sheets[static_cast<std::size_t>(band.sheet)].strips;
        std::vector<Length> widths;
        widths.reserve(strips.size());
        for (const Span& strip : band.flipped ? reversed(strips) : strips) {
            widths.push_back(strip.width);
        }
        made.push_back(edges(widths));
        lines.push_back(lines.back() + band.height);
    }

    JointList extra;
    JointList omitted;
    // Joints down the page, looked at along each line x so that runs join up.
    std::set<Length> allX(xs.begin() + 1, xs.end() - 1);
    for (const std::vector<Length>& band : made) {
        allX.insert(band.begin() + 1, band.end() - 1);
    }
    for (const Length x : allX) {
        const auto next = std::upper_bound(xs.begin(), xs.end(), x);
        const auto column = static_cast<std::size_t>(next - xs.begin()) - 1;
        const bool onGrid = xs[column] == x;
        std::size_t row = 0;
        for (std::size_t band = 0; band < made.size(); ++band) {
            const bool isMade = std::binary_search(made[band].begin(), made[band].end(), x);
            Length y = lines[band];
            while (y < lines[band + 1]) {
                while (ys[row + 1] <= y) {
                    ++row;
                }
                const Length end = std::min(ys[row + 1], lines[band + 1]);
                const int right = piece(column, row);
                const int left = onGrid ? piece(column - 1, row) : right;
                if (isMade && left == right) {
                    extra.add({true, x, y, end}, right);
                } else if (!isMade && left != right) {
                    omitted.add({true, x, y, end}, pair(left, right));
                }
                y = end;
            }
        }
    }
    // Joints across: every line between bands runs from edge to edge.
    std::set<Length> allY(ys.begin() + 1, ys.end() - 1);
    allY.insert(lines.begin() + 1, lines.end() - 1);
    for (const Length y : allY) {
        const bool isMade = std::binary_search(lines.begin(), lines.end(), y);
        const auto next = std::upper_bound(ys.begin(), ys.end(), y);
        const auto row = static_cast<std::size_t>(next - ys.begin()) - 1;
        const bool onGrid = ys[row] == y;
        for (std::size_t column = 0; column < columns; ++column) {
            const int below = piece(column, row);
            const int above = onGrid ? piece(column, row - 1) : below;
            if (isMade && above == below) {
                extra.add({false, y, xs[column], xs[column + 1]}, below);
            } else if (!isMade && above != below) {
                omitted.add({false, y, xs[column], xs[column + 1]}, pair(above, below));
            }
        }
    }
    draft.extraJoints = std::move(extra).sorted(draft.byColumns);
    draft.omittedJoints = std::move(omitted).sorted(draft.byColumns);
}

namespace {

/// Along one line: where strips meet, and where pieces do.
struct Seams {
    std::vector<std::pair<Length, Length>> made;
    std::vector<Length> ends;
};

bool covers(const std::vector<std::pair<Length, Length>>& stretches, Length from, Length to) {
    return std::any_of(stretches.begin(), stretches.end(), [&](const auto& stretch) {
        return stretch.first <= from && to <= stretch.second;
    });
}

void compare(const std::vector<PaintedStrip>& strips, const Field& field, bool vertical,
             JointList& extra, JointList& omitted) {
    const std::vector<Length> xs = edges(vertical ? field.columns : field.rows);
    const std::vector<Length> ys = edges(vertical ? field.rows : field.columns);
    const std::vector<int> map = pieceMap(field);
    const std::size_t columns = field.columns.size();
    const auto pieceAt = [&](std::size_t column, std::size_t row) {
        return vertical ? map[row * columns + column] : map[column * columns + row];
    };
    std::map<Length, Seams> lines;
    for (std::size_t i = 1; i + 1 < xs.size(); ++i) {
        lines[xs[i]];
    }
    for (const PaintedStrip& strip : strips) {
        const Length at = vertical ? strip.left : strip.top;
        if (at > Length()) {
            const Length from = vertical ? strip.top : strip.left;
            const Length to = vertical ? strip.bottom : strip.right;
            lines[at].made.emplace_back(from, to);
            lines[at].ends.insert(lines[at].ends.end(), {from, to});
        }
    }
    for (auto& [at, seams] : lines) {
        const auto next = std::upper_bound(xs.begin(), xs.end(), at);
        const auto column = static_cast<std::size_t>(next - xs.begin()) - 1;
        const bool onGrid = xs[column] == at;
        std::vector<Length> stops = ys;
        stops.insert(stops.end(), seams.ends.begin(), seams.ends.end());
        std::sort(stops.begin(), stops.end());
        stops.erase(std::unique(stops.begin(), stops.end()), stops.end());
        std::size_t row = 0;
        for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
            while (ys[row + 1] <= stops[i]) {
                ++row;
            }
            const int right = pieceAt(column, row);
            const int left = onGrid ? pieceAt(column - 1, row) : right;
            const bool isMade = covers(seams.made, stops[i], stops[i + 1]);
            const Joint joint{vertical, at, stops[i], stops[i + 1]};
            if (isMade && left == right) {
                extra.add(joint, right);
            } else if (!isMade && left != right) {
                omitted.add(joint, left * static_cast<int>(field.pieces.size()) + right);
            }
        }
    }
}

}  // namespace

void listJoints(const std::vector<PaintedStrip>& strips, const Field& field,
                std::vector<Joint>& extra, std::vector<Joint>& omitted) {
    JointList made;
    JointList left;
    for (const bool vertical : {true, false}) {
        compare(strips, field, vertical, made, left);
    }
    extra = std::move(made).sorted(false);
    omitted = std::move(left).sorted(false);
}

}  // namespace kerfwright::rows
