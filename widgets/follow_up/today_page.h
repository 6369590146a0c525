#pragma once

#include "engine/follow_up/today.h"
#include "engine/plan/plan.h"
#include "widgets/follow_up/answer_page.h"

#include <memory>

class QComboBox;
class QPushButton;

namespace widgets {

class DawnForm;

/// This morning: three readings, their time and the outlook in; go, hold, back or stop out, with reasons,
/// tonight's expected low, and the schedule from today on.
class TodayPage final : public AnswerPage {
    Q_OBJECT
public:
    explicit TodayPage(Document& document, QWidget* parent = nullptr, engine::TodayOptions options = {});

    /// Decides by the log and what is typed, which goes into the log first if `isEntered`.
    void decide(bool isEntered);
    /// The last decision; null if there is none.
    [[nodiscard]] const std::shared_ptr<const engine::Today>& today() const { return m_today; }
    /// The schedule planned anew from today on; null if there is none yet.
    [[nodiscard]] const std::shared_ptr<const engine::Plan>& plan() const { return m_plan; }

signals:
    /// The new schedule as a ramp that is to stand beside the others.
    void rampWanted(const engine::Ramp& ramp);

protected:
    void documentChanged() override;
    void startAnew() override;
    void proposeTime() override;

private:
    void show(const std::shared_ptr<const engine::Today>& today);
    void planAnew(const engine::TodayOptions& options);
    void showPlan(const std::shared_ptr<const engine::Plan>& plan);
    void addRamp();
    void forgetAnswer();

    engine::TodayOptions m_options;
    DawnForm* m_form;
    QComboBox* m_outlook;
    QPushButton* m_add;
    std::shared_ptr<const engine::Today> m_today;
    std::shared_ptr<const engine::Plan> m_plan;
};

}  // namespace widgets
