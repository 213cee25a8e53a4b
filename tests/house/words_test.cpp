// Every sentence of the program has its translation.
#include "tests/core/words/points.h"
#include "tests/house/files.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <iterator>
#include <regex>
#include <set>
#include <sstream>

namespace kerfwright::house {
namespace {

using testing::IsEmpty;

/// "{1}", "%2" and the like: where a sentence takes in what changes.
std::set<std::string> placesOf(const std::string& sentence) {
    static const std::regex place("\\{[1-9]\\}|%L?[1-9]|%n");
    std::set<std::string> places;
    for (std::sregex_iterator at(sentence.begin(), sentence.end(), place), end; at != end; ++at) {
        places.insert(at->str());
    }
    return places;
}

/// The text behind `key` in an entry of a catalogue that does not wrap its lines.
std::string fieldOf(const std::string& entry, const std::string& key) {
    const std::string begin = "\n" + key + " \"";
    const std::size_t at = entry.find(begin);
    if (at == std::string::npos) {
        return {};
    }
    const std::size_t from = at + begin.size();
    return entry.substr(from, entry.find("\"\n", from) - from);
}

std::vector<std::string> misplaced(const File& catalogue) {
    std::vector<std::string> wrong;
    const std::regex blank("\n\n+");
    for (std::sregex_token_iterator at(catalogue.text.begin(), catalogue.text.end(), blank, -1),
         end;
         at != end; ++at) {
        const std::string entry = "\n" + at->str() + "\n";
        const std::string many = fieldOf(entry, "msgid_plural");
        const std::string english = many.empty() ? fieldOf(entry, "msgid") : many;
        const std::string own = fieldOf(entry, many.empty() ? "msgstr" : "msgstr[1]");
        if (placesOf(english) != placesOf(own)) {
            wrong.push_back(catalogue.path + ": " + english + " → " + own);
        }
    }
    return wrong;
}

TEST(Words, EverySentenceIsTranslatedAndNoneIsLeftOver) {
    const Ended ended = run("resources/words/words check");
    EXPECT_EQ(0, ended.code) << ended.said << "“resources/words/words update” adds what is new";
}

TEST(Words, TranslationsTakeInWhatTheSentencesTakeIn) {
    const std::vector<File> catalogues = filesBelow("resources/words", {".po"});
    ASSERT_FALSE(catalogues.empty());
    for (const File& catalogue : catalogues) {
        EXPECT_THAT(misplaced(catalogue), IsEmpty());
    }
    EXPECT_THAT(misplaced({"made up", "msgid \"{1} of {2}\"\nmsgstr \"{1} von {1}\"\n"}),
                testing::SizeIs(1));
}

/// Without what stands between backticks, which is what is typed: both marks are read there.
std::string untyped(const std::string& text) {
    return std::regex_replace(text, std::regex("`[^`\n]*`"), "");
}

TEST(Words, GermanWritesDecimalsWithAComma) {
    const std::vector<File> topics = filesBelow("resources/help/de", {".md"});
    ASSERT_FALSE(topics.empty());
    for (const File& topic : topics) {
        EXPECT_THAT(pointedNumbers(untyped(topic.text)), IsEmpty()) << topic.path;
    }
    std::istringstream words(textOf("resources/words/de.po"));
    for (std::string line; std::getline(words, line);) {
        if (line.starts_with("msgstr")) {
            EXPECT_THAT(pointedNumbers(untyped(line)), IsEmpty());
        }
    }
    EXPECT_THAT(pointedNumbers("P1.1, 3. and 4,5 but 4.5 mm"), testing::SizeIs(1));
}

}  // namespace
}  // namespace kerfwright::house
