#pragma once

#include "engine/base/error.h"
#include "engine/ensemble/compare.h"
#include "engine/pond/pond.h"
#include "engine/wording/sentence_keys.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// Where a sentence stands.
enum class SentencePart {
    File,
    Profile,  ///< Doubts about the readings
    Triage,   ///< Before anything is run
    Pond,
    DoNothing,
    Ramp,
    Shares,  ///< Which input moves the worst low how much
    Visit,   ///< What to measure, cheapest certainty first
    Assumption,
    Grounds,  ///< What is not measured, and what would better it
    Caution,
    Files,
    Night,
    NightDetail,
    Advice,
    Log,
    Fit,
    Today,
    DaysAhead,
    Incident,
    IncidentSigns,
    IncidentSteps,
    Review,
    Treatments,
    Plan,
    EndStates,
    Calendar,  ///< A start in each of the next twelve months
    Holds,
    Sensitivity
};

/// What a number is, which decides how it is shown; always in house units.
enum class Measure {
    Text,        ///< As it is: a name the user gave.
    Term,        ///< A word of the pond file that the wording knows, such as "sport".
    Whole,       ///< A count, a day or a night.
    Oxygen,      ///< [g/m^3]
    Micrograms,  ///< [g/m^3], shown in ug/L
    Rate,        ///< [g/m^3/d]
    Depth,       ///< [m]
    Volume,      ///< [m^3]
    Mass,        ///< [kg]
    Degrees,     ///< [degC]
    Minutes,     ///< [min]
    Hours,       ///< [h]
    Percent,     ///< [%]
    Of100,       ///< A share, 0 to 1, as so many of 100 ponds.
    Plain,       ///< Two significant decimals: a ratio, a factor.
    Input,       ///< As a pond file would hold it: the shortest form.
    Clock,       ///< [s] after local midnight of day 1, shown as the time of day.
    Day          ///< Days since 1970-01-01, shown as a date.
};

struct SentenceValue {
    std::string name;  ///< Of the place in the template.
    Measure measure = Measure::Whole;
    double number = 0.0;
    std::string text;  ///< With Measure::Text and Measure::Term.
    bool operator==(const SentenceValue&) const = default;
};

struct Sentence {
    SentencePart part = SentencePart::Pond;
    SentenceKey key = SentenceKey::Count;
    std::vector<SentenceValue> values;
    std::optional<UnitSystem> units = std::nullopt;  ///< Which stand first; absent: by the user's locale
    bool operator==(const Sentence&) const = default;
};

/// True of what the trade makes of a profile without any run: a rating of the start, which no computed answer
/// has to stand beside.
[[nodiscard]] bool isRuleOfThumb(SentenceKey key);

/// All that a comparison says, in the order in which it is said: the pond without the new aerator first,
/// what the profile gives to doubt, triage, the pond, each ramp in the order of the file, what was assumed,
/// and the cautions.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Comparison& comparison);

/// What one night is about: the lowest ramp, the selected one and do-nothing (part Night), and why that
/// ramp's worst night is as low as it is (part NightDetail; nothing as long as the attribution is not known).
/// @param night     1 to comparison.days.
/// @param selected  Index into comparison.runs; 0 is do-nothing.
[[nodiscard]] std::vector<Sentence> sentencesOfNight(const Comparison& comparison, int night,
                                                     std::size_t selected);

/// What all nights of one ramp come to, in the same parts.
[[nodiscard]] std::vector<Sentence> sentencesOfNights(const Comparison& comparison, std::size_t selected);

/// All that a plan says: do-nothing first where it alone exceeds the wanted share.
[[nodiscard]] std::vector<Sentence> sentencesOf(const struct Plan& plan);

/// Of 100 ponds like this one, how many go below each line under a ramp and left alone (part NightDetail);
/// nothing as long as there are no members of that ramp and of do-nothing.
[[nodiscard]] std::vector<Sentence> sentencesOfChances(const Comparison& comparison, std::size_t selected);

/// Where the tables went. @param folder  As it is shown.
[[nodiscard]] Sentence filesWritten(const std::string& folder);

/// What a good pond file holds, what its profile gives to doubt, and triage; runs nothing.
/// @param file         Its path as the user gave it.
/// @param diagnostics  Of its reading; none is an error.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Pond& pond, const std::string& file,
                                                const Diagnostics& diagnostics);

}  // namespace engine
