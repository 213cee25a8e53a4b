#include "core/measure/notation.h"

#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

/// Before what is short of the truth.
constexpr std::string_view approximately = "≈ ";

constexpr std::int64_t nmPerInch = Length::inch(1).nm();

std::int64_t powerOfTen(int exponent) {
    std::int64_t power = 1;
    for (int i = 0; i < exponent; ++i) {
        power *= 10;
    }
    return power;
}

// Writing never fails, so a style that no form offers is brought to the nearest that one does.
int inchDenominator(const Notation& notation) {
    int denominator = 1;
    while (denominator < 64 && denominator * 2 <= notation.denominator) {
        denominator *= 2;
    }
    return denominator;
}

int millimetreDecimals(const Notation& notation) {
    return std::clamp(notation.decimals, 0, 6);
}

/// Not std::to_string: it would need a narrower number, and nothing here may ask the locale.
std::string digits(detail::Wide value) {
    std::string text;
    do {
        text.push_back(static_cast<char>('0' + static_cast<int>(value % 10)));
        value /= 10;
    } while (value > 0);
    std::reverse(text.begin(), text.end());
    return text;
}

/// `fraction / 10^decimals` after the mark, with the zeros before it.
std::string decimalPart(detail::Wide fraction, int decimals) {
    std::string text = digits(fraction);
    text.insert(0, static_cast<std::size_t>(decimals) - text.size(), '0');
    return text;
}

std::string inchText(detail::Wide steps, int denominator) {
    const detail::Wide whole = steps / denominator;
    int above = static_cast<int>(steps % denominator);
    int below = denominator;
    if (above == 0) {
        return digits(whole);
    }
    while (above % 2 == 0) {
        above /= 2;
        below /= 2;
    }
    const std::string fraction = std::to_string(above) + '/' + std::to_string(below);
    return whole == 0 ? fraction : digits(whole) + ' ' + fraction;
}

std::string millimetreText(detail::Wide steps, int decimals, DecimalMark mark) {
    const std::int64_t scale = powerOfTen(decimals);
    const detail::Wide fraction = steps % scale;
    std::string text = digits(steps / scale);
    if (fraction != 0) {
        text += decimalMark(mark) + decimalPart(fraction, decimals);
        text.erase(text.find_last_not_of('0') + 1);
    }
    return text;
}

/// Fine enough that no limit of a workshop becomes 0.
Notation limitStyle(const Notation& notation) {
    return notation.unit == Unit::Inches ? Notation::inches()
                                         : Notation::millimetres(std::max(notation.decimals, 1));
}

Written writeBare(Length length, const Notation& notation, DecimalMark mark = DecimalMark::Spoken) {
    // Wide, because the least 64-bit number has no positive twin.
    const detail::Wide nm = length.nm();
    const detail::Wide size = nm < 0 ? -nm : nm;
    const detail::Wide step = notation.step().nm();
    const bool rounded = size % step != 0;
    const detail::Wide steps = (size + step / 2) / step;

    std::string text = notation.unit == Unit::Inches
                           ? inchText(steps, inchDenominator(notation))
                           : millimetreText(steps, millimetreDecimals(notation), mark);
    if (nm < 0 && steps != 0) {
        text.insert(0, 1, '-');
    }
    if (rounded) {
        text.insert(0, approximately);
    }
    return {text, rounded};
}

/// `amount / unit` with at least `decimals` decimals, and more where it would otherwise show fewer
/// than two figures.
std::string decimal(detail::Wide amount, detail::Wide unit, int decimals, DecimalMark mark) {
    constexpr int mostDecimals = 10;
    const bool negative = amount < 0;
    const detail::Wide size = negative ? -amount : amount;
    // Taken apart first, so that only a number smaller than one unit is scaled up.
    const detail::Wide whole = size / unit;
    const detail::Wide rest = size % unit;
    int shown = decimals;
    if (whole == 0 && rest != 0) {
        while (shown < mostDecimals && rest * powerOfTen(shown) / unit < 10) {
            ++shown;
        }
    }
    const std::int64_t scale = powerOfTen(shown);
    const detail::Wide fraction = (rest * scale + unit / 2) / unit;
    const detail::Wide total = whole + fraction / scale;
    std::string text = digits(total);
    if (shown > 0) {
        text += decimalMark(mark) + decimalPart(fraction % scale, shown);
    }
    if (negative && (total != 0 || fraction != 0)) {
        text.insert(0, 1, '-');
    }
    return text;
}

}  // namespace

Length Notation::step() const {
    if (unit == Unit::Inches) {
        return Length::nm(nmPerInch / inchDenominator(*this));
    }
    return Length::nm(powerOfTen(6 - millimetreDecimals(*this)));
}

Written write(Length length, const Notation& notation, DecimalMark mark) {
    Written written = writeBare(length, notation, mark);
    written.text += ' ';
    written.text += unitName(notation.unit);
    return written;
}

std::string format(Length length, const Notation& notation, DecimalMark mark) {
    return write(length, notation, mark).text;
}

std::string formatBare(Length length, const Notation& notation, DecimalMark mark) {
    return writeBare(length, notation, mark).text;
}

std::string formatSize(std::initializer_list<Length> sides, const Notation& notation) {
    std::string text;
    bool rounded = false;
    for (const Length& side : sides) {
        const bool isLast = &side == sides.end() - 1;
        const Written written = isLast ? write(side, notation) : writeBare(side, notation);
        rounded = rounded || written.rounded;
        text += written.text.substr(written.rounded ? approximately.size() : 0);
        text += isLast ? "" : " × ";
    }
    return rounded ? std::string(approximately) + text : text;
}

std::string formatExact(Length length, const Notation& notation) {
    std::string millimetres = format(length, Notation::millimetres(6));
    if (notation.unit == Unit::Millimetres) {
        return millimetres;
    }
    const Written inches = write(length, Notation::inches());
    return inches.rounded ? inches.text + " (" + millimetres + ")" : inches.text;
}

std::string formatLeast(Length limit, const Notation& notation) {
    const Notation style = limitStyle(notation);
    return format(roundedUp(limit, style.step()), style);
}

std::string formatGreatest(Length limit, const Notation& notation) {
    const Notation style = limitStyle(notation);
    return format(-roundedUp(-limit, style.step()), style);
}

std::string_view unitName(Unit unit) {
    return unit == Unit::Inches ? "in" : "mm";
}

std::string formatArea(Area area, Unit unit, DecimalMark mark) {
    const detail::Wide size = area.squareNm() < 0 ? -area.squareNm() : area.squareNm();
    const auto square = [](Length side) { return kerfwright::area(side, side).squareNm(); };
    const bool inches = unit == Unit::Inches;
    // A small joint in whole square metres or feet is a row of noughts that nobody can picture.
    const detail::Wide small = inches ? square(Length::inch(12)) : square(Length::mm(1000)) / 10;
    if (size > 0 && size < small) {
        return inches ? decimal(area.squareNm(), square(Length::inch(1)), 1, mark) + " in²"
                      : decimal(area.squareNm(), square(Length::mm(10)), 0, mark) + " cm²";
    }
    return inches ? decimal(area.squareNm(), square(Length::inch(12)), 1, mark) + " ft²"
                  : decimal(area.squareNm(), square(Length::mm(1000)), 2, mark) + " m²";
}

std::string formatVolume(Volume volume, Unit unit, DecimalMark mark) {
    if (unit == Unit::Inches) {
        const Volume boardFoot =
            kerfwright::volume(Length::inch(12), Length::inch(12), Length::inch(1));
        return say("{1} board feet", decimal(volume.cubicNm(), boardFoot.cubicNm(), 1, mark));
    }
    const Volume cubicMetre =
        kerfwright::volume(Length::mm(1000), Length::mm(1000), Length::mm(1000));
    return decimal(volume.cubicNm(), cubicMetre.cubicNm(), 4, mark) + " m³";
}

}  // namespace kerfwright
