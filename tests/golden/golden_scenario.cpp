#include "tests/golden/golden_scenario.h"

#include "engine/base/units.h"
#include "engine/ensemble/compare.h"
#include "engine/pond/pond_io.h"
#include "engine/wording/wording.h"
#include "tests/golden/name_of.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>

namespace engine::test {
namespace {

// Kernels and threads give the same bits, so on one machine nothing is off at all. What another C library
// changes in the last places of sin or exp grows where a threshold turns; a number may be off by a tenth of
// what rounding hides in the sentence that shows it: of 0.05 where it has one decimal, of 0.5 where it has
// none, of 0.5 % where it has three figures.
constexpr double kOneDecimal = 0.005, kNoDecimal = 0.05, kThreeFigures = 0.0005;

/// The decimals with which a number has five figures.
int decimalsOfFive(double value) {
    return value == 0.0 ? 0 : std::max(0, 4 - static_cast<int>(std::floor(std::log10(std::fabs(value)))));
}

std::string quoted(const std::string& text) {
    return "\"" + text + "\"";
}

void addValue(GoldenLine& line, const SentenceValue& value) {
    switch (value.measure) {
        case Measure::Oxygen:
        case Measure::Depth:
        case Measure::Rate:
        case Measure::Hours:
            line.number(value.name, value.number, 3, kOneDecimal);
            return;
        case Measure::Percent:
        case Measure::Minutes:
        case Measure::Volume:
            line.number(value.name, value.number, 2, kNoDecimal);
            return;
        case Measure::Micrograms:
        case Measure::Mass:
        case Measure::Plain:
            line.number(value.name, value.number, decimalsOfFive(value.number),
                        kThreeFigures * std::fabs(value.number));
            return;
        case Measure::Of100:
            line.number(value.name, value.number, 4, 0.0);
            return;
        case Measure::Text:
            line.text(value.name + "=" + quoted(value.text));
            return;
        case Measure::Term:
            line.text(value.name + "=" + value.text);
            return;
        case Measure::Whole:
        case Measure::Degrees:
        case Measure::Input:
        case Measure::Clock:
        case Measure::Day:
            line.text(value.name + "=" + shownValue(value));
            return;
    }
    throw std::logic_error("a measure has no decimals in golden files");
}

void addSentences(const std::vector<Sentence>& sentences, std::vector<GoldenLine>& lines) {
    for (const Sentence& sentence : sentences) {
        GoldenLine& line = lines.emplace_back();
        line.text(std::string(nameOf<SentencePart::Sensitivity>(sentence.part)) + "." +
                  std::string(nameOf<SentenceKey::Count>(sentence.key)));
        for (const SentenceValue& value : sentence.values) {
            addValue(line, value);
        }
        lines.emplace_back().text("   ").text(english(sentence));
    }
}

/// A number that there may be not.
void addIfAny(GoldenLine& line, const char* name, const std::optional<double>& value, int decimals,
              double tolerance) {
    if (value) {
        line.number(name, *value, decimals, tolerance);
    } else {
        line.text(std::string(name) + "=none");
    }
}

void addRun(const Comparison& comparison, const RampRun& run, std::vector<GoldenLine>& lines) {
    const auto lineOf = [&](const char* what) -> GoldenLine& {
        return lines.emplace_back().text(quoted(run.name)).text(what);
    };
    if (run.end != RunEnd::Completed) {
        throw std::runtime_error("the run of " + run.name + " did not complete: " + run.message);
    }
    const DayRow& worst = run.worst();
    lineOf("worst")
        .number("low_mg_per_l", worst.lowest, 3, kOneDecimal)
        .number("night", worst.day, 0, 0.0)
        .number("time_min", worst.lowestTime / kMinute, 0, 0.0);
    lineOf("below")
        .number("stress_h", run.hoursBelowStress, 3, kOneDecimal)
        .number("lethal_h", run.hoursBelowLethal, 3, kOneDecimal);
    addIfAny(lineOf("end"), "state_mg_per_l", run.endState, 3, kOneDecimal);
    const DayRow* largest = run.largestDose();
    const BottomWater& bottom = comparison.model.bottom;
    const bool hasDose = largest != nullptr && bottom.exists();
    GoldenLine& dose = lineOf("dose");
    addIfAny(dose, "percent",
             hasDose ? std::optional(100.0 * largest->liftedVolume / bottom.volume) : std::nullopt, 2,
             kNoDecimal);
    addIfAny(dose, "day", hasDose ? std::optional<double>(largest->day) : std::nullopt, 0, 0.0);
    addIfAny(lineOf("continuous"), "days", run.daysToContinuous, 0, 0.0);
    for (const DayRow& night : run.days) {
        lineOf("night").number("", night.day, 0, 0.0).number("low_mg_per_l", night.lowest, 3, kOneDecimal);
    }
}

}  // namespace

std::vector<GoldenLine> goldenLines(const std::string& scenario) {
    const std::string file = scenario + ".toml";
    const PondReading reading = readPond(std::string(DAWNLINE_SCENARIOS) + "/" + file);
    if (!reading.pond) {
        throw std::runtime_error("the scenario " + scenario + " cannot be read");
    }
    std::vector<GoldenLine> lines;
    lines.emplace_back().text("# What is said of scenarios/" + file +
                              ": sentences as keys with numbers, and in English.");
    lines.emplace_back().text(
        "# Made anew by `bash tests/run --golden`. All is held to the letter but these numbers:");
    lines.emplace_back().text("#   +-0.005  mg/L, mg/L a day, m and h, which have three decimals here");
    lines.emplace_back().text("#   +-0.05   %, min and m^3, which have two");
    lines.emplace_back().text(
        "#   +-0.05 % of itself: kg, g/m^3 of a gas, factors and ratios, which have five figures");
    lines.emplace_back();
    lines.emplace_back().text("# check");
    for (const Diagnostic& warning : reading.diagnostics) {
        lines.emplace_back().text(std::to_string(warning.line)).text(warning.key).text(warning.sentence);
    }
    addSentences(sentencesOf(*reading.pond, file, reading.diagnostics), lines);
    lines.emplace_back();
    lines.emplace_back().text("# compare");
    const Comparison comparison = compare(*reading.pond, {});
    addSentences(sentencesOf(comparison), lines);
    for (const RampRun& run : comparison.runs) {
        lines.emplace_back();
        addRun(comparison, run, lines);
    }
    return lines;
}

}  // namespace engine::test
