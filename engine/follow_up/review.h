#pragma once

#include "engine/base/files.h"
#include "engine/follow_up/fit.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// Days between two changes within which neither can be judged, and before which nothing is (common practice,
/// no source: 30 to 60).
inline constexpr int kWatch_d = 30;

/// What is looked at for a change.
enum class ReviewMeasure { DawnLow, BottomOxygen, Secchi };

/// One measure since a change, up to the next: its readings beside what the pond would have done without that
/// change.
struct ReviewFinding {
    ReviewMeasure measure{};
    int count = 0;           ///< Readings since the change
    double reading = 0.0;    ///< Their mean [g/m^3] or [m]
    Band without;            ///< The same mean of members without the change; of Secchi, as read before it
    bool standsOut = false;  ///< The mean lies outside 5 to 95 % of `without`
};
inline constexpr int kFewestReadings = 3;

struct ReviewTreatment {
    Event event;
    int day = 0;
    bool isAttributable = true;           ///< No other change within kWatch_d days before or after
    std::vector<ReviewFinding> findings;  ///< Beside the members with the aerator and without any treatment;
                                          ///< empty unless attributable
};

/// What dead algae would have cost: the lowest dawn of the upper water over the last kKilled_d days, had
/// algae been killed at noon before them, over kKillTakes_d, under the weather that came [g/m^3].
struct ReviewKill {
    int day = 0;  ///< Of the kill
    Band leftAlone, quarter, all;
};
inline constexpr int kKilled_d = 10;  ///< The bill comes over a week or two (common practice)

enum class CopperGate { Unknown, Low, Open };
/// Between two parts of a pond whose algae or weeds are killed (common practice, no source).
inline constexpr int kBetweenParts_d = 14;

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
    std::vector<ReviewFinding> findings;  ///< Of the aerator's start
    std::vector<ReviewTreatment> treatments;
    std::optional<ReviewKill> kill;  ///< Nothing without algae or with fewer than kKilled_d days
    std::vector<Event> notBought;    ///< What was offered and left out
    CopperGate copper{};
    double algaeBillLow = 0.0, algaeBillHigh = 0.0;  ///< If all algae die [g/m^3]
    double cost = 0.0, notBoughtCost = 0.0;          ///< In the owner's money
    ReviewVerdict verdict{};
};

/// What has changed since the start of the aerator. The members are fitted to what was read before the first
/// treatment and run, under the weather that came, with the air of the log and without any; neither has a
/// treatment in it.
[[nodiscard]] Review reviewPond(const Pond& pond, const FitOptions& options, const RunControl& control = {});

[[nodiscard]] CopperGate copperGate(const Water& water);
/// Which treatments can be told apart: a change is a treatment or the start of the aerator.
/// @param events  Of that pond, in force.
[[nodiscard]] std::vector<ReviewTreatment> treatmentsOf(const Pond& pond, const std::vector<Event>& events,
                                                        std::optional<int> startDay);

}  // namespace engine
