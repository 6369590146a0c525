#include "engine/ensemble/uncertain_inputs.h"

#include "engine/base/error.h"
#include "engine/ensemble/uncertain_list.h"
#include "engine/run/balance.h"

namespace engine {

std::vector<UncertainInput> uncertainInputs(const PondModel& model) {
    // The first dimensions of a Sobol sequence are its best, so that what moves most comes first.
    UncertainList list(model);
    addBottomInputs(list);
    addWaterInputs(list);
    addFishInputs(list);
    addAirInputs(list);
    addProfileInputs(list);
    addMixingInputs(list);
    return list.take();
}

MemberSource memberSource(const PondModel& model) {
    MemberSource source{model.pond, model.profile, readOxygen(balanceTarget(model))};
    source.pond.weather.hours.clear();
    source.pond.readings.clear();
    source.pond.fileReadings.clear();
    if (source.pond.fish.empty()) {
        FishStock guess;
        guess.stock_kgPerHa = classPriors(pondClass(model.pond.bottom)).stock_kgPerHa.value;
        source.pond.fish.push_back(guess);
    }
    return source;
}

Member memberOf(const PondModel& model, const MemberSource& source, const std::vector<UncertainInput>& inputs,
                std::span<const double> values) {
    ensure(values.size() == inputs.size(), "a member has a value for each uncertain input");
    MemberSource own = source;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        if (inputs[i].intoSource) {
            inputs[i].intoSource(own, values[i]);
        }
    }
    Member member;
    member.parameters = centralParameters(own.pond, model.profile);
    member.parameters.thresholds = model.parameters.thresholds;
    member.parameters.growth.factor = model.parameters.growth.factor;
    member.parameters.respiration.factor = model.parameters.respiration.factor;
    member.parameters.surface.windFactor = model.parameters.surface.windFactor;
    member.start = startState(own.pond, own.profile, model.bottom, model.grid);
    member.read = own.read;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        if (inputs[i].intoMember) {
            inputs[i].intoMember(member, own, values[i]);
        }
    }
    return member;
}

}  // namespace engine
