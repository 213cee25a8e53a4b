// Makes the machine form of a catalogue, as the manual of GNU gettext describes it.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace kerfwright {

using Entries = std::vector<std::pair<std::string, std::string>>;

/// `entries` are originals and translations as they stand in the file; the head is the one with the
/// empty original.
inline std::string machineForm(const Entries& entries, bool bigFirst = false) {
    std::string numbers, texts;
    const auto put = [bigFirst](std::string& to, std::size_t number) {
        for (int i = 0; i < 4; ++i) {
            to += static_cast<char>(number >> 8 * (bigFirst ? 3 - i : i) & 0xff);
        }
    };
    const std::size_t head = 28, table = 8 * entries.size();
    const auto place = [&](const std::string& text) {
        put(numbers, text.size());
        put(numbers, head + 2 * table + texts.size());
        texts += text + '\0';
    };
    for (const auto& entry : entries) {
        place(entry.first);
    }
    for (const auto& entry : entries) {
        place(entry.second);
    }
    std::string all;
    for (const std::size_t number : {std::size_t{0x950412de}, std::size_t{0}, entries.size(), head,
                                     head + table, std::size_t{0}, std::size_t{0}}) {
        put(all, number);
    }
    return all + numbers + texts;
}

}  // namespace kerfwright
