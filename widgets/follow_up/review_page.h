#pragma once

#include "engine/follow_up/review.h"
#include "engine/follow_up/start_check.h"
#include "engine/output/start_ledger.h"
#include "widgets/charts/line_chart.h"
#include "widgets/follow_up/answer_page.h"

#include <filesystem>
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

    /// The consultant's list of starts, into which one can be noted; empty: none can.
    void setLedger(const std::filesystem::path& file) { m_ledger = file; }
    /// Holds the start against its dawns and writes it into the list.
    void note();

    /// As many members as an answer in the window may take.
    [[nodiscard]] static engine::FitOptions usual();

protected:
    void startAnew() override;

private:
    /// A start held against its dawns, and what came of writing it down.
    struct Noted {
        engine::StartCheck check;
        engine::NotedStart noted;
    };
    void showNoted(const Noted& noted);
    void forgetAnswer();
    void show(const std::shared_ptr<const engine::Review>& review);
    void showChart();

    engine::FitOptions m_options;
    Selection m_selection;
    LineEntry* m_until;
    QComboBox* m_water;
    LineChartView* m_chart;
    std::shared_ptr<const engine::Review> m_review;
    std::filesystem::path m_ledger;
};

}  // namespace widgets
