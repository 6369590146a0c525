#include "widgets/forms/ramp_kind.h"

#include "engine/ramps/schedule.h"

#include <QCoreApplication>

#include <algorithm>

namespace widgets {
namespace {

constexpr double kFirst_min = 30.0;
constexpr double kAdd_minPerDay = 30.0;
constexpr double kDose_percent = 10.0;
constexpr int kLongestTable = 60;  ///< Days; as long as a capped ramp may take.

/// The minutes that a rule gives, up to the first day of continuous running.
std::vector<double> minutesOf(const engine::Ramp& ramp) {
    std::vector<double> minutes;
    for (int day = 1; day <= kLongestTable; ++day) {
        minutes.push_back(engine::ruleMinutes(ramp, day));
        if (minutes.back() >= engine::kMinutesPerDay) {
            break;
        }
    }
    return minutes;
}

std::vector<double> startTable(const engine::Ramp& ramp) {
    using engine::RampKind;
    if (ramp.kind == RampKind::Doubling || ramp.kind == RampKind::Linear) {
        return minutesOf(ramp);
    }
    engine::Ramp usual;
    usual.kind = RampKind::Doubling;
    usual.first_min = engine::Quantity(kFirst_min);
    return minutesOf(usual);
}

/// Several runs a day cannot know of each other when a capped day's dose is reached.
void dropPulses(engine::Ramp& ramp) {
    const auto several = [](double pulses) { return pulses > 1.0; };
    if (ramp.pulses && std::any_of(ramp.pulses->values.begin(), ramp.pulses->values.end(), several)) {
        ramp.pulses.reset();
    }
}

}  // namespace

void changeKind(engine::Ramp& ramp, engine::RampKind kind) {
    using engine::RampKind;
    if (ramp.kind == kind) {
        return;
    }
    const engine::Ramp old = ramp;
    ramp.kind = kind;
    ramp.first_min.reset();
    ramp.factor.reset();
    ramp.add_minPerDay.reset();
    ramp.dose_percent.reset();
    ramp.hold = false;
    ramp.minutes.clear();
    switch (kind) {
        case RampKind::Continuous:
            break;
        case RampKind::Linear:
            ramp.add_minPerDay = engine::Quantity(kAdd_minPerDay);
            [[fallthrough]];
        case RampKind::Doubling:
            ramp.first_min = old.first_min.value_or(engine::Quantity(kFirst_min));
            if (!old.minutes.empty() && old.minutes.front() >= 1.0) {
                ramp.first_min = engine::Quantity(old.minutes.front());
            }
            break;
        case RampKind::Capped:
            ramp.dose_percent = engine::Quantity(kDose_percent);
            dropPulses(ramp);
            break;
        case RampKind::Table:
            ramp.minutes = startTable(old);
            break;
    }
}

QString kindText(engine::RampKind kind) {
    using engine::RampKind;
    const auto tr = [](const char* text) { return QCoreApplication::translate("RampKind", text); };
    switch (kind) {
        case RampKind::Continuous:
            return tr("Continuous at once");
        case RampKind::Doubling:
            return tr("Doubling daily");
        case RampKind::Linear:
            return tr("Linear");
        case RampKind::Capped:
            return tr("Capped dose");
        case RampKind::Table:
            return tr("Table of minutes");
    }
    return {};
}

}  // namespace widgets
