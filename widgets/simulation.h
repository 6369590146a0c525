#pragma once

#include "widgets/job.h"
#include "widgets/outcome.h"

#include <QObject>

#include <optional>

namespace widgets {

class Document;

/// Keeps an outcome for the document's pond: each change of the document computes anew, curves first, causes
/// and end states after them, off the UI thread. The old outcome stays until the new one is there.
///
/// The document must outlive it.
class Simulation final : public QObject {
    Q_OBJECT
public:
    explicit Simulation(Document& document, QObject* parent = nullptr);

    /// The latest; null before the first.
    [[nodiscard]] const OutcomePtr& outcome() const { return m_outcome; }
    /// True while the outcome is not of the document as it stands.
    [[nodiscard]] bool isStale() const { return m_isStale; }
    /// True while causes and end states are still to come, or everything is.
    [[nodiscard]] bool isRunning() const { return m_job.isRunning(); }

    /// Nights to compute; nothing: 14, or the longest ramp that goes by its rule plus seven.
    void setNights(std::optional<int> nights);
    [[nodiscard]] std::optional<int> nights() const { return m_nights; }

signals:
    void staleChanged(bool isStale);
    /// New curves, causes and end states pending; then once more with them.
    void outcomeChanged();
    void progressed(double fraction);
    void failed(const QString& sentence);

private:
    void compute();
    void deliver(const OutcomePtr& outcome);
    void addCauses(int nights);

    Document& m_document;
    std::optional<int> m_nights;
    OutcomePtr m_outcome;
    bool m_isStale = false;
    Job m_job;
};

/// Computes what a window shows of a pond, all of it. For work without a window, and for tests.
/// @param earlier  What of it still holds is taken over; may be null.
[[nodiscard]] Outcome outcomeOf(const engine::Pond& pond, std::optional<int> nights, bool isWhole,
                                const Outcome* earlier = nullptr, const engine::RunControl& control = {});

}  // namespace widgets
