#pragma once

#include "engine/base/units.h"
#include "engine/ramps/weather.h"
#include "engine/run/warm_night.h"
#include "engine/water/parameters.h"
#include "engine/wording/sentence.h"

#include <array>
#include <cmath>
#include <iterator>
#include <string_view>

namespace engine {

/// Adds sentences of one part to a list.
class SentenceBuilder {
public:
    SentenceBuilder(std::vector<Sentence>& out, SentencePart part) : m_out(out), m_part(part) {}
    void add(SentenceKey key, std::vector<SentenceValue> values = {}) const {
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
[[nodiscard]] inline SentenceValue of100(const char* name, double share) {
    return number(name, Measure::Of100, share);
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

/// What a night without cool water lacks.
[[nodiscard]] std::vector<SentenceValue> waterOf(const WarmNight& night);

/// Which line an amount of oxygen is below; "just" where it is printed as the same number as the line.
[[nodiscard]] SentenceValue crossing(double oxygen, const OxygenThresholds& thresholds);

[[nodiscard]] inline SentenceValue title(const Pond& pond) {
    return pond.title.empty() ? term("title", "untitled") : text("title", pond.title);
}

/// Values and more values.
[[nodiscard]] inline std::vector<SentenceValue> join(std::vector<SentenceValue> values,
                                                     const std::vector<SentenceValue>& more) {
    values.insert(values.end(), more.begin(), more.end());
    return values;
}

/// Puts sentences behind others.
inline void append(std::vector<Sentence>& out, std::vector<Sentence> more) {
    out.insert(out.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

/// The same sentences in the units that a pond file asks for.
[[nodiscard]] inline std::vector<Sentence> inUnitsOf(const Pond& pond, std::vector<Sentence> sentences) {
    for (Sentence& sentence : sentences) {
        sentence.units = pond.units;
    }
    return sentences;
}

/// What the measured profile gives to doubt.
void addProfile(const Pond& pond, const SentenceBuilder& builder);
/// Triage. @param nothing  Do-nothing where it was run, which then comes first if it is below its line.
void addTriage(const PondModel& model, const RampRun* nothing, const SentenceBuilder& builder);
/// What was taken for the oxygen debt, and the ways to it that the pond file has; nothing in a mixed pond.
void addDebt(const PondModel& model, const SentenceBuilder& builder);
/// Where the bottom water begins and what holds it down there.
void addBottomWater(const PondModel& model, const SentenceBuilder& builder);

/// Attribution of a run's worst night: what it would be without its greatest causes.
void addAttribution(const RampRun& run, const SentenceBuilder& builder);
/// What is left of the water that is cool enough, where the fish need cool water.
void addHabitat(const Comparison& comparison, const RampRun& run, const SentenceBuilder& builder);
/// The greatest un-ionised ammonia and hydrogen sulfide where the fish are, against their limits.
void addToxicants(const Comparison& comparison, const RampRun& run, const SentenceBuilder& builder);
/// Layers that salt holds and a thermometer does not see.
void addSaltLayer(const PondModel& model, const SentenceBuilder& builder);

/// How many of 100 ponds go below each line with a ramp and left alone, and how many more that is, always
/// together; of do-nothing its own. Nothing without members.
void addChances(const Comparison& comparison, std::size_t run, const SentenceBuilder& builder);
/// What the members are, or that there are none.
void addMembers(const Comparison& comparison, const SentenceBuilder& builder);

/// What is assumed for a pond, given or not.
void addAssumptions(const Comparison& comparison, const SentenceBuilder& builder);
/// What no one may forget who reads a comparison.
void addCautions(const PondModel& model, const SentenceBuilder& builder);

}  // namespace engine
