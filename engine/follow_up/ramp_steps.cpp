#include "engine/follow_up/ramp_steps.h"

#include "engine/base/units.h"
#include "engine/follow_up/constants_follow_up.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

void append(std::vector<int>& to, const std::vector<int>& more) {
    to.insert(to.end(), more.begin(), more.end());
}

}  // namespace

double minutesOn(const Schedule& schedule, int day) {
    return runningBetween(schedule, (day - 1) * kDay, day * kDay) / kMinute;
}

RampSteps::RampSteps(const Ramp* ramp, const Schedule& capped, const Schedule& untilToday, int today)
    : m_ramp(ramp), m_capped(capped) {
    for (int day = 1; day < today; ++day) {
        take(std::lround(minutesOn(untilToday, day)));
    }
}

std::vector<int> RampSteps::going(bool isWholeRamp) const {
    return from(isWholeRamp ? 1 : m_step + 1, kDaysAhead);
}

std::vector<int> RampSteps::minutesAfter(DawnVerdict verdict, bool isWholeRamp) const {
    std::vector<int> out;
    switch (verdict) {
        case DawnVerdict::Go:
            return going(isWholeRamp);
        case DawnVerdict::Hold:
            out = {m_last};  // before the first start: nothing
            append(out, from(m_step + 1, kDaysAhead - 1));
            break;
        case DawnVerdict::Back:
            out = {0};
            append(out, resumed(std::max(m_last / 2, m_last > 0 ? 1 : 0), kDaysAhead - 1));
            break;
        case DawnVerdict::Stop:
            out.assign(kDaysAfterStop, 0);
            append(out, resumed(static_cast<int>(std::lround(kAfterStop.value * m_last)),
                                kDaysAhead - kDaysAfterStop));
            break;
    }
    return out;
}

/// A day of the log. One that was held repeats its minutes and is no step; where the ramp itself is level,
/// the same minutes are a step all the same.
void RampSteps::take(long minutes) {
    if (minutes == 0) {
        m_holds = 0;
        return;
    }
    const bool isCapped = m_ramp != nullptr && m_ramp->kind == RampKind::Capped;
    if (m_step == 0 || minutes >= rule(m_step + 1)) {
        ++m_step;
        m_holds = 0;
    } else if (minutes == m_last) {
        ++m_holds;
    } else {
        m_step += isCapped ? 1 : 0;
        m_holds = 0;
    }
    // The ramp stands where its minutes are.
    while (!isCapped && m_step > 1 && rule(m_step) > minutes) {
        --m_step;
    }
    m_last = static_cast<int>(minutes);
}

int RampSteps::rule(int step) const {
    if (m_ramp == nullptr) {
        return 0;
    }
    if (m_ramp->kind == RampKind::Capped) {
        return static_cast<int>(std::lround(minutesOn(m_capped, step)));
    }
    return ruleMinutes(*m_ramp, step);
}

std::vector<int> RampSteps::from(int step, int count) const {
    std::vector<int> out;
    for (int i = 0; i < count; ++i) {
        out.push_back(rule(step + i));
    }
    return out;
}

/// From `minutes` on as the ramp goes on from the step that is nearest below.
std::vector<int> RampSteps::resumed(int minutes, int count) const {
    int step = 1;
    while (step < kLongestRamp && rule(step + 1) <= minutes && rule(step + 1) > rule(step)) {
        ++step;
    }
    std::vector<int> out{minutes};
    append(out, from(step + 1, std::max(count - 1, 0)));
    return out;
}

}  // namespace engine
