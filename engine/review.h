#pragma once

#include "engine/files.h"
#include "engine/fit.h"
#include "engine/sentence.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// Days between two changes within which neither can be judged, and before which nothing is (trade 3.7: 30 to
/// 60).
inline constexpr int kWatch_d = 30;

/// What is looked at for a change.
enum class ReviewMeasure { DawnLow, BottomOxygen, Secchi };

/// One measure since the start: its readings beside what the pond would have done without the aerator.
struct ReviewFinding {
    ReviewMeasure measure{};
    int count = 0;         ///< Readings since the start; before it, for Secchi, see `without`
    double reading = 0.0;  ///< Their mean [g/m^3] or [m]
    Band without;          ///< The same mean of the members without the aerator; of Secchi, before the start
    bool standsOut = false;  ///< The mean lies outside 5 to 95 % of `without`
};
inline constexpr int kFewestReadings = 3;

struct ReviewTreatment {
    Event event;
    int day = 0;
    bool isAttributable = true;  ///< No other change within kWatch_d days before or after
};

enum class CopperGate { Unknown, Low, Open };
inline constexpr double kCopperAlkalinity =
    50.0;  ///< [g/m^3 as CaCO3]; University of Kentucky, as the trade quotes it

/// One day of the review.
struct ReviewRow {
    int day = 0;
    Band dawnWith, dawnWithout, bottomWith, bottomWithout;  ///< At sunrise [g/m^3]
    std::optional<double> dawn, bottom, secchi;             ///< As read
};

enum class ReviewVerdict { Wait, LeaveAlone, OneThing };

struct Review {
    std::string message;  ///< A sentence if there is none
    bool isDone = false;
    FitResult fit;  ///< To the readings before the first treatment
    int startDay = 0, lastDay = 0;
    std::vector<ReviewRow> rows;
    std::vector<ReviewFinding> findings;
    std::vector<ReviewTreatment> treatments;
    CopperGate copper{};
    double algaeBillLow = 0.0, algaeBillHigh = 0.0;  ///< If all algae die [g/m^3]
    double cost = 0.0;
    ReviewVerdict verdict{};
};

/// What has changed since the start of the aerator. The members are fitted to what was read before the first
/// treatment and run, under the weather that came, with the air of the log and without any; neither has a
/// treatment in it.
[[nodiscard]] Review reviewPond(const Pond& pond, const FitOptions& options, const RunControl& control = {});

[[nodiscard]] CopperGate copperGate(const Water& water);
/// Which treatments can be told apart: a change is a treatment or the start of the aerator.
[[nodiscard]] std::vector<ReviewTreatment> treatmentsOf(const Pond& pond, std::optional<int> startDay);

/// review.csv: date, dawn and bottom oxygen with and without the aerator (5, 50, 95 %), readings.
[[nodiscard]] std::string reviewCsv(const Review& review);
[[nodiscard]] std::vector<Sentence> sentencesOf(const Review& review);

}  // namespace engine
