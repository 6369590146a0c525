#include "engine/follow_up/sensor_faults.h"

#include "engine/water/water.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kPressure = 101325.0;
const LocalTime kStart{std::chrono::hours(24 * 20000)};

/// Half hours of a sound sensor over some days.
std::vector<Reading> logger(int count) {
    std::vector<Reading> out;
    for (int i = 0; i < count; ++i) {
        Reading reading;
        reading.at = kStart + std::chrono::minutes(30) * i;
        reading.depth = Quantity(0.5);
        reading.temperature = Quantity(20.0 + std::sin(i * 0.13));
        reading.oxygen = Quantity(11.0 + 2.0 * std::sin(i * 0.13));
        reading.line = i + 2;
        out.push_back(reading);
    }
    return out;
}

std::size_t count(const std::vector<SensorFault>& faults, SensorFault fault) {
    return static_cast<std::size_t>(std::count(faults.begin(), faults.end(), fault));
}

TEST(SensorFaults, ASoundSensorIsNotFlagged) {
    EXPECT_EQ(count(sensorFaults(logger(200), kPressure), SensorFault::None), 200U);
}

TEST(SensorFaults, AStuckSensor) {
    std::vector<Reading> readings = logger(60);
    for (int i = 20; i < 30; ++i) {
        readings[i].oxygen = Quantity(10.0);
    }
    EXPECT_EQ(count(sensorFaults(readings, kPressure), SensorFault::Stuck), 10U);
    for (int i = 20; i < 30; ++i) {
        readings[i].oxygen = Quantity(i == 24 ? 10.01 : 10.0);  // two short spans
    }
    EXPECT_EQ(count(sensorFaults(readings, kPressure), SensorFault::Stuck), 0U);
}

TEST(SensorFaults, WaterWithoutOxygenIsNotStuck) {
    std::vector<Reading> readings = logger(60);
    for (Reading& reading : readings) {
        reading.oxygen = Quantity(0.05);
    }
    EXPECT_EQ(count(sensorFaults(readings, kPressure), SensorFault::None), 60U);
}

TEST(SensorFaults, ASingleStepDropUntilItIsBack) {
    std::vector<Reading> readings = logger(60);
    for (int i = 20; i < 23; ++i) {
        readings[i].oxygen = Quantity(readings[i].oxygen->value - 5.0);
    }
    const std::vector<SensorFault> faults = sensorFaults(readings, kPressure);
    EXPECT_EQ(count(faults, SensorFault::StepDrop), 3U);
    EXPECT_EQ(faults[20], SensorFault::StepDrop);
    EXPECT_EQ(faults[23], SensorFault::None);
}

TEST(SensorFaults, APondThatTurnedOverStaysLow) {
    std::vector<Reading> readings = logger(60);
    for (int i = 20; i < 60; ++i) {
        readings[i].oxygen = Quantity(4.0 + 0.01 * (i % 3));
    }
    EXPECT_EQ(count(sensorFaults(readings, kPressure), SensorFault::StepDrop), 1U);
}

TEST(SensorFaults, OutOfWater) {
    std::vector<Reading> readings = logger(60);
    for (int i = 20; i < 26; ++i) {
        readings[i].temperature = Quantity(30.0 + 0.1 * i);
        readings[i].oxygen = Quantity(oxygenSaturation(30.0 + 0.1 * i, 0.0, kPressure) * 1.01);
    }
    const std::vector<SensorFault> faults = sensorFaults(readings, kPressure);
    EXPECT_EQ(faults[20], SensorFault::StepDrop);  // the step itself is a fall of more than 2 mg/L
    for (int i = 21; i < 26; ++i) {
        EXPECT_EQ(faults[i], SensorFault::OutOfWater) << i;
    }
    EXPECT_EQ(count(faults, SensorFault::None), 54U);
}

TEST(SensorFaults, ADriftThatAnotherMeterSees) {
    std::vector<Reading> readings = logger(48 * 6);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        readings[i].oxygen = Quantity(readings[i].oxygen->value - 0.3 * static_cast<double>(i) / 48.0);
    }
    std::vector<Reading> both = readings;
    for (std::size_t i = 20; i < readings.size(); i += 48) {
        Reading hand = readings[i];
        hand.at = *hand.at + std::chrono::minutes(5);
        hand.oxygen = Quantity(readings[i].oxygen->value + 0.3 * static_cast<double>(i) / 48.0);
        hand.meter = "hand";
        hand.line = 0;
        both.push_back(hand);
    }
    std::stable_sort(both.begin(), both.end(),
                     [](const Reading& a, const Reading& b) { return *a.at < *b.at; });
    const std::vector<SensorFault> faults = sensorFaults(both, kPressure);
    // Hand readings stand beside readings 20, 68, 116, ...; the drift is 0.3 and then 0.6 mg/L off the first
    // of them, and more than 0.5 is flagged.
    std::size_t logged = 0;
    for (std::size_t i = 0; i < both.size(); ++i) {
        if (both[i].meter == "hand") {
            EXPECT_NE(faults[i], SensorFault::Drifting);
            continue;
        }
        if (logged <= 68) {
            EXPECT_EQ(faults[i], SensorFault::None) << logged;
        } else if (logged >= 116) {
            EXPECT_EQ(faults[i], SensorFault::Drifting) << logged;
        }
        ++logged;
    }
    EXPECT_EQ(count(sensorFaults(readings, kPressure), SensorFault::Drifting), 0U);  // nobody saw it
}

TEST(SensorFaults, TwoMetersThatDisagree) {
    std::vector<Reading> readings = logger(10);
    Reading other = readings[5];
    other.meter = "second";
    other.oxygen = Quantity(readings[5].oxygen->value - 1.0);
    readings.insert(readings.begin() + 6, other);
    const std::vector<SensorFault> faults = sensorFaults(readings, kPressure);
    EXPECT_EQ(count(faults, SensorFault::Disagrees), 2U);
    readings[6].oxygen = Quantity(readings[5].oxygen->value - 0.3);
    EXPECT_EQ(count(sensorFaults(readings, kPressure), SensorFault::Disagrees), 0U);
}

}  // namespace
}  // namespace engine
