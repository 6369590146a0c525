// What the past of a pond says of its members: its fish are alive.
//
// Each member is run alone over some nights of usual weather with its scatter, from which follows how often
// its fish water is lethal, and how often so low for so long that fish die. The likelihood that nobody
// noticed that in the weeks before the start, and of kills in the years that the pond file tells of, is the
// member's weight. Debt and slow debt are those of the central run in these nights, so that the past does not
// narrow them but by what they share with the sediment. A dawn reading tells more than the past: with one,
// all members weigh the same.
#pragma once

#include "engine/ensemble/ensemble.h"

#include <span>
#include <stop_token>
#include <vector>

namespace engine {

/// Whether the past counts: nobody has read the oxygen at dawn.
[[nodiscard]] bool countsPast(const PondModel& model);

/// Logarithms of the members' likelihoods given the past; empty after a stop.
/// @param values   Of the members' uncertain inputs, as drawn. @param members  The same, balanced.
/// @param first    Number of the first of them in the sequence.
[[nodiscard]] std::vector<double> pastLikelihoods(const PondModel& model, const MemberDraws& draws,
                                                  std::span<const WeatheredMember> members, std::size_t first,
                                                  std::uint64_t seed, int threads,
                                                  const std::stop_token& stop);

/// Chances of a night of usual weather for one pond left alone, 0 to 1.
struct PastNights {
    double lethal = 0.0;  ///< That the fish water goes below the lethal line
    double kill =
        0.0;  ///< That it stays under kKillShare of it for kKillHours, which a kill of past years took
};
/// Logarithm of the likelihood of what is known: that nobody noticed lethal nights in the weeks before, and
/// the years with and without a kill.
[[nodiscard]] double pastLikelihood(const Pond& pond, const PastNights& nights);

/// Chance that a night's level is under a line, from nights that were run. @param levels  By night [g/m^3].
[[nodiscard]] double chanceBelow(std::span<const double> levels, double line);

/// Weights of mean 1 from logarithms of likelihoods; empty where all are the same.
[[nodiscard]] std::vector<double> weightsOf(std::span<const double> likelihoods);

/// Kish's effective size of a weighted sample, the sum squared over the sum of squares.
[[nodiscard]] double effectiveSize(std::span<const double> weights);

/// Members by number, as many as there are weights, each as often as its weight says: systematic resampling
/// (Kitagawa 1996, J. Comput. Graph. Stat. 5:1-25) with its one random number at the middle.
/// @param count  How many to give.
[[nodiscard]] std::vector<std::size_t> resampled(std::span<const double> weights, std::size_t members,
                                                 std::size_t count);

}  // namespace engine
