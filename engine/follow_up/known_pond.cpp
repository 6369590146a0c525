#include "engine/follow_up/known_pond.h"

#include <utility>

namespace engine {

JudgedLog judgedLog(LogInForce log, const PondModel& model) {
    std::vector<SensorFault> faults = sensorFaults(log.readings, model.parameters.site.airPressure);
    return {std::move(log), std::move(faults)};
}

KnownPond preparedPond(const Pond& known, LocalTime at, const Resolution& resolution) {
    KnownPond out;
    out.at = at;
    out.time = secondsOf(known, at);
    out.model = prepare(known, resolution);
    out.log = judgedLog(logInForce(known), out.model);
    return out;
}

Schedule cappedRuns(const KnownPond& known, int days, const RunControl& control) {
    const Ramp* ramp = rampMeant(known.model.pond, known.log.inForce.events);
    if (ramp == nullptr || ramp->kind != RampKind::Capped) {
        return {};
    }
    RunRequest request;
    request.days = days;
    request.keepLayers = false;
    return runRamp(known.model, ramp, request, {control.stop, nullptr}).schedule;
}

LoggedAir airOfLog(const KnownPond& known, const Schedule& capped, int lastDay, double end) {
    return airOfLog(known.model.pond, known.log.inForce.events, capped.empty() ? nullptr : &capped, lastDay,
                    end);
}

}  // namespace engine
