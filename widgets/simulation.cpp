#include "widgets/simulation.h"

#include "widgets/document.h"

namespace widgets {

Outcome outcomeOf(const engine::Pond& pond, std::optional<int> nights, bool isWhole, const Outcome* earlier,
                  const engine::RunControl& control) {
    Outcome outcome;
    engine::CompareOptions options;
    options.days = nights ? *nights : engine::ruleDays(pond);
    options.causes = options.endStates = isWhole;
    options.earlier = earlier == nullptr ? nullptr : &earlier->comparison;
    outcome.comparison = engine::compare(pond, options, control);
    outcome.backdrop = engine::backdropOf(outcome.comparison.model, outcome.comparison.days);
    outcome.isWhole = isWhole;
    return outcome;
}

Simulation::Simulation(Document& document, QObject* parent) : QObject(parent), m_document(document) {
    connect(&m_document, &Document::changed, this, &Simulation::compute);
    connect(&m_job, &Job::progressed, this, &Simulation::progressed);
    connect(&m_job, &Job::failed, this, &Simulation::failed);
}

void Simulation::setNights(std::optional<int> nights) {
    if (nights != m_nights) {
        m_nights = nights;
        compute();
    }
}

void Simulation::compute() {
    if (m_document.isEmpty()) {
        return;
    }
    if (!m_isStale) {
        m_isStale = true;
        emit staleChanged(true);
    }
    m_job.start(
        [pond = m_document.pond(), nights = m_nights, earlier = m_outcome](const std::stop_token& stop,
                                                                           const Job::Progress&) {
            return std::make_shared<const Outcome>(
                outcomeOf(pond, nights, false, earlier.get(), {stop, nullptr}));
        },
        [this](const OutcomePtr& outcome) {
            deliver(outcome);
            addCauses(outcome->comparison.days);
        });
}

void Simulation::addCauses(int nights) {
    m_job.start(
        [pond = m_document.pond(), nights, earlier = m_outcome](const std::stop_token& stop,
                                                                const Job::Progress& progress) {
            return std::make_shared<const Outcome>(
                outcomeOf(pond, nights, true, earlier.get(), {stop, progress}));
        },
        [this](const OutcomePtr& outcome) { deliver(outcome); });
}

void Simulation::deliver(const OutcomePtr& outcome) {
    m_outcome = outcome;
    if (m_isStale) {
        m_isStale = false;
        emit staleChanged(false);
    }
    emit outcomeChanged();
}

}  // namespace widgets
