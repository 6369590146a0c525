#include "engine/base/text.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <random>
#include <string>

namespace engine {
namespace {

TEST(Text, ShortestReadsBackAndHasNoExponentInTheHouseRange) {
    for (const double value : {0.1, 1e-4, 999999999.0, 14.0, -2.5, 1.0 / 3.0, 0.0}) {
        const std::string text = shortest(value);
        EXPECT_EQ(toNumber(text), value) << text;
        EXPECT_EQ(text.find('e'), std::string::npos) << text;
    }
    EXPECT_EQ(shortest(14.0), "14");
    EXPECT_NE(shortest(1e300).find('e'), std::string::npos);
}

TEST(Text, NumbersAreReadWholeOrNotAtAll) {
    EXPECT_EQ(toNumber("1.5"), 1.5);
    EXPECT_EQ(toNumber("+1.5"), 1.5);
    for (const auto* bad : {"", "1,5", "1.5x", "nan", "inf", "+-1", " 1"}) {
        EXPECT_EQ(toNumber(bad), std::nullopt) << bad;
    }
}

TEST(Text, FixedNeverShowsAMinusBeforeZero) {
    EXPECT_EQ(fixed(-0.04, 1), "0.0");
    EXPECT_EQ(fixed(2.06, 1), "2.1");
}

TEST(Text, NearestFindsTheLikelySlip) {
    const std::array<const char*, 3> keys{"area_m2", "max_depth_m", "mean_depth_m"};
    EXPECT_EQ(nearest("aera_m2", keys), "area_m2");
    EXPECT_EQ(nearest("max_dpeth_m", keys), "max_depth_m");
    EXPECT_EQ(nearest("zzzzzzzzz", keys), "");
    EXPECT_EQ(editDistance("ab", "ba"), 1);
}

TEST(Text, AnEditDistanceBeyondTheMostIsTheMostAndOne) {
    std::mt19937_64 random(20261201);
    const auto word = [&] {
        std::string text(std::uniform_int_distribution<std::size_t>(0, 9)(random), 'a');
        for (char& c : text) {
            c = static_cast<char>('a' + std::uniform_int_distribution<int>(0, 2)(random));
        }
        return text;
    };
    for (int i = 0; i < 3000; ++i) {
        const std::string a = word(), b = word();
        const int whole = editDistance(a, b);
        for (int most = 0; most < 10; ++most) {
            ASSERT_EQ(editDistance(a, b, most), std::min(whole, most + 1)) << a << ' ' << b << ' ' << most;
        }
    }
}

}  // namespace
}  // namespace engine
