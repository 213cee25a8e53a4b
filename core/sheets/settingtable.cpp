#include "core/sheets/settingtable.h"

#include "core/words/say.h"

#include <algorithm>
#include <utility>

namespace kerfwright {
namespace {

constexpr double valueWidth = 38;
constexpr double wordsX = 41;
constexpr Tone headTone{type::small, true, Ink::Quiet};

double headWidth(const std::string& words) {
    return textWidth(words, headTone.size, headTone.bold);
}

}  // namespace

SettingTable::SettingTable(Flow& flow, std::string about)
    : flow_(flow)
    , about_(std::move(about))
    , test_(say("Test cut"))
    , measured_(say("Measured"))
    , measuredX_(std::min(169.0, flow.width() - headWidth(measured_)))
    , testX_(std::min(152.0, measuredX_ - 2 - headWidth(test_)))
    , piecesX_(testX_ - 3)
    , wordsWidth_(piecesX_ - 10 - wordsX) {}

void SettingTable::head() {
    flow_.box({flow_.left(), flow_.y, flow_.width(), 6}, {.fill = Ink::Band});
    const double base = flow_.y + 4.2;
    flow_.text(flow_.left() + 2, base, say("Set to"), headTone);
    flow_.text(flow_.left() + wordsX, base, about_, headTone);
    flow_.text(flow_.left() + piecesX_, base, say("Pieces"), headTone, Align::Right);
    flow_.text(flow_.left() + testX_, base, test_, headTone);
    flow_.text(flow_.left() + measuredX_, base, measured_, headTone);
    flow_.y += 7.5;
}

void SettingTable::row(const std::string& value, std::vector<Line> lines, std::size_t pieces,
                       bool first, const std::function<void()>& begin) {
    // A value with very many lines is cut off at what one page holds.
    constexpr std::size_t most = 30;
    if (lines.size() > most) {
        flow_.page().cutOff.push_back(lines[most].words);
        lines.resize(most);
        lines.back().words += " …";
    }
    const double pitch = flow_.pitch(smallText);
    const double height =
        std::max(flow_.isClose() ? 8.4 : 9.0,
                 static_cast<double>(lines.size()) * pitch + (flow_.isClose() ? 1.8 : 2.2));
    constexpr double headingHeight = 8;
    if (flow_.need(height + (first ? headingHeight : 0))) {
        head();
        first = true;
    }
    if (first) {
        begin();
    }
    const double top = flow_.y + 1;
    const Tone tone = madeToFit(value, {5.6, true, Ink::Text}, valueWidth - 1, type::setting);
    flow_.text(flow_.left() + 2, top + 5.4, value, tone, Align::Left, valueWidth);
    double base = top + 3.4;
    for (const Line& line : lines) {
        flow_.text(flow_.left() + wordsX, base, line.words, line.tone, Align::Left, wordsWidth_);
        base += pitch;
    }
    flow_.text(flow_.left() + piecesX_, top + 5.2, std::to_string(pieces),
               {type::body, true, Ink::Text}, Align::Right);
    flow_.tick(flow_.left() + testX_ + 4.5, top + 0.6, 5.6);
    flow_.rule(flow_.left() + measuredX_, flow_.right(), top + 6.2, Ink::Text, 0.25);
    flow_.y += height;
    flow_.rule(flow_.left(), flow_.right(), flow_.y);
}

}  // namespace kerfwright
