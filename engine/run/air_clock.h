#pragma once

#include "engine/run/run.h"

#include <limits>
#include <optional>
#include <vector>

namespace engine {

inline constexpr double kNever = std::numeric_limits<double>::infinity();
inline constexpr double kInstant = 1e-6;  ///< [s]; closer marks are the same mark

/// Decides when the air is on while a run goes along: a schedule known beforehand, or a capped ramp's, whose
/// runs end when their dose is reached. Times in s after midnight of day 1. The model must outlive it.
class AirClock {
public:
    AirClock(const PondModel& model, const Ramp* ramp, const RunRequest& request, double end);

    [[nodiscard]] Aeration at(double time) const;

    /// The next switch after a time; never if there is none.
    [[nodiscard]] double nextSwitch(double time) const;

    /// The last change of the diffusers' air until a time; long ago if there was none.
    [[nodiscard]] double lastSwitch(double time) const;

    /// True while a capped run may have to end between marks.
    [[nodiscard]] bool watching(double time) const;

    /// How long the coming step may be, given what the plume lifts now [m^3/s]; 0: the run ends here.
    [[nodiscard]] double allowance(double time, double hypolimneticLift) const;

    void endRun(double time);

    void addLiftedVolume(double volume) { m_liftedVolume += volume; }

    /// Sunrise of a day: is the pond mixed, so that the cap can go?
    void dawn(int day, double topMinusBottom, double bottomOxygen);

    /// The start of a ramp's day has come. @param debtShare  Of the debt at the start, that is left.
    void startDay(int day, double debtShare);
    [[nodiscard]] double nextDayStart(double time) const;

    /// What ran on the last day goes on each day until a later end; air that never stopped never stops.
    void hold(int lastDay, double end);

    [[nodiscard]] const Schedule& schedule() const { return m_schedule; }
    [[nodiscard]] const SurfaceAir& nightAir() const { return m_nightAir; }
    [[nodiscard]] std::optional<int> liftedDay() const { return m_liftedDay; }
    [[nodiscard]] double cutMinutes() const { return m_cutMinutes; }

private:
    [[nodiscard]] bool surfaceRuns(double time) const;
    [[nodiscard]] bool nightAirRuns(double time) const;

    void planDay(int day, double debtShare);
    [[nodiscard]] std::optional<double> dose(double debtShare) const;

    const PondModel& m_model;
    const Ramp* m_ramp;
    double m_end;
    Schedule m_schedule;
    double m_cutMinutes = 0.0;
    bool m_surface = false;
    SurfaceAir m_nightAir;
    double m_surfaceFrom = 0.0, m_surfaceStart = 0.0, m_surfaceEnd = 0.0;
    // Capped ramps only
    bool m_capped = false;
    bool m_open = false;
    int m_lastDay = 0;
    RoadRules m_road;
    bool m_hasRun = false;  ///< On some day before
    int m_plannedDay = 0;
    std::vector<int> m_held;  ///< Days without air by the weather's hold
    double m_start = 0.0, m_latest = 0.0, m_cap = 0.0, m_liftedVolume = 0.0;
    std::optional<int> m_liftedDay;
};

}  // namespace engine
