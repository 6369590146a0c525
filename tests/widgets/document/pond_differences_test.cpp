#include "widgets/document/pond_differences.h"

#include "engine/pond/pond_io.h"
#include "tests/pond_texts.h"

#include <gtest/gtest.h>

namespace widgets {
namespace {

TEST(PondDifferences, AreTheKeysInWhichTwoVersionsDiffer) {
    const engine::Pond here = *engine::readPondText(engine::test::kPlainPond, "here.toml").pond;
    engine::Pond there = here;
    EXPECT_TRUE(differencesOf(here, there).empty());
    there.water.secchi = engine::Quantity(0.7);
    there.ramps[1].first_min = engine::Quantity(45.0);
    there.feed_kgPerDay = engine::Quantity(3.0);
    const auto found = differencesOf(here, there);
    ASSERT_EQ(found.size(), 3U);
    EXPECT_EQ(found[0].key, "water.secchi_m");
    EXPECT_EQ(found[0].there, "0.7");
    EXPECT_EQ(found[1].key, "ramp \"" + here.ramps[1].name + "\".first_min");
    EXPECT_EQ(found[2].key, "feed.kg_per_d");
    EXPECT_EQ(found[2].here, "");
}

}  // namespace
}  // namespace widgets
