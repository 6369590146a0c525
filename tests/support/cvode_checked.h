#pragma once

#include "tests/support/cvode.h"

#include <gtest/gtest.h>

#include <vector>

namespace engine::test {

/// The state at `end` [s] from the state at time 0 by CVODE with a dense matrix. A failure of the solver
/// fails the test and returns nothing.
inline std::vector<double> integrateByCvode(const Derivative& derivative, const std::vector<double>& start,
                                            double end, double relative, double absolute) {
    CvodeOptions options;
    options.relative = relative;
    options.absolute = absolute;
    Cvode cvode(derivative, start, options);
    const bool arrived = cvode.advance(end);
    EXPECT_TRUE(arrived) << "CVODE ended with flag " << cvode.flag() << " at " << cvode.reached() << " s";
    return arrived ? cvode.state() : std::vector<double>{};
}

}  // namespace engine::test
