// Oxygen of three measured ponds over a summer: every week a cast is taken for the profile, and the week that
// follows is computed under its own wind and light. Nothing of the model is fitted to them.
#include "tests/property/measured_ponds.h"

#include "engine/base/units.h"
#include "engine/pond/pond_check.h"
#include "engine/run/balance.h"
#include "tests/trial_data.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <string>

namespace engine::test {
namespace {

using namespace std::chrono;

constexpr int kDays = 7;
constexpr double kDeep = 1.2;  // [m]

double oxygenAt(const PondModel& model, const RampRun& run, LocalTime at, double depth) {
    const double hours = (secondsOf(model.pond, at) - run.hours.front().time) / kHour;
    const auto row =
        static_cast<std::size_t>(std::clamp(std::lround(hours), 0L, std::ssize(run.layers) - 1L));
    std::vector<double> values;
    for (const LayerRow& layer : run.layers[row]) {
        values.push_back(layer.oxygen);
    }
    return interpolate(model.grid.middle, values, depth);
}

/// Errors of oxygen [g/m^3], model minus measured, and what would be off if nothing had changed.
struct Errors {
    DepthErrors model, unchanged;
};
using ByMonth = std::map<unsigned, Errors>;

struct Skill {
    ByMonth logger, casts;
    DepthErrors lows;  ///< The lowest of each night by the logger
};

void addWeek(const SmallPond& water, const Profile& cast, bool withLogger, Skill& skill) {
    const Pond pond = smallPondAt(water, cast, kDays, withLogger);
    for (const Diagnostic& diagnostic : checkPond(pond)) {
        ASSERT_NE(diagnostic.severity, Severity::Error) << format(diagnostic);
    }
    const PondModel model = prepare(pond);
    RunRequest request;
    request.days = kDays;
    const RampRun run = runRamp(model, nullptr, request);
    ASSERT_EQ(run.end, RunEnd::Completed) << run.message;
    const LocalTime start = *cast.at, end = start + days(kDays);
    std::map<minutes, double> yesterday;  // by clock time
    std::map<local_days, std::pair<double, double>> lows;
    for (const Reading& reading : water.logger) {
        const LocalTime at = *reading.at;
        const minutes clock = floor<minutes>(at - floor<days>(at));
        if (at <= start && at > start - days(1)) {
            yesterday[clock] = *reading.oxygen;
        } else if (at > start && at <= end) {
            const double found = oxygenAt(model, run, at, *reading.depth);
            Errors& errors = skill.logger[static_cast<unsigned>(Date(floor<days>(at)).month())];
            errors.model.add(found - *reading.oxygen);
            if (const auto before = yesterday.lower_bound(clock); before != yesterday.end()) {
                errors.unchanged.add(before->second - *reading.oxygen);
            }
            auto& [low, lowFound] = lows.try_emplace(floor<days>(at - hours(12)), 1e9, 1e9).first->second;
            low = std::min(low, reading.oxygen->value);
            lowFound = std::min(lowFound, found);
        }
    }
    for (const auto& [night, low] : lows) {
        skill.lows.add(low.second - low.first);
    }
    for (const auto& [at, other] : water.casts) {
        if (at > start + hours(12) && at <= end && other.depth.back() >= kDeep) {
            const double read = interpolate(other.depth, other.oxygen, kDeep);
            Errors& errors = skill.casts[static_cast<unsigned>(Date(floor<days>(at)).month())];
            errors.model.add(oxygenAt(model, run, at, kDeep) - read);
            errors.unchanged.add(interpolate(cast.depth, cast.oxygen, kDeep) - read);
        }
    }
}

DepthErrors of(const ByMonth& months) {
    std::vector<DepthErrors> all;
    for (const auto& [month, errors] : months) {
        all.push_back(errors.model);
    }
    return together(all);
}

void print(const char* what, const ByMonth& months) {
    for (const auto& [month, errors] : months) {
        std::printf("  %s, month %u: off %.2f, bias %+.2f; unchanged %.2f, of %d\n", what, month,
                    errors.model.meanAbsolute(), errors.model.bias(), errors.unchanged.meanAbsolute(),
                    errors.model.count);
    }
}

Skill skillOf(const SmallPond& water, bool withLogger) {
    Skill skill;
    for (local_days day(2020y / June / 2); day <= local_days(2020y / August / 18); day += days(kDays)) {
        addWeek(water, water.casts.lower_bound(LocalTime(day))->second, withLogger, skill);
    }
    std::printf("pond %c, %s logger before the cast; mg/L\n", water.name,
                withLogger ? "with the" : "without a");
    print("0.5 m", skill.logger);
    print("1.2 m", skill.casts);
    std::printf("  lows of the nights: off %.2f, bias %+.2f, of %d\n", skill.lows.meanAbsolute(),
                skill.lows.bias(), skill.lows.count);
    return skill;
}

TEST(MeasuredPonds, AWeekAheadOfEachCast) {
    const auto data = trialData("ponds-2020");
    if (!data) {
        GTEST_SKIP() << kNoTrialData << "ponds-2020";
    }
    for (const char name : {'A', 'B', 'C'}) {
        SCOPED_TRACE(name);
        const SmallPond water = readSmallPond(*data, name);
        const Skill without = skillOf(water, false), with = skillOf(water, true);
        // What a logger adds to a cast must not make the weeks that follow worse.
        EXPECT_LT(of(with.logger).meanAbsolute(), of(without.logger).meanAbsolute());
        // Asked is 2 in every month: missed in five of nine, 3.0 at most, when this was written. Before
        // labile matter had books it was 6 to 10.
        EXPECT_LT(of(with.casts).meanAbsolute(), 6.0);
    }
}

}  // namespace
}  // namespace engine::test
