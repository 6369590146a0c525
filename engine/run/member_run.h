#pragma once

#include "engine/ramps/plants.h"
#include "engine/run/member_pack.h"
#include "engine/run/run.h"

#include <cstdint>
#include <optional>
#include <span>
#include <stop_token>
#include <string>
#include <vector>

namespace engine {

/// A step that all members take together.
struct MemberStep {
    double dt = 0.0;           ///< [s]
    Forcing air;               ///< Of the central run, at the step's middle
    PlantTable::Scale plants;  ///< At its end
    Aeration aeration;
    InflowingWater inflow;
    int day = 0;              ///< Of the step's middle, in MemberPack::offsets
    int noon = 0;             ///< The last noon before the middle, in the same
    double pastNoon = 0.0;    ///< Share of the way from that noon to the next
    int night = -1;           ///< From 0; negative: belongs to none
    bool findsPlume = false;  ///< Halfway between marks, where the plume is found again
    bool endsHour = false;    ///< A whole hour, at which oxygen is written down and the plume found again
};

/// A ramp whose schedule was resolved in the central run.
struct EnsembleRamp {
    std::string name;
    Schedule schedule;
    bool isDoNothing = false;
    SurfaceAir surfaceAir = {};
};

/// What one ramp's members do in step: made once, shared by all packs.
struct MemberPlan {
    std::vector<MemberStep> steps;
    std::vector<MemberStep> endSteps;  ///< 30 more usual days under the last schedule; empty unless asked for
    std::vector<double> hours;         ///< Start and each whole hour [s after midnight of day 1]
    int nights = 0;
};

/// Days that offsets of the weather are there for: from the day before the start to the day on which a run
/// ends.
struct WeatherDays {
    int first = 0, last = 0;
};
[[nodiscard]] WeatherDays weatherDays(const PondModel& model, int days);

[[nodiscard]] MemberPlan memberPlan(const PondModel& model, const EnsembleRamp& ramp, int days,
                                    bool endState);

/// The same left alone over usual days, from the start on and with the plants as they are: what stands for
/// the time before.
[[nodiscard]] MemberPlan pastPlan(const PondModel& model, int days);

/// The steps of do-nothing days under the usual day, for the balance: the mean of the days before the profile
/// where they are known, else of all. The hour's end is set at each mark. @param marks  Rising
[[nodiscard]] std::vector<MemberStep> trialSteps(const PondModel& model, const std::vector<double>& marks);

/// One step of a pack.
template <class Real>
void takeStep(Column<Real>& column, const MemberStep& step, const std::vector<PackOffset<Real>>& offsets);

/// Depths and times at which a fit wants the water of each member; interpolated between layer middles and
/// between the hours at which a run writes down.
class MemberWatch {
public:
    struct Point {
        double time = 0.0;   ///< [s after midnight of day 1]
        double depth = 0.0;  ///< [m]
    };
    MemberWatch() = default;
    /// @param hours  Of the plan that is run; points outside them stay 0.
    MemberWatch(const std::vector<Point>& points, const std::vector<double>& hours, std::size_t members);

    /// Takes in what a member holds at an hour. @param column  Of which the lane `k` is that member.
    template <class Real>
    void note(const Grid& grid, const Column<Real>& column, int k, std::size_t hour, std::size_t member);

    [[nodiscard]] bool isEmpty() const { return m_atHour.empty(); }
    std::vector<double> oxygen, temperature;  ///< [g/m^3], [degC], points x members

private:
    struct Share {
        std::size_t point = 0;
        double depth = 0.0, weight = 0.0;
    };
    std::size_t m_members = 0;
    std::vector<std::vector<Share>> m_atHour;
};

/// Where the members of a pack write down what becomes of them: arrays over all members, of which a pack
/// writes its own only.
struct MemberTrace {
    std::size_t members = 0;       ///< Stride of the next two
    std::vector<float> hours;      ///< Fish water, hour by hour [g/m^3], members x hours
    std::vector<float> lows;       ///< Lowest of each night [g/m^3], members x nights
    std::vector<float> endStates;  ///< [g/m^3], members; empty unless asked for
    std::vector<std::uint8_t> isBelowStress, isBelowLethal;  ///< At any step of nights 1 to N, members
    std::vector<std::uint8_t> isFinite;                      ///< members
    MemberWatch watch;                                       ///< Empty unless a fit puts one in

    MemberTrace(std::size_t count, const MemberPlan& plan);
};

/// Runs a pack of members under a plan; `first` is its first member's number, `used` how many lanes count.
/// Returns early if a stop is asked for.
template <class Real>
void runPack(const PondModel& model, const MemberPlan& plan, const MemberPack<Real>& pack, std::size_t first,
             std::size_t used, MemberTrace& trace, const std::stop_token& stop);

/// A pack in the middle of a run: its water and the lowest of each night so far. Without water it is at the
/// start.
template <class Real>
struct PackRunState {
    std::optional<KeptWater<Real>> water;
    std::vector<Real> lows;  ///< By night, never (infinity) where it has not been
};

/// Takes steps of a plan with a pack from where it is; the last of them ends an hour. The same bits as one
/// run, however it is cut. Returns early if a stop is asked for.
template <class Real>
void goOn(const PondModel& model, std::span<const MemberStep> steps, const MemberPack<Real>& pack,
          PackRunState<Real>& runState, const std::stop_token& stop);

}  // namespace engine
