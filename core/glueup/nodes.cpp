#include "core/glueup/nodes.h"

#include "core/measure/at.h"

#include <algorithm>
#include <utility>

namespace kerfwright::deep {
namespace {

constexpr Placing quarter{false, 1};
constexpr Placing backQuarter{false, 3};
/// Mirrored about the diagonal from top left to bottom right.
constexpr Placing aboutDiagonal{true, 3};

Construction mirrored(Construction construction) {
    for (Block& block : construction.blocks) {
        std::swap(block.width, block.height);
        block.along = block.along == JoinedAlong::X ? JoinedAlong::Y : JoinedAlong::X;
        for (Member& member : block.members) {
            member.placing = then(then(aboutDiagonal, member.placing), aboutDiagonal);
        }
    }
    return construction;
}

}  // namespace

Lay layOf(Placing placing, bool endGrain, bool stoodUp) {
    Lay lay;
    if (endGrain && !stoodUp) {
        // Roll first, then turn: a mirror before the quarter turns is one after as many the other
        // way round.
        const int turns = placing.mirrored ? (4 - placing.quarterTurns) % 4 : placing.quarterTurns;
        lay.rolled = turns % 2 != 0;
        lay.turnedOver = turns >= 2;
        lay.flipped = lay.turnedOver != placing.mirrored;
        return lay;
    }
    // Turning over mirrors top to bottom: left to right and half a turn.
    const int turns = (placing.quarterTurns + (placing.mirrored ? 2 : 0)) % 4;
    lay.stoodUp = endGrain;
    lay.turnedOver = placing.mirrored;
    lay.flipped = turns >= 2;
    lay.turned = turns % 2 != 0;
    return lay;
}

Placing transposedBack(Placing placing) {
    return then(placing, aboutDiagonal);
}

Nodes nodesOf(const Construction& given, Laying laying) {
    const bool endGrain = laying == Laying::EndGrain;
    const Construction construction = laying == Laying::GrainAcross ? mirrored(given) : given;
    const std::vector<Block>& blocks = construction.blocks;
    // How each block lies over its node.
    std::vector<Placing> over(blocks.size());
    Nodes nodes;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        const Block& block = blocks[i];
        const bool isField = i + 1 == blocks.size();
        const bool alongX = block.along == JoinedAlong::X;
        const bool lies = endGrain && block.isGlued() && !alongX;  // unless it is the field
        const bool alike =
            std::all_of(block.members.begin(), block.members.end(), [&](const Member& member) {
                const int turns = then(over[at(member.block)], member.placing).quarterTurns;
                return !blocks[at(member.block)].isGlued() ||
                       (nodes[member.block].isWord && (turns % 2 != 0) == lies);
            });
        Node node;
        node.across = block.width;
        node.down = block.height;
        node.wood = block.wood;
        node.sideBySide = alongX;
        node.root = block.sameGlueUpAs >= 0 ? block.sameGlueUpAs : static_cast<int>(i);
        node.isWord = block.isGlued() && alike && (endGrain || alongX);
        const bool oneSlice = isField && (!block.isGlued() || node.isWord);
        const bool turn = lies && (!isField || oneSlice);
        for (const Member& member : block.members) {
            Placing placing = then(over[at(member.block)], member.placing);
            if (turn) {
                placing = then(placing, backQuarter);
            }
            node.children.push_back({member.block, placing, member.trimFirst, member.trimLast});
        }
        if (turn) {
            std::swap(node.across, node.down);
            node.sideBySide = true;
            over[i] = quarter;
        }
        nodes.all.push_back(std::move(node));
        if (oneSlice) {
            Node field;
            field.across = block.width;
            field.down = block.height;
            field.sideBySide = false;
            field.root = static_cast<int>(i) + 1;
            field.children.push_back({static_cast<int>(i), over[i], {}, {}});
            nodes.all.push_back(std::move(field));
        }
    }
    return nodes;
}

}  // namespace kerfwright::deep
