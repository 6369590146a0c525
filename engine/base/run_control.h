#pragma once

#include <functional>
#include <stop_token>

namespace engine {

/// What a caller may do with a computation while it runs. Passed by value; empty by default.
struct RunControl {
    /// Read once per accepted step and once per ensemble member. A stop is a result, not an error:
    /// the computation returns what it has, and says that it was cancelled.
    std::stop_token stop;

    /// Called with the done share of the work, rising within 0 to 1; may be empty. It may be called
    /// from any worker thread but never from two at once; it must be quick and must not throw.
    std::function<void(double fraction)> progress;
};

}  // namespace engine
