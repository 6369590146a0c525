// What a run's rows mean: hours, days, nights, doses, budgets and schedules.
#include "engine/run/run.h"

#include "engine/base/units.h"
#include "engine/ensemble/compare.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace engine::test {
namespace {

const Resolution kCoarse{20, 900.0};

/// The headline pond; its profile is of 17:30 on the evening before day 1, its air starts at 10:00.
const PondModel& headline() {
    static const PondModel model = prepare(scenario("grandfathers-pond"), kCoarse);
    return model;
}

RunRequest daysOf(int days) {
    RunRequest request;
    request.days = days;
    return request;
}

RampRun ran(const Ramp& ramp, int days = 4, const PondModel& model = headline()) {
    return runRamp(model, &ramp, daysOf(days));
}

const HourRow& rowAt(const RampRun& run, double hour) {
    for (const HourRow& row : run.hours) {
        if (row.time == hour * kHour) {
            return row;
        }
    }
    throw std::runtime_error("there is no row at this hour");
}

void expectSame(const RampRun& a, const RampRun& b) {
    EXPECT_EQ(a.schedule, b.schedule);
    EXPECT_EQ(a.steps, b.steps);
    ASSERT_EQ(a.layers.size(), b.layers.size());
    for (std::size_t h = 0; h < a.layers.size(); ++h) {
        ASSERT_EQ(a.hours[h].time, b.hours[h].time);
        ASSERT_EQ(a.hours[h].fishWater, b.hours[h].fishWater) << "row " << h;
        for (std::size_t i = 0; i < a.layers[h].size(); ++i) {
            ASSERT_EQ(a.layers[h][i].oxygen, b.layers[h][i].oxygen) << "row " << h << ", layer " << i;
            ASSERT_EQ(a.layers[h][i].temperature, b.layers[h][i].temperature)
                << "row " << h << ", layer " << i;
            ASSERT_EQ(a.layers[h][i].debt, b.layers[h][i].debt) << "row " << h << ", layer " << i;
        }
    }
    ASSERT_EQ(a.days.size(), b.days.size());
    for (std::size_t d = 0; d < a.days.size(); ++d) {
        EXPECT_EQ(a.days[d].lowest, b.days[d].lowest);
        EXPECT_EQ(a.days[d].lowestTime, b.days[d].lowestTime);
        EXPECT_EQ(a.days[d].liftedVolume, b.days[d].liftedVolume);
    }
    ASSERT_EQ(a.budget.size(), b.budget.size());
    for (std::size_t d = 0; d < a.budget.size(); ++d) {
        EXPECT_EQ(a.budget[d].terms, b.budget[d].terms);
        EXPECT_EQ(a.budget[d].storedChange, b.budget[d].storedChange);
    }
}

TEST(Run, HasARowAtTheStartAndAtEachWholeHour) {
    const RampRun run = runRamp(headline(), nullptr, daysOf(2));
    ASSERT_EQ(run.end, RunEnd::Completed);
    EXPECT_TRUE(run.message.empty());
    EXPECT_EQ(run.hours.front().time, -6.5 * kHour);
    ASSERT_EQ(run.hours.size(), 1U + 6U + 1U + 60U);  // start, -6 h to noon after day 2
    for (std::size_t h = 1; h < run.hours.size(); ++h) {
        EXPECT_NEAR(run.hours[h].time, (static_cast<double>(h) - 7.0) * kHour, 1e-6);
    }
    EXPECT_EQ(run.layers.size(), run.hours.size());
}

TEST(Run, StartsOnAWholeHourWithOneRow) {
    Pond pond = scenario("grandfathers-pond");
    pond.profile->at = LocalTime(std::chrono::local_days(*pond.place.firstDay)) + std::chrono::hours(7);
    const RampRun run = runRamp(prepareUnbalanced(pond, kCoarse), nullptr, daysOf(1));
    EXPECT_EQ(run.hours.front().time, 7.0 * kHour);
    EXPECT_EQ(run.hours.size(), 30U);  // 07:00 to noon of the next day
    EXPECT_EQ(run.budget.front().day, 1);
}

TEST(Run, TellsTheShareOfTheHourThatFollows) {
    const RampRun run = ran(minutesEachDay(90.0));
    EXPECT_EQ(rowAt(run, 9.0).running, 0.0);
    EXPECT_EQ(rowAt(run, 10.0).running, 1.0);
    EXPECT_EQ(rowAt(run, 11.0).running, 0.5);
    EXPECT_EQ(rowAt(run, 12.0).running, 0.0);
    EXPECT_EQ(rowAt(run, 35.0).running, 0.5);
    const RampRun once = ran(continuousRamp());
    EXPECT_EQ(rowAt(once, 9.0).running, 0.0);
    EXPECT_EQ(rowAt(once, 10.0).running, 1.0);
    EXPECT_EQ(rowAt(once, 95.0).running, 1.0);
    EXPECT_EQ(rowAt(once, 107.0).running, 1.0);  // up to the noon at which the run ends
}

TEST(Run, CountsMinutesByCalendarDays) {
    const RampRun once = ran(continuousRamp());
    EXPECT_EQ(once.days[0].runMinutes, 840.0);
    EXPECT_EQ(once.days[3].runMinutes, 1440.0);
    Ramp late = minutesEachDay(480.0);
    late.startTime = ClockTime{22 * 60};
    const RampRun run = ran(late);
    EXPECT_EQ(run.days[0].runMinutes, 120.0);
    EXPECT_EQ(run.days[1].runMinutes, 480.0);  // 360 of the run that began the day before
    ASSERT_FALSE(run.schedule.empty());
    EXPECT_EQ(run.schedule[0].day, 1);
    EXPECT_EQ(run.schedule[0].end, 30.0 * kHour);
    EXPECT_EQ(run.schedule[1].day, 2);
}

TEST(Run, SaysFromWhichDayTheAirNeverStops) {
    EXPECT_EQ(ran(continuousRamp()).daysToContinuous, 1);
    EXPECT_EQ(ran(rampOfKind(headline().pond, RampKind::Doubling), 9).daysToContinuous,
              7);  // 30 min doubled six times
    EXPECT_FALSE(ran(rampOfKind(headline().pond, RampKind::Doubling), 5).daysToContinuous);
    EXPECT_FALSE(ran(minutesEachDay(720.0)).daysToContinuous);
}

TEST(Run, NightsGoFromNoonToNoon) {
    const RampRun run = ran(continuousRamp());
    for (const DayRow& row : run.days) {
        const double from = (row.day - 0.5) * kDay, to = from + kDay;
        EXPECT_GT(row.lowestTime, from);
        EXPECT_LE(row.lowestTime, to);
        double least = 1e9;
        for (const HourRow& hour : run.hours) {
            least = hour.time > from && hour.time <= to ? std::min(least, hour.fishWater) : least;
        }
        EXPECT_LE(row.lowest, least) << "night " << row.day;  // every step counts, not the hours alone
        EXPECT_GE(row.lowest, least - 0.5) << "night " << row.day;
    }
}

TEST(Run, CountsHoursBelowTheLinesOfItsNights) {
    Pond pond = scenario("grandfathers-pond");
    pond.limits.stress = Quantity(20.0);  // never reached
    pond.limits.lethal = Quantity(0.0);   // never passed
    const RampRun run = runRamp(prepareUnbalanced(pond, kCoarse), nullptr, daysOf(3));
    EXPECT_NEAR(run.hoursBelowStress, 72.0, 1e-9);
    EXPECT_EQ(run.hoursBelowLethal, 0.0);
}

TEST(Run, BudgetRowsSumToTheRun) {
    const RampRun run = ran(continuousRamp());
    ASSERT_EQ(run.budget.size(), 6U);  // from the start to midnight, four days, and up to noon
    double stored = 0.0, throughput = 0.0, terms = 0.0;
    for (std::size_t i = 0; i < run.budget.size(); ++i) {
        EXPECT_EQ(run.budget[i].day, static_cast<int>(i));
        stored += run.budget[i].storedChange;
        throughput += run.budget[i].throughput();
        for (const double term : run.budget[i].terms) {
            terms += term;
        }
    }
    const double change = (run.hours.back().mean - run.hours.front().mean) * headline().basin.volume();
    EXPECT_NEAR(stored, change, 1e-9 * throughput);
    EXPECT_NEAR(terms, change, 1e-9 * throughput);
}

TEST(Run, DebtLeftIsThatOfTheNextMidnightOverTheStart) {
    const RampRun run = ran(continuousRamp());
    const auto debt = [&](std::size_t row) {
        double sum = 0.0;
        for (int i = 0; i < headline().grid.layers(); ++i) {
            sum += headline().grid.volume[i] * run.layers[row][static_cast<std::size_t>(i)].debt;
        }
        return sum;
    };
    for (const DayRow& row : run.days) {
        const std::size_t midnight = static_cast<std::size_t>(7 + 24 * row.day);  // row 7 is hour 0
        ASSERT_EQ(run.hours[midnight].time, row.day * kDay);
        EXPECT_NEAR(row.debtLeft, debt(midnight) / debt(0), 1e-12) << "day " << row.day;
    }
}

TEST(Run, EnergyIsPowerTimesTheHoursOfAir) {
    EXPECT_NEAR(ran(continuousRamp()).energy_kWh, 0.4 * 98.0, 1e-9);  // 10:00 of day 1 to noon of day 5
    EXPECT_NEAR(ran(minutesEachDay(90.0)).energy_kWh, 0.4 * (4 * 1.5 + 1.5), 1e-9);
}

TEST(Run, DoNothingHasNoAir) {
    const RampRun run = runRamp(headline(), nullptr, daysOf(3));
    EXPECT_EQ(run.name, "do-nothing");
    EXPECT_TRUE(run.schedule.empty());
    EXPECT_EQ(run.largestDose(), nullptr);
    EXPECT_EQ(run.plumes, 0);
    EXPECT_EQ(run.energy_kWh, 0.0);
    for (const BudgetRow& row : run.budget) {
        EXPECT_EQ(row.terms[kBubbles], 0.0);
    }
    for (const DayRow& row : run.days) {
        EXPECT_EQ(row.runMinutes, 0.0);
        EXPECT_EQ(row.liftedVolume, 0.0);
    }
}

TEST(Run, CountsDaysOutsideTheWeatherTable) {
    // The table ends with day 8; a run of 14 days sees days 9 to 15, the last up to noon.
    EXPECT_EQ(runRamp(headline(), nullptr, daysOf(14)).usualDays, 7);
    EXPECT_EQ(runRamp(headline(), nullptr, daysOf(7)).usualDays, 0);
}

TEST(Run, StopsWhenAskedAndKeepsWhatItHas) {
    std::stop_source before;
    before.request_stop();
    const Ramp once = continuousRamp();
    const RampRun none = runRamp(headline(), &once, daysOf(4), {before.get_token(), nullptr});
    EXPECT_EQ(none.end, RunEnd::Cancelled);
    EXPECT_FALSE(none.message.empty());
    EXPECT_EQ(none.hours.size(), 1U);

    std::stop_source half;
    const RampRun part = runRamp(headline(), &once, daysOf(4), {half.get_token(), [&](double done) {
                                                                    if (done > 0.5) {
                                                                        half.request_stop();
                                                                    }
                                                                }});
    const RampRun whole = ran(once);
    EXPECT_EQ(part.end, RunEnd::Cancelled);
    ASSERT_GT(part.hours.size(), 50U);
    ASSERT_LT(part.hours.size(), 70U);
    for (std::size_t h = 0; h < part.hours.size(); ++h) {
        EXPECT_EQ(part.hours[h].fishWater, whole.hours[h].fishWater);
    }
}

TEST(Run, ReportsProgressRisingToOne) {
    double last = 0.0;
    const Ramp once = continuousRamp();
    (void)runRamp(headline(), &once, daysOf(2), {{}, [&](double done) {
                                                     EXPECT_GT(done, last);
                                                     last = done;
                                                 }});
    EXPECT_NEAR(last, 1.0, 1e-12);
}

TEST(Run, RepeatsToTheBit) {
    for (const Ramp& ramp : headline().pond.ramps) {
        SCOPED_TRACE(ramp.name);
        expectSame(ran(ramp, 6), ran(ramp, 6));
    }
}

TEST(Run, AScheduleGivenIsAsGoodAsTheRampsOwn) {
    for (const RampKind kind : {RampKind::Continuous, RampKind::Doubling, RampKind::Table}) {
        const Ramp& ramp = rampOfKind(headline().pond, kind);
        SCOPED_TRACE(ramp.name);
        const RampRun own = ran(ramp, 6);
        RunRequest request = daysOf(6);
        request.schedule = own.schedule;
        expectSame(own, runRamp(headline(), &ramp, request));
    }
    // A capped ramp looks for its end in shorter steps, so that it agrees to the accuracy in time only: 0.05
    // mg/L.
    const Ramp& capped = rampOfKind(headline().pond, RampKind::Capped);
    const RampRun own = ran(capped, 6);
    RunRequest request = daysOf(6);
    request.schedule = own.schedule;
    const RampRun given = runRamp(headline(), &capped, request);
    EXPECT_EQ(own.schedule, given.schedule);
    for (std::size_t d = 0; d < own.days.size(); ++d) {
        EXPECT_NEAR(own.days[d].lowest, given.days[d].lowest, 0.05) << "night " << d + 1;
        EXPECT_NEAR(own.days[d].liftedVolume, given.days[d].liftedVolume, 0.01 * own.days[d].liftedVolume)
            << "day " << d + 1;
    }
}

TEST(Run, EndStateIsThatOfAsLongARunUnderUsualDays) {
    const Ramp once = continuousRamp(), quarterDay = minutesEachDay(360.0), hour = minutesEachDay(60.0);
    const std::array<const Ramp*, 4> ramps{nullptr, &once, &quarterDay, &hour};
    for (const Ramp* ramp : ramps) {
        RunRequest request = daysOf(14);
        request.endState = true;
        const RampRun run = runRamp(headline(), ramp, request);
        ASSERT_TRUE(run.endState);
        RunRequest longer = daysOf(44);
        longer.weather.usualAfterDay = 15;
        const RampRun whole = runRamp(headline(), ramp, longer);
        double mean = 0.0;
        for (std::size_t night = 37; night < 44; ++night) {
            mean += whole.days[night].lowest / 7.0;
        }
        // The long run also steps on sunrise, so that they agree to the accuracy in time, 0.05 mg/L.
        EXPECT_NEAR(*run.endState, mean, 0.05) << run.name;
        EXPECT_EQ(run.days.size(), 14U);
        EXPECT_EQ(run.hours.back().time, 14.5 * kDay);
    }
}

TEST(Compare, IsTheSameToTheBitForAnyNumberOfThreads) {
    const Pond pond = scenario("grandfathers-pond");
    const auto with = [&](int threads) {
        CompareOptions options;
        options.days = 8;
        options.threads = threads;
        options.resolution = kCoarse;
        return compare(pond, options);
    };
    const Comparison one = with(1);
    ASSERT_EQ(one.runs.size(), pond.ramps.size() + 1);
    EXPECT_EQ(one.runs.front().name, "do-nothing");
    for (const int threads : {2, 3, 8}) {
        const Comparison more = with(threads);
        ASSERT_EQ(more.runs.size(), one.runs.size());
        for (std::size_t r = 0; r < one.runs.size(); ++r) {
            SCOPED_TRACE(one.runs[r].name + ", " + std::to_string(threads) + " threads");
            expectSame(one.runs[r], more.runs[r]);
            EXPECT_EQ(one.runs[r].endState, more.runs[r].endState);
            ASSERT_EQ(one.runs[r].attribution.size(), more.runs[r].attribution.size());
            for (std::size_t c = 0; c < one.runs[r].attribution.size(); ++c) {
                EXPECT_EQ(one.runs[r].attribution[c].gain, more.runs[r].attribution[c].gain);
            }
        }
    }
}

TEST(Compare, RunsTheLongestRampAndAWeekByDefault) {
    for (const auto& [name, days] :
         {std::pair{"new-clay", 19}, {"courtyard-koi", 23}}) {  // twelve and sixteen
        Pond known = scenario(name);
        std::erase_if(known.ramps, [](const Ramp& ramp) { return ramp.kind == RampKind::Capped; });
        EXPECT_EQ(defaultDays(known), days);
    }
    Pond pond = scenario("grandfathers-pond");
    pond.ramps = {continuousRamp()};
    EXPECT_EQ(defaultDays(pond), 14);
    pond.ramps = {cappedRamp(10.0, true)};
    EXPECT_EQ(defaultDays(pond), 14) << "only a run tells how long that takes, and it never lengthens one";
}

}  // namespace
}  // namespace engine::test
