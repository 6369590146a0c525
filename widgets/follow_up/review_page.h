#pragma once

#include "engine/follow_up/review.h"
#include "widgets/charts/line_chart.h"
#include "widgets/follow_up/answer_page.h"

#include <memory>

class QComboBox;

namespace widgets {

class LineEntry;

/// Which of the review's two oxygens is drawn.
enum class ReviewedWater { DawnAbove, Bottom };

/// With the aerator and without it, day by day with their bands, and the readings over both.
[[nodiscard]] LineChart reviewChart(const engine::Review& review, ReviewedWater water);

/// Sixty days later: what stands out of the noise, what was put in and what that can be held against, and the
/// verdict in words.
class ReviewPage final : public AnswerPage {
    Q_OBJECT
public:
    explicit ReviewPage(Document& document, QWidget* parent = nullptr, engine::FitOptions options = usual());

    void look();
    [[nodiscard]] const std::shared_ptr<const engine::Review>& review() const { return m_review; }
    [[nodiscard]] const LineChartView& chart() const { return *m_chart; }

    /// As many members as an answer in the window may take.
    [[nodiscard]] static engine::FitOptions usual();

protected:
    void startAnew() override;

private:
    void forgetAnswer();
    void show(const std::shared_ptr<const engine::Review>& review);
    void showChart();

    engine::FitOptions m_options;
    Selection m_selection;
    LineEntry* m_until;
    QComboBox* m_water;
    LineChartView* m_chart;
    std::shared_ptr<const engine::Review> m_review;
};

}  // namespace widgets
