#pragma once

#include "engine/pond/pond.h"
#include "widgets/document/job.h"
#include "widgets/document/outcome.h"

#include <QDialog>

#include <optional>

class QLabel;

namespace widgets {

/// Two versions of a pond beside each other: the keys in which they differ, and the worst lows they come to.
class CompareDialog final : public QDialog {
    Q_OBJECT
public:
    /// @param outcome  Of the pond here; may be null.
    CompareDialog(const engine::Pond& here, const engine::Pond& there, const QString& thereName,
                  const OutcomePtr& outcome, QWidget* parent);

private:
    void showLows(const Outcome& there);

    OutcomePtr m_outcome;
    QLabel* m_lows;
    Job m_job;
};

}  // namespace widgets
