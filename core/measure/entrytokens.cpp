#include "core/measure/entrytokens.h"

namespace kerfwright::detail {
namespace {

/// How many bytes the UTF-8 character at the front has; 0 where it is not one.
std::size_t characterLength(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char lead = byte(0);
    if (lead < 0x80) {
        return 1;
    }
    const std::size_t length = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
    if (lead < 0xc2 || lead > 0xf4 || text.size() < length) {
        return 0;
    }
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(i) & 0xc0) != 0x80) {
            return 0;
        }
    }
    const bool overlong = (lead == 0xe0 && byte(1) < 0xa0) || (lead == 0xf0 && byte(1) < 0x90);
    const bool surrogate = lead == 0xed && byte(1) > 0x9f;
    const bool beyond = lead == 0xf4 && byte(1) > 0x8f;
    return overlong || surrogate || beyond ? 0 : length;
}

}  // namespace

std::int64_t nmIn(Measure measure, Unit bareUnit) {
    switch (measure) {
    case Measure::Millimetre:
        return Length::mm(1).nm();
    case Measure::Centimetre:
        return Length::mm(10).nm();
    case Measure::Metre:
        return Length::mm(1000).nm();
    case Measure::Inch:
        return Length::inch(1).nm();
    case Measure::Foot:
        return Length::inch(12).nm();
    case Measure::Bare:
        break;
    }
    return nmIn(bareUnit == Unit::Inches ? Measure::Inch : Measure::Millimetre, bareUnit);
}

bool isBlank(std::string_view text) {
    while (takeOne(text, spaces)) {
    }
    return text.empty();
}

std::string quoted(std::string_view text, std::size_t longest) {
    std::string shown;
    for (std::size_t count = 0; !text.empty(); ++count) {
        if (count == longest) {
            return shown + "…";
        }
        const std::size_t length = characterLength(text);
        const auto lead = static_cast<unsigned char>(text.front());
        if (length == 0 || lead < 0x20 || lead == 0x7f) {
            shown += "\ufffd";
        } else {
            shown += text.substr(0, length);
        }
        text.remove_prefix(length == 0 ? 1 : length);
    }
    return shown;
}

}  // namespace kerfwright::detail
