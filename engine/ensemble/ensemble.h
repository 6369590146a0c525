// Members: ponds like the file's, drawn from how far each uncertain input may be off, under every ramp.
//
// uncertainInputs(model) is the one list of what is not known exactly: name, spread, and how a value gets
// into a member. A number of the pond file goes into a copy of the pond before parameters are made from it
// (intoSource), a prior into the parameters after (intoMember). Spreads are two-piece (Spread); a meter's
// error stands beside the call of its input, and is the trade's or judgement.
//
// Member i is point i of a Sobol sequence (0 included, so that 2^n points are even), Owen-scrambled by a hash
// of seed, dimension and digits: its draw depends on seed and number only. Inputs take the first dimensions,
// so that they do not move with the number of days; then come air, wind and cloud day by day. Correlations
// act on the scores (Gaussian copula) and only between inputs that are not measured. Respiration in the
// trade's correlations is the community's: one input that scales both its parts. The matrix is block-wise of
// one factor and so positive definite; were one not, it is mixed with the identity until its least eigenvalue
// is 1e-9.
//
// runMembers(model, ramps, options, control) takes ramps as they ran in the central run (ensembleRamp): a
// capped ramp's schedule holds for all members. memberPlan() makes each ramp's steps once, with the central
// weather in them; a task is one pack under one ramp, and a pack sets that weather off day by day. Grid, z_b,
// lines, clock and plants' table are common; the pond's depths are therefore not drawn. Each member is
// balanced first, in packs too (balancePack): Broyden's method member for member from the central run's
// slopes, mostly three to five trial days, and a member that is done is carried along as it is. All that
// decides anything does so lane by lane or by the clock, so that a member is the same bits in any pack, in
// any lane, on any number of threads (tests/property/members_test.cpp; suite EnsembleParallel). Members are
// single precision, central runs double: of 7,392 lows of 16 members of each scenario's first ramps rounding
// moves 13 by more than 0.05 g/m^3, all by 0.002 as a mean, and one by 1.2, where trout's water passes
// between fit and too warm. Percentiles and chances stay within a standard error of the draws.
//
// Fish water of every hour and member is kept in single precision until the percentiles are taken: 1,000
// members, 14 days and 5 runs are 7 MB, the members themselves about 5. After an edit of a ramp
// EnsembleOptions::earlier takes over the members' factors and weights and the ramps that stayed, bit for
// bit.
#pragma once

#include "engine/ensemble/ensemble_result.h"
#include "engine/ensemble/uncertain_inputs.h"
#include "engine/run/member_run.h"
#include "engine/run/run.h"

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <stop_token>
#include <vector>

namespace engine {

/// Members of all ramps: the default of the window and the papers.
inline constexpr int kMembersOfBand = 200;
/// More would not fit: each member takes about 5 kB, and 1.5 kB for each ramp and two weeks.
inline constexpr int kMostMembers = 10000;

struct EnsembleOptions {
    int days = 14;
    int members = kMembersOfBand;  ///< 1 to kMostMembers
    std::uint64_t seed = 1;
    int threads = 0;         ///< 0: as many as cores
    bool balance = true;     ///< Each member gets its own factors; else those of the central run
    bool past = true;        ///< Members weigh as the pond's past has it (engine/ensemble/past.h)
    bool endStates = false;  ///< Fill RampEnsemble::endStates
    /// Weighted share of members below the lethal line, 0 to 1, above which a ramp that is not known is of no
    /// use: the runs end as soon as one has passed it (EnsembleEnd::Refused), which no number of threads
    /// changes. Nothing: all members are run.
    std::optional<double> mostLethal{};
    /// Members of the same model but for its ramps, with the same `balance`: with the same seed their factors
    /// are taken over, and with the same number and days all that became of ramps with the same schedule. The
    /// numbers are the same bits. May be null; only read during the call.
    const EnsembleResult* earlier = nullptr;
};

/// The members' values of the uncertain inputs and scores of their weather, row by row. A member's row
/// depends on the seed and its number only, and is the same for all ramps.
struct MemberDraws {
    std::vector<UncertainInput> inputs;
    std::vector<std::vector<double>> values;         ///< members x inputs
    std::vector<std::vector<double>> weatherScores;  ///< members x (3 a day)
};
[[nodiscard]] MemberDraws drawMembers(const PondModel& model, int members, int days, std::uint64_t seed);

/// Members of these draws with their weather, not balanced; not all of them are made after a stop.
[[nodiscard]] std::vector<WeatheredMember> weatheredMembers(const PondModel& model, const MemberDraws& draws,
                                                            int days, int threads = 1,
                                                            const std::stop_token& stop = {});

/// Gives each member the factors of its own balance, pack by pack.
/// @param packDone  Called after each pack, on any thread; may be empty.
/// @return false after a stop.
[[nodiscard]] bool balanceMembers(const PondModel& model, std::span<WeatheredMember> members, int threads,
                                  const std::stop_token& stop, const std::function<void()>& packDone = {});

/// Members drawn, with their weather, and balanced and weighted unless the options say otherwise.
struct DrawnMembers {
    MemberDraws draws;
    std::vector<WeatheredMember> members;  ///< Empty after a stop
    std::vector<double> weights;           ///< As in EnsembleResult
    double effective = 0.0;
};
/// Draws more, the sequence going on, while the past leaves fewer than kLeastEffective, up to four times as
/// many.
[[nodiscard]] DrawnMembers drawnMembers(const PondModel& model, const EnsembleOptions& options,
                                        const RunControl& control = {});

/// As many members as asked for, all of the same weight, by resampling from twice as many where the past
/// counts. Empty after a stop.
[[nodiscard]] std::vector<WeatheredMember> balancedMembers(const PondModel& model,
                                                           const EnsembleOptions& options,
                                                           const RunControl& control = {});

/// A ramp as it ran in the central run, whose schedule holds for all members.
[[nodiscard]] EnsembleRamp ensembleRamp(const RampRun& run);

/// Runs every member under every ramp. Members have their own parameters, start and weather
/// and share clock, switch times and layers; do-nothing, if there is one, is what chances are added to. The
/// same bits for any number of threads. Keeps the fish water of every member and hour in single precision,
/// members x (24 x days + 19) x ramps x 4 bytes, until the percentiles are taken.
///
/// A capped ramp must have run in the central run first. Stops within a step of each pack.
[[nodiscard]] EnsembleResult runMembers(const PondModel& model, const std::vector<EnsembleRamp>& ramps,
                                        const EnsembleOptions& options, const RunControl& control = {});

}  // namespace engine
