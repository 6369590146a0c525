#pragma once

#include "widgets/papers/paper_template.h"

#include <QtGlobal>

#include <array>

namespace widgets {

// The words of the proposal, from top to bottom. Names in braces are values of the run, names behind a line
// say which values it needs or must not have; inserts are set by the paper itself.

inline constexpr std::array kProposal{
    TemplateLine{Say::Heading, QT_TRANSLATE_NOOP("Proposal", "1. Finding and recommendation")},
    TemplateLine{Say::Insert, "advice"},
    TemplateLine{Say::Text,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "With \"{fast}\" the pond would go down to {fastLow} mg/L, on {fastDate}. "
                                   "The stress line is {line} mg/L, the lethal line {lethal} mg/L."),
                 "fast"},
    TemplateLine{
        Say::Text,
        QT_TRANSLATE_NOOP("Proposal", "The stress line is {line} mg/L, the lethal line {lethal} mg/L."),
        "!fast"},
    TemplateLine{Say::Insert, "night"},
    TemplateLine{Say::Insert, "chances"},
    TemplateLine{Say::Small,
                 QT_TRANSLATE_NOOP(
                     "Proposal",
                     "Ponds whose fish would have died in nights like the past ones count for less; what "
                     "is left tells as much as {effective} ponds that all count the same. If all counted "
                     "the same, {plainLethalAlone} of 100 would go below the lethal line left alone. The "
                     "chances describe computed ponds, not the fish of this one. This method has not "
                     "been validated on a measured start of this kind of pond: {checked}."),
                 "effective"},

    TemplateLine{Say::Heading, QT_TRANSLATE_NOOP("Proposal", "2. What we found")},
    TemplateLine{Say::Insert, "found"},
    TemplateLine{Say::Insert, "profileFigure"},
    TemplateLine{Say::Insert, "profileTable"},

    TemplateLine{Say::Heading, QT_TRANSLATE_NOOP("Proposal", "3. Diagnosis")},
    TemplateLine{Say::Insert, "pondSentences"},
    TemplateLine{Say::Subheading, QT_TRANSLATE_NOOP("Proposal", "The pond left alone")},
    TemplateLine{Say::Insert, "nothingSentences"},
    TemplateLine{Say::Insert, "budget"},

    TemplateLine{Say::Heading, QT_TRANSLATE_NOOP("Proposal", "4. Options")},
    TemplateLine{Say::Insert, "options"},
    TemplateLine{Say::Small,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "Worst night and end state: every input at its value. Chances: so "
                                   "many of 100 ponds like this one, over {nights} nights. Added: "
                                   "below the lethal line, with the ramp minus left alone.")},
    TemplateLine{Say::Bullet,
                 QT_TRANSLATE_NOOP(
                     "Proposal",
                     "**Do nothing.** Stands first in every table and picture. A pond that fails left alone "
                     "fails with any ramp; that is neither to the credit nor to the blame of the aerator.")},
    TemplateLine{Say::Bullet,
                 QT_TRANSLATE_NOOP(
                     "Proposal",
                     "**Wait for the cool season.** After the natural turnover in autumn, or before layers "
                     "form in spring, the debt is small and a ramp of two or three days will do (common "
                     "practice, no published source). Nothing is lost by waiting but the summer.")},
    TemplateLine{
        Say::Bullet,
        QT_TRANSLATE_NOOP("Proposal",
                          "**Surface aeration only.** Helps the fish near it on a bad night and leaves the "
                          "bottom as it is. Recommended to stand by with every start in a warm season.")},
    TemplateLine{Say::Bullet,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "**Fewer fish, less feed, fewer nutrients.** Slow, but the only "
                                   "one that lowers what the pond uses at night.")},

    TemplateLine{Say::Insert, "months"},

    TemplateLine{Say::Heading, QT_TRANSLATE_NOOP("Proposal", "5. Design")},
    TemplateLine{Say::Insert, "design"},
    TemplateLine{Say::Text, QT_TRANSLATE_NOOP("Proposal",
                                              "Bubbles mix the water; they hardly add oxygen to it. A "
                                              "diffuser is no life support in a crash.")},

    TemplateLine{Say::Heading, QT_TRANSLATE_NOOP("Proposal", "6. Risk of the start")},
    TemplateLine{Say::Insert, "rampSentences"},
    TemplateLine{Say::Insert, "lows"},
    TemplateLine{Say::Insert, "dose"},
    TemplateLine{Say::Insert, "run"},

    TemplateLine{Say::Heading, QT_TRANSLATE_NOOP("Proposal", "7. Schedule and hold rules")},
    TemplateLine{Say::Insert, "runs"},
    TemplateLine{Say::Small,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "Clock times are the pond\u2019s own, without daylight-saving time. Low: "
                                   "fish-water oxygen of the night, mg/L; one pond in twenty like this one "
                                   "is lower than the first, half are lower than the second. \"Open\" counts "
                                   "diffusers. The dose is the share of the bottom water lifted that day.")},
    TemplateLine{Say::Subheading, QT_TRANSLATE_NOOP("Proposal", "What the dawn reading decides")},
    TemplateLine{Say::Insert, "dawn"},
    TemplateLine{
        Say::Text,
        QT_TRANSLATE_NOOP("Proposal",
                          "A timer holds today\u2019s minutes only. No reading, no run. The schedule is void "
                          "after seven days, a treatment, a storm or a power cut, and while the outlet "
                          "spills, people swim or fish spawn it is held.")},
    TemplateLine{Say::Text,
                 QT_TRANSLATE_NOOP(
                     "Proposal",
                     "Hold as well for the weather: {holdWeather}. These limits are common practice without "
                     "a published source; they are the owner\u2019s and ours to change in writing.")},

    TemplateLine{Say::Heading, QT_TRANSLATE_NOOP("Proposal", "8. Monitoring for sixty days")},
    TemplateLine{Say::Bullet,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "Days 1 to 10, and on every day of a step: oxygen and temperature "
                                   "at dawn, three depths; smell; fish.")},
    TemplateLine{
        Say::Bullet,
        QT_TRANSLATE_NOOP(
            "Proposal",
            "After that weekly: dawn oxygen, Secchi depth, temperature, a photograph from the same place.")},
    TemplateLine{
        Say::Bullet,
        QT_TRANSLATE_NOOP("Proposal",
                          "Nothing is added to the water for thirty to sixty days. At the review one "
                          "thing may be changed, on a part of the pond, and is watched before the next.")},
    TemplateLine{Say::Bullet,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "Readings that are not as computed are entered and the plan is made "
                                   "anew; the new schedule replaces this one.")},

    TemplateLine{Say::Heading, QT_TRANSLATE_NOOP("Proposal", "9. Responsibilities, safety, permits")},
    TemplateLine{Say::Insert, "duties"},
    TemplateLine{
        Say::Bullet,
        QT_TRANSLATE_NOOP(
            "Proposal",
            "Electrical work by a licensed electrician to local code, every circuit on a ground-fault or "
            "residual-current device, compressor on shore, no mains voltage in the water.")},
    TemplateLine{Say::Bullet,
                 QT_TRANSLATE_NOOP(
                     "Proposal",
                     "Boat work by two, life jackets on. Closed pits and sumps may hold hydrogen sulfide.")},
    TemplateLine{
        Say::Bullet,
        QT_TRANSLATE_NOOP("Proposal",
                          "Thin ice wherever air runs in winter: signs, barriers, inspection, permits.")},
    TemplateLine{
        Say::Text,
        QT_TRANSLATE_NOOP("Proposal",
                          "Permits and consents that may be needed here (a list to tick, no legal advice):")},
    TemplateLine{Say::Tick, QT_TRANSLATE_NOOP("Proposal", "Aeration permit")},
    TemplateLine{Say::Tick, QT_TRANSLATE_NOOP("Proposal", "Works in the bed, a stream or a wetland")},
    TemplateLine{Say::Tick, QT_TRANSLATE_NOOP("Proposal", "Dam safety")},
    TemplateLine{Say::Tick, QT_TRANSLATE_NOOP("Proposal", "Discharge of stirred-up water downstream")},
    TemplateLine{Say::Tick, QT_TRANSLATE_NOOP("Proposal", "Landlord and neighbours")},
    TemplateLine{Say::Tick, QT_TRANSLATE_NOOP("Proposal", "Protected species")},

    TemplateLine{Say::Heading,
                 QT_TRANSLATE_NOOP("Proposal", "10. Assumptions, and what would change our mind")},
    TemplateLine{Say::Insert, "assumptions"},
    TemplateLine{Say::Subheading, QT_TRANSLATE_NOOP("Proposal", "What this stands on, worst first")},
    TemplateLine{Say::Insert, "grounds"},
    TemplateLine{Say::Subheading, QT_TRANSLATE_NOOP("Proposal", "What would change our mind")},
    TemplateLine{
        Say::Bullet,
        QT_TRANSLATE_NOOP("Proposal",
                          "A bottle test that finds an oxygen debt outside the range that was taken.")},
    TemplateLine{
        Say::Bullet,
        QT_TRANSLATE_NOOP("Proposal",
                          "A dawn reading more than 1 mg/L away from the model on a calm clear night.")},
    TemplateLine{Say::Bullet, QT_TRANSLATE_NOOP("Proposal",
                                                "A profile older than seven days at the start, a turnover, a "
                                                "bloom that changes colour, a treatment.")},
    TemplateLine{Say::Bullet,
                 QT_TRANSLATE_NOOP("Proposal", "Air flow, depth or number of diffusers other than above.")},
    TemplateLine{Say::Insert, "cautions"},

    TemplateLine{Say::Heading, QT_TRANSLATE_NOOP("Proposal", "11. Price and exclusions")},
    TemplateLine{Say::Insert, "prices"},
    TemplateLine{Say::Insert, "power"},
    TemplateLine{Say::Insert, "exclusions"},

    TemplateLine{Say::Heading, QT_TRANSLATE_NOOP("Proposal", "12. Method and sources")},
    TemplateLine{Say::Text,
                 QT_TRANSLATE_NOOP(
                     "Proposal",
                     "One column of water from surface to bottom, with sun, wind, surface exchange, the "
                     "plume of the diffusers, the oxygen debt of the bottom water, mud, algae and fish, in "
                     "steps of minutes. {members} ponds like this one were drawn (seed {seed}), the same for "
                     "every option. All numbers on this and the accompanying papers come from one run; its "
                     "name below is the SHA-256 of its inputs, and the bundle holds them.")},
    TemplateLine{Say::Text,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "Head of the log that the run was made with: {logHead}. It shows whether "
                                   "entries were changed since, not whether they are true."),
                 "logHead"},
    TemplateLine{
        Say::Small,
        QT_TRANSLATE_NOOP(
            "Proposal",
            "Oxygen saturation: Benson and Krause (1984). Density: UNESCO (1983). Bubble plume: W\u00fcest, "
            "Brooks and Imboden (1992), Water Resources Research 28. Criteria for oxygen: U.S. EPA "
            "440/5-86-003 (1986). Points of a sequence: Sobol, scrambled after Owen (1995). Percentiles: "
            "Hyndman and Fan (1996), type 7. Ramps by doubling, ratios of debt to oxygen, dawn limits and "
            "waiting times: common practice without a published source. Signs in the incident sheet: U.S. "
            "Fish and Wildlife Service, Field Manual for the Investigation of Fish Kills (1990).")},
};

}  // namespace widgets
