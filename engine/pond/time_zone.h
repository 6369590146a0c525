#pragma once

#include <string>

namespace engine {

/// Whether the system has a time zone of this name, such as "America/Chicago". Only what people read goes by
/// it: a pond file and its runs keep the pond's own fixed clock.
[[nodiscard]] bool isTimeZone(const std::string& name);

}  // namespace engine
