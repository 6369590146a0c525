#include "widgets/charts/night_scene.h"

#include "engine/base/units.h"
#include "engine/ensemble/chances.h"
#include "engine/follow_up/readings_beside.h"
#include "engine/output/picture_tables.h"
#include "engine/pond/local_time.h"
#include "engine/water/oxygen_state.h"
#include "engine/wording/grounds.h"
#include "engine/wording/sentence.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr std::size_t kMostNamedNights = 16;  // more names at the end of lines are no longer read

QString tr(const char* text) {
    return QCoreApplication::translate("NightScene", text);
}

/// Hours after the noon at which a night starts.
double hourOf(int night, double time) {
    return (time - engine::noonOf(night)) / engine::kHour;
}

NightLine lineOf(const engine::Comparison& comparison, std::size_t index, int night) {
    const engine::RampRun& run = comparison.runs[index];
    NightLine line;
    static_cast<engine::NightCurve&>(line) = engine::nightCurve(run, night);
    line.look = lookOf(comparison, index);
    line.name = rampText(run.name, index);
    return line;
}

/// The lowest of the ramps in the night, if it prints lower than the selected one; else the selected one.
std::size_t lowestSaid(const Outcome& outcome, const Selection& selection) {
    const auto& runs = outcome.comparison.runs;
    std::vector<std::size_t> ramps = visibleRuns(outcome.comparison, selection);
    std::erase(ramps, std::size_t{0});
    const std::size_t lowest = engine::lowestRun(runs, ramps, selection.night()).value_or(selection.ramp());
    const auto text = [&](std::size_t run) {
        return oxygenText(engine::nightRow(runs[run], selection.night()).lowest);
    };
    const bool isSame =
        isVisible(runs[selection.ramp()], selection) && text(lowest) == text(selection.ramp());
    return isSame ? selection.ramp() : lowest;
}

void addRamps(const Outcome& outcome, const Selection& selection, const SceneOptions& options,
              NightScene& scene) {
    const int night = selection.night();
    if (options.ghost && night > 1) {
        for (const std::size_t i : visibleRuns(outcome.comparison, selection)) {
            scene.lines.push_back(lineOf(outcome.comparison, i, night - 1));
            scene.lines.back().isGhost = true;
            scene.lines.back().isLabelled = false;
        }
    }
    const std::size_t lowest = lowestSaid(outcome, selection);
    for (const std::size_t i : drawingOrder(outcome.comparison, selection)) {
        scene.lines.push_back(lineOf(outcome.comparison, i, night));
        scene.lines.back().isHeavy = i == selection.ramp();
        scene.lines.back().isLowSaid = i == selection.ramp() || i == lowest;
    }
}

void addNights(const Outcome& outcome, const Selection& selection, NightScene& scene) {
    const auto& runs = outcome.comparison.runs;
    const std::size_t ramp = selection.ramp();
    if (!isDrawn(runs[ramp])) {
        return;
    }
    const bool areAllNamed = runs[ramp].days.size() <= kMostNamedNights;
    const int worst = runs[ramp].worst().day;
    for (const engine::DayRow& row : runs[ramp].days) {
        if (row.day != selection.night()) {
            scene.lines.push_back(lineOf(outcome.comparison, ramp, row.day));
            NightLine& line = scene.lines.back();
            line.isGhost = true;
            line.isLabelled = areAllNamed || row.day == worst;
            line.isLowSaid = row.day == worst;
            line.name = tr("night %1").arg(row.day);
        }
    }
    if (ramp != 0 && isDrawn(runs[0])) {
        scene.lines.push_back(lineOf(outcome.comparison, 0, selection.night()));
        scene.lines.back().name = tr("do nothing, night %1").arg(selection.night());
    }
    scene.lines.push_back(lineOf(outcome.comparison, ramp, selection.night()));
    scene.lines.back().isHeavy = true;
    scene.lines.back().isLowSaid = true;
    scene.lines.back().name = tr("night %1").arg(selection.night());
}

/// Nine of ten members of a run; nothing while there are none.
void addBand(const Outcome& outcome, std::size_t run, int night, NightScene& scene) {
    if (engine::membersOf(outcome.comparison, run) != nullptr) {
        scene.bands.push_back(bandOf(outcome.comparison, run, night));
    }
}

/// Of the selected ramp alone: two bands over each other cannot be told apart in grey.
void addBands(const Outcome& outcome, const Selection& selection, NightScene& scene) {
    if (isVisible(outcome.comparison.runs[selection.ramp()], selection)) {
        addBand(outcome, selection.ramp(), selection.night(), scene);
    }
}

void addSky(const engine::NightSky& sky, NightScene& scene) {
    const auto hours = [&](const std::optional<double>& time) {
        return time ? std::optional(hourOf(sky.night, *time)) : std::nullopt;
    };
    scene.sunset = hours(sky.sunset);
    scene.civilDusk = hours(sky.civilDusk);
    scene.nauticalDusk = hours(sky.nauticalDusk);
    scene.nauticalDawn = hours(sky.nauticalDawn);
    scene.civilDawn = hours(sky.civilDawn);
    scene.sunrise = hours(sky.sunrise);
}

void addReadings(const Outcome& outcome, const Selection& selection, NightScene& scene) {
    const engine::PondModel& model = outcome.comparison.model;
    const engine::RampRun& run = outcome.comparison.runs[selection.ramp()];
    for (const engine::ReadingBeside& beside : engine::readingsBeside(model, run)) {
        NightReading reading;
        reading.hour = hourOf(selection.night(), beside.time);
        if (reading.hour < 0.0 || reading.hour > 24.0) {
            continue;
        }
        reading.oxygen = beside.oxygen;
        reading.error = engine::kOxygenMeterError;
        reading.depth = beside.depth;
        reading.isDeep = model.bottom.exists() && beside.depth > model.bottom.depth;
        reading.depthName = depthText(beside.depth, unitsOf(model.pond));
        const QString& depth = reading.depthName;
        reading.text = beside.model ? tr("Read at %1, %2 down: %3 mg/L; the model has %4 mg/L there.")
                                          .arg(clockText(beside.time), depth, oxygenText(beside.oxygen),
                                               oxygenText(*beside.model))
                                    : tr("Read at %1, %2 down: %3 mg/L.")
                                          .arg(clockText(beside.time), depth, oxygenText(beside.oxygen));
        scene.readings.push_back(reading);
    }
}

/// The same for all nights, so that the axis keeps still while they are played.
double highestOfAll(const Outcome& outcome, std::size_t ramp) {
    double highest = highestFishWater(outcome.comparison, 0.0);
    if (const engine::RampEnsemble* members = engine::membersOf(outcome.comparison, ramp)) {
        for (const engine::Percentiles& hour : members->fishWater) {
            highest = std::max(highest, hour.back());
        }
    }
    return highest;
}

/// Highest of what the picture shows in its hours.
double highestShown(const NightScene& scene) {
    double highest = 1.0;
    const auto look = [&](const std::vector<double>& hour, const std::vector<double>& oxygen) {
        for (std::size_t i = 0; i < hour.size(); ++i) {
            if (hour[i] >= scene.from - 1.0 && hour[i] <= scene.to + 1.0) {
                highest = std::max(highest, oxygen[i]);
            }
        }
    };
    for (const NightLine& line : scene.lines) {
        look(line.hour, line.oxygen);
    }
    for (const NightBand& band : scene.bands) {
        look(band.hour, band.high);
    }
    for (const NightReading& reading : scene.readings) {
        if (reading.hour >= scene.from && reading.hour <= scene.to) {
            highest = std::max(highest, reading.oxygen + reading.error);
        }
    }
    return highest;
}

}  // namespace

NightBand bandOf(const engine::Comparison& comparison, std::size_t run, int night) {
    NightBand band;
    if (const engine::RampEnsemble* members = engine::membersOf(comparison, run)) {
        static_cast<engine::PercentileBand&>(band) = engine::nightBand(*members, night);
    }
    band.look = lookOf(comparison, run);
    return band;
}

double axisTop(double highest) {
    return std::max(6.0, std::ceil(highest + 0.2));
}

QString nightName(const Outcome& outcome, int night) {
    const engine::Pond& pond = outcome.comparison.model.pond;
    const auto dateOf = [&](int day) {
        const engine::Date date = engine::dateOfDay(pond, day);
        return QDate(static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
                     static_cast<int>(static_cast<unsigned>(date.day())));
    };
    const QString form = QStringLiteral("d MMMM");  // in English, as the words about it
    return tr("night %1, %2 to %3")
        .arg(night)
        .arg(dateOf(night).toString(form), dateOf(night + 1).toString(form));
}

std::vector<NamedLevel> criteriaLevels(const Outcome& outcome) {
    const engine::OxygenCriteria criteria =
        engine::criteriaOf(outcome.comparison.model.parameters.thresholds);
    std::vector<NamedLevel> levels;
    if (criteria.minimum) {
        levels.push_back({*criteria.minimum, tr("EPA 1986: one-day minimum")});
    }
    if (criteria.meanMinimum7Days) {
        levels.push_back({*criteria.meanMinimum7Days, tr("EPA 1986: seven-day mean of minima")});
    }
    return levels;
}

namespace {

std::vector<engine::Sentence> sentencesFor(const engine::Comparison& comparison, const Selection& selection) {
    return selection.mode() == Selection::Mode::AllRamps
               ? engine::sentencesOfNight(comparison, selection.night(), selection.ramp())
               : engine::sentencesOfNights(comparison, selection.ramp());
}

}  // namespace

QString nightReasons(const Outcome& outcome, const Selection& selection) {
    const engine::Comparison& comparison = outcome.comparison;
    QStringList parts{localized(sentencesFor(comparison, selection), engine::SentencePart::NightDetail),
                      localized(engine::sentencesOfChances(comparison, selection.ramp()),
                                engine::SentencePart::NightDetail)};
    parts.removeAll(QString());
    return unbroken(parts.join(QLatin1Char(' ')));
}

QString standsOn(const Outcome& outcome) {
    constexpr std::size_t kShown = 3;  // all of it stands in the plan and the proposal
    std::vector<engine::Sentence> grounds = engine::sentencesOfGrounds(outcome.comparison.model.pond);
    grounds.resize(std::min(grounds.size(), kShown));
    return grounds.empty() ? QString()
                           : unbroken(tr("What this stands on, worst first: %1")
                                          .arg(localized(grounds, engine::SentencePart::Grounds)));
}

NightScene nightScene(const Outcome& outcome, const Selection& selection, const SceneOptions& options) {
    NightScene scene;
    const engine::Comparison& comparison = outcome.comparison;
    const engine::OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    const bool isOfRamps = selection.mode() == Selection::Mode::AllRamps;
    scene.stress = thresholds.stress;
    scene.lethal = thresholds.lethal;
    const QString night = nightName(outcome, selection.night());
    scene.title = isOfRamps
                      ? tr("All ramps, %1").arg(night)
                      : tr("All nights of \"%1\"; heavy: %2")
                            .arg(rampText(comparison.runs[selection.ramp()].name, selection.ramp()), night);
    const auto sentences = sentencesFor(comparison, selection);
    scene.headline = unbroken(localized(sentences, engine::SentencePart::Night));
    scene.detail = nightReasons(outcome, selection);
    if (isOfRamps) {
        addRamps(outcome, selection, options, scene);
    } else {
        addNights(outcome, selection, scene);
    }
    addBands(outcome, selection, scene);
    if (selection.cursor()) {
        const double hour = hourOf(selection.night(), *selection.cursor());
        scene.cursor = hour >= 0.0 && hour <= 24.0 ? std::optional(hour) : std::nullopt;
    }
    addSky(outcome.backdrop.nights[static_cast<std::size_t>(selection.night() - 1)], scene);
    addReadings(outcome, selection, scene);
    if (options.criteria) {
        scene.criteria = criteriaLevels(outcome);
    }
    if (selection.hours()) {
        scene.from = selection.hours()->from;
        scene.to = selection.hours()->to;
    }
    // Closer in height too where hours are looked at closely; else the stress line has water above it.
    const double shown = options.ghost ? highestOfAll(outcome, selection.ramp()) : highestShown(scene);
    scene.top = selection.hours() ? std::ceil(shown + 0.2) : axisTop(std::max(shown, scene.stress + 1.0));
    return scene;
}

namespace {

QString nameOfLook(const NightScene& scene, std::size_t look) {
    const auto found = std::find_if(scene.lines.rbegin(), scene.lines.rend(),
                                    [look](const NightLine& line) { return line.look == look; });
    return found == scene.lines.rend() ? QString() : found->name;
}

}  // namespace

QString inWords(const NightScene& scene) {
    QStringList words{scene.title + QLatin1Char('.'), scene.headline, scene.detail};
    words << tr("Stress line %1 mg/L, lethal line %2 mg/L.")
                 .arg(oxygenText(scene.stress), oxygenText(scene.lethal));
    if (scene.sunset && scene.sunrise) {
        const auto clock = [](double hour) { return clockText((hour + 12.0) * engine::kHour); };
        words << tr("Sunset %1, sunrise %2.").arg(clock(*scene.sunset), clock(*scene.sunrise));
    }
    for (const NightLine& line : scene.lines) {
        if (!line.isGhost || line.isLabelled) {
            words
                << tr("%1: low %2 mg/L at %3.").arg(line.name, oxygenText(line.low), clockText(line.lowTime));
        }
    }
    for (const NightBand& band : scene.bands) {
        if (!band.low.empty()) {
            const std::size_t lowest = band.lowest();
            words << tr("Nine of ten ponds like this one are between %1 and %2 mg/L at the lowest hour of "
                        "\"%3\".")
                         .arg(oxygenText(band.low[lowest]), oxygenText(band.high[lowest]),
                              nameOfLook(scene, band.look));
        }
    }
    for (const NightReading& reading : scene.readings) {
        words << reading.text;
    }
    words.removeAll(QString());
    return words.join(QLatin1Char(' ')).replace(QChar::Nbsp, QLatin1Char(' '));
}

std::string nightCsv(const Outcome& outcome, const Selection& selection) {
    const auto& runs = outcome.comparison.runs;
    const std::size_t ramp = selection.ramp();
    const bool isOfRamps = selection.mode() == Selection::Mode::AllRamps;
    std::vector<engine::RunNight> curves;
    for (std::size_t i = 0; isOfRamps && i < runs.size(); ++i) {
        if (isDrawn(runs[i])) {
            curves.push_back({i, selection.night()});
        }
    }
    if (!isOfRamps && isDrawn(runs[ramp])) {
        for (const engine::DayRow& day : runs[ramp].days) {
            curves.push_back({ramp, day.day});
        }
    }
    return engine::nightCurvesCsv(outcome.comparison, curves, ramp,
                                  isOfRamps ? std::optional(selection.night()) : std::nullopt);
}

}  // namespace widgets
