// A bubble plume switched on in a measured reservoir (measured_waters.h says where the data are from).
//
// A line diffuser near 5 m ran on a few days of 2016 and 2017. Neither its air flow nor the hours at which it
// was switched are known. Flow, number of diffusers and effective depth are chosen on one start, that of
// 29 May 2017, and the others are predicted with the same.
#pragma once

#include "tests/property/measured_reservoir.h"

#include <string>
#include <vector>

namespace engine::test {

/// A start of the plume between two full profiles of one instrument, both taken at noon.
struct PlumeStart {
    std::string name;
    std::chrono::local_days before{}, after{};
    /// Hours of air by day, the first day of air, how many days, and the hour of the clock at which it is on.
    double hoursEachDay = 24.0;
    std::chrono::local_days firstAir{};
    int daysOfAir = 1;
    double clockHour = 12.0;
};

/// 24 h on 29 May 2017, from noon to noon: the profile of that day was taken before.
[[nodiscard]] PlumeStart startToChooseBy();

/// The other starts: 24 h on 27 June 2016, taken from midnight to midnight (the profile of that day shows the
/// mixing under way); "on and off" on 25 to 27 July 2016, taken as half of the time, 12 h from noon a day; 8
/// to 10 h on 10, 11 and 12 July 2017, taken as 9 h from noon. @param onAndOff_h  Of those of July 2016
[[nodiscard]] std::vector<PlumeStart> startsToPredict(double onAndOff_h = 12.0);

/// A line of diffusers as the program has it.
struct DiffuserLine {
    double diffusers = 0.0;
    double depth = 0.0;            ///< [m]
    double freeAir_lPerMin = 0.0;  ///< Of all together
};

/// Heat moved is a share of the water of 3 to 6.5 m (101,000 m3): so much of it would water of 0 to 3 m, as
/// warm as before, have to take the place of, to warm it as much. Volume means; weather is not taken off.
struct PlumeOutcome {
    double movedMeasured = 0.0, movedModel = 0.0;
    double profileError = 0.0;    ///< Mean absolute error of the profile after, at kReservoirDepths [K]
    double unchangedError = 0.0;  ///< Of the profile before, taken for the one after [K]
    std::vector<double> errors;   ///< Model minus measured, by kReservoirDepths [K]
};
[[nodiscard]] PlumeOutcome plumeOutcome(const Reservoir& reservoir, const PlumeStart& start,
                                        const DiffuserLine& line, const WaterOptions& options);

struct LineTried {
    DiffuserLine line;
    PlumeOutcome outcome;
};

/// Of each number of diffusers (10, 20, 50, 100) and each depth (5, 5.5, 6, 6.5 m) the flow that moves the
/// measured heat; those that no flow from 50 to 20,000 L/min brings to it are left out.
[[nodiscard]] std::vector<LineTried> linesThatMoveTheHeat(const Reservoir& reservoir, const PlumeStart& start,
                                                          const WaterOptions& options);

/// The one whose profile after is the nearest to the measured one. @pre there is one
[[nodiscard]] const LineTried& bestOf(const std::vector<LineTried>& tried);

void print(const DiffuserLine& line, const std::string& name, const PlumeOutcome& outcome);

}  // namespace engine::test
