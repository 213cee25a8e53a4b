#include "core/project/json.h"

#include <gtest/gtest.h>

#include <optional>
#include <string>

namespace kerfwright {
namespace {

TEST(JsonText, keepsNumbersAsTheyWereWritten) {
    for (const char* text : {"12345678901234567890123", "1e3", "2.50", "-7", "0.1", "1E-2"}) {
        const Result<Json> read = parseJson(text);
        ASSERT_TRUE(read.ok()) << text;
        EXPECT_EQ(compact(*read), text);
    }
}

TEST(JsonText, keepsTheOrderOfKeys) {
    const std::string text = R"({"z": 1, "a": {"y": [], "b": {}}, "m": [true, null, "é\n\""]})";
    EXPECT_EQ(compact(*parseJson(text)), text);
}

TEST(JsonText, breaksLinesWhereItemsAskForIt) {
    Json list = Json::array();
    for (std::int64_t i = 1; i <= 4; ++i) {
        list.items.push_back(Json::ofNumber(i));
        list.items.back().startsLine = i % 2 == 1;
    }
    Json json = Json::object();
    json.add("list", list);
    EXPECT_EQ(printed(json), "{\n  \"list\": [\n    1, 2,\n    3, 4\n  ]\n}");
}

// Source: the table of well-formed byte sequences of the Unicode Standard, 3.9 (value from memory).
TEST(Utf8, isCheckedAsUnicodeDefinesIt) {
    for (const char* good :
         {"", "a", "\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF", "\xEE\x80\x80",
          "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"}) {
        EXPECT_EQ(firstNotUtf8(good), std::nullopt) << good;
    }
    for (const char* bad :
         {"\x80", "\xC0\x80", "\xC1\xBF", "\xC2", "\xC2\x41", "\xE0\x9F\xBF", "\xED\xA0\x80",
          "\xEF\xBF", "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF"}) {
        EXPECT_EQ(firstNotUtf8(std::string("ok") + bad), std::size_t{2}) << bad;
    }
}

}  // namespace
}  // namespace kerfwright
