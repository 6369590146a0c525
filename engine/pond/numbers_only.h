#pragma once

#include "engine/pond/pond_keys.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// The half of a visitor of pond_keys.h that looks at numbers alone: it passes over all else.
struct NumbersOnly {
    void format(const char*) {}
    void text(const char*, const std::string&, Need) {}
    void truth(const char*, bool, bool) {}
    template <class D>
    void date(const char*, const D&, Need = Need::Required) {}
    void dates(const char*, const std::vector<Date>&) {}
    void time(const char*, const std::optional<LocalTime>&, Need) {}
    void clock(const char*, const std::optional<ClockTime>&) {}
    void window(const char*, const std::optional<ClockWindow>&) {}
    template <class E>
    void choice(const char*, const E&) {}
};

}  // namespace engine
