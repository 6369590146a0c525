#include "engine/intake/first_questions.h"

#include "engine/base/error.h"
#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/intake/pasted_day.h"
#include "engine/pond/key_list.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_check.h"
#include "engine/pond/pond_units.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <type_traits>

namespace engine {
namespace {

FirstField numberField(const char* name, const char* label, const char* key, double FirstAnswers::*number,
                       bool mustBeTold = false) {
    FirstField field{name, label, key};
    field.number = number;
    field.mustBeTold = mustBeTold;
    return field;
}

FirstField openNumber(const char* name, const char* label, const char* key,
                      std::optional<double> FirstAnswers::*number) {
    FirstField field{name, label, key};
    field.maybe = number;
    return field;
}

template <auto member>
FirstField choiceField(const char* name, const char* label, std::vector<const char*> words,
                       std::vector<const char*> texts) {
    FirstField field{name, label};
    field.words = std::move(words);
    field.texts = std::move(texts);
    field.chosen = [](const FirstAnswers& answers) { return static_cast<int>(answers.*member); };
    field.choose = [](FirstAnswers& answers, int index) {
        answers.*member = static_cast<std::remove_reference_t<decltype(answers.*member)>>(index);
    };
    return field;
}

std::vector<FirstQuestion> questionsOfPlace() {
    using A = FirstAnswers;
    return {
        {"What is the pond called?", "As it stands on every paper.", {{"name", "Name of the pond"}}},
        {"Where does it lie: latitude, longitude, elevation?",
         "From a map. South and west are negative, or write 33 S, 90 W.",
         {numberField("latitude", "Latitude", "place.latitude_deg", &A::latitude_deg, true),
          numberField("longitude", "Longitude", "place.longitude_deg", &A::longitude_deg, true),
          numberField("elevation", "Elevation", "place.elevation_m", &A::elevation)}},
        {"When shall the air start?", "As 2026-06-14, June 14 or tomorrow.", {{"first-day", "First day"}}},
        {"How large is it?",
         "From an aerial picture, good to a tenth.",
         {numberField("area", "Area", "basin.area_m2", &A::area, true)}},
        {"How deep is it at its deepest?",
         "A weighted line from a boat.",
         {numberField("depth", "Deepest point", "basin.max_depth_m", &A::maxDepth, true)}},
        {"How many years ago was it dug, or last dredged?",
         "Old ponds owe more oxygen.",
         {numberField("age", "Age", "bottom.age_years", &A::age_years)}},
    };
}

std::vector<FirstQuestion> questionsOfWater() {
    using A = FirstAnswers;
    return {
        {"How is the bottom, and does it smell of rotten eggs?",
         "Push a pole into it at a few places.",
         {choiceField<&A::muck>("muck", "Muck", {"firm", "ankle", "knee", "deep"},
                                {"firm bottom", "ankle-deep muck", "knee-deep muck", "knee-deep or more"}),
          choiceField<&A::smell>("smell", "Smell of the muck", {"none", "faint", "strong"},
                                 {"no smell", "a faint smell", "a strong smell"})}},
        {"How clear is the water?",
         "It stands for the algae, which make and take most of the oxygen.",
         {choiceField<&A::colour>(
             "colour", "Colour of the water", {"clear", "tinted", "soup"},
             {"clear, one sees the bottom", "tinted, one sees a hand at an arm's length", "green soup"})}},
        {"How much of it is under water plants?",
         "",
         {choiceField<&A::weeds>("weeds", "Water plants", {"none", "edge", "half", "most"},
                                 {"none", "along the edge", "about half", "nearly everywhere"})}},
        {"Which fish matter, and are there many?",
         "They decide the stress line.",
         {choiceField<&A::fish>("fish", "Fish", {"bass", "catfish", "carp", "koi", "trout", "perch"},
                                {"bass and bluegill", "catfish", "carp", "koi", "trout", "perch, pike"}),
          choiceField<&A::stock>("stock", "How many fish", {"few", "usual", "many"},
                                 {"few", "as usual", "many"})}},
        {"How much feed do they get in a day?",
         "0 if none.",
         {numberField("feed", "Feed a day", "feed.kg_per_d", &A::feed_kgPerDay)}},
    };
}

std::vector<FirstQuestion> questionsOfAir() {
    using A = FirstAnswers;
    return {
        {"What weather is forecast for the week?",
         "Coldest and warmest of an ordinary day, sky and wind.",
         {numberField("low", "Coldest of a day", "weather.day.air_min_c", &A::airMin),
          numberField("high", "Warmest of a day", "weather.day.air_max_c", &A::airMax),
          choiceField<&A::sky>("sky", "Sky", {"sunny", "mixed", "dull"}, {"sunny", "mixed", "dull"}),
          choiceField<&A::wind>("wind", "Wind", {"calm", "light", "windy"},
                                {"calm", "light wind", "windy"})}},
        {"Which bottom aerator: how many diffusers, and how much air in each?",
         "Leave it open if it is not chosen yet: a usual one is taken.",
         {openNumber("diffusers", "Diffusers", "aerator.diffusers", &A::diffusers),
          openNumber("air", "Air of each", "aerator.free_air_l_per_min", &A::freeAir_lPerMin)}},
    };
}

/// The sentence for a number outside the range of its key, in the unit in which it was typed; else empty.
std::string rangeFault(double value, const NumberRule& rule, const KeyUnit& unit) {
    const auto shown = [&](double file) { return figures(unit.toShown(file)); };
    const std::string name = *unit.text == '\0' ? "" : std::string(" ") + unit.text;
    if (!(value >= rule.low && value <= rule.high) || (rule.above && value <= rule.low)) {
        const double ends[] = {unit.toShown(rule.low), unit.toShown(rule.high)};
        return "The answer is " + shown(value) + name + ", but must be from " +
               figures(std::min(ends[0], ends[1])) + " to " + figures(std::max(ends[0], ends[1])) + name +
               ".";
    }
    return rule.whole && std::floor(value) != value ? "The answer must be a whole number." : "";
}

std::string takeNumber(FirstAnswers& answers, const FirstField& field, std::string_view text,
                       UnitSystem units) {
    const NumberRule& rule = findKey(field.key)->rule;
    const KeyUnit unit = unitIn(rule.unit, units);
    std::optional<double> value = toNumber(text);
    if (value) {
        const std::string withUnit = std::string(text) + " " + unit.text;
        const TypedNumber typed = readTyped(withUnit, rule.unit);
        value = typed.value ? typed.value : value;
        if (units == UnitSystem::Us && typed.value && std::string_view(unit.text) != rule.unit) {
            answers.typed[field.key] = withUnit;
        } else {
            answers.typed.erase(field.key);
        }
    } else {
        const TypedNumber typed = readTyped(text, rule.unit);
        if (!typed.value) {
            return typed.fault;
        }
        value = typed.value;
        answers.typed[field.key] = text;
    }
    std::string fault = rangeFault(*value, rule, unit);
    if (!fault.empty()) {
        answers.typed.erase(field.key);
    } else if (field.number != nullptr) {
        answers.*field.number = *value;
    } else {
        answers.*field.maybe = *value;
    }
    return fault;
}

std::string takeChoice(FirstAnswers& answers, const FirstField& field, std::string_view text) {
    std::string list;
    const std::size_t count = field.words.size();
    for (std::size_t i = 0; i < count; ++i) {
        if (text == field.words[i] || text == field.texts[i] || text == std::to_string(i + 1)) {
            field.choose(answers, static_cast<int>(i));
            return "";
        }
        list += std::string(i == 0 ? "" : i + 1 == count ? " or " : ", ") + field.words[i];
    }
    const std::string near = nearest(text, field.words);
    return "The answer is " + shownText(text) + ", but must be " + list + "." +
           (near.empty() ? "" : " Did you mean " + near + "?");
}

/// A day as people say it: written in full or without its year, a weekday, or "tomorrow"; of those that it
/// may be, the next one. The answer that stands there is the day after today.
std::string takeFirstDay(FirstAnswers& answers, std::string_view text, UnitSystem units) {
    using std::chrono::days;
    const std::chrono::sys_days next(answers.firstDay);
    const bool isIso = text.size() >= 5 && text.find('-') == 4;  // which is read strictly
    const PastedDate said = isIso ? PastedDate{parseDate(text), {}, {}}
                                  : dayOfLine(text, Date(next + days(180)), units == UnitSystem::Metric);
    std::optional<Date> day = said.date;
    if (!day && said.fromFirst) {
        day = Date(next - days(1) + days(*said.fromFirst));
    } else if (!day && said.weekday) {
        auto date = next;
        while (std::chrono::weekday(date).c_encoding() != *said.weekday) {
            date += days(1);
        }
        day = Date(date);
    }
    if (!day || !isSaneYear(*day)) {
        return "The answer is " + shownText(text) + ", but must be a date such as 2026-06-14 or June 14.";
    }
    answers.firstDay = *day;
    return "";
}

}  // namespace

const std::vector<FirstQuestion>& firstQuestions() {
    static const std::vector<FirstQuestion> kAll = [] {
        std::vector<FirstQuestion> all = questionsOfPlace();
        for (std::vector<FirstQuestion> part : {questionsOfWater(), questionsOfAir()}) {
            std::move(part.begin(), part.end(), std::back_inserter(all));
        }
        return all;
    }();
    return kAll;
}

std::string takeAnswer(FirstAnswers& answers, const FirstField& field, std::string_view text,
                       UnitSystem units) {
    if (field.isNumber()) {
        return takeNumber(answers, field, text, units);
    }
    if (field.choose != nullptr) {
        return takeChoice(answers, field, text);
    }
    if (std::string_view(field.name) == "name") {
        answers.name = text;
        return text.empty() ? "The pond needs a name." : "";
    }
    return takeFirstDay(answers, text, units);
}

std::string answerText(const FirstAnswers& answers, const FirstField& field, UnitSystem units) {
    if (field.choose != nullptr) {
        return field.words[static_cast<std::size_t>(field.chosen(answers))];
    }
    if (!field.isNumber()) {
        return std::string_view(field.name) == "name" ? answers.name : formatDate(answers.firstDay);
    }
    const std::optional<double> value =
        field.number != nullptr ? std::optional(answers.*field.number) : answers.*field.maybe;
    const KeyUnit unit = unitIn(findKey(field.key)->rule.unit, units);
    return value ? shortest(toNumber(figures(unit.toShown(*value))).value_or(0.0)) +
                       (*unit.text == '\0' ? "" : std::string(" ") + unit.text)
                 : "";
}

}  // namespace engine
