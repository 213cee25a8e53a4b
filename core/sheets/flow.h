// How a cut sheet is set: one measure, one scale of type, and a cursor that runs down the page and
// on to the next. Everything is in mm from the corner of the paper.
#pragma once

#include "core/drawing/drawing.h"
#include "core/glueup/figure.h"
#include "core/sheets/sheets.h"

#include <functional>
#include <initializer_list>
#include <string>
#include <vector>

namespace kerfwright {

/// Em heights. 9 pt is the least on any sheet, machine settings are 14 pt or more.
namespace type {
inline constexpr double small = 3.175;   ///< 9 pt
inline constexpr double body = 3.6;      ///< 10.2 pt
inline constexpr double strong = 4.3;    ///< 12.2 pt
inline constexpr double setting = 4.95;  ///< 14 pt
inline constexpr double big = 7.4;       ///< 21 pt
inline constexpr double head = 7.6;      ///< 21.5 pt
inline constexpr double leading = 1.36;  ///< line to line, of the em height
inline constexpr double close = 1.27;    ///< the same where little room is left
}  // namespace type

struct Tone {
    double size = type::body;
    bool bold = false;
    Ink ink = Ink::Text;
};
inline constexpr Tone smallText{type::small, false, Ink::Text};
inline constexpr Tone quietText{type::small, false, Ink::Quiet};
inline constexpr Tone bodyText{type::body, false, Ink::Text};
inline constexpr Tone boldText{type::body, true, Ink::Text};
inline constexpr Tone strongText{type::strong, true, Ink::Text};

/// Which sizes stand on a sheet, said outright in its foot.
enum class Sizes { Finished, Rough, RoughAndMilled, AsGlued, ToSet };

/// A page before it knows how many there are.
struct Draft {
    Page page;
    std::string head;     ///< the title, on every page of it
    bool goesOn = false;  ///< of a page before
    Sizes sizes = Sizes::Finished;
    double top = 0, foot = 0;                    ///< between which it is set, mm
    std::size_t safetyFrom = 0, safetyUpTo = 0;  ///< marks of the safety words
};

/// How far down its page a draft is set, without the safety words: 0 to 1.
double filled(const Draft& draft);

/// How a sheet is brought to fewer or better filled pages; see settle.h.
struct Fit {
    bool briefSafety = false;  ///< the shortest of the safety words, where all could stand
    bool close = false;        ///< tables with less room between their lines
    double held = 0;           ///< mm that stay empty on every page, so that the last one gets more
};

/// The same with spaces at which no line is broken.
std::string unbroken(std::string words);

/// What every sheet reads.
struct Matter {
    const Project& project;
    const Job& job;
    Paper paper;
    bool roundingLine = false;  ///< leave room in the foot to say how far numbers are rounded
    Fit fit = {};

    const Notation& notation() const { return project.notation; }
    std::string text(Length length) const { return format(length, project.notation); }
    /// For use inside a sentence: no line breaks between the number and its unit.
    std::string inText(Length length) const { return unbroken(text(length)); }
    std::string bare(Length length) const { return formatBare(length, project.notation); }
    const Wood& wood(int index) const { return project.woods[static_cast<std::size_t>(index)]; }
};

/// The part of the paper that is printed on: 190 x 259 mm, centred.
Box printedArea(Paper paper);
/// What is set in: a little less, so that lines on its edge do not stick out.
Box measureOf(Paper paper);

class Flow {
public:
    /// `Whole`: never brought down to the shortest.
    enum class Safety { None, FirstPage, WholeOnFirstPage };

    /// Begins a page. The safety words, where wanted, stand at the foot of it.
    Flow(std::vector<Draft>& drafts, const Matter& matter, std::string key, std::string title,
         Sizes sizes, Safety safety);

    double left() const { return area_.x; }
    double right() const { return area_.right(); }
    double width() const { return area_.width; }
    double bottom() const { return bottom_ - matter_.fit.held; }
    double room() const { return bottom() - y; }
    /// Line to line in a table.
    double pitch(const Tone& tone) const;
    bool isClose() const { return matter_.fit.close; }
    /// What an empty page of this flow holds where no safety words stand on it.
    double pageHeight() const;
    bool atTop() const { return y <= top_; }
    Page& page() { return drafts_.back().page; }
    Drawing& drawing() { return page().drawing; }

    /// Goes on to a next page where less than `height` is left, and says whether it did. A page on
    /// which nothing stands yet is kept, because the next one has no more room.
    bool need(double height);
    void newPage();

    /// One line with its baseline at `baseline`.
    void text(double x, double baseline, const std::string& words, const Tone& tone,
              Align align = Align::Left, double maxWidth = 0);
    /// A name that keeps to one line: where it is too long it is set smaller, down to 9 pt, then
    /// narrower, and only a name of unlikely length is cut off.
    void name(double x, double baseline, const std::string& words, const Tone& tone, double width);
    /// The same words, cut off with an ellipsis where they are wider than `width`, which the page
    /// remembers.
    std::string cutOff(const std::string& words, const Tone& tone, double width);
    /// Wrapped; a single word that is wider than `width` is cut off.
    std::vector<std::string> wrappedName(const std::string& words, const Tone& tone, double width);
    /// Wrapped lines from `top` down; returns their height.
    double lines(double x, double top, double width, const std::vector<std::string>& all,
                 const Tone& tone, Align align = Align::Left);
    double paragraph(double x, double top, double width, const std::string& words, const Tone& tone,
                     Align align = Align::Left);
    /// A paragraph at the cursor, which moves below it; goes on to further pages line by line, on
    /// each of which `begin` is called first.
    void running(double x, double width, const std::string& words, const Tone& tone,
                 const std::function<void()>& begin);
    static double paragraphHeight(const std::string& words, const Tone& tone, double width);

    void rule(double x1, double x2, double height, Ink ink = Ink::Rule, double lineWidth = 0.2);
    void box(const Box& box, const Style& style);
    /// A box to tick, its upper left corner at (x, top).
    void tick(double x, double top, double size = 4);
    /// A square in the colour and hatch of a wood with its letter.
    void swatch(double x, double top, double size, int wood);
    /// A heading at the cursor, which moves below it. The aside stands behind the words, or below
    /// them where it is too long for that.
    void heading(const std::string& words, const std::string& aside = {});
    /// A light ground with a strong word and a text, at the cursor, which moves below it.
    void notice(const std::string& word, const std::string& words);
    double noticeHeight(const std::string& word, const std::string& words) const;

    /// The safety words at the foot of this page, if there is room for them.
    void safetyWhereRoom();
    /// The safety words at the foot of the last page: all of them, or the shortest where there is
    /// no room, for which `shortSafetyHeight()` must have been kept.
    void safetyAtEnd();
    double shortSafetyHeight() const;

    /// Where the next thing goes.
    double y = 0;

private:
    void safetyAtFoot(const std::string& words);
    std::string safetyForFirstPage() const;
    double footHeight() const;
    std::vector<std::string> noticeLines(const std::string& word, const std::string& words) const;

    std::vector<Draft>& drafts_;
    const Matter& matter_;
    std::string key_, title_;
    Sizes sizes_;
    Safety safety_;
    Box area_;
    double top_ = 0;
    double bottom_ = 0;
    int pages_ = 0;
};

/// Whether a length is written rounded on any page.
bool printRounded(const std::vector<Draft>& drafts);
/// Room in the foot for the line that says how far numbers are rounded, mm.
inline constexpr double roundingHeight = 4;
/// Header and footer, once the number of sheets is known.
void stamp(std::vector<Draft>& drafts, const Matter& matter);

/// Sentences one after another; those that are empty are left out.
std::string sentences(std::initializer_list<std::string> all);
/// A size at which the words are at most `width` wide, between 9 pt and that of the tone; 9 pt
/// where they are wider even then.
Tone madeToFit(const std::string& words, Tone tone, double width, double least = type::small);
/// How much narrower than drawn a text may be painted before it is cut off.
inline constexpr double mostNarrowed = 1.15;
/// The text cut off with an ellipsis where it is wider than `width`; control characters become
/// spaces.
std::string shortened(const std::string& words, const Tone& tone, double width);
/// One line where it is at most `over` times as wide as there is room, since such a line is set
/// narrower; else as many as it takes.
std::vector<std::string> fitted(const std::string& words, const Tone& tone, double width,
                                double over = 1.1);
/// A figure's working, broken only between its terms. A figure of one term names that term.
std::vector<std::string> workingLines(const Figure& figure, const Notation& notation, double width);

/// A value with what it is above and its working below.
struct BigNumber {
    std::string label;
    std::string value;
    std::vector<std::string> below;
};
/// Big numbers side by side from `x` over `width`, at `top`; returns the height.
double bigNumbers(Flow& flow, double x, double top, double width,
                  const std::vector<BigNumber>& settings);

}  // namespace kerfwright
