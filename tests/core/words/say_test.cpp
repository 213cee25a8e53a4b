#include "core/words/catalogue.h"
#include "core/words/say.h"
#include "tests/core/words/catalogue.h"

#include <gtest/gtest.h>

namespace kerfwright {
namespace {

/// German for the length of one test.
class Say : public testing::Test {
protected:
    void speakGerman() {
        auto words = Catalogue::read(machineForm({
            {"", "Plural-Forms: nplurals=2; plural=(n != 1);\n"},
            {"Kerf", "Schnittfuge"},
            {"{1} and {2}", "{1} und {2}"},
            {"The {1} is {2} too wide.", "Um {2} ist {1} zu breit."},
            {std::string("{1} panel of {2}") + '\0' + "{1} panels of {2}",
             std::string("{1} Platte aus {2}") + '\0' + "{1} Platten aus {2}"},
            {"end\x04"
             "square",
             "winklig"},
        }));
        ASSERT_TRUE(words);
        speak(std::make_shared<const Catalogue>(std::move(*words)));
    }
    ~Say() override { speak(nullptr); }
};

TEST_F(Say, EnglishStandsInTheSource) {
    EXPECT_EQ("Kerf", say("Kerf"));
    EXPECT_EQ("The panel is 3 mm too wide.", say("The {1} is {2} too wide.", "panel", "3 mm"));
    EXPECT_EQ("1 panel of oak", sayCount(1, "{1} panel of {2}", "{1} panels of {2}", "oak"));
    EXPECT_EQ("0 panels of oak", sayCount(0, "{1} panel of {2}", "{1} panels of {2}", "oak"));
    EXPECT_EQ("square", sayIn("end", "square"));
}

TEST_F(Say, AnotherLanguagePutsThePartsInItsOwnOrder) {
    speakGerman();
    EXPECT_EQ("Um 3 mm ist Platte A zu breit.",
              say("The {1} is {2} too wide.", "Platte A", "3 mm"));
    EXPECT_EQ("1 Platte aus Eiche", sayCount(1, "{1} panel of {2}", "{1} panels of {2}", "Eiche"));
    EXPECT_EQ("3 Platten aus Eiche",
              sayCount(3u, "{1} panel of {2}", "{1} panels of {2}", "Eiche"));
}

TEST_F(Say, AContextTellsTwoMeaningsApart) {
    speakGerman();
    EXPECT_EQ("winklig", sayIn("end", "square"));
    EXPECT_EQ("square", say("square"));
}

TEST_F(Say, WhatHasNoTranslationIsSaidInEnglish) {
    speakGerman();
    EXPECT_EQ("Fence at 45 mm", say("Fence at {1}", "45 mm"));
    EXPECT_EQ("2 rails", sayCount(2, "{1} rail", "{1} rails"));
}

TEST_F(Say, AFillingIsNeverReadAsASentence) {
    EXPECT_EQ("{2} and oak", say("{1} and {2}", "{2}", "oak"));
    EXPECT_EQ("1 panel of {1}", sayCount(1, "{1} panel of {2}", "{1} panels of {2}", "{1}"));
}

TEST_F(Say, PlacesWithoutAFillingAndBareBracesStay) {
    EXPECT_EQ("{2} {0} {12} { } {", say("{2} {0} {12} { } {", "one"));
    EXPECT_EQ("", say(""));
}

TEST_F(Say, AListIsJoinedInTheLanguageSpoken) {
    const std::vector<std::string> names = {"A", "B", "C"};
    EXPECT_EQ("A, B and C", sayList(names));
    speakGerman();
    EXPECT_EQ("A, B und C", sayList(names));
    EXPECT_EQ("A", sayList(std::vector<std::string>{"A"}));
    EXPECT_EQ("", sayList(std::vector<std::string>{}));
}

}  // namespace
}  // namespace kerfwright
