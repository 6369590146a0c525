#pragma once

#include "engine/follow_up/incident.h"
#include "widgets/charts/line_chart.h"
#include "widgets/follow_up/answer_page.h"

#include <memory>

class QPagedPaintDevice;
class QPushButton;

namespace widgets {

class DawnForm;

/// The four courses from the present profile, hour by hour.
[[nodiscard]] LineChart incidentChart(const engine::Incident& incident);

/// Fish in distress: three readings in; what comes of stopping, keeping on and adding surface air out, with
/// what to do, what to write down and how to tell want of oxygen from a toxic bloom.
class IncidentPage final : public AnswerPage {
    Q_OBJECT
public:
    explicit IncidentPage(Document& document, QWidget* parent = nullptr, engine::TodayOptions options = {});

    /// Judges by the log and what is typed, which goes into the log first if `isEntered`.
    void judge(bool isEntered);
    [[nodiscard]] const std::shared_ptr<const engine::Incident>& incident() const { return m_incident; }
    [[nodiscard]] const LineChartView& chart() const { return *m_chart; }
    /// The whole answer with its chart on paper. @pre there is an answer
    void printTo(QPagedPaintDevice& paper) const;

protected:
    void documentChanged() override;
    void startAnew() override;
    void proposeTime() override;

private:
    void forgetAnswer();
    void show(const std::shared_ptr<const engine::Incident>& incident);
    void askAndPrint();

    engine::TodayOptions m_options;
    Selection m_selection;
    DawnForm* m_form;
    LineChartView* m_chart;
    QPushButton* m_print;
    std::shared_ptr<const engine::Incident> m_incident;
};

}  // namespace widgets
