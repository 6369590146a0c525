#pragma once

#include "engine/base/units.h"
#include "engine/ramps/weather.h"
#include "engine/wording/sentence.h"

#include <array>
#include <cmath>
#include <string_view>

namespace engine {

/// Says sentences of one part.
class Speaker {
public:
    Speaker(std::vector<Sentence>& out, SentencePart part) : m_out(out), m_part(part) {}
    void say(SentenceKey key, std::vector<SentenceValue> values = {}) const {
        m_out.push_back({m_part, key, std::move(values)});
    }

private:
    std::vector<Sentence>& m_out;
    SentencePart m_part;
};

[[nodiscard]] inline SentenceValue number(const char* name, Measure measure, double value) {
    return {name, measure, value, {}};
}
[[nodiscard]] inline SentenceValue whole(const char* name, int value) {
    return number(name, Measure::Whole, value);
}
[[nodiscard]] inline SentenceValue oxygen(const char* name, double value) {
    return number(name, Measure::Oxygen, value);
}
[[nodiscard]] inline SentenceValue ofTen(const char* name, double share) {
    return number(name, Measure::OfTen, share);
}
[[nodiscard]] inline SentenceValue text(const char* name, std::string_view value) {
    return {name, Measure::Text, 0.0, std::string(value)};
}
[[nodiscard]] inline SentenceValue term(const char* name, std::string_view value) {
    return {name, Measure::Term, 0.0, std::string(value)};
}
[[nodiscard]] inline SentenceValue day(const char* name, Date date) {
    return number(name, Measure::Day,
                  static_cast<double>(std::chrono::sys_days(date).time_since_epoch().count()));
}

[[nodiscard]] inline SentenceValue title(const Pond& pond) {
    return pond.title.empty() ? term("title", "untitled") : text("title", pond.title);
}

/// The same sentences in the units that a pond file asks for.
[[nodiscard]] inline std::vector<Sentence> inUnitsOf(const Pond& pond, std::vector<Sentence> sentences) {
    for (Sentence& sentence : sentences) {
        sentence.units = pond.units;
    }
    return sentences;
}

/// What the measured profile gives to doubt.
void sayProfile(const Pond& pond, const Speaker& speaker);
/// Triage. @param nothing  Do-nothing where it was run, which then comes first if it is below its line.
void sayTriage(const PondModel& model, const RampRun* nothing, const Speaker& speaker);
/// What was taken for the oxygen debt, and the ways to it that the pond file has; nothing in a mixed pond.
void sayDebt(const PondModel& model, const Speaker& speaker);
/// Where the bottom water begins and what holds it down there.
void sayBottomWater(const PondModel& model, const Speaker& speaker);

/// What a run's worst night would be without its greatest causes.
void sayCauses(const RampRun& run, const Speaker& speaker);
/// What is left of the water that is cool enough, where the fish need cool water.
void sayHabitat(const Comparison& comparison, const RampRun& run, const Speaker& speaker);
/// The greatest un-ionised ammonia and hydrogen sulfide where the fish are, against their limits.
void sayPoisons(const Comparison& comparison, const RampRun& run, const Speaker& speaker);
/// Layers that salt holds and a thermometer does not see.
void saySaltLayer(const PondModel& model, const Speaker& speaker);

/// How many of ten ponds go below the lines without the new aerator, and with a ramp: there the chance with
/// it, the pond's own and what the ramp adds, always together. Nothing without members.
void sayNothingChances(const Comparison& comparison, const Speaker& speaker);
void sayRampChances(const Comparison& comparison, const RampRun& run, const Speaker& speaker);
/// What the members are, or that there are none.
void sayMembers(const Comparison& comparison, const Speaker& speaker);

/// What is assumed for a pond, given or not.
void sayAssumptions(const Comparison& comparison, const Speaker& speaker);
/// What no one may forget who reads a comparison.
void sayCautions(const PondModel& model, const Speaker& speaker);

}  // namespace engine
