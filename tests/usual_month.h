#pragma once

#include "engine/pond/pond.h"

namespace engine::test {

/// A month of a climate by its number, 1 for January, and a usual day's lowest and highest air.
inline ClimateMonth usualMonth(int number, double low, double high, double humidity_percent = 65.0,
                               double cloud_percent = 40.0) {
    ClimateMonth out;
    out.month = Quantity(number);
    out.airMin = Quantity(low);
    out.airMax = Quantity(high);
    out.humidity_percent = Quantity(humidity_percent);
    out.wind = Quantity(3.0);
    out.cloud_percent = Quantity(cloud_percent);
    return out;
}

}  // namespace engine::test
