#include "tests/core/search/pictures.h"

#include "core/measure/at.h"

#include <algorithm>
#include <map>

namespace kerfwright::searching {
namespace {

struct Point {
    Length x, y;
};

struct Seen {
    int wood = -1;
    std::string strip;  ///< the way to it: different for any two strips of the field
};

/// A point of a laid face, on the face as it was.
Point before(Placing placing, Point point, Length width, Length height) {
    for (int i = placing.quarterTurns; i > 0; --i) {
        // Before the last clockwise turn the face was (i odd) height x width seen from here.
        const Length unturnedHeight = i % 2 == 1 ? height : width;
        point = {point.y, unturnedHeight - point.x};
    }
    if (placing.mirrored) {
        point.x = width - point.x;
    }
    return point;
}

Seen look(const Construction& construction, int index, Point point, const std::string& way) {
    const Block& block = construction.blocks[at(index)];
    if (!block.isGlued()) {
        return {block.wood, way};
    }
    const bool alongX = block.along == JoinedAlong::X;
    int place = 0;
    for (const Member& member : block.members) {
        const Block& part = construction.blocks[at(member.block)];
        const bool partAlongX = part.along == JoinedAlong::X;
        const Length trims = member.trimFirst + member.trimLast;
        const Length width = part.width - (partAlongX ? trims : Length());
        const Length height = part.height - (partAlongX ? Length() : trims);
        const bool sideways = member.placing.quarterTurns % 2 == 1;
        const Length size = alongX == sideways ? height : width;
        Length& here = alongX ? point.x : point.y;
        if (here < size) {
            Point inside = before(member.placing, point, width, height);
            (partAlongX ? inside.x : inside.y) += member.trimFirst;
            return look(construction, member.block, inside, way + "/" + std::to_string(place));
        }
        here -= size;
        ++place;
    }
    return {};
}

std::string soundness(const Construction& construction) {
    for (std::size_t i = 0; i < construction.blocks.size(); ++i) {
        const Block& block = construction.blocks[i];
        const std::string name = "block " + std::to_string(i);
        if (!block.isGlued()) {
            if (!block.members.empty() || block.sameGlueUpAs >= 0) {
                return name + " is a strip with members";
            }
            continue;
        }
        if (block.members.size() < 2) {
            return name + " joins fewer than two members";
        }
        Length reached;
        for (const Member& member : block.members) {
            if (member.block < 0 || at(member.block) >= i) {
                return name + " comes before a member";
            }
            const Block& part = construction.blocks[at(member.block)];
            const bool partAlongX = part.along == JoinedAlong::X;
            const Length trims = member.trimFirst + member.trimLast;
            const Length width = part.width - (partAlongX ? trims : Length());
            const Length height = part.height - (partAlongX ? Length() : trims);
            const bool sideways = member.placing.quarterTurns % 2 == 1;
            const bool alongX = block.along == JoinedAlong::X;
            reached += alongX == sideways ? height : width;
            if ((alongX == sideways ? width : height) != (alongX ? block.height : block.width)) {
                return name + " has a member of another size";
            }
        }
        if (reached != (block.along == JoinedAlong::X ? block.width : block.height)) {
            return name + " is not as long as its members";
        }
        if (block.sameGlueUpAs >= 0) {
            const Block& other = construction.blocks[at(block.sameGlueUpAs)];
            if (at(block.sameGlueUpAs) >= i || other.sameGlueUpAs >= 0 ||
                other.along != block.along || other.members.size() != block.members.size()) {
                return name + " is not of the row it says";
            }
        }
    }
    return {};
}

}  // namespace

Field cells(const std::vector<std::string>& rows, Length width, Length height) {
    Field field = plainGrid(static_cast<int>(rows.front().size()), static_cast<int>(rows.size()),
                            width, height, 0);
    for (Piece& piece : field.pieces) {
        piece.wood = rows[at(piece.row)][at(piece.column)] - 'A';
    }
    return field;
}

Field pieces(const std::vector<std::string>& rows, const std::vector<int>& woods, Length side) {
    Field field = plainGrid(static_cast<int>(rows.front().size()), static_cast<int>(rows.size()),
                            side, side, 0);
    std::map<char, Piece> found;
    for (const Piece& cell : field.pieces) {
        const char letter = rows[at(cell.row)][at(cell.column)];
        Piece& piece = found.try_emplace(letter, cell).first->second;
        piece.across = std::max(piece.across, cell.column - piece.column + 1);
        piece.down = std::max(piece.down, cell.row - piece.row + 1);
        piece.wood = woods.empty() ? 0 : woods[at(letter - 'a')];
    }
    field.pieces.clear();
    for (const auto& [letter, piece] : found) {
        field.pieces.push_back(piece);
    }
    std::sort(field.pieces.begin(), field.pieces.end(), readsBefore);
    return field;
}

std::string mistakes(const Construction& construction, const Picture& picture) {
    if (const std::string unsound = soundness(construction); !unsound.empty()) {
        return unsound;
    }
    const Block& whole = construction.blocks.back();
    if (whole.width != picture.xs.back() || whole.height != picture.ys.back()) {
        return "the field has another size";
    }
    const bool turns = picture.laying == Laying::EndGrain;
    for (const Block& block : construction.blocks) {
        for (const Member& member : block.members) {
            if (!turns && member.placing.quarterTurns % 2 != 0) {
                return "a quarter turn in a long-grain build";
            }
        }
    }
    const Length least = Length::nm(1);
    std::map<std::string, const Tile*> owners;
    for (const Tile& tile : picture.tiles) {
        std::string strip;
        for (const Length x :
             {picture.xs[at(tile.left)] + least, picture.xs[at(tile.right)] - least}) {
            for (const Length y :
                 {picture.ys[at(tile.top)] + least, picture.ys[at(tile.bottom)] - least}) {
                const Seen seen = look(
                    construction, static_cast<int>(construction.blocks.size()) - 1, {x, y}, "");
                const std::string where =
                    " at " + std::to_string(x.toMm()) + ", " + std::to_string(y.toMm());
                if (seen.wood != tile.wood) {
                    return "another wood" + where;
                }
                if (!strip.empty() && seen.strip != strip) {
                    return "a joint inside a piece" + where;
                }
                strip = seen.strip;
            }
        }
        const auto [owner, isNew] = owners.emplace(strip, &tile);
        if (!isNew && !picture.mergeLike) {
            return "two pieces of one strip";
        }
    }
    return {};
}

}  // namespace kerfwright::searching
