#include "core/search/painted.h"

#include "core/measure/at.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace kerfwright {
namespace {

struct Face {
    Length width, height;
    std::vector<PaintedStrip> strips;
};

Face trimmed(Face face, const Member& member, JoinedAlong along) {
    const bool alongX = along == JoinedAlong::X;
    const Length begin = member.trimFirst;
    const Length end = (alongX ? face.width : face.height) - member.trimLast;
    std::vector<PaintedStrip> kept;
    for (PaintedStrip strip : face.strips) {
        Length& from = alongX ? strip.left : strip.top;
        Length& to = alongX ? strip.right : strip.bottom;
        from = std::max(from, begin) - begin;
        to = std::min(to, end) - begin;
        if (from < to) {
            kept.push_back(strip);
        }
    }
    face.strips = std::move(kept);
    (alongX ? face.width : face.height) = end - begin;
    return face;
}

bool glue(const Construction& construction, int index, std::vector<Face>& faces) {
    const Block& block = construction.blocks[at(index)];
    Face& face = faces[at(index)];
    face.width = block.width;
    face.height = block.height;
    if (!block.isGlued()) {
        face.strips = {{{}, block.width, {}, block.height, block.wood}};
        return true;
    }
    const bool alongX = block.along == JoinedAlong::X;
    Length reached;
    for (const Member& member : block.members) {
        if (member.block < 0 || member.block >= index) {
            return false;
        }
        Face part = faces[at(member.block)];
        if (member.trimFirst != Length() || member.trimLast != Length()) {
            part = trimmed(std::move(part), member, construction.blocks[at(member.block)].along);
        }
        std::tie(part.width, part.height) =
            laidStrips(part.strips, part.width, part.height, member.placing);
        if (alongX ? part.height != block.height : part.width != block.width) {
            return false;
        }
        for (PaintedStrip strip : part.strips) {
            (alongX ? strip.left : strip.top) += reached;
            (alongX ? strip.right : strip.bottom) += reached;
            face.strips.push_back(strip);
        }
        reached += alongX ? part.width : part.height;
    }
    return reached == (alongX ? block.width : block.height);
}

bool onLine(const std::vector<Length>& lines, Length where, int& index) {
    const auto found = std::lower_bound(lines.begin(), lines.end(), where);
    index = static_cast<int>(found - lines.begin());
    return found != lines.end() && *found == where;
}

bool coversTiles(const PaintedStrip& strip, const Picture& picture) {
    int left = 0;
    int right = 0;
    int top = 0;
    int bottom = 0;
    if (!onLine(picture.xs, strip.left, left) || !onLine(picture.xs, strip.right, right) ||
        !onLine(picture.ys, strip.top, top) || !onLine(picture.ys, strip.bottom, bottom)) {
        return false;
    }
    for (int row = top; row < bottom; ++row) {
        for (int column = left; column < right; ++column) {
            const Tile& tile = picture.tile(column, row);
            const bool inside = tile.left >= left && tile.right <= right && tile.top >= top &&
                                tile.bottom <= bottom;
            const bool alone = &tile == &picture.tile(left, top);
            if (!inside || tile.wood != strip.wood || (!picture.mergeLike && !alone)) {
                return false;
            }
        }
    }
    return true;
}

}  // namespace

std::pair<Length, Length> laidStrips(std::vector<PaintedStrip>& strips, Length width, Length height,
                                     Placing placing) {
    for (PaintedStrip& strip : strips) {
        if (placing.mirrored) {
            strip.left = width - std::exchange(strip.right, width - strip.left);
        }
        // Clockwise: what was at the left edge comes to the top.
        Length across = width;
        Length down = height;
        for (int i = 0; i < placing.quarterTurns; ++i) {
            strip = {down - strip.bottom, down - strip.top, strip.left, strip.right, strip.wood};
            std::swap(across, down);
        }
    }
    return placing.quarterTurns % 2 == 0 ? std::pair(width, height) : std::pair(height, width);
}

std::vector<PaintedStrip> painted(const Construction& construction) {
    std::vector<Face> faces(construction.blocks.size());
    for (std::size_t i = 0; i < faces.size(); ++i) {
        if (!glue(construction, static_cast<int>(i), faces)) {
            return {};
        }
    }
    if (faces.empty()) {
        return {};
    }
    std::sort(faces.back().strips.begin(), faces.back().strips.end());
    return std::move(faces.back().strips);
}

bool makes(const Construction& construction, const Picture& picture) {
    // Members lie side by side without gaps, so strips that cover tiles cover each of them once.
    const std::vector<PaintedStrip> strips = painted(construction);
    return !strips.empty() && construction.blocks.back().width == picture.xs.back() &&
           construction.blocks.back().height == picture.ys.back() &&
           std::all_of(strips.begin(), strips.end(),
                       [&](const PaintedStrip& strip) { return coversTiles(strip, picture); });
}

std::vector<Joint> extraJointsMade(const std::vector<PaintedStrip>& strips,
                                   const Picture& picture) {
    std::vector<Joint> made;
    for (const Joint& joint : picture.extraJoints) {
        const bool covered =
            std::any_of(strips.begin(), strips.end(), [&](const PaintedStrip& strip) {
                return joint.vertical ? strip.left < joint.at && joint.at < strip.right &&
                                            strip.top < joint.to && joint.from < strip.bottom
                                      : strip.top < joint.at && joint.at < strip.bottom &&
                                            strip.left < joint.to && joint.from < strip.right;
            });
        if (!covered) {
            made.push_back(joint);
        }
    }
    return made;
}

}  // namespace kerfwright
