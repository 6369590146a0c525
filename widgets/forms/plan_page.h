#pragma once

#include "engine/advice/advice.h"
#include "engine/plan/plan.h"
#include "widgets/document/job.h"

#include <QWidget>

#include <memory>

class QLabel;
class QPushButton;
class QTextBrowser;

namespace widgets {

class Document;
class NumberBox;
class ProgressLine;

/// A plan and its answer.
struct PlanAnswer {
    engine::Plan plan;
    engine::Answered answer;
};

/// Finds the ramp instead of comparing ramps: asks what is wanted, searches off the UI thread, and shows the
/// answer with its end states, holds and sensitivity. The window stays usable meanwhile.
///
/// The document must outlive it.
class PlanPage final : public QWidget {
    Q_OBJECT
public:
    /// @param resolution  A coarser one than usual is for tests.
    explicit PlanPage(Document& document, QWidget* parent = nullptr, engine::Resolution resolution = {});

    /// Starts the search, or says why these wishes cannot be met.
    void find();
    [[nodiscard]] bool isRunning() const { return m_job.isRunning(); }
    /// The latest answer; null before the first.
    [[nodiscard]] const engine::Plan* plan() const { return m_plan == nullptr ? nullptr : &m_plan->plan; }
    /// The ramp of the answer that the pond does not have yet, or that a search had taken when it was
    /// stopped; null if there is none.
    [[nodiscard]] const engine::Ramp* ramp() const;
    [[nodiscard]] QString verdict() const;
    [[nodiscard]] QString text() const;

signals:
    /// The user wants the found ramp in the pond.
    void rampWanted(const engine::Ramp& ramp);

private:
    QWidget* wishes();
    QWidget* buttons();
    [[nodiscard]] engine::PlanOptions options() const;
    void take(std::shared_ptr<const PlanAnswer> plan);
    void documentChanged();
    void enable();

    Document& m_document;
    engine::Resolution m_resolution;
    NumberBox *m_line, *m_harmed, *m_members;
    QLabel *m_verdict, *m_state;
    QTextBrowser* m_text;
    ProgressLine* m_progress;
    QPushButton *m_find, *m_add;
    std::shared_ptr<const PlanAnswer> m_plan;
    std::optional<engine::PlanSoFar> m_soFar;  ///< Of a search that runs or was stopped
    engine::Pond m_asked;                      ///< The pond of the latest search
    int m_search = 0;  ///< Counts searches, so that what a late one has so far is not taken for this one's
    Job m_job;
};

/// What is advised, in a few words.
[[nodiscard]] QString verdictText(const PlanAnswer& found);

/// What a search has before it is done.
[[nodiscard]] QString soFarText(const engine::PlanSoFar& found);

/// All that an answer has to say, by sections, as rich text.
[[nodiscard]] QString planHtml(const PlanAnswer& found);

}  // namespace widgets
