#pragma once

#include "widgets/charts/chart_view.h"
#include "widgets/charts/night_scene.h"

namespace widgets {

/// Draws a night into a plot of any size.
void drawNight(QCustomPlot& plot, const NightScene& scene, const PlotStyle& style);

/// The night on the screen.
class NightPlot final : public ChartView {
    Q_OBJECT
public:
    explicit NightPlot(Selection& selection, QWidget* parent = nullptr);

    void setCriteria(bool isShown);
    /// While nights are played, the night before stays as a ghost.
    void setGhost(bool isShown);
    [[nodiscard]] QString headline() const override { return m_scene.headline; }
    [[nodiscard]] QString detail() const override { return m_scene.detail; }
    [[nodiscard]] QString readAt(double time) const override;
    [[nodiscard]] ChartSheet sheet() const override;
    [[nodiscard]] const NightScene& scene() const { return m_scene; }
    [[nodiscard]] const SceneOptions& options() const { return m_options; }

signals:
    void sceneChanged();

protected:
    [[nodiscard]] QString refresh() override;
    void draw(QCustomPlot& plot, const PlotStyle& style) override;
    [[nodiscard]] QString readOut(const QPointF& place) const override;
    [[nodiscard]] std::optional<double> timeAt(const QPointF& place) const override;
    void clicked(const QPointF& place) override;
    [[nodiscard]] std::optional<Selection::Span> shownSpan() const override;
    void setShownSpan(std::optional<Selection::Span> span) override;

private:
    SceneOptions m_options;
    NightScene m_scene;
};

}  // namespace widgets
