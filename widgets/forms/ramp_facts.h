#pragma once

#include "widgets/document/outcome.h"

#include <QString>
#include <QWidget>

#include <utility>
#include <vector>

class QLabel;

namespace widgets {

/// What a ramp does, as label and value: its first day, from when the air runs day and night, surface air.
/// @param ramp  Place in the comparison. @return nothing for do-nothing or a run that failed.
[[nodiscard]] std::vector<std::pair<QString, QString>> rampFacts(const Outcome& outcome, std::size_t ramp);

/// What comes next, in sentences of the answer: start or wait, hold days, what to read. Nothing without one.
[[nodiscard]] std::vector<QString> nextSteps(const Outcome& outcome);

/// The selected ramp in a few lines, and what comes next.
class RampFacts final : public QWidget {
    Q_OBJECT
public:
    explicit RampFacts(QWidget* parent = nullptr);

    void show(const OutcomePtr& outcome, std::size_t ramp);

protected:
    void changeEvent(QEvent* event) override;

private:
    void applyStyle();

    QLabel *m_name, *m_facts, *m_next, *m_steps;
};

}  // namespace widgets
