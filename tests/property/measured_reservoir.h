// A measured reservoir without air (measured_waters.h says where the data are from).
#pragma once

#include "tests/property/measured_waters.h"

#include <array>
#include <chrono>

namespace engine::test {

// The reservoir: 8 ha, 9.3 m. Of its water 0 to 6 m is looked at, since an oxygen system ran below.

inline constexpr std::array<double, 7> kReservoirDepths{0.1, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0};  ///< [m]

struct LakeProfile {
    std::chrono::local_days day;
    /// By the hand-held instrument, which writes one decimal and sits 0.6 to 1 m deeper than the other.
    bool isHandHeld = false;
    std::vector<double> depth, temperature, oxygen;  ///< [m], [degC], [g/m^3]

    /// True if it has all of kReservoirDepths.
    [[nodiscard]] bool isFull() const;
};

struct Reservoir {
    std::vector<LakeProfile> profiles;                 ///< By day
    std::vector<WeatherHour> hours;                    ///< Of several summers, in order
    std::map<std::chrono::local_days, double> secchi;  ///< [m], mean of a day

    [[nodiscard]] const LakeProfile& profileOf(std::chrono::local_days day) const;
    /// Of the reading nearest in time of the same year; 2.0 where there is none [m].
    [[nodiscard]] double secchiNear(std::chrono::local_days day) const;
};
[[nodiscard]] Reservoir readReservoir(const std::filesystem::path& data);

/// The reservoir from the noon of a profile on, which is an assumption: its hour is not known.
/// @param pastDays  Of weather before it.
[[nodiscard]] Pond reservoirPond(const Reservoir& reservoir, const LakeProfile& start, int days,
                                 const WaterOptions& options, int pastDays = 0);

/// Two profiles with nothing but weather between them.
struct Stretch {
    LakeProfile start, end;
    [[nodiscard]] int days() const { return static_cast<int>((end.day - start.day).count()); }
};
/// From June to August: each begins at a full profile and ends at the first one of the same instrument 7 to
/// 11 days later; none overlap, and none touches a day on which the plume ran.
[[nodiscard]] std::vector<Stretch> stretchesWithoutAir(const Reservoir& reservoir);

/// Errors at the ends of stretches: of the model, and of the start profile taken as it is.
struct StretchErrors {
    std::vector<DepthErrors> model, unchanged;
};
[[nodiscard]] StretchErrors errorsOfStretches(const Reservoir& reservoir,
                                              const std::vector<Stretch>& stretches,
                                              const WaterOptions& options);

}  // namespace engine::test
