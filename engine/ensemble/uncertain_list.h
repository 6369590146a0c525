#pragma once

#include "engine/ensemble/uncertain_inputs.h"

namespace engine {

/// Puts together the list of uncertainInputs().
class UncertainList {
public:
    using Key = std::function<MaybeQuantity&(MemberSource&)>;
    using Scale = std::function<void(Member& member, double ratio)>;

    explicit UncertainList(const PondModel& model) : m_model(model) {}

    /// A key of the pond file. Absent, it takes its prior; `meter` is what a plain number is off by.
    UncertainInput& key(std::string name, std::string_view unit, const MaybeQuantity& given,
                        const Prior& prior, const MeterError& meter, Key into);
    /// A key that stays out of the pond where it is absent.
    void givenKey(std::string name, std::string_view unit, const MaybeQuantity& given, const Prior& prior,
                  const MeterError& meter, Key into);
    /// A prior; `into` gets the drawn value over the prior's.
    UncertainInput& prior(std::string name, std::string_view unit, const Prior& prior, Scale into);
    /// One that puts itself in; the caller says how.
    UncertainInput& add(std::string name, std::string_view unit, const Spread& spread);

    [[nodiscard]] const PondModel& model() const { return m_model; }
    [[nodiscard]] std::vector<UncertainInput> take() { return std::move(m_inputs); }

private:
    const PondModel& m_model;
    std::vector<UncertainInput> m_inputs;
};

// The parts of the list, each in a file of its own.
void addBottomInputs(UncertainList& list);
void addWaterInputs(UncertainList& list);
void addFishInputs(UncertainList& list);
void addAirInputs(UncertainList& list);
void addProfileInputs(UncertainList& list);
void addMixingInputs(UncertainList& list);

}  // namespace engine
