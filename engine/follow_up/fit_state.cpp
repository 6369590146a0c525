#include "engine/follow_up/fit_state.h"

#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/ensemble/draws.h"
#include "engine/ensemble/ensemble.h"
#include "engine/follow_up/assimilate.h"
#include "engine/follow_up/constants_follow_up.h"
#include "engine/run/balance.h"

#include <algorithm>
#include <cmath>

namespace engine {

std::vector<WeatherScatter> scatterAfter(const Pond& pond, int firstDay, int lastDay, int known) {
    if (!pond.weather.observed) {
        return weatherScatter(pond, firstDay, lastDay);
    }
    // The days after the known ones scatter as a forecast of them would.
    Pond open = pond;
    open.weather.observed = false;
    std::vector<WeatherScatter> out(static_cast<std::size_t>(lastDay - firstDay + 1));
    const std::vector<WeatherScatter> ahead = weatherScatter(open, 1, std::max(lastDay - known, 1));
    for (int day = std::max(firstDay, known + 1); day <= lastDay; ++day) {
        out[static_cast<std::size_t>(day - firstDay)] = ahead[static_cast<std::size_t>(day - known - 1)];
    }
    return out;
}

FitState::FitState(const PondModel& model, const FitOptions& options, double until, int days, int threads,
                   const RunControl& control)
    : m_model(model), m_source(memberSource(model)), m_inputs(uncertainInputs(model)) {
    const WeatherDays span = weatherDays(model, days);
    const int today = static_cast<int>(std::floor(until / kDay)) + 1;
    const bool isAfternoon = until - (today - 1) * kDay >= 0.5 * kDay;
    m_scatter = scatterAfter(model.pond, span.first, span.last, isAfternoon ? today : today - 1);
    const std::size_t inputs = m_inputs.size();
    const std::size_t weather = kWeatherScores * m_scatter.size();
    // Scores of observed days move nothing and stay out of the state.
    const bool isOpen = std::any_of(m_scatter.begin(), m_scatter.end(),
                                    [](const WeatherScatter& day) { return day.cloud > 0.0; });
    const auto pastDays =
        std::clamp<std::ptrdiff_t>(today - span.first + 1, 0, static_cast<std::ptrdiff_t>(m_scatter.size()));
    m_past = isOpen && !model.pond.weather.observed ? kWeatherScores * static_cast<std::size_t>(pastDays) : 0;

    const auto row = inputs + 2 + weather;
    const std::vector<double> scores = normalScores(options.members, static_cast<int>(row), options.seed);
    const Eigen::MatrixXd factor = choleskyFactor(correlations(m_inputs));
    states.resize(static_cast<Eigen::Index>(inputs + 2 + m_past), options.members);
    for (int i = 0; i < options.members; ++i) {
        const double* own = scores.data() + static_cast<std::size_t>(i) * row;
        states.col(i).head(static_cast<Eigen::Index>(inputs)) =
            factor * Eigen::Map<const Eigen::VectorXd>(own, static_cast<Eigen::Index>(inputs));
        m_weather.emplace_back(own + inputs + 2, own + row);
        for (std::size_t k = 0; k < m_past; ++k) {
            states(static_cast<Eigen::Index>(inputs + 2 + k), i) = m_weather.back()[k];
        }
        states(static_cast<Eigen::Index>(inputs), i) = std::log(model.parameters.respiration.factor);
        states(static_cast<Eigen::Index>(inputs + 1), i) = std::log(model.parameters.growth.factor);
    }
    std::vector<WeatheredMember> drawn = members();
    static_cast<void>(balanceMembers(model, drawn, threads, control.stop));
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        const Parameters<double>& balanced = drawn[i].member.parameters;
        const double* own = scores.data() + i * row + inputs;
        const auto put = [&](std::size_t which, double factorFound) {
            states(static_cast<Eigen::Index>(inputs + which), static_cast<Eigen::Index>(i)) =
                std::log(factorFound) + kFactorSpread.value * own[which];
        };
        put(0, balanced.respiration.factor);
        put(1, balanced.growth.factor);
    }
}

Member FitState::memberAt(Eigen::Index column) const {
    std::vector<double> values;
    for (std::size_t i = 0; i < m_inputs.size(); ++i) {
        values.push_back(m_inputs[i].spread.atScore(states(static_cast<Eigen::Index>(i), column)));
    }
    Member member = memberOf(m_model, m_source, m_inputs, values);
    const auto factor = [&](std::size_t which) {
        return std::clamp(std::exp(states(static_cast<Eigen::Index>(m_inputs.size() + which), column)),
                          kLeastBalance, kGreatestBalance);
    };
    member.parameters.respiration.factor = factor(0);
    member.parameters.growth.factor = factor(1);
    return member;
}

std::vector<WeatheredMember> FitState::members() const {
    std::vector<WeatheredMember> out;
    for (Eigen::Index i = 0; i < states.cols(); ++i) {
        std::vector<double> scores = m_weather[static_cast<std::size_t>(i)];
        for (std::size_t k = 0; k < m_past; ++k) {
            scores[k] = states(static_cast<Eigen::Index>(m_inputs.size() + 2 + k), i);
        }
        out.push_back(weathered(memberAt(i), m_scatter, scores));
    }
    return out;
}

std::vector<float> FitState::values(std::size_t input) const {
    std::vector<float> out;
    for (Eigen::Index i = 0; i < states.cols(); ++i) {
        const double state = states(static_cast<Eigen::Index>(input), i);
        out.push_back(static_cast<float>(input < m_inputs.size()
                                             ? m_inputs[input].spread.atScore(state)
                                             : std::clamp(std::exp(state), kLeastBalance, kGreatestBalance)));
    }
    return out;
}

std::string FitState::nameOf(std::size_t input) const {
    return input < m_inputs.size()    ? m_inputs[input].name
           : input == m_inputs.size() ? "balance factor of respiration"
                                      : "balance factor of photosynthesis";
}

std::string FitState::unitOf(std::size_t input) const {
    return input < m_inputs.size() ? m_inputs[input].unit : "1";
}

}  // namespace engine
