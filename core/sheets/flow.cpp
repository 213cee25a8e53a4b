#include "core/sheets/flow.h"

#include "core/drawing/geometry.h"
#include "core/sheets/hatch.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr double printedWidth = 190;
constexpr double printedHeight = 259;
constexpr double headHeight = 16;
constexpr double footAlone = 9;
constexpr double noticePad = 3;
constexpr char hidden = '\x01';  // stands for a space at which no line may break

double leadingOf(const Tone& tone) {
    return tone.size * type::leading;
}

/// From the top of a line to its baseline.
double rise(const Tone& tone) {
    return tone.size * 0.98;
}

std::string safetyText() {
    std::string all;
    for (const std::string& words : safetyWords()) {
        all += (all.empty() ? "" : " ") + words;
    }
    return all;
}

std::string shortSafety() {
    return say("End grain never goes through a thickness planer. Guards on, extraction and dust "
               "mask on, goggles and ear defenders. All safety words stand on the cut list.");
}

}  // namespace

Box printedArea(Paper paper) {
    const PaperSize size = paperSize(paper);
    return {(size.width.toMm() - printedWidth) / 2, (size.height.toMm() - printedHeight) / 2,
            printedWidth, printedHeight};
}

Box measureOf(Paper paper) {
    constexpr double inset = 0.4;
    const Box area = printedArea(paper);
    return {area.x + inset, area.y + inset, area.width - 2 * inset, area.height - 2 * inset};
}

Flow::Flow(std::vector<Draft>& drafts, const Matter& matter, std::string key, std::string title,
           Sizes sizes, Safety safety)
    : drafts_(drafts)
    , matter_(matter)
    , key_(std::move(key))
    , title_(std::move(title))
    , sizes_(sizes)
    , safety_(safety)
    , area_(measureOf(matter.paper)) {
    newPage();
}

void Flow::newPage() {
    ++pages_;
    Draft draft;
    draft.page.key = pages_ == 1 ? key_ : key_ + "-" + std::to_string(pages_);
    draft.head = title_;
    draft.goesOn = pages_ > 1;
    draft.page.title = draft.goesOn ? say("{1} (continued)", title_) : title_;
    draft.sizes = sizes_;
    const PaperSize size = paperSize(matter_.paper);
    draft.page.drawing.extent = {0, 0, size.width.toMm(), size.height.toMm()};
    for (const Wood& wood : matter_.project.woods) {
        draft.page.drawing.woods.push_back(wood.colour);
    }
    top_ = area_.y + headHeight;
    y = top_;
    bottom_ = area_.bottom() - footHeight();
    draft.top = top_;
    draft.foot = bottom_;
    drafts_.push_back(std::move(draft));
    if (safety_ != Safety::None && pages_ == 1) {
        safetyAtFoot(safetyForFirstPage());
    }
}

std::string Flow::safetyForFirstPage() const {
    return matter_.fit.briefSafety && safety_ != Safety::WholeOnFirstPage ? shortSafety()
                                                                          : safetyText();
}

double Flow::footHeight() const {
    return footAlone + (matter_.roundingLine ? roundingHeight : 0);
}

double Flow::pitch(const Tone& tone) const {
    return tone.size * (matter_.fit.close ? type::close : type::leading);
}

double Flow::pageHeight() const {
    return area_.height - headHeight - footHeight() - matter_.fit.held;
}

void Flow::safetyAtFoot(const std::string& words) {
    const double height = noticeHeight(say("Safety"), words);
    const double below = bottom_;
    y = below - height;
    drafts_.back().safetyFrom = drawing().marks.size();
    notice(say("Safety"), words);
    drafts_.back().safetyUpTo = drawing().marks.size();
    bottom_ = below - height - 3;
    y = top_;
}

void Flow::safetyWhereRoom() {
    if (const std::string all = safetyText(); bottom_ - y >= noticeHeight(say("Safety"), all)) {
        safetyAtFoot(all);
    }
}

double Flow::shortSafetyHeight() const {
    return noticeHeight(say("Safety"), shortSafety()) + 3;
}

void Flow::safetyAtEnd() {
    const std::string all = safetyText();
    const std::string least = shortSafety();
    const double whole = noticeHeight(say("Safety"), all);
    if (bottom_ - y < whole && bottom_ - y < noticeHeight(say("Safety"), least)) {
        newPage();
    }
    safetyAtFoot(bottom_ - y >= whole ? all : least);
}

bool Flow::need(double height) {
    if (room() >= height || atTop()) {
        return false;
    }
    newPage();
    return true;
}

void Flow::text(double x, double baseline, const std::string& words, const Tone& tone, Align align,
                double maxWidth) {
    drawing().marks.emplace_back(Text{.at = {x, baseline},
                                      .text = words,
                                      .size = tone.size,
                                      .align = align,
                                      .bold = tone.bold,
                                      .maxWidth = maxWidth,
                                      .style = {.line = tone.ink}});
}

std::string Flow::cutOff(const std::string& words, const Tone& tone, double width) {
    std::string line = shortened(words, tone, width);
    if (line.ends_with("…") && !words.ends_with("…")) {
        page().cutOff.push_back(words);
    }
    return line;
}

std::vector<std::string> Flow::wrappedName(const std::string& words, const Tone& tone,
                                           double width) {
    std::vector<std::string> all =
        wrapped(shortened(words, tone, 1e9), tone.size, tone.bold, width);
    for (std::string& line : all) {
        line = cutOff(line, tone, width);
    }
    return all;
}

void Flow::name(double x, double baseline, const std::string& words, const Tone& tone,
                double width) {
    const Tone fit = madeToFit(words, tone, width);
    text(x, baseline, cutOff(words, fit, width * mostNarrowed), fit, Align::Left, width);
}

double Flow::lines(double x, double top, double width, const std::vector<std::string>& all,
                   const Tone& tone, Align align) {
    const double at = align == Align::Right    ? x + width
                      : align == Align::Centre ? x + width / 2
                                               : x;
    double line = top;
    for (const std::string& words : all) {
        text(at, line + rise(tone), words, tone, align, width);
        line += leadingOf(tone);
    }
    return line - top;
}

double Flow::paragraph(double x, double top, double width, const std::string& words,
                       const Tone& tone, Align align) {
    return lines(x, top, width, wrapped(words, tone.size, tone.bold, width), tone, align);
}

void Flow::running(double x, double width, const std::string& words, const Tone& tone,
                   const std::function<void()>& begin) {
    for (const std::string& line : wrapped(words, tone.size, tone.bold, width)) {
        if (need(leadingOf(tone))) {
            begin();
        }
        y += lines(x, y, width, {line}, tone);
    }
}

double Flow::paragraphHeight(const std::string& words, const Tone& tone, double width) {
    return static_cast<double>(wrapped(words, tone.size, tone.bold, width).size()) *
           leadingOf(tone);
}

void Flow::rule(double x1, double x2, double height, Ink ink, double lineWidth) {
    drawing().marks.emplace_back(
        Line{{x1, height}, {x2, height}, {.line = ink, .lineWidth = lineWidth}});
}

void Flow::box(const Box& box, const Style& style) {
    drawing().marks.emplace_back(Rectangle{box, 0, style});
}

void Flow::tick(double x, double top, double size) {
    drawing().marks.emplace_back(
        Rectangle{{x, top, size, size}, 0.4, {.line = Ink::Text, .lineWidth = 0.25}});
}

void Flow::swatch(double x, double top, double size, int wood) {
    const Box square{x, top, size, size};
    const std::string& letter = matter_.wood(wood).letter;
    box(square, {.fill = Ink::Wood, .wood = wood});
    addHatch(drawing(), corners(square), wood, 1.2, 0.15);
    const double widest = (size - 0.6) / textWidth(letter, 1, true);
    const double em = std::max(type::small, std::min({size * 0.6, 4.6, widest}));
    const double width = std::min(size, textWidth(letter, em, true) + 1.2);
    if (wood > 0) {
        box({x + (size - width) / 2, top + (size - em * 0.95) / 2, width, em * 0.95},
            {.fill = Ink::Wood, .wood = wood});
    }
    box(square, {.line = Ink::Joint, .lineWidth = 0.2});
    drawing().marks.emplace_back(Text{.at = {x + size / 2, top + size / 2 + em * 0.365},
                                      .text = letter,
                                      .size = em,
                                      .align = Align::Centre,
                                      .bold = true,
                                      .maxWidth = size - 0.3,
                                      .style = {.line = Ink::WoodLine, .wood = wood}});
}

void Flow::heading(const std::string& words, const std::string& aside) {
    text(left(), y + 4.2, words, strongText);
    const double behind = left() + textWidth(words, type::strong, true) + 3;
    const bool below = behind + textWidth(aside, type::small, false) > right();
    if (!aside.empty() && !below) {
        text(behind, y + 4.2, aside, quietText);
    }
    y += 7.2;
    if (below) {
        y += paragraph(left(), y - 1.6, width(), aside, quietText);
    }
}

std::vector<std::string> Flow::noticeLines(const std::string& word,
                                           const std::string& words) const {
    // The word stands in the first line of the text, bold: the text is wrapped with a stand-in of
    // its width before it.
    std::string standIn;
    const double wanted = textWidth(word, type::small, true) + 2.5;
    while (textWidth(standIn, type::small, false) < wanted) {
        standIn += "\u00A0";
    }
    return wrapped(standIn + words, type::small, false, area_.width - 2 * noticePad);
}

double Flow::noticeHeight(const std::string& word, const std::string& words) const {
    return static_cast<double>(noticeLines(word, words).size()) * leadingOf(smallText) +
           2 * noticePad - 1;
}

void Flow::notice(const std::string& word, const std::string& words) {
    std::vector<std::string> all = noticeLines(word, words);
    const double height = noticeHeight(word, words);
    box({left(), y, width(), height}, {.fill = Ink::Band});
    const double top = y + noticePad - 0.6;
    const double x = left() + noticePad;
    text(x, top + rise(smallText), word, {type::small, true, Ink::Accent});
    std::size_t standIn = 0;
    while (all.front().compare(standIn, 2, "\u00A0") == 0) {
        standIn += 2;
    }
    const double indent = textWidth(all.front().substr(0, standIn), type::small, false);
    text(x + indent, top + rise(smallText), all.front().substr(standIn), smallText);
    all.erase(all.begin());
    lines(x, top + leadingOf(smallText), width() - 2 * noticePad, all, smallText);
    y += height;
}

std::string unbroken(std::string words) {
    for (std::size_t at = words.find(' '); at != std::string::npos; at = words.find(' ', at)) {
        words.replace(at, 1, "\u00A0");
    }
    return words;
}

std::string sentences(std::initializer_list<std::string> all) {
    std::string text;
    for (const std::string& sentence : all) {
        text += (text.empty() || sentence.empty() ? "" : " ") + sentence;
    }
    return text;
}

Tone madeToFit(const std::string& words, Tone tone, double width, double least) {
    const double wide = textWidth(words, tone.size, tone.bold);
    if (wide > width) {
        tone.size = std::min(tone.size, std::max(least, tone.size * width / wide));
    }
    return tone;
}

double filled(const Draft& draft) {
    double lowest = draft.top;
    const std::vector<Mark>& marks = draft.page.drawing.marks;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        if (i < draft.safetyFrom || i >= draft.safetyUpTo) {
            lowest = std::max(lowest, bounds(marks[i]).bottom());
        }
    }
    return std::min(1.0, (lowest - draft.top) / (draft.foot - draft.top));
}

std::string shortened(const std::string& words, const Tone& tone, double width) {
    std::string line = words;
    std::replace_if(
        line.begin(), line.end(), [](unsigned char c) { return c < 0x20 || c == 0x7F; }, ' ');
    if (textWidth(line, tone.size, tone.bold) <= width) {
        return line;
    }
    while (!line.empty() && textWidth(line + "…", tone.size, tone.bold) > width) {
        while ((static_cast<unsigned char>(line.back()) & 0xC0U) == 0x80U && line.size() > 1) {
            line.pop_back();  // the rest of a character of several bytes
        }
        line.pop_back();
    }
    return line + "…";
}

std::vector<std::string> fitted(const std::string& words, const Tone& tone, double width,
                                double over) {
    return textWidth(words, tone.size, tone.bold) <= width * over
               ? std::vector<std::string>{words}
               : wrapped(words, tone.size, tone.bold, width);
}

std::vector<std::string> workingLines(const Figure& figure, const Notation& notation,
                                      double width) {
    if (figure.terms.size() == 1 && figure.terms.front().times == 1) {
        // Translators: "the kerf", below a number that is nothing else.
        return wrapped(say("the {1}", termName(figure.terms.front().kind)), type::small, false,
                       width);
    }
    // A line may break before a sign and nowhere else: the other spaces are hidden while it is
    // wrapped. A rounded sum brings its sign along; that of a rounded term stands behind another.
    std::string text = working(figure, notation);
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto comes = [&](std::size_t at, std::string_view sign) {
            return text.compare(at, sign.size(), sign) == 0;
        };
        const auto came = [&](std::string_view sign) {
            return i >= sign.size() && comes(i - sign.size(), sign);
        };
        const bool roundedSum =
            comes(i + 1, "≈") && !came("+") && !came("−") && !came("×") && !came("=");
        const bool beforeSign =
            comes(i + 1, "+") || comes(i + 1, "=") || comes(i + 1, "−") || roundedSum;
        if (text[i] == ' ' && !beforeSign) {
            text[i] = hidden;
        }
    }
    std::vector<std::string> lines;
    std::string line;
    const auto shown = [](std::string words) {
        std::replace(words.begin(), words.end(), hidden, ' ');
        return words;
    };
    // A single term that is much too long is broken anywhere.
    const auto put = [&](const std::string& words) {
        for (std::string& part : fitted(shown(words), smallText, width, mostNarrowed)) {
            lines.push_back(std::move(part));
        }
    };
    while (!text.empty()) {
        const std::string term = text.substr(0, text.find(' '));
        text.erase(0, std::min(text.size(), term.size() + 1));
        const std::string longer = line.empty() ? term : line + ' ' + term;
        if (!line.empty() && textWidth(shown(longer), type::small, false) > width) {
            put(line);
            line = term;
        } else {
            line = longer;
        }
    }
    if (!line.empty()) {
        put(line);
    }
    return lines;
}

double bigNumbers(Flow& flow, double x, double top, double width,
                  const std::vector<BigNumber>& numbers) {
    const double gap = 5;
    const double column = (width - gap * static_cast<double>(numbers.size() - 1)) /
                          static_cast<double>(numbers.size());
    // A label of several lines pushes all values down alike.
    std::size_t labelLines = 1;
    for (const BigNumber& number : numbers) {
        labelLines = std::max(labelLines, fitted(number.label, quietText, column).size());
    }
    const double down = static_cast<double>(labelLines - 1) * leadingOf(quietText);
    double height = 0;
    double at = x;
    for (const BigNumber& number : numbers) {
        double base = top + 3.2;
        for (const std::string& words : fitted(number.label, quietText, column)) {
            flow.text(at, base, words, quietText, Align::Left, column);
            base += leadingOf(quietText);
        }
        // A long number is set smaller before it is squeezed.
        const double wide = textWidth(number.value, type::big, true);
        const double size =
            std::clamp(type::big * column / std::max(wide, 1.0), type::setting, type::big);
        flow.text(at, top + down + 10.8, number.value, {size, true, Ink::Text}, Align::Left,
                  column);
        const double under = down + 12.6;
        const double below = flow.lines(at, top + under, column, number.below, quietText) + under;
        height = std::max(height, below);
        at += column + gap;
    }
    return height;
}

}  // namespace kerfwright
