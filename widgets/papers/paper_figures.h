#pragma once

#include "widgets/document/outcome.h"
#include "widgets/papers/paper_flow.h"
#include "widgets/papers/paper_units.h"

namespace widgets {

// The pictures of the papers: white ground, no transparency, dashes and tints that a grey copy keeps apart.
// The band of the members leads; the curve in it is the central run.

/// What the pictures are of.
struct FigureSource {
    OutcomePtr outcome;
    std::size_t plan = 0;             ///< Place of the planned ramp
    std::optional<std::size_t> fast;  ///< Of the one it is held against
    int night = 1;                    ///< The answer's: worst of the plan, or left alone where not to start
    bool isOfPlan = true;             ///< Whose worst night that is
    PaperUnits units{false};
    double width = 0.0;  ///< [units]
};

/// The answer's night: the plan, the fastest ramp and do-nothing, with the bands of the two ramps.
[[nodiscard]] PaperFigure nightFigure(const FigureSource& source, double height);

/// Low of every night, a panel for each ramp, all with the same axes.
[[nodiscard]] PaperFigure lowsFigure(const FigureSource& source);

/// Dose of each day of the plan as bars, and how much of the debt is left.
[[nodiscard]] PaperFigure doseFigure(const FigureSource& source);

/// Temperature and oxygen by depth at the start, with bottom water and diffuser.
[[nodiscard]] PaperFigure profileFigure(const FigureSource& source);

/// What gives and takes oxygen on the day of the plan's worst night.
[[nodiscard]] PaperFigure budgetFigure(const FigureSource& source);

/// The whole run of all ramps, when the air runs, and the weather.
[[nodiscard]] PaperFigure wholeRunFigure(const FigureSource& source);

/// A start in each of the next twelve months, with its text; without a calendar that there is none.
[[nodiscard]] PaperFigure monthsFigure(const FigureSource& source);

}  // namespace widgets
