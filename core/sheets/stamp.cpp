// What stands above and below every sheet.
#include "core/sheets/flow.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr double leastHead = 5;  ///< em height of a long title, 14 pt

std::string sizesWords(Sizes sizes, Unit unit) {
    const std::string unitWords =
        unit == Unit::Inches ? sayIn("sizes in …", "inches") : sayIn("sizes in …", "millimetres");
    switch (sizes) {
    case Sizes::Finished:
        return say("Finished sizes in {1}", unitWords);
    case Sizes::Rough:
        return say("Rough sizes in {1}", unitWords);
    case Sizes::RoughAndMilled:
        return say("Rough sizes, milled sizes in {1}", unitWords);
    case Sizes::AsGlued:
        return say("Rough sizes as glued, in {1}", unitWords);
    case Sizes::ToSet:
        break;
    }
    return say("Rough sizes and finished sizes in {1}", unitWords);
}

/// "≈ rounded, by 1/128 in at most": half of what the notation can tell apart.
std::string roundingWords(const Notation& notation) {
    const Length step = notation.step();
    const std::string most =
        notation.unit == Unit::Inches
            ? "1/" + std::to_string(2 * (Length::inch(1).nm() / step.nm())) + " in"
            : format(half(step), Notation::millimetres(6));
    return say("≈ rounded, by {1} at most", most);
}

bool printsRounded(const Drawing& drawing) {
    return std::any_of(drawing.marks.begin(), drawing.marks.end(), [](const Mark& mark) {
        const auto* text = std::get_if<Text>(&mark);
        return text != nullptr && text->text.find("≈") != std::string::npos;
    });
}

/// Set in one line where it fits, else in two, of which the second holds all that is left.
std::vector<std::string> named(const std::string& name, double width) {
    if (textWidth(name, type::small, true) <= width) {
        return {name};
    }
    std::vector<std::string> lines =
        wrapped(shortened(name, boldText, 1e9), type::small, true, width);
    while (lines.size() > 2) {
        lines[1] += " " + lines[2];
        lines.erase(lines.begin() + 2);
    }
    return lines;
}

}  // namespace

bool printRounded(const std::vector<Draft>& drafts) {
    return std::any_of(drafts.begin(), drafts.end(),
                       [](const Draft& draft) { return printsRounded(draft.page.drawing); });
}

void stamp(std::vector<Draft>& drafts, const Matter& matter) {
    const Box area = measureOf(matter.paper);
    const Titles& titles = matter.project.titles;
    const std::string mark = revision(matter.project);
    const std::string name = titles.name.empty() ? say("Board without a name") : titles.name;
    std::string about = titles.maker;
    if (!titles.date.empty()) {
        about += (about.empty() ? "" : " · ") + titles.date;
    }
    constexpr Tone nameTone{type::body, true, Ink::Text};
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        drafts[i].page.filled = filled(drafts[i]);
        Drawing& drawing = drafts[i].page.drawing;
        const bool rounded = matter.roundingLine && printsRounded(drawing);
        const auto put = [&](double x, double y, const std::string& words, const Tone& tone,
                             Align align) {
            drawing.marks.emplace_back(Text{.at = {x, y},
                                            .text = words,
                                            .size = tone.size,
                                            .align = align,
                                            .bold = tone.bold,
                                            .style = {.line = tone.ink}});
        };
        const auto line = [&](double y, Ink ink, double width) {
            drawing.marks.emplace_back(
                Line{{area.x, y}, {area.right(), y}, {.line = ink, .lineWidth = width}});
        };
        std::vector<std::string>& cutOff = drafts[i].page.cutOff;
        const auto fitting = [&cutOff](const std::string& words, const Tone& tone, double width) {
            std::string put = shortened(words, tone, width);
            if (put.ends_with("…") && !words.ends_with("…")) {
                cutOff.push_back(words);
            }
            return put;
        };
        // A name that is short leaves the head more than half of the line.
        const double aside =
            std::max(textWidth(name, nameTone.size, true), textWidth(about, type::small, false));
        const double goesOnWidth =
            drafts[i].goesOn ? 3 + textWidth(say("continued"), type::small, false) : 0;
        const double headRoom = std::max(110.0 - goesOnWidth, area.width - aside - 6 - goesOnWidth);
        const Tone headTone =
            madeToFit(drafts[i].head, {type::head, true, Ink::Text}, headRoom, leastHead);
        const std::string head = fitting(drafts[i].head, headTone, headRoom);
        put(area.x, area.y + 7.2, head, headTone, Align::Left);
        double headWidth = textWidth(head, headTone.size, true);
        if (drafts[i].goesOn) {
            const std::string goesOn = say("continued");
            put(area.x + headWidth + 3, area.y + 7.2, goesOn, quietText, Align::Left);
            headWidth += 3 + textWidth(goesOn, type::small, false);
        }
        const double rest = area.width - headWidth - 6;
        std::vector<std::string> names = named(name, rest);
        const Tone smallName{type::small, true, Ink::Text};
        if (names.size() == 1) {
            const Tone fit = madeToFit(name, nameTone, rest);
            put(area.right(), area.y + 3.4, fitting(name, fit, rest), fit, Align::Right);
            put(area.right(), area.y + 8.2, fitting(about, quietText, rest), quietText,
                Align::Right);
        } else {
            put(area.right(), area.y + 2.1, fitting(names[0], smallName, rest), smallName,
                Align::Right);
            put(area.right(), area.y + 5.9, fitting(names[1], smallName, rest), smallName,
                Align::Right);
            put(area.right(), area.y + 9.7, fitting(about, quietText, rest), quietText,
                Align::Right);
        }
        line(area.y + 11, Ink::Accent, 0.7);

        const double foot = area.bottom() - 1.2;
        line(area.bottom() - 5.6 - (rounded ? roundingHeight : 0), Ink::Rule, 0.2);
        if (rounded) {
            put(area.x, foot - roundingHeight, roundingWords(matter.notation()), quietText,
                Align::Left);
        }
        const std::string sizes = sizesWords(drafts[i].sizes, matter.notation().unit);
        const std::string sheet = say("Sheet {1} of {2}", i + 1, drafts.size());
        const double after = textWidth(sizes, type::small, false) + 4;
        put(area.x, foot, sizes, quietText, Align::Left);
        put(area.x + std::max(area.width / 2, after + textWidth(sheet, type::small, true) / 2),
            foot, sheet, {type::small, true, Ink::Text}, Align::Centre);
        put(area.right(), foot, say("Revision {1}", mark), quietText, Align::Right);
    }
}

}  // namespace kerfwright
