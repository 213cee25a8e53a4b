#include "core/words/say.h"

#include "core/words/catalogue.h"

#include <vector>

namespace kerfwright {

std::string filled(std::string_view sentence, std::span<const Filling> fillings) {
    std::string whole;
    whole.reserve(sentence.size());
    for (std::size_t i = 0; i < sentence.size(); ++i) {
        if (sentence[i] == '{' && i + 2 < sentence.size() && sentence[i + 2] == '}') {
            const char digit = sentence[i + 1];
            if (digit >= '1' && digit <= '9' &&
                static_cast<std::size_t>(digit - '1') < fillings.size()) {
                whole += fillings[static_cast<std::size_t>(digit - '1')].text();
                i += 2;
                continue;
            }
        }
        whole += sentence[i];
    }
    return whole;
}

std::string say(std::string_view sentence, std::initializer_list<Filling> fillings) {
    return sayIn({}, sentence, fillings);
}

std::string sayIn(std::string_view context, std::string_view sentence,
                  std::initializer_list<Filling> fillings) {
    const Catalogue* language = spoken();
    const std::string_view own =
        language != nullptr ? language->find(context, sentence) : std::string_view();
    return filled(own.empty() ? sentence : own, {fillings.begin(), fillings.size()});
}

std::string sayCount(long long count, std::string_view one, std::string_view many,
                     std::initializer_list<Filling> others) {
    const Catalogue* language = spoken();
    std::string_view own = language != nullptr ? language->find(one, count) : std::string_view();
    if (own.empty()) {
        own = count == 1 ? one : many;
    }
    std::vector<Filling> fillings = {count};
    fillings.insert(fillings.end(), others);
    return filled(own, fillings);
}

}  // namespace kerfwright
