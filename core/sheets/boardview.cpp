#include "core/sheets/boardview.h"

#include "core/drawing/geometry.h"
#include "core/sheets/hatch.h"

#include <algorithm>
#include <cstddef>

namespace kerfwright {
namespace {

/// Where the grid lines of the field lie, in mm, from `origin`.
std::vector<double> gridLines(const std::vector<Length>& cells, double origin) {
    std::vector<double> lines{origin};
    Length sum;
    for (const Length cell : cells) {
        sum += cell;
        lines.push_back(origin + sum.toMm());
    }
    return lines;
}

class BoardPainter {
public:
    BoardPainter(const Board& board, const std::vector<Wood>& woods,
                 const std::vector<Joint>& extraJoints, const BoardViewOptions& options)
        : board_(board)
        , woods_(woods)
        , extraJoints_(extraJoints)
        , options_(options) {
        hasBorder_ = options.wholeBoard && board.border.isThere();
        mitred_ = board.border.isFrame();
        Surround room;
        if (hasBorder_) {
            room = options.surround.value_or(surroundOf(board, true, {}, {}));
        }
        railX_ = room.railX.toMm();
        railY_ = room.railY.toMm();
        x_ = gridLines(board.field.columns, room.left().toMm());
        y_ = gridLines(board.field.rows, room.top().toMm());
        drawing_.extent = {0, 0, x_.back() + x_.front(), y_.back() + y_.front()};
        for (const Wood& wood : woods) {
            drawing_.woods.push_back(wood.colour);
        }
    }

    Drawing draw() {
        if (options_.fills) {
            fills();
        }
        if (options_.hatch) {
            hatches();
        }
        joints();
        for (const Joint& joint : extraJoints_) {
            extra(joint);
        }
        if (options_.letters) {
            letters();
        }
        outline();
        return std::move(drawing_);
    }

private:
    Box boxOf(const Piece& piece) const {
        const auto left = static_cast<std::size_t>(piece.column);
        const auto top = static_cast<std::size_t>(piece.row);
        const auto right = left + static_cast<std::size_t>(piece.across);
        const auto bottom = top + static_cast<std::size_t>(piece.down);
        return {x_[left], y_[top], x_[right] - x_[left], y_[bottom] - y_[top]};
    }

    /// Top, right, bottom, left, as far as there are any; each from its outer edge inwards.
    std::vector<std::vector<Point>> rails() const {
        const double wide = drawing_.extent.width;
        const double high = drawing_.extent.height;
        if (!mitred_) {
            std::vector<std::vector<Point>> strips;
            if (railY_ > 0) {
                strips.push_back(corners({0, 0, wide, railY_}));
                strips.push_back(corners({0, high - railY_, wide, railY_}));
            }
            if (railX_ > 0) {
                strips.push_back(corners({0, railY_, railX_, high - 2 * railY_}));
                strips.push_back(corners({wide - railX_, railY_, railX_, high - 2 * railY_}));
            }
            return strips;
        }

        const double right = drawing_.extent.width;
        const double bottom = drawing_.extent.height;
        const Point a{0, 0};
        const Point b{right, 0};
        const Point c{right, bottom};
        const Point d{0, bottom};
        const Point inA{railX_, railY_};
        const Point inB{right - railX_, railY_};
        const Point inC{right - railX_, bottom - railY_};
        const Point inD{railX_, bottom - railY_};
        return {{a, b, inB, inA}, {b, c, inC, inB}, {c, d, inD, inC}, {d, a, inA, inD}};
    }

    /// Strips along the inside edges of the rails, mitred like them.
    std::vector<std::vector<Point>> inlays() const {
        if (!hasBorder_ || !board_.border.hasInlay()) {
            return {};
        }
        const double line = board_.border.inlayWidth.toMm();
        const auto frame = [this](double x, double y) {
            return corners({x, y, drawing_.extent.width - 2 * x, drawing_.extent.height - 2 * y});
        };
        const std::vector<Point> out = frame(railX_ - line, railY_ - line);
        const std::vector<Point> in = frame(railX_, railY_);
        std::vector<std::vector<Point>> strips;
        for (std::size_t i = 0; i < 4; ++i) {
            const std::size_t next = (i + 1) % 4;
            strips.push_back({out[i], out[next], in[next], in[i]});
        }
        return strips;
    }

    void fills() {
        if (hasBorder_) {
            const Style style{.fill = Ink::Wood, .wood = board_.border.wood};
            for (std::vector<Point>& rail : rails()) {
                drawing_.marks.emplace_back(Shape{std::move(rail), true, style});
            }
            const Style line{.fill = Ink::Wood,
                             .line = Ink::Joint,
                             .lineWidth = options_.lineWidth * 0.6,
                             .wood = board_.border.inlayWood};
            for (std::vector<Point>& strip : inlays()) {
                drawing_.marks.emplace_back(Shape{std::move(strip), true, line});
            }
        }
        // By wood, because a run of one style is painted in one go.
        drawing_.marks.reserve(drawing_.marks.size() + 2 * board_.field.pieces.size());
        const auto count = static_cast<int>(woods_.size());
        for (int wood = 0; wood < count; ++wood) {
            const Style style{.fill = Ink::Wood, .wood = wood};
            for (const Piece& piece : board_.field.pieces) {
                if (piece.wood == wood) {
                    drawing_.marks.emplace_back(Rectangle{boxOf(piece), 0, style});
                }
            }
        }
    }

    void hatches() {
        const double width = options_.lineWidth * 0.6;
        if (hasBorder_) {
            for (const std::vector<Point>& rail : rails()) {
                addHatch(drawing_, rail, board_.border.wood, options_.hatchPitch, width);
            }
        }
        for (const Piece& piece : board_.field.pieces) {
            addHatch(drawing_, corners(boxOf(piece)), piece.wood, options_.hatchPitch, width);
        }
    }

    /// One line for each unbroken run of joint, not one a piece: they look better and paint faster.
    void joints() {
        const std::vector<int> map = pieceMap(board_.field);
        const std::size_t columns = board_.field.columns.size();
        const std::size_t rows = board_.field.rows.size();
        const Style style{.line = Ink::Joint, .lineWidth = options_.lineWidth};
        for (std::size_t c = 1; c < columns; ++c) {
            run(
                rows,
                [&](std::size_t r) { return map[r * columns + c - 1] != map[r * columns + c]; },
                [&](std::size_t from, std::size_t to) {
                    drawing_.marks.emplace_back(Line{{x_[c], y_[from]}, {x_[c], y_[to]}, style});
                });
        }
        for (std::size_t r = 1; r < rows; ++r) {
            run(
                columns,
                [&](std::size_t c) { return map[(r - 1) * columns + c] != map[r * columns + c]; },
                [&](std::size_t from, std::size_t to) {
                    drawing_.marks.emplace_back(Line{{x_[from], y_[r]}, {x_[to], y_[r]}, style});
                });
        }
    }

    template <class IsJoint, class Draw>
    static void run(std::size_t count, IsJoint isJoint, Draw draw) {
        for (std::size_t from = 0; from < count; ++from) {
            std::size_t to = from;
            while (to < count && isJoint(to)) {
                ++to;
            }
            if (to > from) {
                draw(from, to);
                from = to;
            }
        }
    }

    void extra(const Joint& joint) {
        // Bolder than a joint, or its dashes are lost among the hatch. Where there is no room for
        // two dashes, a single one would look like a spot of dirt.
        constexpr double twoDashes = 16;  // in line widths, with the gap between them
        const double bold = options_.lineWidth * 1.8;
        const bool dashed = (joint.to - joint.from).toMm() >= twoDashes * bold;
        const Style style{.line = Ink::ExtraJoint,
                          .lineWidth = dashed ? bold : options_.lineWidth * 0.6,
                          .dashed = dashed};
        const double along = joint.vertical ? y_.front() : x_.front();
        const double at = joint.at.toMm() + (joint.vertical ? x_.front() : y_.front());
        const double from = joint.from.toMm() + along;
        const double to = joint.to.toMm() + along;
        drawing_.marks.emplace_back(joint.vertical ? Line{{at, from}, {at, to}, style}
                                                   : Line{{from, at}, {to, at}, style});
    }

    void letters() {
        for (const Piece& piece : board_.field.pieces) {
            letter(boxOf(piece), piece.wood);
        }
        if (hasBorder_) {
            const double width = drawing_.extent.width;
            const double height = drawing_.extent.height;
            const int wood = board_.border.wood;
            if (railY_ > 0) {
                letter({railX_, 0, width - 2 * railX_, railY_}, wood);
                letter({railX_, height - railY_, width - 2 * railX_, railY_}, wood);
            }
            if (railX_ > 0) {
                letter({0, railY_, railX_, height - 2 * railY_}, wood);
                letter({width - railX_, railY_, railX_, height - 2 * railY_}, wood);
            }
        }
    }

    void letter(const Box& box, int wood) {
        const std::string& word = woods_[static_cast<std::size_t>(wood)].letter;
        const double widthOfOne = textWidth(word, 1, true);
        double size = std::min({box.height * 0.5, box.width * 0.6 / std::max(widthOfOne, 0.1),
                                options_.greatestLetter});
        if (size < options_.leastLetter) {
            // Rather a letter that nearly fills its piece than none.
            size = options_.leastLetter;
            if (size > box.height * 0.9 || size * widthOfOne > box.width * 0.9) {
                return;
            }
        }
        const double middleX = box.x + box.width / 2;
        const double middleY = box.y + box.height / 2;
        if (options_.hatch && wood > 0) {
            const double halfWidth = std::min(widthOfOne * size / 2 + size * 0.2, box.width / 2);
            const double halfHeight = std::min(size * 0.5, box.height / 2);
            drawing_.marks.emplace_back(Rectangle{
                {middleX - halfWidth, middleY - halfHeight, 2 * halfWidth, 2 * halfHeight},
                0,
                {.fill = Ink::Wood, .wood = wood}});
        }
        constexpr double halfCapital = 0.365;  // of the em, DejaVu Sans
        drawing_.marks.emplace_back(Text{.at = {middleX, middleY + halfCapital * size},
                                         .text = word,
                                         .size = size,
                                         .align = Align::Centre,
                                         .bold = true,
                                         .style = {.line = Ink::WoodLine, .wood = wood}});
    }

    void outline() {
        const Style style{.line = Ink::Joint, .lineWidth = options_.lineWidth};
        const double halfLine = options_.lineWidth / 2;
        const Box& extent = drawing_.extent;
        // Inside the extent, so that a picture of the board is cut off nowhere.
        drawing_.marks.emplace_back(
            Rectangle{{extent.x + halfLine, extent.y + halfLine, extent.width - options_.lineWidth,
                       extent.height - options_.lineWidth},
                      0,
                      style});
        if (!hasBorder_) {
            return;
        }
        drawing_.marks.emplace_back(Rectangle{
            {railX_, railY_, extent.width - 2 * railX_, extent.height - 2 * railY_}, 0, style});
        if (x_.front() > railX_ || y_.front() > railY_) {
            // The gap, true to scale.
            drawing_.marks.emplace_back(
                Rectangle{{x_.front(), y_.front(), x_.back() - x_.front(), y_.back() - y_.front()},
                          0,
                          style});
        }
        const Style mitre{
            .line = Ink::WoodLine, .lineWidth = options_.lineWidth, .wood = board_.border.wood};
        for (const std::vector<Point>& rail : rails()) {
            if (mitred_) {
                drawing_.marks.emplace_back(Line{rail[0], rail[3], mitre});
            } else {
                drawing_.marks.emplace_back(Shape{rail, true, style});
            }
        }
    }

    const Board& board_;
    const std::vector<Wood>& woods_;
    const std::vector<Joint>& extraJoints_;
    const BoardViewOptions& options_;
    bool hasBorder_ = false;
    bool mitred_ = false;
    double railX_ = 0;
    double railY_ = 0;
    std::vector<double> x_, y_;
    Drawing drawing_;
};

}  // namespace

Drawing drawBoard(const Board& board, const std::vector<Wood>& woods,
                  const std::vector<Joint>& extraJoints, const BoardViewOptions& options) {
    const Board glued = asGlued(board);
    return BoardPainter(glued, woods, extraJoints, options).draw();
}

}  // namespace kerfwright
