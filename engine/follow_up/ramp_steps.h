#pragma once

#include "engine/plan/dawn_rules.h"
#include "engine/pond/pond.h"
#include "engine/ramps/schedule.h"

#include <vector>

namespace engine {

inline constexpr int kDaysAhead = 10;     ///< For which a morning says the minutes
inline constexpr int kDaysAfterStop = 5;  ///< Without air after a stop

/// The rule of a ramp and how far the log has come in it.
class RampSteps {
public:
    /// @param ramp         The ramp meant; null if none is. Must outlive this.
    /// @param capped       Its runs if it is a capped one.
    /// @param untilToday   The air of the log up to today's midnight.
    /// @param today        Number of the day.
    RampSteps(const Ramp* ramp, const Schedule& capped, const Schedule& untilToday, int today);

    /// Days in a row, up to yesterday, that repeated their minutes although the ramp goes on from there.
    [[nodiscard]] int holds() const { return m_holds; }

    /// Minutes of the coming days if every morning said go.
    /// @param isWholeRamp  From the ramp's first step again.
    [[nodiscard]] std::vector<int> going(bool isWholeRamp) const;

    /// Minutes of the coming days after a verdict if every morning after it said go.
    [[nodiscard]] std::vector<int> minutesAfter(DawnVerdict verdict, bool isWholeRamp) const;

private:
    void take(long minutes);
    [[nodiscard]] int rule(int step) const;
    [[nodiscard]] std::vector<int> from(int step, int count) const;
    [[nodiscard]] std::vector<int> resumed(int minutes, int count) const;

    const Ramp* m_ramp;
    Schedule m_capped;
    int m_last = 0;   ///< Minutes of the last day that ran
    int m_step = 0;   ///< Of the ramp, that ran last
    int m_holds = 0;  ///< See holds()
};

/// Minutes that a schedule runs on a day.
[[nodiscard]] double minutesOn(const Schedule& schedule, int day);

}  // namespace engine
