#pragma once

#include "widgets/charts/chart_view.h"
#include "widgets/document/outcome.h"
#include "widgets/document/selection.h"

#include <string>

namespace widgets {

/// Draws the whole run: fish water under every ramp over days and nights, when the air runs, and the weather.
void drawWholeRun(QCustomPlot& plot, const OutcomePtr& outcome, const Selection& selection,
                  const PlotStyle& style);

/// The picture as text: run minutes of each ramp by day, and the weather.
[[nodiscard]] QString wholeRunInWords(const Outcome& outcome);

/// The whole run on the screen. A click chooses the night.
class WholeRunPlot final : public ChartView {
    Q_OBJECT
public:
    explicit WholeRunPlot(Selection& selection, QWidget* parent = nullptr);

    [[nodiscard]] QString readAt(double time) const override;
    [[nodiscard]] ChartSheet sheet() const override;

protected:
    [[nodiscard]] QString refresh() override;
    void draw(QCustomPlot& plot, const PlotStyle& style) override;
    [[nodiscard]] QString readOut(const QPointF& place) const override;
    [[nodiscard]] std::optional<double> timeAt(const QPointF& place) const override;
    [[nodiscard]] std::optional<Selection::Span> shownSpan() const override;
    void clicked(const QPointF& place) override;
};

}  // namespace widgets
