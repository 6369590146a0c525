#pragma once

#include "engine/advice/advice.h"
#include "engine/ramps/hold_rules.h"
#include "engine/wording/sentence.h"

namespace engine {

/// What is advised about a ramp, all of it (part Advice): the answer in one sentence, the chances with and
/// without, what stands against a start and what would lift it, hold days, readings, why it is provisional.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Advice& advice, const PondModel& model);

/// The answer alone, in one sentence.
[[nodiscard]] Sentence verdictOf(const Advice& advice, const PondModel& model);

/// Of 100 ponds like this one, how many go below a line with the ramp and left alone, and how many more that
/// is; nothing without members.
[[nodiscard]] std::vector<Sentence> chanceSentences(const Advice& advice, const PondModel& model);

/// A start in each month of the calendar, and what that rests on (part Calendar); nothing without one.
[[nodiscard]] std::vector<Sentence> sentencesOf(const StartCalendar& calendar, const PondModel& model);

/// All that a plan says, its answer first.
[[nodiscard]] std::vector<Sentence> sentencesOf(const Plan& plan, const Advice& advice);

/// The weather that holds a start or a step, by the rules of the hold calendar: a part of a sentence, without
/// a full stop.
[[nodiscard]] Sentence holdWeather(const HoldRules& rules = {});

class SentenceBuilder;
/// Why an answer is provisional, and what lifts that.
void addProvisional(const Advice& advice, const SentenceBuilder& builder);

}  // namespace engine
