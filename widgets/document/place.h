#pragma once

#include <QString>

#include <array>

namespace widgets {

/// Where one is in the window, in the order of the job.
enum class Place { Pond, Nights, Why, Plan, After };

inline constexpr std::array kPlaces{Place::Pond, Place::Nights, Place::Why, Place::Plan, Place::After};

[[nodiscard]] QString placeText(Place place);

}  // namespace widgets
