#pragma once

#include "engine/ensemble/ensemble.h"
#include "engine/ensemble/measure.h"
#include "widgets/document/job.h"
#include "widgets/document/outcome.h"

#include <QObject>

#include <optional>

namespace widgets {

class Document;

/// Keeps an outcome for the document's pond: each change of the document computes anew, off the UI thread:
/// curves first, then attribution and end states, then the members of the chosen ramp and do-nothing, then
/// those of all ramps, then the answer. The old outcome stays until the new one is there.
///
/// The document must outlive it.
class Recomputation final : public QObject {
    Q_OBJECT
public:
    explicit Recomputation(Document& document, QObject* parent = nullptr);

    /// The latest; null before the first.
    [[nodiscard]] const OutcomePtr& outcome() const { return m_outcome; }
    /// True while the outcome is not of the document as it stands.
    [[nodiscard]] bool isStale() const { return m_isStale; }
    /// True while anything is still to come.
    [[nodiscard]] bool isRunning() const { return m_job.isRunning(); }
    /// Gives up what is still to come until the next change; what is there stays.
    void cancel();
    /// Members of each ramp; 1: none, the central run alone.
    void setMembers(int members);
    /// Whether to find out what to measure too, after all else.
    /// @param members  Fewer than usual are for tests.
    void setMeasuring(bool isMeasuring, int members = engine::kMembersToMeasure);

    /// Nights to compute; nothing: 14, or the longest ramp that goes by its rule plus seven.
    void setNights(std::optional<int> nights);
    [[nodiscard]] std::optional<int> nights() const { return m_nights; }

signals:
    void staleChanged(bool isStale);
    /// New curves; then again with attribution and end states, twice with members, with the answer, and with
    /// what to measure. Once more where the user has stopped it: Outcome::isGivenUp.
    void outcomeChanged();
    /// What to measure is being found out.
    void measuring();
    /// All that was asked for is there, or was given up.
    void settled();
    void progressed(double fraction);
    void failed(const QString& sentence);

private:
    void compute();
    void deliver(const OutcomePtr& outcome);
    void addAttribution(int nights);
    void addMembers(bool ofAll);
    void addAnswer();
    void measureOrSettle();
    void giveUp();

    Document& m_document;
    std::optional<int> m_nights;
    OutcomePtr m_outcome;
    OutcomePtr m_drawn;  ///< The latest with members
    int m_members = engine::kMembersOfBand;
    bool m_isStale = false;
    bool m_isGivenUp = false;
    bool m_isMeasuring = false;
    int m_membersToMeasure = engine::kMembersToMeasure;
    Job m_job;
};

/// Computes what a window shows of a pond, all of it. For work without a window, and for tests.
/// @param earlier  What of it still holds is taken over; may be null.
[[nodiscard]] Outcome outcomeOf(const engine::Pond& pond, std::optional<int> nights, bool isWhole,
                                const Outcome* earlier = nullptr, const engine::RunControl& control = {});

/// Adds the members of the chosen ramp and do-nothing, or of all ramps. Nothing is added where a run failed
/// or the work was stopped.
/// @param earlier  What of its members still holds is taken over, the same bits; may be null.
[[nodiscard]] Outcome withMembers(const Outcome& outcome, int members, bool ofAll,
                                  const engine::RunControl& control = {}, const Outcome* earlier = nullptr);

/// Adds the answer about the ramp that papers would be about. Nothing is added without a ramp, without the
/// members of all ramps, or where the work was stopped.
[[nodiscard]] Outcome withAnswer(const Outcome& outcome, const engine::RunControl& control = {});

/// Adds what to measure for the chosen ramp. Nothing is added where the work was stopped.
[[nodiscard]] Outcome withMeasured(const Outcome& outcome, int members,
                                   const engine::RunControl& control = {});

}  // namespace widgets
