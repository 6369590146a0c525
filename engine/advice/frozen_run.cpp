#include "engine/advice/frozen_run.h"

#include "engine/base/digest.h"
#include "engine/base/text_file.h"
#include "engine/ensemble/chances.h"
#include "engine/pond/epw.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_check.h"
#include "engine/pond/pond_io.h"
#include "engine/pond/readings_csv.h"
#include "engine/pond/weather_csv.h"
#include "engine/ramps/log.h"

#include <algorithm>
#include <tuple>

namespace engine {
namespace {

/// The bytes of a file that a pond names, or why there are none.
struct Companion {
    std::string text;
    std::string fault;
};

Companion companionOf(const std::filesystem::path& path) {
    FileText file = readWholeFile(path, kCsvFileLimit_bytes);
    if (!file.text) {
        return {{}, "The file " + shownPath(path) + " cannot be used: " + file.fault};
    }
    if (const auto fault = findTextFault(*file.text)) {
        return {{}, "The file " + shownPath(path) + " cannot be used: " + fault->sentence};
    }
    return {std::move(*file.text), {}};
}

std::string firstError(const Diagnostics& said) {
    const auto error = std::find_if(said.begin(), said.end(),
                                    [](const Diagnostic& one) { return one.severity == Severity::Error; });
    return error == said.end() ? std::string() : format(*error);
}

std::optional<Review> reviewOf(const Pond& pond, const RunStamp& stamp, const RunControl& control) {
    FitOptions options;
    options.members = kReviewMembers;
    options.seed = stamp.seed;
    Review review = reviewPond(pond, options, {control.stop, {}});
    return review.isDone ? std::optional(std::move(review)) : std::nullopt;
}

bool isDone(const RampRun& run) {
    return run.end == RunEnd::Completed;
}

}  // namespace

std::string nameOf(const FrozenRun& run) {
    return sha256(statementOf(run.files, run.stamp));
}

std::variant<FrozenPond, std::string> freeze(const Pond& pond, const std::filesystem::path& path) {
    FrozenPond frozen{pond, {{std::string(kFrozenPond), {}}}};
    Diagnostics said;
    const auto take = [&](std::string& named, const std::string& name) {
        Companion companion = companionOf(path.parent_path() / named);
        named = name;
        frozen.files.push_back({name, std::move(companion.text)});
        return companion.fault;
    };
    Weather& weather = frozen.pond.weather;
    if (!weather.file.empty()) {
        if (std::string fault = take(weather.file, std::string(kFrozenWeather)); !fault.empty()) {
            return fault;
        }
        weather.hours = readWeatherCsv(frozen.files.back().text, std::string(kFrozenWeather),
                                       weather.stamp.value_or(HourStamp::Start), said);
    }
    if (!frozen.pond.readingsFile.name.empty()) {
        if (std::string fault = take(frozen.pond.readingsFile.name, std::string(kFrozenReadings));
            !fault.empty()) {
            return fault;
        }
        frozen.pond.fileReadings = readReadingsCsv(
            frozen.files.back().text, std::string(kFrozenReadings), frozen.pond.readingsFile,
            deepestPoint(pond.basin), said,
            pond.place.utcOffset_h ? std::optional(pond.place.utcOffset_h->value) : std::nullopt);
    }
    Climate& climate = frozen.pond.climate;
    if (!climate.file.empty()) {
        if (std::string fault = take(climate.file, std::string(kFrozenClimate)); !fault.empty()) {
            return fault;
        }
        climate.fileMonths = readEpw(frozen.files.back().text, std::string(kFrozenClimate), pond.place, said);
    }
    if (std::string fault = firstError(said); !fault.empty()) {
        return fault;
    }
    frozen.files.front().text = writePond(frozen.pond);
    return frozen;
}

FrozenRun runFrozen(const FrozenPond& frozen, RunStamp stamp, std::optional<int> nights,
                    const RunControl& control, const Comparison* earlier) {
    CompareOptions options;
    options.days = nights;
    options.members = stamp.members;
    options.seed = stamp.seed;
    options.earlier = earlier;
    FrozenRun run{frozen.files, std::move(stamp), compare(frozen.pond, options, control)};
    run.stamp.nights = run.comparison.days;
    const bool isWhole = engine::isWhole(run.comparison);
    const std::size_t plan = plannedRamp(run.comparison, run.stamp.ramp);
    if (isWhole) {
        Answered answer = answered(std::move(run.comparison), plan, 0, control);
        run.comparison = std::move(answer.comparison);
        run.advice = std::move(answer.advice);
        if (run.comparison.model.pond.ramps.size() > frozen.pond.ramps.size()) {
            Pond with = frozen.pond;
            with.ramps.push_back(run.comparison.model.pond.ramps.back());
            run.files.front().text = writePond(with);
        }
    }
    run.review = reviewOf(frozen.pond, run.stamp, control);
    run.stamp.ramp = run.comparison.runs[isWhole ? run.advice.run : plan].name;
    return run;
}

std::size_t plannedRamp(const Comparison& comparison, std::string_view asked) {
    const Ramp* meant = rampMeant(comparison.model.pond);
    const std::string_view wanted = !asked.empty() ? asked : meant != nullptr ? meant->name : asked;
    std::size_t best = 0;
    std::tuple<double, double> least;
    for (std::size_t i = 1; i < comparison.runs.size(); ++i) {
        const RampRun& run = comparison.runs[i];
        if (!isDone(run)) {
            continue;
        }
        if (run.name == wanted) {
            return i;
        }
        const std::tuple rank(chancesOf(comparison, run).added.value_or(0.0), -run.worst().lowest);
        if (best == 0 || rank < least) {
            best = i;
            least = rank;
        }
    }
    return best;
}

std::optional<std::size_t> fastestRamp(const Comparison& comparison, std::size_t plan) {
    std::size_t best = 0;
    std::tuple<int, double> least;
    for (std::size_t i = 1; i < comparison.runs.size(); ++i) {
        const RampRun& run = comparison.runs[i];
        if (!isDone(run)) {
            continue;
        }
        const DayRow* largest = run.largestDose();
        const std::tuple rank(run.daysToContinuous.value_or(comparison.days + 1),
                              largest == nullptr ? 0.0 : -largest->liftedVolume);
        if (best == 0 || rank < least) {
            best = i;
            least = rank;
        }
    }
    return best == 0 || best == plan ? std::nullopt : std::optional(best);
}

}  // namespace engine
