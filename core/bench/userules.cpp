// What a board is for, and woods, sizes or colours that do not suit it.
#include "core/bench/rules.h"
#include "core/board/games.h"
#include "core/figure/colourspace.h"
#include "core/measure/number.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <set>
#include <utility>

namespace kerfwright::rules {
namespace {

/// Woods of field and border for which `is` holds.
template <class Is>
std::vector<int> woodsThat(const Scene& on, Is is) {
    std::vector<int> woods;
    const std::vector<WoodUse> use = woodUse(on.wish.field, static_cast<int>(on.woods.size()));
    for (std::size_t i = 0; i < use.size(); ++i) {
        const bool border = on.wish.border.isThere() && on.wish.border.wood == static_cast<int>(i);
        if ((use[i].pieces > 0 || border) && is(on.woods[i])) {
            woods.push_back(static_cast<int>(i));
        }
    }
    return woods;
}

std::string names(const Scene& on, const std::vector<int>& woods) {
    std::vector<std::string> all;
    all.reserve(woods.size());
    for (const int wood : woods) {
        all.push_back(woodName(on, wood));
    }
    return sayList(all);
}

/// Of three sentences the one whose subject the place is: the border, pieces, or both.
std::string about(const CautionPlace& place, const std::string& border, const std::string& pieces,
                  const std::string& both) {
    return place.pieces.empty() ? border : place.border ? both : pieces;
}

/// The one size of all squares; 0 where they differ.
Length squareOf(const Field& field) {
    const Length side = field.columns.front();
    const auto isSide = [side](Length length) { return length == side; };
    return std::all_of(field.columns.begin(), field.columns.end(), isSide) &&
                   std::all_of(field.rows.begin(), field.rows.end(), isSide)
               ? side
               : Length();
}

Remedy withSquares(const Scene& on, Length side) {
    Remedy remedy{say("Make the squares {1}", text(on, side))};
    remedy.board = on.wish;
    remedy.board->field = withCells(on.wish.field, side, side);
    return remedy;
}

bool canBe(const Scene& on, const Remedy& remedy) {
    return faults(*remedy.board, static_cast<int>(on.woods.size())).empty();
}

/// Squares each way that a game is played on and this field has; 0 where it is no such field.
int squaresAcross(const Scene& on) {
    const auto columns = static_cast<int>(on.wish.field.columns.size());
    const auto rows = static_cast<int>(on.wish.field.rows.size());
    const std::vector<SquareSizes>& all = squareSizes();
    const bool known = std::any_of(all.begin(), all.end(), [&](const SquareSizes& sizes) {
        return sizes.use == on.conditions.purpose.use && sizes.across == columns;
    });
    return columns == rows && known ? columns : 0;
}

bool isGame(const Scene& on) {
    return info(on.conditions.purpose.use).game;
}

double linear(std::uint8_t channel) {
    const double value = channel / 255.0;
    return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

/// WCAG 2: relative luminance of an sRGB colour.
double luminance(Colour colour) {
    return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) +
           0.0722 * linear(colour.blue);
}

double contrast(Colour a, Colour b) {
    const double brighter = std::max(luminance(a), luminance(b));
    const double darker = std::min(luminance(a), luminance(b));
    return (brighter + 0.05) / (darker + 0.05);
}

std::string oneDecimal(double value) {
    return formatFixed(static_cast<double>(std::lround(value * 10)) / 10, 1);
}

}  // namespace

// Whether pores matter is disputed; that food codes ask for close-grained wood is why it is said
// (US FDA Food Code 4-101.17: hard maple or an equally hard, close-grained wood).
void openPores(const Scene& on, Found& found) {
    if (!info(on.conditions.purpose.use).food) {
        return;
    }
    const std::vector<int> woods =
        woodsThat(on, [](const Wood& wood) { return wood.poreEnds == PoreEnds::Open; });
    if (!woods.empty()) {
        CautionPlace place = piecesOf(on, woods);
        const std::string of = names(on, woods);
        const std::size_t pieces = place.pieces.size();
        const bool endGrain = on.wish.build == Build::EndGrain;
        found.push_back(
            {endGrain ? Severity::Caution : Severity::Note,
             "open-pores",
             say("Open-pored wood under food"),
             endGrain
                 ? about(place,
                         say("The border is of {1}, whose pores are open and stand on end here: "
                             "they take in water and food.",
                             of),
                         sayCount(pieces,
                                  "{1} piece is of {2}, whose pores are open and stand on end "
                                  "here: they take in water and food.",
                                  "{1} pieces are of {2}, whose pores are open and stand on end "
                                  "here: they take in water and food.",
                                  of),
                         sayCount(pieces,
                                  "{1} piece and the border are of {2}, whose pores are open and "
                                  "stand on end here: they take in water and food.",
                                  "{1} pieces and the border are of {2}, whose pores are open and "
                                  "stand on end here: they take in water and food.",
                                  of))
                 : about(place,
                         say("The border is of {1}, whose pores are open: they take in water and "
                             "food.",
                             of),
                         sayCount(pieces,
                                  "{1} piece is of {2}, whose pores are open: they take in water "
                                  "and food.",
                                  "{1} pieces are of {2}, whose pores are open: they take in water "
                                  "and food.",
                                  of),
                         sayCount(pieces,
                                  "{1} piece and the border are of {2}, whose pores are open: they "
                                  "take in water and food.",
                                  "{1} pieces and the border are of {2}, whose pores are open: "
                                  "they take in water and food.",
                                  of)),
             say("Choose a close-grained wood, or keep these for boards that are not cut on."),
             -1,
             {},
             std::move(place)});
        found.back().said = {fact("woods", woodKeys(on, woods)),
                             fact("count", static_cast<std::int64_t>(pieces)),
                             fact("end-grain", std::int64_t{endGrain ? 1 : 0})};
    }
}

// Blowing through the end of a piece: common practice, no source. In a long-grain face pores matter
// too little to speak of what nobody knows.
void unknownPores(const Scene& on, Found& found) {
    if (!info(on.conditions.purpose.use).food || on.wish.build != Build::EndGrain) {
        return;
    }
    const std::vector<int> woods =
        woodsThat(on, [](const Wood& wood) { return wood.poreEnds == PoreEnds::Unknown; });
    if (!woods.empty()) {
        CautionPlace place = piecesOf(on, woods);
        const std::string of = names(on, woods);
        const std::size_t pieces = place.pieces.size();
        found.push_back(
            {Severity::Note,
             "unknown-pores",
             say("Pores under food that are not known"),
             about(place,
                   say("The border is of {1}: whether its end grain takes in water is not known.",
                       of),
                   sayCount(pieces,
                            "{1} piece is of {2}: whether its end grain takes in water is not "
                            "known.",
                            "{1} pieces are of {2}: whether its end grain takes in water is not "
                            "known.",
                            of),
                   sayCount(pieces,
                            "{1} piece and the border are of {2}: whether its end grain takes in "
                            "water is not known.",
                            "{1} pieces and the border are of {2}: whether its end grain takes in "
                            "water is not known.",
                            of)),
             say("Blow through the end of a short offcut held in water: where bubbles come, the "
                 "pores are open. Then say so in the wood's entry."),
             -1,
             {},
             std::move(place)});
        found.back().said = {fact("woods", woodKeys(on, woods)),
                             fact("count", static_cast<std::int64_t>(pieces))};
    }
}

// Of those who work these woods; what the finished wood does to food nobody is known to have
// measured. Close-grained woods that food codes or custom accept are left out.
void reportedReactions(const Scene& on, Found& found) {
    if (!info(on.conditions.purpose.use).food) {
        return;
    }
    const std::vector<int> woods = woodsThat(on, [](const Wood& wood) {
        return !wood.reactions.empty() && wood.poreEnds != PoreEnds::Closed;
    });
    if (!woods.empty()) {
        CautionPlace place = piecesOf(on, woods);
        const std::string of = names(on, woods);
        const std::size_t pieces = place.pieces.size();
        std::string reason =
            about(place, say("The border is of {1}.", of),
                  sayCount(pieces, "{1} piece is of {2}.", "{1} pieces are of {2}.", of),
                  sayCount(pieces, "{1} piece and the border are of {2}.",
                           "{1} pieces and the border are of {2}.", of));
        for (const int wood : woods) {
            reason += " " + woodName(on, wood) + ": " +
                      sayIn("wood", on.woods[static_cast<std::size_t>(wood)].reactions);
        }
        found.push_back(
            {Severity::Caution,
             "reported-reactions",
             say("Wood that some people react to, under food"),
             std::move(reason),
             say("Choose a wood without such reports; mask and extraction when you work it."),
             -1,
             {},
             std::move(place)});
        std::string reports;
        for (const int wood : woods) {
            reports += on.woods[static_cast<std::size_t>(wood)].reactions + '\n';
        }
        found.back().said = {fact("woods", woodKeys(on, woods)),
                             fact("count", static_cast<std::int64_t>(pieces)),
                             fact("reports", reports)};
    }
}

void gameSquares(const Scene& on, Found& found) {
    if (!isGame(on)) {
        return;
    }
    const Field& field = on.wish.field;
    const BoardUseInfo& use = info(on.conditions.purpose.use);
    const int across = squaresAcross(on);
    if (across == 0) {
        const bool chess = use.use == BoardUse::ChessBoard;
        const std::size_t columns = field.columns.size();
        const std::size_t rows = field.rows.size();
        found.push_back(
            {Severity::Note, "squares-count",
             chess ? say("Chess board of another size") : say("Draughts board of another size"),
             chess ? say("This field has {1} × {2} squares; the game is played on 8 × 8.", columns,
                         rows)
                   : say("This field has {1} × {2} squares; the game is played on 8 × 8 or 10 × "
                         "10.",
                         columns, rows),
             say("Change how many there are, or say that the board is for something else."), -1});
        found.back().said = {fact("use", use.key),
                             fact("columns", static_cast<std::int64_t>(columns)),
                             fact("rows", static_cast<std::int64_t>(rows))};
        return;
    }
    const Length side = squareOf(field);
    if (side == Length()) {
        found.push_back(
            {Severity::Caution,
             "squares-uneven",
             say("Squares that are not alike"),
             say("Columns go from {1} to {2}, rows from {3} to {4}.",
                 text(on, *std::min_element(field.columns.begin(), field.columns.end())),
                 text(on, *std::max_element(field.columns.begin(), field.columns.end())),
                 text(on, *std::min_element(field.rows.begin(), field.rows.end())),
                 text(on, *std::max_element(field.rows.begin(), field.rows.end()))),
             say("Give all squares one size."),
             -1,
             {},
             {},
             {withSquares(on, field.columns.front())}});
        const auto [narrow, wide] = std::minmax_element(field.columns.begin(), field.columns.end());
        const auto [low, high] = std::minmax_element(field.rows.begin(), field.rows.end());
        found.back().said = {fact("narrowest", *narrow), fact("widest", *wide),
                             fact("lowest", *low), fact("highest", *high)};
        return;
    }
    std::string known;
    Length nearest;
    for (const SquareSizes& sizes : squareSizes()) {
        if (sizes.use != use.use || sizes.across != across) {
            continue;
        }
        if (side >= sizes.least && side <= sizes.greatest) {
            return;
        }
        const std::string name = say(sizes.name);
        known += known.empty() ? "" : "; ";
        known += sizes.least == sizes.greatest
                     ? name + " " + text(on, sizes.least)
                     : say("{1} {2} to {3}", name, text(on, sizes.least), text(on, sizes.greatest));
        const Length close = std::clamp(side, sizes.least, sizes.greatest);
        const auto distance = [side](Length to) { return std::abs((to - side).nm()); };
        if (nearest == Length() || distance(close) < distance(nearest)) {
            nearest = close;
        }
    }
    Caution caution{Severity::Note,
                    "squares-size",
                    say("Squares of an unusual size"),
                    say("A square is {1}. Known sizes: {2}.", text(on, side), known),
                    say("Choose a known size, or one that fits your pieces."),
                    -1};
    caution.said = {fact("use", use.key), fact("across", std::int64_t{across}),
                    fact("square", side)};
    if (Remedy remedy = withSquares(on, nearest); canBe(on, remedy)) {
        caution.remedies.push_back(std::move(remedy));
    }
    found.push_back(std::move(caution));
}

void gamePieces(const Scene& on, Found& found) {
    const BoardPurpose& purpose = on.conditions.purpose;
    const int across = isGame(on) ? squaresAcross(on) : 0;
    const Length side = across > 0 ? squareOf(on.wish.field) : Length();
    if (purpose.foot <= Length() || side <= Length()) {
        return;
    }
    const double share = purpose.foot.toMm() / side.toMm();
    const FootShare usual = footShare(purpose.use, across);
    // Customs are told in whole percent.
    const long hundred = std::lround(share * 100);
    if (hundred >= std::lround(usual.least * 100) && hundred <= std::lround(usual.greatest * 100)) {
        return;
    }
    const Length better = squareFor(purpose.use, across, purpose.foot, on.notation.unit);
    Caution caution{share > usual.greatest ? Severity::Caution : Severity::Note,
                    "pieces-fit",
                    share > usual.greatest ? say("Pieces too large for the squares")
                                           : say("Pieces small for the squares"),
                    say("A foot of {1} takes {2} % of a square of {3}; usual are {4} to {5} %.",
                        text(on, purpose.foot), hundred, text(on, side),
                        std::lround(usual.least * 100), std::lround(usual.greatest * 100)),
                    say("Squares of {1} would suit these pieces.", text(on, better)),
                    -1};
    caution.said = {fact("use", info(purpose.use).key), fact("across", std::int64_t{across}),
                    fact("square", side), fact("foot", purpose.foot)};
    if (Remedy remedy = withSquares(on, better); better != side && canBe(on, remedy)) {
        caution.remedies.push_back(std::move(remedy));
    }
    found.push_back(std::move(caution));
}

// Contrast as WCAG 2 reckons it: (L1 + 0.05) / (L2 + 0.05). That squares want 2 is the project's
// own judgement, as are the woods' colours; finish and age darken both.
void lowContrast(const Scene& on, Found& found) {
    constexpr double enough = 2;
    if (!isGame(on)) {
        return;
    }
    std::vector<WoodUse> use = woodUse(on.wish.field, static_cast<int>(on.woods.size()));
    std::vector<int> order;
    for (std::size_t i = 0; i < use.size(); ++i) {
        if (use[i].pieces > 0) {
            order.push_back(static_cast<int>(i));
        }
    }
    if (order.size() < 2) {
        return;
    }
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        return use[static_cast<std::size_t>(a)].face > use[static_cast<std::size_t>(b)].face;
    });
    const double now = contrast(on.woods[static_cast<std::size_t>(order[0])].colour,
                                on.woods[static_cast<std::size_t>(order[1])].colour);
    if (now < enough) {
        CautionPlace place = piecesOf(on, {order[0], order[1]});
        place.border = false;
        found.push_back({Severity::Caution,
                         "low-contrast",
                         say("Squares that look alike"),
                         say("{1} and {2} have a contrast of {3} to 1; {4} is the least to play "
                             "on.",
                             woodName(on, order[0]), woodName(on, order[1]), oneDecimal(now),
                             oneDecimal(enough)),
                         say("Choose a lighter and a darker wood."),
                         -1,
                         {},
                         std::move(place)});
        found.back().said = {fact("woods", woodKeys(on, {order[0], order[1]})),
                             hundredths("contrast", now)};
    }
}

void woodsAlike(const Scene& on, Found& found) {
    // Differences by CIEDE2000: 1 is about what trained eyes see side by side, 2 to 10 is seen at a
    // glance (common guidance, no standard). Rings and pores of a wood are as far apart as that.
    constexpr double enough = 5;
    if (isGame(on)) {
        return;  // asks for more than to be told apart: lowContrast
    }
    const Field& field = on.wish.field;
    const std::vector<int> map = pieceMap(field);
    const std::size_t columns = field.columns.size();
    std::set<std::pair<int, int>> meet;
    const auto note = [&](std::size_t a, std::size_t b) {
        const int one = field.pieces[static_cast<std::size_t>(map[a])].wood;
        const int other = field.pieces[static_cast<std::size_t>(map[b])].wood;
        if (one != other) {
            meet.insert(std::minmax(one, other));
        }
    };
    for (std::size_t i = 0; i < map.size(); ++i) {
        if (i % columns + 1 < columns) {
            note(i, i + 1);
        }
        if (i + columns < map.size()) {
            note(i, i + columns);
        }
    }
    for (const auto& [one, other] : meet) {
        const double difference =
            colourDifference(on.woods[static_cast<std::size_t>(one)].colour,
                             on.woods[static_cast<std::size_t>(other)].colour);
        if (difference < enough) {
            CautionPlace place = piecesOf(on, {one, other});
            place.border = false;
            found.push_back({Severity::Note,
                             "woods-alike",
                             say("Woods that look alike"),
                             say("{1} and {2} lie side by side, and their colours differ by {3} "
                                 "(CIEDE2000); below {4} the pattern is hardly seen.",
                                 woodName(on, one), woodName(on, other), oneDecimal(difference),
                                 oneDecimal(enough)),
                             say("Choose a lighter or a darker wood for one of them."),
                             -1,
                             {},
                             std::move(place)});
            found.back().about = woodKeys(on, {one, other});
            found.back().said = {hundredths("difference", difference)};
        }
    }
}

}  // namespace kerfwright::rules
