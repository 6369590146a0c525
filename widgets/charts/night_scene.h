#pragma once

#include "engine/ensemble/night_band.h"
#include "engine/run/nights.h"
#include "widgets/document/outcome.h"
#include "widgets/document/selection.h"

#include <QString>

#include <optional>
#include <vector>

namespace widgets {

/// A curve of fish-water oxygen from noon to noon.
struct NightLine : engine::NightCurve {
    QString name;
    std::size_t look = 0;    ///< Place in the comparison: colour and dashes
    bool isHeavy = false;    ///< The selected ramp, or the shown night
    bool isGhost = false;    ///< The night before, or the other nights of a ramp
    bool isLabelled = true;  ///< Its name stands at its end
    bool isLowSaid = false;  ///< Clock and value stand at the low
};

/// Between which values nine of ten ponds like this one are, from noon to noon.
struct NightBand : engine::PercentileBand {
    std::size_t look = 0;
    bool isDotted = false;  ///< Its edge
};

/// A horizontal line with a name.
struct NamedLevel {
    double oxygen = 0.0;
    QString name;
};

/// A reading of the night.
struct NightReading {
    double hour = 0.0, oxygen = 0.0, error = 0.0, depth = 0.0;
    bool isDeep = false;  ///< Deeper than the fish water, so not to be held against the curves
    QString depthName;    ///< Its depth in the pond's units
    QString text;         ///< In words, with what the model has there
};

/// All that the night's picture shows, as data.
struct NightScene {
    QString title;                 ///< Which night, which date
    QString headline;              ///< What it says, in large type
    QString detail;                ///< Why, in small type; empty while the attribution is pending
    std::vector<NightLine> lines;  ///< In the order in which they are drawn
    std::vector<NightBand> bands;  ///< Of the selected ramp; none while it is pending
    std::optional<double> cursor;  ///< Hour after noon
    std::optional<double> sunset, civilDusk, nauticalDusk, nauticalDawn, civilDawn,
        sunrise;  ///< Hours after noon
    double stress = 0.0, lethal = 0.0;
    std::vector<NamedLevel> criteria;
    std::vector<NightReading> readings;
    double from = 0.0, to = 24.0;  ///< What is shown of the night [hours after noon]
    double top = 10.0;             ///< Of the oxygen axis
};

struct SceneOptions {
    bool criteria = false;  ///< The criteria of EPA 1986 are drawn too
    bool ghost = false;     ///< The night before stays behind the shown one
};

[[nodiscard]] NightScene nightScene(const Outcome& outcome, const Selection& selection,
                                    const SceneOptions& options = {});

/// Why the night, or all nights of a ramp, come out so: causes, and of 100 ponds how many go below each line.
/// Empty while neither is there.
[[nodiscard]] QString nightReasons(const Outcome& outcome, const Selection& selection);

/// The worst of what the answer stands on and is not measured; empty if all is.
[[nodiscard]] QString standsOn(const Outcome& outcome);

/// The band of a run in one night; without hours if the run has no members.
[[nodiscard]] NightBand bandOf(const engine::Comparison& comparison, std::size_t run, int night);

/// The picture as text: headline, detail, lines, and each low.
[[nodiscard]] QString inWords(const NightScene& scene);

/// Its curves as CSV: name, night, hour after noon, time after midnight of day 1, oxygen; readings follow.
[[nodiscard]] std::string nightCsv(const Outcome& outcome, const Selection& selection);

/// The criteria that a night or its low can be held against: the minimum and the seven days' mean of minima.
[[nodiscard]] std::vector<NamedLevel> criteriaLevels(const Outcome& outcome);

/// "night 5, 18 to 19 June": a night and its two dates.
[[nodiscard]] QString nightName(const Outcome& outcome, int night);

/// Upper end of an oxygen axis that holds a value: the next whole number, at least 6.
[[nodiscard]] double axisTop(double highest);

}  // namespace widgets
