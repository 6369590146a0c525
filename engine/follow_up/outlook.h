#pragma once

#include "engine/pond/pond.h"

namespace engine {

/// What the sky is expected to do in the coming night and on the day after.
enum class Outlook { AsTheTable, Clear, HalfCloudy, Dull, DullAndCalm };

/// The pond with that outlook in the rows of today and tomorrow and no row that was known later; unchanged
/// where the weather is by the hour, or where there is none yet.
[[nodiscard]] Pond withOutlook(Pond pond, Outlook outlook, LocalTime at);

}  // namespace engine
