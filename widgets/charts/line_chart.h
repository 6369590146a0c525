#pragma once

#include "widgets/charts/chart_export.h"
#include "widgets/charts/chart_view.h"

#include <QColor>
#include <QString>

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace widgets {

/// Lines and bands over time with readings on them, of no comparison of ramps.
struct LineChart {
    /// A line with its band, if there is one; its look is that of a ramp of this place.
    struct Line {
        QString name;
        std::vector<double> x, y, low, high;  ///< low and high empty: no band
        std::size_t look = 0;
        bool isHeavy = false;
    };
    struct Dot {
        double x = 0.0, y = 0.0, error = 0.0;
    };
    struct Mark {
        double x = 0.0;
        QString text;
    };

    QString name;  ///< Of its file
    QString headline, detail, foot, words;
    QString unit;  ///< In words, above the axis
    std::vector<std::pair<double, QString>> labels;
    double from = 0.0, to = 1.0;
    double stress = -1.0, lethal = -1.0;  ///< None if negative
    std::vector<Line> lines;
    std::vector<Dot> dots;
    std::vector<Mark> marks;  ///< Uprights with a word
    std::string csv;
};

void drawLines(QCustomPlot& plot, const LineChart& chart, const PlotStyle& style);

/// Such a chart on the screen, for export, copy and print as every other.
class LineChartView final : public ChartView {
    Q_OBJECT
public:
    /// @param selection  Must outlive the view; nothing of it is shown.
    LineChartView(const QString& name, Selection& selection, QWidget* parent);

    void setChart(std::optional<LineChart> chart);
    [[nodiscard]] const std::optional<LineChart>& chart() const { return m_chart; }
    [[nodiscard]] ChartSheet sheet() const override;

protected:
    [[nodiscard]] bool hasContent() const override { return m_chart.has_value(); }
    [[nodiscard]] QString refresh() override { return m_chart->words; }
    void draw(QCustomPlot& plot, const PlotStyle& style) override { drawLines(plot, *m_chart, style); }

private:
    std::optional<LineChart> m_chart;
};

}  // namespace widgets
