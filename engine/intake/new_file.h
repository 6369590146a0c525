#pragma once

#include "engine/pond/pond_io.h"

#include <string>

namespace engine {

/// Makes every number that has a unit of its own in a system one that is written in it, to three figures at
/// least: "1.8 ac". Numbers move by what that rounding takes; those typed already stay. In metric nothing
/// changes.
void writeIn(UnitSystem units, Pond& pond, TypedNumbers& typed);

/// The text of a pond file with a remark on each table and key, the first time that it stands there.
[[nodiscard]] std::string commentedPond(const Pond& pond, const TypedNumbers& typed);

}  // namespace engine
