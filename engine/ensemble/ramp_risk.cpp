#include "engine/ensemble/ramp_risk.h"

#include <algorithm>

namespace engine {

double RampRisk::below(RiskLine line) const {
    return line == RiskLine::Stress ? chances.belowStress : chances.belowLethal;
}

double RampRisk::added(RiskLine line) const {
    return (line == RiskLine::Stress ? chances.added : chances.addedLethal).value_or(0.0);
}

RiskLine riskLine(const Comparison& comparison) {
    constexpr double kNearlyAll = 0.9;
    const RampEnsemble* nothing = membersOf(comparison, 0);
    return nothing != nullptr && nothing->chanceBelowStress > kNearlyAll ? RiskLine::Lethal
                                                                         : RiskLine::Stress;
}

std::optional<double> belowByItself(const Comparison& comparison, RiskLine line) {
    const RampEnsemble* nothing = membersOf(comparison, 0);
    if (nothing == nullptr) {
        return std::nullopt;
    }
    return line == RiskLine::Stress ? nothing->chanceBelowStress : nothing->chanceBelowLethal;
}

std::vector<RampRisk> rampRisks(const Comparison& comparison) {
    std::vector<RampRisk> risks;
    for (std::size_t i = 1; i < comparison.runs.size(); ++i) {
        const RampRun& run = comparison.runs[i];
        if (run.end == RunEnd::Completed && membersOf(comparison, i) != nullptr) {
            risks.push_back({i, run.daysToContinuous, chancesOf(comparison, run)});
        }
    }
    return risks;
}

RiskEnds riskEnds(const std::vector<RampRisk>& risks, RiskLine line) {
    const auto [least, most] = std::minmax_element(
        risks.begin(), risks.end(),
        [line](const RampRisk& a, const RampRisk& b) { return a.added(line) < b.added(line); });
    return {static_cast<std::size_t>(least - risks.begin()), static_cast<std::size_t>(most - risks.begin())};
}

}  // namespace engine
