// Reads a catalogue as translators keep it, so that tests of the core can speak a language that is
// shipped without the program that compiles it.
#pragma once

#include "core/words/catalogue.h"
#include "tests/core/words/catalogue.h"
#include "tests/source.h"

#include <fstream>
#include <memory>
#include <stdexcept>
#include <string>

namespace kerfwright {

/// What stands between the quotes of a line of a .po file.
inline std::string quotedIn(const std::string& line) {
    std::string text;
    const std::size_t end = line.rfind('"');
    for (std::size_t i = line.find('"') + 1; i < end; ++i) {
        if (line[i] == '\\' && i + 1 < end) {
            ++i;
            text += line[i] == 'n' ? '\n' : line[i] == 't' ? '\t' : line[i];
        } else {
            text += line[i];
        }
    }
    return text;
}

/// The entries of the files below resources/words; the code is that of the language: "de".
inline Entries shippedEntries(const std::string& code) {
    std::ifstream file(sourceFolder() / "resources" / "words" / (code + ".po"));
    if (!file) {
        throw std::runtime_error("no words for " + code);
    }
    Entries entries;
    std::string context, original, translation;
    std::string* filled = nullptr;
    const auto done = [&] {
        if (!translation.empty()) {
            entries.emplace_back(context.empty() ? original : context + '\4' + original,
                                 translation);
        }
        context.clear();
        original.clear();
        translation.clear();
        filled = nullptr;
    };
    for (std::string line; std::getline(file, line);) {
        if (line.empty()) {
            done();
            continue;
        }
        if (line.front() == '#') {
            continue;
        }
        if (line.starts_with("msgctxt")) {
            filled = &context;
        } else if (line.starts_with("msgid_plural")) {
            original += '\0';
            filled = &original;
        } else if (line.starts_with("msgid")) {
            filled = &original;
        } else if (line.starts_with("msgstr")) {
            if (filled == &translation) {
                translation += '\0';
            }
            filled = &translation;
        }
        if (filled != nullptr) {
            *filled += quotedIn(line);
        }
    }
    done();
    return entries;
}

/// Speaks a language that is shipped for as long as it lives; English where the code is empty.
class Speaking {
public:
    explicit Speaking(const std::string& code) {
        if (!code.empty()) {
            speak(std::make_shared<const Catalogue>(
                Catalogue::read(machineForm(shippedEntries(code))).value()));
        }
    }
    ~Speaking() { speak(nullptr); }
    Speaking(const Speaking&) = delete;
    Speaking& operator=(const Speaking&) = delete;
};

}  // namespace kerfwright
