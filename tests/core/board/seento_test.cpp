#include "core/board/seento.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace kerfwright {
namespace {

using testing::IsEmpty;
using testing::Ne;

std::string firstFault(const std::vector<SeenTo>& seenTo) {
    const std::vector<Fault> found = faults(seenTo);
    return found.empty() ? "none" : found.front().text();
}

TEST(Facts, KeepLengthsInNanometresAndShortTextsAsTheyAre) {
    EXPECT_EQ(fact("gap", Length::mm(3)), (Fact{"gap-nm", std::int64_t{3'000'000}}));
    EXPECT_EQ(fact("joints", 7), (Fact{"joints", std::int64_t{7}}));
    EXPECT_EQ(fact("parts", std::string("A B")), (Fact{"parts", std::string("A B")}));
    EXPECT_EQ(brief(std::string(200, 'x')), std::string(200, 'x'));
}

TEST(Facts, TellLongTextsApartBySixteenDigits) {
    const std::string one = std::string(200, 'x') + "1";
    const std::string other = std::string(200, 'x') + "2";
    EXPECT_EQ(brief(one).size(), 16U);
    EXPECT_EQ(brief(one).find_first_not_of("0123456789abcdef"), std::string::npos);
    EXPECT_THAT(brief(one), Ne(brief(other)));
    EXPECT_EQ(brief(one), brief(std::string(one)));
}

TEST(SeenToFaults, AreNoneInASoundList) {
    EXPECT_THAT(faults(std::vector<SeenTo>{}), IsEmpty());
    EXPECT_THAT(faults({{"open-pores", "", {fact("joints", 1)}},
                        {"open-pores", "", {fact("joints", 2)}},
                        {"open-pores", "a", {fact("joints", 1)}},
                        {"no-trim-margin"}}),
                IsEmpty());
}

TEST(SeenToFaults, NameTheEntryTheRuleAndTheValue) {
    EXPECT_EQ(
        firstFault({{"open-pores"}, {"Open pores"}}),
        "Seen to, entry 2: must have names of 1 to 60 lower case letters, digits and hyphens; "
        "got “Open pores”.");
    EXPECT_EQ(
        firstFault({{""}}),
        "Seen to, entry 1: must have names of 1 to 60 lower case letters, digits and hyphens; "
        "got nothing.");
    EXPECT_EQ(firstFault({{"a", std::string(201, 'x')}}),
              "Seen to, entry 1: must be at most 200 bytes long; got 201 bytes.");
    EXPECT_EQ(firstFault({{"a", "", {{"b", std::string(201, 'x')}}}}),
              "Seen to, entry 1: must be at most 200 bytes long; got 201 bytes.");
    EXPECT_EQ(firstFault({{"a", "", {{"b", 1}, {"b", 2}}}}),
              "Seen to, entry 1: must say each thing only once; got “b”.");
    EXPECT_EQ(firstFault({{"a", "", {{"b", 1}}}, {"a", "", {{"b", 1}}}}),
              "Seen to, entry 2: must differ from the entries before it; got “a”.");
    std::vector<Fact> many;
    for (int i = 0; i < 33; ++i) {
        many.push_back(fact("f" + std::to_string(i), i));
    }
    EXPECT_EQ(firstFault({{"a", "", many}}),
              "Seen to, entry 1: must say at most 32 things; got 33.");
    std::vector<SeenTo> all;
    for (int i = 0; i < 257; ++i) {
        all.push_back({"a", std::to_string(i)});
    }
    EXPECT_EQ(firstFault(all), "Seen to: must have at most 256 entries; got 257.");
    all.pop_back();
    EXPECT_EQ(firstFault(all), "none");
}

}  // namespace
}  // namespace kerfwright
