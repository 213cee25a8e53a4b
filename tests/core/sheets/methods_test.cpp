#include "core/sheets/methods.h"
#include "tests/core/sheets/samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace kerfwright;
using namespace kerfwright::testing_samples;
using ::testing::HasSubstr;

namespace {

Shop shopOf(Length width, Length shortest) {
    Shop shop = metricShop();
    shop.planerWidth = width;
    shop.planerShortest = shortest;
    return shop;
}

}  // namespace

// Common practice, no source: a planer is for one direction of grain that fits into it.
TEST(Methods, OfferThePlanerOnlyWhereItFits) {
    const Shop shop = shopOf(Length::mm(300), Length::mm(250));
    const FlatWork fits{Length::mm(300), Length::mm(250), Face::LongGrain, false};
    EXPECT_TRUE(planerTakes(fits, shop));
    EXPECT_EQ(flatteningTools(fits, shop),
              "thickness planer after one face has been made flat, or drum sander");
    EXPECT_EQ(whyNoPlaner(fits, shop), "");

    FlatWork other = fits;
    other.width += Length::nm(1);
    EXPECT_EQ(flatteningTools(other, shop), "drum sander or router sled");
    EXPECT_THAT(whyNoPlaner(other, shop), HasSubstr("Too wide"));
    other = fits;
    other.length -= Length::nm(1);
    EXPECT_EQ(flatteningTools(other, shop), "drum sander or router sled");
    EXPECT_THAT(whyNoPlaner(other, shop), HasSubstr("Too short"));
    other = fits;
    other.endJoints = true;
    EXPECT_EQ(flatteningTools(other, shop), "drum sander or router sled");
    EXPECT_EQ(whyNoPlaner(other, shop), "Long grain: a planer tears out at the end joints.");
    other = fits;
    other.face = Face::EndGrain;
    EXPECT_EQ(whyNoPlaner(other, shop), "End grain: never a thickness planer.");
}

TEST(Methods, KnowTheWorkpieceOfEveryFlattening) {
    std::size_t found = 0;
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        const Record record(job.steps);
        for (std::size_t i = 0; i < job.steps.steps.size(); ++i) {
            const auto* flatten = std::get_if<Flatten>(&job.steps.steps[i].work);
            if (flatten == nullptr) {
                continue;
            }
            ++found;
            const FlatWork work = flatWork(record, *flatten, static_cast<int>(i) + 1);
            EXPECT_GT(work.width, Length()) << sample.name;
            EXPECT_GT(work.length, Length()) << sample.name;
            if (flatten->purpose == Purpose::Finished && record.finalGlue) {
                EXPECT_FALSE(planerTakes(work, shopOf(Length::mm(9000), Length::mm(1))))
                    << sample.name;
            }
        }
    }
    EXPECT_GT(found, samples().size());
}

TEST(Methods, SeeWhatStandsOnEdge) {
    Wood wood = woodCatalogue().front();
    wood.timber = {Length::mm(60), Length::mm(200)};
    MillLine line;
    line.roughThickness = {{TermKind::BoardThickness, Length::mm(60)}};
    EXPECT_FALSE(standsOnEdge(line, wood));
    line.roughThickness = {{TermKind::BoardThickness, Length::mm(61)}};
    EXPECT_TRUE(standsOnEdge(line, wood));
}

TEST(Methods, SeeWhatIsTooShortToMillSingly) {
    const Shop shop = shopOf(Length::mm(300), Length::mm(250));
    MillLine line;
    line.roughLength = {{TermKind::RowHeight, Length::mm(250)}};
    EXPECT_FALSE(tooShortToMillSingly(line, shop));
    line.roughLength = {{TermKind::RowHeight, Length::mm(249)}};
    EXPECT_TRUE(tooShortToMillSingly(line, shop));
}
