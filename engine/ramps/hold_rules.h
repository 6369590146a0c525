#pragma once

#include "engine/pond/pond.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace engine {

/// Why a day is held: no start and no step up on it.
enum class HoldReason {
    DullDays,     ///< Overcast days come together
    Heat,         ///< Air, or the water, is too warm
    CalmHeat,     ///< No wind while it is warm
    ColdFront,    ///< A front or a storm comes, a natural turnover beside the aerator's
    SharpFall,    ///< Air falls sharply on the day itself
    Algaecide,    ///< Algae were treated lately and rot
    BloomChange,  ///< The bloom has changed its colour lately, as before it collapses
    OwnCalendar,  ///< The pond file names the day itself
};

/// Thresholds of the hold calendar. Common practice without a published source, but for the causes that the
/// docstrings name; an owner's consultant may set others.
struct HoldRules {
    double outlook_h = 72.0;         ///< How far ahead days are looked at
    double overcast_percent = 70.0;  ///< Cloud of an overcast day (judgement: the trade gives no number)
    int overcastDays = 2;    ///< That many within the outlook hold; calm, cloudy and hot is when oxygen is
                             ///< lowest (Kansas and Kentucky extension sheets, as the trade quotes them)
    double hotAir = 35.0;    ///< Greatest air of a day [degC]
    double hotWater = 30.0;  ///< Surface water at the start [degC] (Kentucky State University WKY-211)
    double calmWind = 1.5;   ///< Mean wind of a day [m/s], with heat
    double warmAir = 28.0;   ///< What counts as heat together with calm: greatest air [degC] (judgement)
    double front_h = 48.0;   ///< How far ahead a front or storm is looked for
    double sharpFall = 5.0;  ///< Fall of the greatest air from day to day [K] that, with cloud, is a front
    double frontCloud_percent = 60.0;  ///< Cloud on such a day, which stands for its rain (judgement)
    int algaecide_d = 14;              ///< Days after a treatment
    int heavyAlgaecide_d = 21;         ///< ... of so much of the area:
    double heavyArea_percent = 50.0;   ///< (judgement); a treatment without an area is of the whole pond
    int bloomChange_d = 3;             ///< Days from a change of the bloom's colour on, as the outlook's 72 h
};

/// What is known of one day ahead; empty numbers are not known and trip nothing.
struct OutlookDay {
    int day = 0;                                        ///< 1 is the pond's first day
    std::optional<double> airMax, wind, cloud_percent;  ///< [degC], [m/s]
};

/// Days of the pond file's own weather, in order; those of an hourly file are put together from its hours.
[[nodiscard]] std::vector<OutlookDay> outlookOf(const Pond& pond);

/// A day on which nothing is started or stepped up, and why; the reasons in the order of HoldReason.
struct HoldDay {
    int day = 0;
    std::vector<HoldReason> reasons;
};

/// Days held because of something that was done or seen.
struct HeldSpan {
    int first = 1;  ///< 0 or less before the first day
    int days = 0;
    HoldReason reason{};
};

/// What of a pond's log holds days: events of kind "algaecide" and treatments with copper or an algaecide;
/// changes of the bloom.
[[nodiscard]] std::vector<HeldSpan> heldByEvents(const Pond& pond, const HoldRules& rules = {});

/// The days held by the rules, from day 1 to the last of the outlook. Days without an outlook are not held.
/// @param surface  Temperature of the surface water now [degC].
/// @param spans    Held besides.
[[nodiscard]] std::vector<HoldDay> heldByRules(std::span<const OutlookDay> outlook, double surface,
                                               std::span<const HeldSpan> spans, const HoldRules& rules);

/// The hold calendar of a pond: the days that its file names (weather.hold_days), or, where it names none,
/// those of the rules under its own weather and log.
[[nodiscard]] std::vector<HoldDay> holdCalendar(const Pond& pond, const HoldRules& rules = {});

/// The days of the hold calendar alone.
[[nodiscard]] std::vector<int> holdDays(const Pond& pond);

/// True if a list of days has a day.
[[nodiscard]] bool hasDay(std::span<const int> days, int day);

/// The term of a reason, for sentences.
[[nodiscard]] std::string_view termOf(HoldReason reason);

}  // namespace engine
