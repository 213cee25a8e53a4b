#include "core/words/catalogue.h"
#include "tests/core/words/catalogue.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace kerfwright {
namespace {

const Entries entries = {{"", "Content-Type: text/plain\nPlural-Forms: nplurals=2; plural=n>1;\n"},
                         {"Kerf", "Sägefuge"},
                         {std::string("one\0many", 8), std::string("eins\0viele", 10)}};

TEST(Catalogue, IsReadInEitherByteOrder) {
    for (const bool bigFirst : {false, true}) {
        const auto words = Catalogue::read(machineForm(entries, bigFirst));
        ASSERT_TRUE(words);
        EXPECT_EQ(2u, words->size());
        EXPECT_EQ("Sägefuge", words->find("", "Kerf"));
        EXPECT_EQ("", words->find("", "Kerfs"));
        EXPECT_EQ("", words->find("other", "Kerf"));
        EXPECT_EQ("eins", words->find("one", 0));
        EXPECT_EQ("viele", words->find("one", 2));
    }
}

TEST(Catalogue, ARuleThatCannotBeReadIsRefused) {
    EXPECT_FALSE(Catalogue::read(machineForm({{"", "Plural-Forms: nplurals=2; plural=m;\n"}})));
}

RC_GTEST_PROP(Catalogue, CutShortItIsRefused, ()) {
    const std::string bytes = machineForm(entries);
    const auto length = *rc::gen::inRange<std::size_t>(0, bytes.size() - 1);
    RC_ASSERT(!Catalogue::read(bytes.substr(0, length)).has_value());
}

RC_GTEST_PROP(Catalogue, DamagedBytesAreReadOrRefused, ()) {
    std::string bytes = machineForm(entries);
    const auto damages = *rc::gen::inRange(1, 8);
    for (int i = 0; i < damages; ++i) {
        bytes[*rc::gen::inRange<std::size_t>(0, bytes.size())] = *rc::gen::arbitrary<char>();
    }
    if (const auto words = Catalogue::read(bytes)) {
        words->find("one", 3);
        RC_ASSERT(words->size() <= entries.size());
    }
}

}  // namespace
}  // namespace kerfwright
