#include "widgets/document/recomputation.h"

#include "engine/advice/frozen_run.h"
#include "widgets/document/document.h"

namespace widgets {

Outcome outcomeOf(const engine::Pond& pond, std::optional<int> nights, bool isWhole, const Outcome* earlier,
                  const engine::RunControl& control) {
    Outcome outcome;
    engine::CompareOptions options;
    options.days = nights ? *nights : engine::defaultDays(pond);
    options.attribution = options.endStates = isWhole;
    options.earlier = earlier == nullptr ? nullptr : &earlier->comparison;
    outcome.comparison = engine::compare(pond, options, control);
    outcome.backdrop = engine::backdropOf(outcome.comparison.model, outcome.comparison.days);
    outcome.isWhole = isWhole;
    if (isWhole && engine::isWhole(outcome.comparison)) {
        outcome.compared = std::make_shared<const engine::Advice>(
            engine::adviceOn(outcome.comparison, engine::plannedRamp(outcome.comparison)));
    }
    return outcome;
}

namespace {

/// True if members of an earlier outcome are of the same pond but for its ramps.
bool hasMembersFor(const Outcome& outcome, const Outcome* earlier) {
    return earlier != nullptr && earlier->comparison.ensemble &&
           engine::differsByRampsOnly(outcome.comparison.model, earlier->comparison.model);
}

}  // namespace

Outcome withMembers(const Outcome& outcome, int members, bool ofAll, const engine::RunControl& control,
                    const Outcome* earlier) {
    Outcome result = outcome;
    engine::Comparison& comparison = result.comparison;
    const std::size_t chosen = chosenRamp(comparison);
    std::vector<std::size_t> places;
    std::vector<engine::EnsembleRamp> ramps;
    for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
        if (!isDrawn(comparison.runs[i])) {
            return result;
        }
        if (ofAll || i == 0 || i == chosen) {
            places.push_back(i);
            ramps.push_back(engine::ensembleRamp(comparison.runs[i]));
        }
    }
    engine::EnsembleOptions options;
    options.days = comparison.days;
    options.members = members;
    if (hasMembersFor(outcome, earlier)) {
        options.earlier = &*earlier->comparison.ensemble;
    }
    engine::EnsembleResult found = engine::runMembers(comparison.model, ramps, options, control);
    if (found.end != engine::EnsembleEnd::Completed) {
        return result;
    }
    std::vector<engine::RampEnsemble> placed(comparison.runs.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
        placed[places[i]] = std::move(found.ramps[i]);
    }
    found.ramps = std::move(placed);
    comparison.ensemble = std::move(found);
    result.hasAllMembers = places.size() == comparison.runs.size();
    return result;
}

Outcome withAnswer(const Outcome& outcome, const engine::RunControl& control) {
    Outcome result = outcome;
    const std::size_t ramp = engine::plannedRamp(outcome.comparison);
    if (ramp == 0 || !outcome.hasAllMembers || !engine::isWhole(outcome.comparison)) {
        return result;
    }
    engine::Answered answer = engine::answered(outcome.comparison, ramp, 0, control);
    if (!control.stop.stop_requested()) {
        result.answer = std::make_shared<const engine::Advice>(std::move(answer.advice));
    }
    return result;
}

Outcome withMeasured(const Outcome& outcome, int members, const engine::RunControl& control) {
    Outcome result = outcome;
    result.isGivenUp = false;
    engine::MeasureOptions options;
    options.members = members;
    engine::MeasureResult measured = engine::measure(outcome.comparison.model.pond, options, control);
    if (measured.end == engine::EnsembleEnd::Completed) {
        result.measured = std::make_shared<const engine::MeasureResult>(std::move(measured));
    }
    return result;
}

Recomputation::Recomputation(Document& document, QObject* parent) : QObject(parent), m_document(document) {
    connect(&m_document, &Document::changed, this, &Recomputation::compute);
    connect(&m_job, &Job::progressed, this, &Recomputation::progressed);
    connect(&m_job, &Job::failed, this, &Recomputation::failed);
}

void Recomputation::setNights(std::optional<int> nights) {
    if (nights != m_nights) {
        m_nights = nights;
        compute();
    }
}

void Recomputation::setMembers(int members) {
    if (members != m_members) {
        m_members = members;
        compute();
    }
}

void Recomputation::setMeasuring(bool isMeasuring, int members) {
    m_isMeasuring = isMeasuring;
    m_membersToMeasure = members;
    if (isMeasuring && m_outcome != nullptr && !m_isStale && !isRunning()) {
        m_isGivenUp = false;
        measureOrSettle();
    }
}

void Recomputation::cancel() {
    m_isGivenUp = true;
    m_job.cancel();
}

void Recomputation::compute() {
    if (m_document.isEmpty()) {
        return;
    }
    m_isGivenUp = false;
    if (!m_isStale) {
        m_isStale = true;
        emit staleChanged(true);
    }
    m_job.start(
        [pond = m_document.pond(), nights = m_nights, earlier = m_outcome](const std::stop_token& stop,
                                                                           const Job::Progress& progress) {
            return std::make_shared<const Outcome>(
                outcomeOf(pond, nights, false, earlier.get(), {stop, progress}));
        },
        [this](const OutcomePtr& outcome) {
            if (m_isGivenUp) {  // the old picture stays, and says that it is old
                giveUp();
                return;
            }
            deliver(outcome);
            addAttribution(outcome->comparison.days);
        });
}

void Recomputation::addAttribution(int nights) {
    m_job.start(
        [pond = m_document.pond(), nights, earlier = m_outcome](const std::stop_token& stop,
                                                                const Job::Progress& progress) {
            return std::make_shared<const Outcome>(
                outcomeOf(pond, nights, true, earlier.get(), {stop, progress}));
        },
        [this](const OutcomePtr& outcome) {
            if (m_isGivenUp) {
                giveUp();
                return;
            }
            deliver(outcome);
            if (m_members > 1) {
                // After an edit of one ramp only that one is new, so that all come at once.
                const bool isKnown =
                    m_drawn != nullptr && m_drawn->hasAllMembers && hasMembersFor(*outcome, m_drawn.get());
                addMembers(isKnown || outcome->comparison.runs.size() <= 2);
            } else {
                measureOrSettle();
            }
        });
}

void Recomputation::addMembers(bool ofAll) {
    m_job.start(
        [outcome = m_outcome, members = m_members, ofAll, earlier = m_drawn](const std::stop_token& stop,
                                                                             const Job::Progress& progress) {
            return std::make_shared<const Outcome>(
                withMembers(*outcome, members, ofAll, {stop, progress}, earlier.get()));
        },
        [this, ofAll](const OutcomePtr& outcome) {
            if (!outcome->comparison.ensemble || m_isGivenUp) {
                giveUp();
                return;
            }
            m_drawn = outcome;
            deliver(outcome);
            if (ofAll) {
                addAnswer();
            } else {
                addMembers(true);
            }
        });
}

void Recomputation::addAnswer() {
    m_job.start(
        [outcome = m_outcome](const std::stop_token& stop, const Job::Progress& progress) {
            return std::make_shared<const Outcome>(withAnswer(*outcome, {stop, progress}));
        },
        [this](const OutcomePtr& outcome) {
            if (m_isGivenUp) {
                giveUp();
                return;
            }
            if (outcome->answer != nullptr) {
                deliver(outcome);
            }
            measureOrSettle();
        });
}

void Recomputation::measureOrSettle() {
    if (!m_isMeasuring || m_outcome->measured != nullptr) {
        emit settled();
        return;
    }
    emit measuring();
    m_job.start(
        [outcome = m_outcome, members = m_membersToMeasure](const std::stop_token& stop,
                                                            const Job::Progress& progress) {
            return std::make_shared<const Outcome>(withMeasured(*outcome, members, {stop, progress}));
        },
        [this](const OutcomePtr& outcome) {
            if (outcome->measured == nullptr || m_isGivenUp) {
                giveUp();
                return;
            }
            deliver(outcome);
            emit settled();
        });
}

/// What is there stays, and says that no more of it comes.
void Recomputation::giveUp() {
    if (m_outcome != nullptr) {
        Outcome stopped = *m_outcome;
        stopped.isGivenUp = true;
        m_outcome = std::make_shared<const Outcome>(std::move(stopped));
        emit outcomeChanged();
    }
    emit settled();
}

void Recomputation::deliver(const OutcomePtr& outcome) {
    m_outcome = outcome;
    if (m_isStale) {
        m_isStale = false;
        emit staleChanged(false);
    }
    emit outcomeChanged();
}

}  // namespace widgets
