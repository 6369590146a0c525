// A picture is data first, so that its numbers can be tested without pixels: the night as NightScene
// (widgets/charts/night_scene.h), every other view as Picture. One function in a file of its own gives a
// view's sentence, text alternative, CSV, drawing and read-out, and one line in viewKinds() puts it into the
// window, export, --charts and tests. A chart that is not seen is neither made nor drawn.
#pragma once

#include "widgets/charts/chart_export.h"
#include "widgets/controls/plot_style.h"
#include "widgets/document/outcome.h"
#include "widgets/document/place.h"
#include "widgets/document/selection.h"

#include <QLocale>
#include <QPointF>
#include <QRectF>
#include <QString>

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace engine {
struct MonthOfStart;
}  // namespace engine

class QCPPainter;
class QCustomPlot;

namespace widgets {

/// One view of an outcome under a selection: what it says, and how it is drawn. Holds the outcome itself, so
/// that it can be drawn at any later time, on a screen or on paper.
struct Picture {
    QString headline;          ///< What there is to see, in a sentence whose numbers are the picture's
    QString detail;            ///< How to read it
    QString words;             ///< The text alternative
    QSize size{600, 380};      ///< On paper, without its sentences
    std::vector<KeyLine> key;  ///< On paper; in the window the list of ramps says it
    std::function<void(QCustomPlot& plot, const PlotStyle& style)> draw;
    std::function<std::string()> csv;

    /// A view over the days of the run: its stretch [d], and its margins on either side [px].
    struct Days {
        double from = 0.0, to = 0.0;
        int left = 0, right = 0;
    };
    std::optional<Days> days;
    /// What the view has at a moment [s after midnight of day 1]; empty if it has nothing there.
    std::function<QString(double time)> at;

    /// Of views that are not over days: what is at a place of the whole plot, and what a click there does.
    std::function<QString(const QRectF& whole, const QPointF& place)> readOut;
    std::function<void(const QRectF& whole, const QPointF& place, Selection& selection)> click;
};

/// A view that the window offers.
struct ViewKind {
    const char* id;     ///< Of its files
    Place place;        ///< Where it is found
    QString (*name)();  ///< On its tab
    Picture (*make)(const OutcomePtr& outcome, const Selection& selection);
};

/// The view that asks for more than the others: see Recomputation::setMeasuring.
inline constexpr const char* kMeasureView = "measure";

/// The views beside the night, in the order of their tabs.
[[nodiscard]] const std::vector<ViewKind>& viewKinds();

[[nodiscard]] ChartSheet sheetOf(const ViewKind& kind, const OutcomePtr& outcome, const Selection& selection);

// The views, one a file.
[[nodiscard]] Picture daysPicture(const OutcomePtr& outcome, const Selection& selection);
[[nodiscard]] Picture hoursPicture(const OutcomePtr& outcome, const Selection& selection);
[[nodiscard]] Picture depthPicture(const OutcomePtr& outcome, const Selection& selection);
[[nodiscard]] Picture budgetPicture(const OutcomePtr& outcome, const Selection& selection);
[[nodiscard]] Picture debtPicture(const OutcomePtr& outcome, const Selection& selection);
[[nodiscard]] Picture profilesPicture(const OutcomePtr& outcome, const Selection& selection);
[[nodiscard]] Picture gasesPicture(const OutcomePtr& outcome, const Selection& selection);
[[nodiscard]] Picture riskPicture(const OutcomePtr& outcome, const Selection& selection);
[[nodiscard]] Picture monthsPicture(const OutcomePtr& outcome, const Selection& selection);
[[nodiscard]] Picture measurePicture(const OutcomePtr& outcome, const Selection& selection);

// What they share.

/// A month of the calendar by its name in the user's language.
[[nodiscard]] QString monthName(const engine::MonthOfStart& month, QLocale::FormatType length);

/// The whole plot as one surface to paint on, in pixels. @param paint  Gets a painter with the style's font.
void addCanvas(QCustomPlot& plot, const PlotStyle& style,
               std::function<void(QCPPainter& painter, const QRectF& whole)> paint);

/// The lines of all visible ramps, for a drawing that does not name them.
[[nodiscard]] std::vector<KeyLine> keyOf(const Outcome& outcome, const Selection& selection);

/// The ramp that the selection is on, or do-nothing where that one cannot be drawn.
[[nodiscard]] std::size_t shownRun(const Outcome& outcome, const Selection& selection);

/// An oxygen value as a colour, from pale to deep in even steps of lightness and hue (a straight line in
/// CIE 1976 L*a*b*). @param share  0 to 1 of the scale.
[[nodiscard]] QColor depthOfColour(const PlotStyle& style, double share);

/// The scale itself beside a picture, with its numbers and unit.
void paintScale(QCPPainter& painter, const PlotStyle& style, const QRectF& area, double top);

/// Hatching at 45 degrees within a rectangle, by its own arithmetic.
void hatch(QCPPainter& painter, const QRectF& area, const QPen& pen, double step);

}  // namespace widgets
