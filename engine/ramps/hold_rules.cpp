#include "engine/ramps/hold_rules.h"

#include "engine/base/units.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_words.h"
#include "engine/ramps/log.h"
#include "engine/ramps/weather.h"
#include "engine/water/parameters.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace engine {
namespace {

std::vector<OutlookDay> daysOfHours(const Pond& pond) {
    struct Sum {
        double airMax = -1e9, wind = 0.0, cloud = 0.0;
        int hours = 0, clouded = 0;
    };
    std::map<int, Sum> byDay;
    for (const WeatherHour& hour : pond.weather.hours) {
        Sum& sum = byDay[static_cast<int>(std::floor(secondsOf(pond, hour.start) / kDay)) + 1];
        sum.airMax = std::max(sum.airMax, hour.air);
        sum.wind += hour.wind;
        ++sum.hours;
        if (hour.cloud_percent) {
            sum.cloud += *hour.cloud_percent;
            ++sum.clouded;
        }
    }
    std::vector<OutlookDay> days;
    for (const auto& [day, sum] : byDay) {
        if (sum.hours < 24) {
            continue;  // half a day has no greatest air
        }
        OutlookDay one{day, sum.airMax, sum.wind / sum.hours, {}};
        if (sum.clouded > 0) {
            one.cloud_percent = sum.cloud / sum.clouded;
        }
        days.push_back(one);
    }
    return days;
}

const OutlookDay* dayOf(std::span<const OutlookDay> outlook, int day) {
    const auto found =
        std::find_if(outlook.begin(), outlook.end(), [day](const OutlookDay& one) { return one.day == day; });
    return found != outlook.end() ? &*found : nullptr;
}

bool isFront(std::span<const OutlookDay> outlook, int day, const HoldRules& rules) {
    const OutlookDay* today = dayOf(outlook, day);
    const OutlookDay* before = dayOf(outlook, day - 1);
    return today != nullptr && before != nullptr && today->airMax && before->airMax && today->cloud_percent &&
           *before->airMax - *today->airMax >= rules.sharpFall &&
           *today->cloud_percent >= rules.frontCloud_percent;
}

}  // namespace

std::vector<OutlookDay> outlookOf(const Pond& pond) {
    if (!pond.weather.hours.empty()) {
        return daysOfHours(pond);
    }
    std::vector<OutlookDay> days;
    for (const WeatherDay& day : pond.weather.days) {
        days.push_back(
            {dayNumber(pond, day.date), day.airMax->value, day.wind->value, day.cloud_percent->value});
    }
    return days;
}

std::vector<HeldSpan> heldByEvents(const Pond& pond, const HoldRules& rules) {
    std::vector<HeldSpan> spans;
    for (const Event& event : eventsInForce(pond)) {
        if (!event.at) {
            continue;
        }
        const int day = static_cast<int>(std::floor(secondsOf(pond, *event.at) / kDay)) + 1;
        if (event.kind == "algaecide" || event.what == "algaecide" || event.what == "copper") {
            const double area = event.area_percent ? event.area_percent->value : 100.0;
            const bool isHeavy = area >= rules.heavyArea_percent;
            spans.push_back(
                {day, isHeavy ? rules.heavyAlgaecide_d : rules.algaecide_d, HoldReason::Algaecide});
        } else if (eventKind(event.kind) == EventKind::BloomChange) {
            spans.push_back({day, rules.bloomChange_d, HoldReason::BloomChange});
        }
    }
    return spans;
}

std::vector<HoldDay> heldByRules(std::span<const OutlookDay> outlook, double surface,
                                 std::span<const HeldSpan> spans, const HoldRules& rules) {
    std::vector<HoldDay> held;
    for (const OutlookDay& today : outlook) {
        if (today.day < 1) {
            continue;
        }
        const int ahead = static_cast<int>(std::ceil(rules.outlook_h / 24.0));
        const int frontAhead = static_cast<int>(std::ceil(rules.front_h / 24.0));
        int overcast = 0;
        bool hot = surface >= rules.hotWater && today.day == 1, calm = false, front = false;
        for (int day = today.day; day < today.day + ahead; ++day) {
            const OutlookDay* one = dayOf(outlook, day);
            if (one == nullptr) {
                continue;
            }
            overcast += one->cloud_percent && *one->cloud_percent >= rules.overcast_percent ? 1 : 0;
            hot = hot || (one->airMax && *one->airMax >= rules.hotAir);
            calm = calm ||
                   (one->wind && one->airMax && *one->wind < rules.calmWind && *one->airMax >= rules.warmAir);
            front =
                front || (day > today.day && day <= today.day + frontAhead && isFront(outlook, day, rules));
        }
        const auto isHeld = [&](HoldReason reason) {
            return std::any_of(spans.begin(), spans.end(), [&](const HeldSpan& span) {
                return span.reason == reason && span.first <= today.day && today.day < span.first + span.days;
            });
        };
        HoldDay one{today.day, {}};
        const auto add = [&one](bool trips, HoldReason reason) {
            if (trips) {
                one.reasons.push_back(reason);
            }
        };
        add(overcast >= rules.overcastDays, HoldReason::DullDays);
        add(hot, HoldReason::Heat);
        add(calm, HoldReason::CalmHeat);
        add(front, HoldReason::ColdFront);
        add(isFront(outlook, today.day, rules), HoldReason::SharpFall);
        add(isHeld(HoldReason::Algaecide), HoldReason::Algaecide);
        add(isHeld(HoldReason::BloomChange), HoldReason::BloomChange);
        if (!one.reasons.empty()) {
            held.push_back(one);
        }
    }
    return held;
}

std::vector<HoldDay> holdCalendar(const Pond& pond, const HoldRules& rules) {
    if (!pond.weather.holdDays.empty()) {
        std::vector<HoldDay> held;
        for (const Date& date : pond.weather.holdDays) {
            held.push_back({dayNumber(pond, date), {HoldReason::OwnCalendar}});
        }
        std::sort(held.begin(), held.end(), [](const HoldDay& a, const HoldDay& b) { return a.day < b.day; });
        return held;
    }
    const std::vector<OutlookDay> outlook = outlookOf(pond);
    return heldByRules(outlook, startProfile(pond).temperature.front(), heldByEvents(pond, rules), rules);
}

std::vector<int> holdDays(const Pond& pond) {
    std::vector<int> days;
    for (const HoldDay& held : holdCalendar(pond)) {
        days.push_back(held.day);
    }
    return days;
}

bool hasDay(std::span<const int> days, int day) {
    return std::find(days.begin(), days.end(), day) != days.end();
}

std::string_view termOf(HoldReason reason) {
    switch (reason) {
        case HoldReason::DullDays:
            return "hold-dull";
        case HoldReason::Heat:
            return "hold-heat";
        case HoldReason::CalmHeat:
            return "hold-calm";
        case HoldReason::ColdFront:
            return "hold-front";
        case HoldReason::SharpFall:
            return "hold-fall";
        case HoldReason::Algaecide:
            return "hold-algaecide";
        case HoldReason::BloomChange:
            return "hold-bloom";
        case HoldReason::OwnCalendar:
            return "hold-own";
    }
    return "";
}

}  // namespace engine
