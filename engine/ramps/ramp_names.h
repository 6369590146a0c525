#pragma once

#include "engine/pond/pond.h"

#include <string>

namespace engine {

/// True if a pond has a ramp of this name.
[[nodiscard]] bool hasRamp(const Pond& pond, const std::string& name);

/// A name that no ramp of a pond has, nor the pond left alone: the wish itself, or with a number behind it.
[[nodiscard]] std::string freeRampName(const Pond& pond, const std::string& wish);

}  // namespace engine
