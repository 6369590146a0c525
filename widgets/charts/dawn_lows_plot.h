#pragma once

#include "widgets/charts/chart_view.h"
#include "widgets/document/outcome.h"
#include "widgets/document/selection.h"

#include <string>

namespace widgets {

/// Draws the low of every night under every ramp, the selected night framed.
void drawDawnLows(QCustomPlot& plot, const OutcomePtr& outcome, const Selection& selection, bool criteria,
                  const PlotStyle& style);

/// The picture as text: each ramp's lows from night to night.
[[nodiscard]] QString dawnLowsInWords(const Outcome& outcome);

/// The lows of all nights on the screen. A click chooses the night; Home and End the outer ones.
class DawnLowsPlot final : public ChartView {
    Q_OBJECT
public:
    explicit DawnLowsPlot(Selection& selection, QWidget* parent = nullptr);

    void setCriteria(bool isShown);
    [[nodiscard]] ChartSheet sheet() const override;

protected:
    [[nodiscard]] QString refresh() override;
    void keyPressEvent(QKeyEvent* event) override;
    void draw(QCustomPlot& plot, const PlotStyle& style) override;
    [[nodiscard]] QString readOut(const QPointF& place) const override;
    void clicked(const QPointF& place) override;

private:
    [[nodiscard]] int nightAt(const QPointF& place) const;

    bool m_criteria = false;
};

}  // namespace widgets
