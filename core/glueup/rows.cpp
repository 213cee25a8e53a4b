#include "core/glueup/rows.h"

#include "core/glueup/allowances.h"
#include "core/glueup/joints.h"
#include "core/words/say.h"

#include <algorithm>
#include <map>

namespace kerfwright::rows {
namespace {

using Word = std::vector<Span>;

/// Equal parts of a length. The count is raised, to at most twice what is asked for, where that
/// lets every part fall on 0.1 mm or 1/64 in: a part that no rule shows cannot be cut. Else the
/// parts differ by a nanometre or so, the last one last.
std::vector<Length> equalParts(Length whole, int atLeast) {
    const auto parts = [whole](int count) {
        return std::vector<Length>(static_cast<std::size_t>(count), Length::nm(whole.nm() / count));
    };
    if (atLeast == 1) {
        return {whole};
    }
    for (const Length grid : {Length::um(100), Length::inch(1, 64)}) {
        if (whole.nm() % grid.nm() != 0) {
            continue;
        }
        for (int count = atLeast; count <= 2 * atLeast; ++count) {
            if ((whole.nm() / grid.nm()) % count == 0) {
                return parts(count);
            }
        }
    }
    std::vector<Length> uneven = parts(atLeast);
    uneven.back() += whole - uneven.front() * atLeast;
    return uneven;
}

/// Divides `whole` into as few parts as `fits(part, isFirst, isLast)` allows: into equal ones along
/// lines that were drawn if there are such, else along any drawn lines, else into equal parts.
/// Empty where parts would become thinner than a cell may be.
template <class Fits>
std::vector<Length> divided(Length whole, const std::vector<Length>& drawn, Fits fits) {
    const auto allFit = [&](const std::vector<Length>& parts) {
        for (std::size_t i = 0; i < parts.size(); ++i) {
            if (!fits(parts[i], i == 0, i + 1 == parts.size())) {
                return false;
            }
        }
        return true;
    };
    if (allFit({whole})) {
        return {whole};
    }
    const int segments = static_cast<int>(drawn.size()) + 1;
    for (int count = 2; count <= segments; ++count) {
        std::vector<Length> lines;
        for (int i = 1; i < count; ++i) {
            lines.push_back(Length::nm(whole.nm() / count) * i);
        }
        if (whole.nm() % count == 0 &&
            std::includes(drawn.begin(), drawn.end(), lines.begin(), lines.end())) {
            std::vector<Length> parts(static_cast<std::size_t>(count),
                                      Length::nm(whole.nm() / count));
            if (allFit(parts)) {
                return parts;
            }
        }
    }
    std::vector<Length> parts;
    Length begin;
    for (std::size_t next = 0; next < drawn.size(); ++next) {
        const Length after = next + 1 < drawn.size() ? drawn[next + 1] : whole;
        if (!fits(after - begin, parts.empty(), after == whole)) {
            parts.push_back(drawn[next] - begin);
            begin = drawn[next];
        }
    }
    parts.push_back(whole - begin);
    for (int count = 2; !allFit(parts); ++count) {
        parts = equalParts(whole, count);
        if (parts.front() < BoardLimits::leastCell) {
            return {};
        }
    }
    return parts;
}

/// Greatest milled width of a strip of this thickness: the timber may lie flat or stand on edge.
/// Zero or less where the timber has no such thickness at all.
Length greatestWidth(const Wood& wood, Length thickness, Length milling) {
    const Length rough = thickness + milling;
    if (rough <= wood.timber.thickness) {
        return wood.timber.width - milling;
    }
    if (rough <= wood.timber.width) {
        return wood.timber.thickness - milling;
    }
    return Length();
}

/// Rows between the lines that run right across, with the words of their pieces.
std::vector<Band> bandsOf(const Field& field, bool mergeLike) {
    const std::vector<int> map = pieceMap(field);
    const int columns = static_cast<int>(field.columns.size());
    const int rowCount = static_cast<int>(field.rows.size());
    const auto piece = [&](int column, int row) {
        return map[static_cast<std::size_t>(row * columns + column)];
    };
    const auto wood = [&](int column, int row) {
        return field.pieces[static_cast<std::size_t>(piece(column, row))].wood;
    };
    const auto isLine = [&](int row) {  // between row - 1 and row
        for (int column = 0; column < columns; ++column) {
            if (mergeLike ? wood(column, row - 1) != wood(column, row)
                          : piece(column, row - 1) != piece(column, row)) {
                return true;
            }
        }
        return false;
    };

    const auto isDrawnAcross = [&](int row) {
        for (int column = 0; column < columns; ++column) {
            if (piece(column, row - 1) == piece(column, row)) {
                return false;
            }
        }
        return true;
    };
    const std::vector<Length> xs = edges(field.columns);
    const auto isDrawnDown = [&](Length x, int row) {
        const auto column =
            static_cast<int>(std::lower_bound(xs.begin(), xs.end(), x) - xs.begin());
        return piece(column - 1, row) != piece(column, row);
    };

    std::vector<Band> bands;
    for (int row = 0; row < rowCount; ++row) {
        if (row > 0 && !isLine(row)) {
            Band& band = bands.back();
            if (isDrawnAcross(row)) {
                band.drawnAcross.push_back(band.height);
            }
            std::erase_if(band.drawnDown, [&](Length x) { return !isDrawnDown(x, row); });
            band.height += field.rows[static_cast<std::size_t>(row)];
            continue;
        }
        Band band;
        band.height = field.rows[static_cast<std::size_t>(row)];
        for (int column = 0; column < columns; ++column) {
            const Length width = field.columns[static_cast<std::size_t>(column)];
            const bool joint =
                column == 0 || (mergeLike ? wood(column - 1, row) != wood(column, row)
                                          : piece(column - 1, row) != piece(column, row));
            if (joint) {
                band.word.push_back({wood(column, row), width});
            } else {
                band.word.back().width += width;
                const Length x = xs[static_cast<std::size_t>(column)];
                if (isDrawnDown(x, row)) {
                    band.drawnDown.push_back(x);
                }
            }
        }
        bands.push_back(std::move(band));
    }
    return bands;
}

void markMargins(std::vector<Band>& bands) {
    for (Band& band : bands) {
        band.marginSides = 0;
    }
    ++bands.front().marginSides;
    ++bands.back().marginSides;
}

struct Drafter {
    const Board& board;
    const std::vector<Wood>& woods;
    const Shop& shop;
    const Notation& notation;
    bool endGrain = board.build == Build::EndGrain;

    Length thickness(Length rowHeight, int marginSides, bool glued) const {
        return thicknessAsGlued(board, shop, rowHeight, marginSides, glued).value;
    }

    /// Whether a row of this height can be made of strips at all, divided in width as need be.
    bool timberHas(const Word& word, Length rowHeight, int marginSides) const {
        return std::all_of(word.begin(), word.end(), [&](const Span& span) {
            const Wood& wood = woods[static_cast<std::size_t>(span.wood)];
            const auto greatest = [&](bool glued) {
                return greatestWidth(wood, thickness(rowHeight, marginSides, glued), shop.milling);
            };
            if (word.size() == 1 && span.width + shop.trimMargin * 2 <= greatest(false)) {
                return true;
            }
            return greatest(true) >= BoardLimits::leastCell + shop.trimMargin;
        });
    }

    /// Where the grain stands up, a row taller than any timber is divided into lower rows.
    Result<std::vector<Band>> dividedInHeight(std::vector<Band> bands) const {
        if (!endGrain) {
            return bands;
        }
        // Equal rows are divided alike even where only one of them carries a margin: they are to
        // share a panel.
        std::map<std::pair<Word, Length>, int> greatestMargin;
        const auto key = [](const Band& band) {
            return std::pair(std::min(band.word, reversed(band.word)), band.height);
        };
        for (const Band& band : bands) {
            int& margin = greatestMargin[key(band)];
            margin = std::max(margin, band.marginSides);
        }
        std::vector<Band> lower;
        for (const Band& band : bands) {
            const int margin = greatestMargin[key(band)];
            const std::vector<Length> heights =
                divided(band.height, band.drawnAcross, [&](Length part, bool first, bool last) {
                    return timberHas(band.word, part, first && last ? margin : std::min(margin, 1));
                });
            if (heights.empty()) {
                return Fault{
                    say("Timber"),
                    say("too small for a strip of this row, however often the row is divided"),
                    format(band.height, notation)};
            }
            for (const Length height : heights) {
                Band part = band;
                part.height = height;
                part.drawnAcross.clear();
                lower.push_back(std::move(part));
            }
        }
        return lower;
    }

    Result<Word> dividedInWidth(const Word& word, const std::vector<Length>& drawn,
                                Length panelThickness) const {
        Word strips;
        Length left;
        for (std::size_t i = 0; i < word.size(); ++i) {
            const Span& span = word[i];
            const Wood& wood = woods[static_cast<std::size_t>(span.wood)];
            const Length greatest = greatestWidth(wood, panelThickness, shop.milling);
            std::vector<Length> lines;
            for (const Length line : drawn) {
                if (line > left && line < left + span.width) {
                    lines.push_back(line - left);
                }
            }
            left += span.width;
            const std::vector<Length> parts =
                divided(span.width, lines, [&](Length part, bool firstPart, bool lastPart) {
                    const int margins =
                        int{firstPart && i == 0} + int{lastPart && i + 1 == word.size()};
                    return part + shop.trimMargin * margins <= greatest;
                });
            if (parts.empty()) {
                return Fault{say("Timber of {1}", wood.name),
                             say("the greatest rough section, {1} × {2}, is too small for a strip "
                                 "of this thickness, milled",
                                 format(wood.timber.thickness, notation),
                                 format(wood.timber.width, notation)),
                             format(panelThickness, notation)};
            }
            for (const Length part : parts) {
                strips.push_back({span.wood, part});
            }
        }
        return strips;
    }

    Result<Draft> operator()(bool mergeLike, bool byColumns) const {
        Draft draft;
        draft.byColumns = byColumns;
        draft.field = byColumns ? transposed(board.field) : board.field;
        std::vector<Band> whole = bandsOf(draft.field, mergeLike);
        markMargins(whole);
        Result<std::vector<Band>> divided = dividedInHeight(std::move(whole));
        if (!divided) {
            return divided.fault();
        }
        draft.bands = std::move(divided).value();
        markMargins(draft.bands);

        std::map<std::pair<Word, Length>, int> known;
        for (std::size_t i = 0; i < draft.bands.size(); ++i) {
            Band& band = draft.bands[i];
            // The first row of a kind decides which way its panel reads.
            const Word back = reversed(band.word);
            const auto [place, isNew] =
                known.try_emplace({std::min(band.word, back), endGrain ? band.height : Length()},
                                  static_cast<int>(draft.sheets.size()));
            if (isNew) {
                draft.sheets.push_back({band.word, {}});
            }
            Sheet& sheet = draft.sheets[static_cast<std::size_t>(place->second)];
            band.sheet = place->second;
            band.flipped = sheet.strips != band.word;
            sheet.bands.push_back(static_cast<int>(i));
        }
        for (Sheet& sheet : draft.sheets) {
            int margin = 0;
            for (const int band : sheet.bands) {
                margin = std::max(margin, draft.bands[static_cast<std::size_t>(band)].marginSides);
            }
            const Band& first = draft.bands[static_cast<std::size_t>(sheet.bands.front())];
            Result<Word> strips = dividedInWidth(sheet.strips, first.drawnDown,
                                                 thickness(first.height, margin, sheet.isGlued()));
            if (strips && strips->size() > 1 && !sheet.isGlued()) {
                // One wide piece had to be divided: now there is a panel to flatten, so it is
                // thicker.
                strips = dividedInWidth(sheet.strips, first.drawnDown,
                                        thickness(first.height, margin, true));
            }
            if (!strips) {
                return strips.fault();
            }
            sheet.strips = std::move(strips).value();
        }
        return draft;
    }
};

}  // namespace

std::vector<Length> edges(const std::vector<Length>& sizes) {
    std::vector<Length> all{Length()};
    for (const Length size : sizes) {
        all.push_back(all.back() + size);
    }
    return all;
}

std::vector<Span> reversed(const std::vector<Span>& word) {
    return {word.rbegin(), word.rend()};
}

std::string panelLabel(int index) {
    std::string label;
    for (int rest = index; rest >= 0; rest = rest / 26 - 1) {
        label.insert(label.begin(), static_cast<char>('A' + rest % 26));
    }
    return label;
}

int Draft::glueUps() const {
    const auto glued =
        std::count_if(sheets.begin(), sheets.end(), [](const Sheet& s) { return s.isGlued(); });
    return static_cast<int>(glued) + (bands.size() > 1 ? 1 : 0);
}

int Draft::strips() const {
    std::size_t sum = 0;
    for (const Sheet& sheet : sheets) {
        sum += sheet.strips.size();
    }
    return static_cast<int>(sum);
}

Result<Draft> draft(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                    bool mergeLike, bool byColumns, const Notation& notation) {
    Result<Draft> made = Drafter{board, woods, shop, notation}(mergeLike, byColumns);
    if (!made) {
        return made;
    }
    Draft draft = std::move(made).value();
    listJoints(draft);
    return draft;
}

}  // namespace kerfwright::rows
