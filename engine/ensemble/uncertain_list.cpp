#include "engine/ensemble/uncertain_list.h"

namespace engine {

UncertainInput& UncertainList::add(std::string name, std::string_view unit, const Spread& spread) {
    UncertainInput& input = m_inputs.emplace_back();
    input.name = std::move(name);
    input.unit = unit;
    input.spread = spread;
    return input;
}

UncertainInput& UncertainList::key(std::string name, std::string_view unit, const MaybeQuantity& given,
                                   const Prior& prior, const MeterError& meter, Key into) {
    UncertainInput& input =
        add(std::move(name), unit, given ? spreadOf(*given, prior, meter) : spreadOf(prior));
    input.measured = given && isMeasured(*given);
    input.meter = meter;
    input.intoSource = [into = std::move(into)](MemberSource& source, double value) {
        into(source) = Quantity(value);
    };
    return input;
}

void UncertainList::givenKey(std::string name, std::string_view unit, const MaybeQuantity& given,
                             const Prior& prior, const MeterError& meter, Key into) {
    if (given) {
        key(std::move(name), unit, given, prior, meter, std::move(into));
    }
}

UncertainInput& UncertainList::prior(std::string name, std::string_view unit, const Prior& prior,
                                     Scale into) {
    UncertainInput& input = add(std::move(name), unit, spreadOf(prior));
    input.intoMember = [into = std::move(into), central = prior.value](Member& member, const MemberSource&,
                                                                       double value) {
        into(member, value / central);
    };
    return input;
}

}  // namespace engine
