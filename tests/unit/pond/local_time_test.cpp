#include "engine/pond/local_time.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

using std::chrono::local_days;

TEST(LocalTime, ReadsItsFormsAndNoOther) {
    const Date date{std::chrono::year(2024), std::chrono::February, std::chrono::day(29)};
    const LocalTime at = local_days(date) + std::chrono::hours(5) + std::chrono::minutes(40);
    EXPECT_EQ(parseDate("2024-02-29"), date);
    EXPECT_EQ(parseLocalTime("2024-02-29 05:40"), at);
    EXPECT_EQ(parseLocalTime("2024-02-29T05:40"), at);
    EXPECT_EQ(parseLocalTime("2024-02-29T05:40:07"), at + std::chrono::seconds(7));
    for (const auto* bad :
         {"", "2023-02-29", "2024-2-29", "2024-13-01", "24-02-29", "2024/02/29", "2024-02-2x"}) {
        EXPECT_EQ(parseDate(bad), std::nullopt) << bad;
    }
    for (const auto* bad :
         {"2024-02-29", "2024-02-29 5:40", "2024-02-29 24:00", "2024-02-29 05:60", "2024-02-29 05:40:60",
          "2024-02-29 05:40Z", "2024-02-29T05:40:07Z", "2024-02-29T05:40:07+01:00", "2023-02-29 05:40",
          "2024-02-29_05:40", "05:40", "2024-02-29 05:40:7", "2024-02-29 05:40 07"}) {
        EXPECT_EQ(parseLocalTime(bad), std::nullopt) << bad;
    }
}

TEST(LocalTime, ReadsClockTimes) {
    EXPECT_EQ(parseClock("00:00"), ClockTime{0});
    EXPECT_EQ(parseClock("23:59"), ClockTime{1439});
    for (const auto* bad : {"", "24:00", "9:00", "09:0", "09.00", "09:60", "-1:00", "09:00:00", " 9:00"}) {
        EXPECT_EQ(parseClock(bad), std::nullopt) << bad;
    }
}

TEST(LocalTime, WritesWhatItReads) {
    for (const auto* text : {"2026-06-13 17:30", "1969-12-31 23:59:59", "2026-06-13 00:00"}) {
        const auto at = parseLocalTime(text);
        ASSERT_TRUE(at) << text;
        EXPECT_EQ(formatLocalTime(*at), text);
    }
    EXPECT_EQ(formatIsoTime(*parseLocalTime("2026-06-13 07:05")), "2026-06-13T07:05:00");
    EXPECT_EQ(formatClock({65}), "01:05");
}

}  // namespace
}  // namespace engine
