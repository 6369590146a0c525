#pragma once

#include "engine/ensemble/spread.h"
#include "engine/run/member.h"
#include "engine/run/run.h"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace engine {

/// What a member is made from: the pond file with the member's own numbers in it.
struct MemberSource {
    Pond pond;
    Profile profile;
    ReadOxygen read{};
};

/// Which inputs go together (trade's correlations, common practice without a source).
enum class InputGroup { Alone, Bottom, Algae };

/// One number that is not known exactly, and how a value of it gets into a member.
struct UncertainInput {
    std::string name;       ///< Its key in the pond file, or plain words
    std::string unit;       ///< As the pond file writes it, "1" for a factor
    Spread spread;          ///< Its median is what the central run takes
    bool measured = false;  ///< Measured inputs are correlated with nothing
    bool isDebt = false;    ///< Oxygen debt that the past of the pond does not narrow
    InputGroup group = InputGroup::Alone;
    std::optional<MeterError> meter;  ///< What a measurement of it is off by; nothing if none is usual
    double withChlorophyll = 0.0;     ///< In the algae group: the correlation with chlorophyll
    /// Either of the two: a number of the pond file, or of what was made from it.
    std::function<void(MemberSource& source, double value)> intoSource;
    std::function<void(Member& member, const MemberSource& source, double value)> intoMember;
};

/// Every uncertain input of a pond, in the order of its draws: the numbers of the pond file, the errors of
/// its profile and dawn reading, and the priors of engine/water/priors.h. Leaves out what does not touch the
/// pond, such as the debt of a pond without bottom water, and what moves no oxygen: ph, alkalinity_mg_per_l,
/// power_kw. Not drawn: the depths of the basin, since all members share their layers; half saturations, how
/// near infrared goes, the times of muck and what a splashing aerator turns over, which the kernels hold as
/// constants; age_years and smell, which only choose priors.
[[nodiscard]] std::vector<UncertainInput> uncertainInputs(const PondModel& model);

/// What members are made from before anything is drawn. Without hours of weather and readings, which members
/// share.
[[nodiscard]] MemberSource memberSource(const PondModel& model);

/// A member whose inputs have these values, one an input, in the order of `inputs`. Not balanced: its two
/// factors are those of the model.
[[nodiscard]] Member memberOf(const PondModel& model, const MemberSource& source,
                              const std::vector<UncertainInput>& inputs, std::span<const double> values);

}  // namespace engine
