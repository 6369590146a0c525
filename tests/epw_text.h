#pragma once

#include "engine/base/text.h"

#include <array>
#include <cmath>
#include <string>
#include <string_view>

namespace engine::test {

/// The header of a typical year whose station stands where the full pond lies.
inline constexpr std::string_view kEpwHeader =
    "LOCATION,Nowhere,-,USA,Made up,000000,36.2,-90.1,-6.0,120.0\r\n"
    "DESIGN CONDITIONS,0\r\n"
    "TYPICAL/EXTREME PERIODS,0\r\n"
    "GROUND TEMPERATURES,0\r\n"
    "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\r\n"
    "COMMENTS 1,made up by \"hand\"\r\n"
    "COMMENTS 2,\r\n"
    "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\r\n";

/// A typical year in the EPW form. The air of month m goes from m - 5 to m + 5 degC each day, the dew point
/// is m - 4 degC, the wind 2.5 m/s, the sky 4 tenths. Each month is of a year of its own.
inline const std::string& epwText() {
    static const std::string kText = [] {
        constexpr std::array<int, 12> kDays{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
        constexpr double kPi = 3.14159265358979323846;
        std::string text(kEpwHeader);
        for (int month = 1; month <= 12; ++month) {
            for (int day = 1; day <= kDays[static_cast<std::size_t>(month - 1)]; ++day) {
                for (int hour = 1; hour <= 24; ++hour) {
                    const double air = month + 5.0 * std::cos(2.0 * kPi * (hour - 15) / 24.0);
                    text +=
                        std::to_string(1990 + month) + "," + std::to_string(month) + "," +
                        std::to_string(day) + "," + std::to_string(hour) + ",0,?9?9?9?9," + fixed(air, 1) +
                        "," + std::to_string(month - 4) +
                        ",70,99800,0,0,300,0,0,0,0,0,0,0,180,2.5,4,4,16.0,77777,9,999999999,100,0.0800,0,88,"
                        "0.000,0.0,0.0\r\n";
                }
            }
        }
        return text;
    }();
    return kText;
}

}  // namespace engine::test
