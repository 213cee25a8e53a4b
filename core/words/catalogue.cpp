#include "core/words/catalogue.h"

#include <cstdint>

namespace kerfwright {
namespace {

constexpr std::uint32_t magic = 0x950412de;
constexpr char contextEnd = '\x04';  // stands between a context and its text

/// The numbers of a file that was made on a machine of either byte order.
class Words32 {
public:
    static std::optional<Words32> of(std::string_view bytes) {
        Words32 words(bytes, false);
        const auto first = words.at(0);
        if (!first) {
            return std::nullopt;
        }
        if (*first == magic) {
            return words;
        }
        words.bigFirst_ = true;
        return words.at(0) == magic ? std::optional(words) : std::nullopt;
    }

    std::optional<std::uint32_t> at(std::size_t place) const {
        if (place > bytes_.size() || bytes_.size() - place < 4) {
            return std::nullopt;
        }
        std::uint32_t number = 0;
        for (std::size_t i = 0; i < 4; ++i) {
            const auto byte = static_cast<unsigned char>(bytes_[place + (bigFirst_ ? i : 3 - i)]);
            number = number << 8 | byte;
        }
        return number;
    }

    /// The text whose length and place stand at `entry`.
    std::optional<std::string_view> text(std::size_t entry) const {
        const auto length = at(entry);
        const auto place = at(entry + 4);
        if (!length || !place || *place > bytes_.size() || bytes_.size() - *place < *length) {
            return std::nullopt;
        }
        return bytes_.substr(*place, *length);
    }

private:
    Words32(std::string_view bytes, bool bigFirst)
        : bytes_(bytes)
        , bigFirst_(bigFirst) {}

    std::string_view bytes_;
    bool bigFirst_;
};

std::vector<std::string> parted(std::string_view text) {
    std::vector<std::string> parts;
    while (true) {
        const std::size_t end = text.find('\0');
        parts.emplace_back(text.substr(0, end));
        if (end == std::string_view::npos) {
            return parts;
        }
        text.remove_prefix(end + 1);
    }
}

std::shared_ptr<const Catalogue>& language() {
    static std::shared_ptr<const Catalogue> one;
    return one;
}

}  // namespace

std::optional<Catalogue> Catalogue::read(std::string_view bytes) {
    const auto words = Words32::of(bytes);
    if (!words) {
        return std::nullopt;
    }
    const auto count = words->at(8);
    const auto originals = words->at(12);
    const auto translations = words->at(16);
    if (!count || !originals || !translations || *count > bytes.size() / 8) {
        return std::nullopt;
    }
    Catalogue catalogue;
    for (std::size_t i = 0; i < *count; ++i) {
        const auto original = words->text(*originals + 8 * i);
        const auto translation = words->text(*translations + 8 * i);
        if (!original || !translation) {
            return std::nullopt;
        }
        if (original->empty()) {
            const std::size_t rule = translation->find("Plural-Forms:");
            if (rule != std::string_view::npos) {
                const std::string_view rest = translation->substr(rule + 13);
                const auto plurals = Plurals::read(rest.substr(0, rest.find('\n')));
                if (!plurals) {
                    return std::nullopt;
                }
                catalogue.plurals_ = *plurals;
            }
            continue;
        }
        // Of a pair of singular and plural the singular is the key.
        catalogue.forms_.emplace(original->substr(0, original->find('\0')), parted(*translation));
    }
    return catalogue;
}

std::string_view Catalogue::find(std::string_view context, std::string_view text) const {
    const auto found = context.empty()
                           ? forms_.find(text)
                           : forms_.find(std::string(context) + contextEnd + std::string(text));
    return found == forms_.end() ? std::string_view() : found->second.front();
}

std::string_view Catalogue::find(std::string_view one, long long count) const {
    const auto found = forms_.find(one);
    if (found == forms_.end()) {
        return {};
    }
    const std::size_t form = plurals_.form(count);
    return form < found->second.size() ? found->second[form] : found->second.front();
}

void speak(std::shared_ptr<const Catalogue> one) {
    language() = std::move(one);
}

const Catalogue* spoken() {
    return language().get();
}

}  // namespace kerfwright
