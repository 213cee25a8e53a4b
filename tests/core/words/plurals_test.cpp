#include "core/words/plurals.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace kerfwright {
namespace {

// The rules and what they are for: manual of GNU gettext, "Additional functions for plural forms".
TEST(Plurals, RulesOfTheGettextManual) {
    const auto polish = Plurals::read(
        "nplurals=3; plural=n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) ? 1 : 2;");
    ASSERT_TRUE(polish);
    for (const auto& [count, form] :
         {std::pair{1, 0}, {2, 1}, {4, 1}, {5, 2}, {12, 2}, {22, 1}, {25, 2}, {112, 2}, {0, 2}}) {
        EXPECT_EQ(static_cast<std::size_t>(form), polish->form(count)) << count;
    }
    const auto french = Plurals::read("nplurals=2; plural=n>1;");
    ASSERT_TRUE(french);
    EXPECT_EQ(0u, french->form(0));
    EXPECT_EQ(0u, french->form(1));
    EXPECT_EQ(1u, french->form(2));
    const auto japanese = Plurals::read("nplurals=1; plural=0;");
    ASSERT_TRUE(japanese);
    EXPECT_EQ(0u, japanese->form(7));
    const auto lithuanian = Plurals::read("nplurals=3; plural=n%10==1 && n%100!=11 ? 0 : n%10>=2 "
                                          "&& (n%100<10 || n%100>=20) ? 1 : 2;");
    ASSERT_TRUE(lithuanian);
    EXPECT_EQ(0u, lithuanian->form(21));
    EXPECT_EQ(2u, lithuanian->form(11));
    EXPECT_EQ(1u, lithuanian->form(9));
}

TEST(Plurals, WithoutARuleItIsThatOfEnglish) {
    EXPECT_EQ(1u, Plurals().form(0));
    EXPECT_EQ(0u, Plurals().form(1));
    EXPECT_EQ(1u, Plurals().form(2));
}

TEST(Plurals, WhatIsNoRuleIsRefused) {
    for (const char* rule :
         {"", "nplurals=2;", "plural=n;", "nplurals=0; plural=0;", "nplurals=2; plural=;",
          "nplurals=2; plural=n!=;", "nplurals=2; plural=(n;", "nplurals=2; plural=n n;",
          "nplurals=2; plural=n ? 1;", "nplurals=x; plural=0;"}) {
        EXPECT_FALSE(Plurals::read(rule)) << rule;
    }
    EXPECT_FALSE(Plurals::read("nplurals=2; plural=" + std::string(100000, '(')));
}

RC_GTEST_PROP(Plurals, AFormIsAlwaysOneOfThoseThereAre, (int count)) {
    for (const char* rule : {"nplurals=2; plural=n;", "nplurals=2; plural=n/0;",
                             "nplurals=3; plural=n%3;", "nplurals=2; plural=n*n*n*n;"}) {
        const auto plurals = Plurals::read(rule);
        RC_ASSERT(plurals.has_value());
        RC_ASSERT(plurals->form(count) < 3u);
    }
}

}  // namespace
}  // namespace kerfwright
