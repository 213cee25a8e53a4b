// What a first start takes for granted. Expected: Unicode CLDR, supplemental data, measurementData.
#include "ui/document/habits.h"

#include "ui/document/document.h"

#include <gtest/gtest.h>

namespace kerfwright {
namespace {

struct Country {
    const char* locale;
    Unit unit;
    Paper paper;
};

TEST(Habits, FollowTheCountry) {
    for (const Country& one : std::initializer_list<Country>{
             {"en_US", Unit::Inches, Paper::Letter},
             {"es_US", Unit::Inches, Paper::Letter},
             {"en_GB", Unit::Millimetres, Paper::A4},
             {"en_CA", Unit::Millimetres, Paper::Letter},
             {"fr_CA", Unit::Millimetres, Paper::Letter},
             {"es_MX", Unit::Millimetres, Paper::Letter},
             {"de_DE", Unit::Millimetres, Paper::A4},
             {"ja_JP", Unit::Millimetres, Paper::A4},
             {"pt_BR", Unit::Millimetres, Paper::A4},
             {"C", Unit::Millimetres, Paper::A4},
         }) {
        const QLocale locale(QString::fromLatin1(one.locale));
        EXPECT_EQ(usualUnit(locale), one.unit) << one.locale;
        EXPECT_EQ(usualPaper(locale), one.paper) << one.locale;
    }
}

TEST(Habits, GiveTheFirstBoardItsUnit) {
    QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
    const Document american;
    QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
    const Document german;
    QLocale::setDefault(QLocale::c());
    EXPECT_EQ(american.project(), newProject(Unit::Inches));
    EXPECT_EQ(german.project(), newProject(Unit::Millimetres));
    EXPECT_FALSE(american.isModified());
}

}  // namespace
}  // namespace kerfwright
