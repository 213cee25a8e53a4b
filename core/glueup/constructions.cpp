#include "core/glueup/constructions.h"

#include "core/measure/at.h"
#include "core/measure/hexadecimal.h"
#include "core/search/shifted.h"
#include "core/words/say.h"

#include <algorithm>
#include <functional>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

namespace kerfwright {
namespace {

/// FNV-1a over how blocks are put together.
std::string keyOf(const Construction& construction, Laying laying) {
    std::uint64_t hash = 14'695'981'039'346'656'037U;
    const auto take = [&](int value) {
        hash ^= static_cast<std::uint64_t>(value + 7);
        hash *= 1'099'511'628'211U;
    };
    take(static_cast<int>(laying));
    for (const Block& block : construction.blocks) {
        take(block.isGlued() ? static_cast<int>(block.along) : 2);
        take(block.sameGlueUpAs);
        for (const Member& member : block.members) {
            take(member.block);
            take(int{member.placing.mirrored} * 4 + member.placing.quarterTurns);
            take(int{member.trimFirst > Length()} * 2 + int{member.trimLast > Length()});
        }
        take(-1);
    }
    return hexadecimal(hash, 16);
}

std::string wayOf(bool byRows, int levels) {
    if (levels <= 1) {
        return say("One panel");
    }
    if (levels == 2) {
        return byRows ? say("Rows") : say("Columns");
    }
    return byRows ? sayCount(levels, "Rows of blocks, glued in {1} level",
                             "Rows of blocks, glued in {1} levels")
                  : sayCount(levels, "Columns of blocks, glued in {1} level",
                             "Columns of blocks, glued in {1} levels");
}

std::string nameOf(const Construction& construction, Laying laying, int levels) {
    const std::vector<Block>& blocks = construction.blocks;
    bool shifted = false;
    bool thinned = false;
    for (const Block& block : blocks) {
        thinned = thinned || (laying == Laying::EndGrain && block.sameGlueUpAs >= 0);
        for (const Member& member : block.members) {
            shifted = shifted || member.trimFirst > Length() || member.trimLast > Length();
        }
    }
    std::string name = wayOf(blocks.back().along == JoinedAlong::Y, levels);
    if (shifted) {
        name = say("{1}, a wider panel shifted and trimmed", name);
    }
    if (thinned) {
        name = say("{1}, one panel thinned in stages", name);
    }
    return name;
}

/// Greatest finished section of a strip, with all that a deep plan may add to it.
std::vector<StripLimit> greatestStrips(const Board& board, const std::vector<Wood>& woods,
                                       const Shop& shop) {
    std::vector<StripLimit> limits;
    for (const Wood& wood : woods) {
        StripLimit limit;
        if (board.build == Build::EndGrain) {
            const Length around =
                shop.milling + shop.panelFlattening * 2 + shop.trimMargin + shop.truing;
            limit = {wood.timber.thickness - around, wood.timber.width - around};
        } else {
            const Length thick =
                board.thickness + shop.fieldFlattening + shop.panelFlattening * 2 + shop.milling;
            const bool flat = thick <= wood.timber.thickness;
            const bool onEdge = thick <= wood.timber.width;
            const Length wide = flat     ? wood.timber.width
                                : onEdge ? wood.timber.thickness
                                         : Length();
            limit.thickness = wood.timber.thickness;
            limit.width = wide - shop.milling - shop.trimMargin - shop.truing;
        }
        const Length least = BoardLimits::leastCell;
        limits.push_back({std::max(limit.thickness, least), std::max(limit.width, least)});
    }
    return limits;
}

/// Divides blocks, and finds those that are there already.
class Divider {
public:
    Divider(const Construction& construction, int most)
        : given_(construction)
        , most_(static_cast<std::size_t>(most))
        , now_(construction.blocks.size(), -1) {}

    Construction operator()() {
        for (std::size_t i = 0; i < given_.blocks.size(); ++i) {
            Block block = given_.blocks[i];
            for (Member& member : block.members) {
                member.block = now_[at(member.block)];
            }
            if (block.sameGlueUpAs >= 0) {
                block.sameGlueUpAs = now_[at(block.sameGlueUpAs)];
            } else if (block.members.size() > most_) {
                divide(block);
            }
            now_[i] = static_cast<int>(made_.blocks.size());
            made_.blocks.push_back(std::move(block));
        }
        made_.extraJoints = given_.extraJoints;
        return std::move(made_);
    }

private:
    std::pair<Length, Length> sizeOf(const Member& member) const {
        const Block& block = made_.blocks[at(member.block)];
        const bool alongX = !block.isGlued() || block.along == JoinedAlong::X;
        Length width = block.width;
        Length height = block.height;
        (alongX ? width : height) -= member.trimFirst + member.trimLast;
        return member.placing.quarterTurns % 2 == 0 ? std::pair(width, height)
                                                    : std::pair(height, width);
    }

    void divide(Block& block) {
        while (block.members.size() > most_) {
            const std::size_t groups = (block.members.size() + most_ - 1) / most_;
            std::vector<Member> wider;
            std::size_t next = 0;
            for (std::size_t left = std::max<std::size_t>(groups, 2); left > 0; --left) {
                const std::size_t count = (block.members.size() - next + left - 1) / left;
                wider.push_back(group(block, next, count));
                next += count;
            }
            block.members = std::move(wider);
        }
    }

    Member group(const Block& block, std::size_t first, std::size_t count) {
        const auto begin = block.members.begin() + static_cast<std::ptrdiff_t>(first);
        const std::vector<Member> members(begin, begin + static_cast<std::ptrdiff_t>(count));
        if (count == 1) {
            return members.front();
        }
        // The same read the other way round, each part mirrored, is the same stick flipped.
        const bool alongX = block.along == JoinedAlong::X;
        const Placing mirror{true, alongX ? 0 : 2};
        std::vector<Member> back(members.rbegin(), members.rend());
        for (Member& member : back) {
            member.placing = then(member.placing, mirror);
        }
        const auto plain = [&](std::vector<Member> all) {
            for (Member& member : all) {
                const Block& part = made_.blocks[at(member.block)];
                if (!part.isGlued()) {
                    member.placing = {false, member.placing.quarterTurns % 2};
                }
            }
            return all;
        };
        const std::vector<Member> forth = plain(members);
        const auto known = groups_.find({block.along, forth});
        if (known != groups_.end()) {
            return {known->second, {}, {}, {}};
        }
        const auto mirrored = groups_.find({block.along, plain(back)});
        if (mirrored != groups_.end()) {
            return {mirrored->second, mirror, {}, {}};
        }
        Block part;
        part.along = block.along;
        part.members = forth;
        for (const Member& member : forth) {
            const auto [width, height] = sizeOf(member);
            part.width = alongX ? part.width + width : width;
            part.height = alongX ? height : part.height + height;
        }
        const int index = static_cast<int>(made_.blocks.size());
        made_.blocks.push_back(std::move(part));
        groups_[{block.along, forth}] = index;
        return {index, {}, {}, {}};
    }

    using Group = std::pair<JoinedAlong, std::vector<Member>>;
    struct Before {
        bool operator()(const Group& a, const Group& b) const {
            const auto less = [](const Member& x, const Member& y) {
                return std::tie(x.block, x.placing, x.trimFirst, x.trimLast) <
                       std::tie(y.block, y.placing, y.trimFirst, y.trimLast);
            };
            return a.first != b.first
                       ? a.first < b.first
                       : std::lexicographical_compare(a.second.begin(), a.second.end(),
                                                      b.second.begin(), b.second.end(), less);
        }
    };

    const Construction& given_;
    std::size_t most_;
    Construction made_;
    std::vector<int> now_;  ///< by index of the given block
    std::map<Group, int, Before> groups_;
};

class Collector {
public:
    Collector(Laying laying, int mostParts, Proposals& into)
        : laying_(laying)
        , mostParts_(mostParts)
        , into_(into) {}

    void add(Construction construction) {
        const bool tooMany =
            mostParts_ >= 2 &&
            std::any_of(construction.blocks.begin(), construction.blocks.end(),
                        [&](const Block& block) {
                            return block.sameGlueUpAs < 0 &&
                                   block.members.size() > static_cast<std::size_t>(mostParts_);
                        });
        std::optional<Construction> divided;
        if (tooMany) {
            divided = dividedIntoLoads(construction, mostParts_);
        }
        put(std::move(construction));
        if (divided) {
            put(std::move(*divided));
        }
    }

private:
    void put(Construction construction) {
        Proposal proposal;
        proposal.key = keyOf(construction, laying_);
        if (withKey(into_, proposal.key) != nullptr) {
            return;
        }
        const Found found = counted(std::move(construction), laying_);
        proposal.laying = laying_;
        proposal.glueUps = found.glueUps;
        proposal.assemblies = found.assemblies;
        proposal.levels = found.levels;
        proposal.construction = found.construction;
        proposal.name = nameOf(proposal.construction, laying_, proposal.levels);
        into_.all.push_back(std::move(proposal));
    }

    Laying laying_;
    int mostParts_;
    Proposals& into_;
};

/// Whether some glued block but the field is larger than the machines take.
bool breaks(const Construction& construction, Laying laying, const PanelLimit& limit) {
    for (std::size_t i = 0; i + 1 < construction.blocks.size(); ++i) {
        const Block& block = construction.blocks[i];
        const bool alongX = block.along == JoinedAlong::X;
        const Length across = laying == Laying::GrainDown     ? block.width
                              : laying == Laying::GrainAcross ? block.height
                              : alongX                        ? block.width
                                                              : block.height;
        const Length thick = alongX ? block.height : block.width;
        if (block.isGlued() &&
            (across > limit.widest || (laying == Laying::EndGrain && thick > limit.thickest))) {
            return true;
        }
    }
    return false;
}

void addLaid(Laying laying, const Board& board, const Shop& shop,
             const std::vector<StripLimit>& limits, const ProposalOptions& options,
             const SearchCallback& callback, Proposals& result, bool& first) {
    const Picture picture = pictureOf(board.field, laying, options.mergeLike, limits);
    if (!isGuillotine(picture)) {
        result.locked = lockedPieces(picture);
        return;
    }
    const Length around = (shop.trimMargin + shop.truing) * 2;
    Picture machines = picture;
    machines.panels.widest = std::max(shop.sanderWidth - around, BoardLimits::leastCell);
    machines.panels.thickest = std::max(shop.sawDepth - shop.panelFlattening - shop.trimMargin * 2,
                                        BoardLimits::leastCell);
    Collector collector(laying, options.mostParts, result);
    SearchOptions search;
    search.budget = options.budget;
    bool broken = false;
    const auto look = [&](const Picture& seen, bool thinning) {
        search.thinning = thinning;
        const SearchResult found = fewestGlueUps(seen, search, callback);
        for (const Found& one : found.found) {
            collector.add(one.construction);
            broken = broken || breaks(one.construction, laying, machines.panels);
        }
        result.stopped = result.stopped || found.stopped;
        return found;
    };
    const SearchResult plain = look(picture, false);
    const bool better = first || plain.bound < result.bound;
    if (better) {
        result.bound = plain.bound;
    }
    result.proven = first ? plain.proven : result.proven && plain.proven;
    first = false;
    const Field& field = board.field;
    const bool severalHeights = std::adjacent_find(field.rows.begin(), field.rows.end(),
                                                   std::not_equal_to<>()) != field.rows.end() ||
                                std::adjacent_find(field.columns.begin(), field.columns.end(),
                                                   std::not_equal_to<>()) != field.columns.end();
    if (laying == Laying::EndGrain && severalHeights && !result.stopped) {
        look(picture, true);
    }
    // Where a panel would be more than the machines take, the search is asked again for panels
    // that they do take.
    if (broken && !result.stopped) {
        look(machines, false);
    }
    for (const Found& one : shiftedAndTrimmed(picture)) {
        collector.add(one.construction);
    }
}

}  // namespace

Construction dividedIntoLoads(const Construction& construction, int mostParts) {
    return Divider(construction, mostParts)();
}

const Proposal* withKey(const Proposals& proposals, const std::string& key) {
    const auto found = std::find_if(proposals.all.begin(), proposals.all.end(),
                                    [&](const Proposal& one) { return one.key == key; });
    return found == proposals.all.end() ? nullptr : &*found;
}

Proposals proposals(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                    const ProposalOptions& options, const SearchCallback& callback) {
    Proposals result;
    const std::vector<StripLimit> limits = greatestStrips(board, woods, shop);
    bool first = true;
    if (board.build == Build::EndGrain) {
        addLaid(Laying::EndGrain, board, shop, limits, options, callback, result, first);
    } else {
        if (board.grain != GrainDirection::Across) {
            addLaid(Laying::GrainDown, board, shop, limits, options, callback, result, first);
        }
        if (board.grain != GrainDirection::Down) {
            addLaid(Laying::GrainAcross, board, shop, limits, options, callback, result, first);
        }
    }
    std::stable_sort(result.all.begin(), result.all.end(),
                     [](const Proposal& a, const Proposal& b) {
                         return std::tie(a.glueUps, a.assemblies, a.levels) <
                                std::tie(b.glueUps, b.assemblies, b.levels);
                     });
    return result;
}

}  // namespace kerfwright
