#include "engine/follow_up/dusk.h"

#include "engine/base/units.h"
#include "engine/follow_up/constants_follow_up.h"
#include "engine/follow_up/morning.h"
#include "engine/follow_up/readings_beside.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

struct Seen {
    double time = 0.0, oxygen = 0.0;
};

/// Fish water of the readings nearest to an hour, between two others.
std::optional<Seen> seenAbout(const PondModel& model, const JudgedLog& log, double midnight, double from_h,
                              double about_h, double to_h) {
    std::optional<double> nearest;
    for (const Reading& reading : log.inForce.readings) {
        const double time = secondsOf(model.pond, *reading.at);
        const double about = midnight + about_h * kHour;
        if (reading.oxygen && time >= midnight + from_h * kHour && time <= midnight + to_h * kHour &&
            (!nearest || std::fabs(time - about) < std::fabs(*nearest - about))) {
            nearest = time;
        }
    }
    if (!nearest) {
        return std::nullopt;
    }
    const double apart = kOneProfile_h.value * kHour;
    const std::optional<double> oxygen =
        readingsBetween(model, log, *nearest - apart, *nearest + apart).fishWater();
    return oxygen ? std::optional(Seen{*nearest, *oxygen}) : std::nullopt;
}

}  // namespace

std::optional<DuskLine> duskLine(const PondModel& model, const JudgedLog& log, int day) {
    const double midnight = (day - 1) * kDay;
    const std::optional<Seen> first = seenAbout(model, log, midnight, kFirstDuskFrom_h.value,
                                                kFirstDusk_h.value, kFirstDuskTo_h.value),
                              second = seenAbout(model, log, midnight, kSecondDuskFrom_h.value,
                                                 kSecondDusk_h.value, kSecondDuskTo_h.value);
    if (!first || !second || second->time - first->time < kDuskApart_h.value * kHour) {
        return std::nullopt;
    }
    DuskLine out{first->time, second->time, first->oxygen, second->oxygen, 0.0, 0.0, 0.0};
    // How often the span between the readings fits between the second and the dawn.
    const double ahead =
        (midnight + kDay + kLineEnds_h.value * kHour - second->time) / (second->time - first->time);
    const double dawn = second->oxygen + ahead * (second->oxygen - first->oxygen);
    const double sigma = kOxygenMeterError * std::hypot(1.0 + ahead, ahead);
    out.dawn = std::max(dawn, 0.0);
    out.low = std::max(dawn - kFivePercent.value * sigma, 0.0);
    out.high = std::max(dawn + kFivePercent.value * sigma, 0.0);
    return out;
}

}  // namespace engine
