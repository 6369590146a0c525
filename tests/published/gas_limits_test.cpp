// EPA 822-R-13-001 (2013), Aquatic Life Ambient Water Quality Criteria for Ammonia: acute 17 mg/L of total
// ammonia nitrogen at pH 7 and 20 degC, as the Federal Register (78:52192) and reports of it print. The
// formula that gives the other temperatures and pH is from memory and checked at that point alone.
#include "engine/run/gas_limits.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

TEST(GasLimits, AcuteAmmoniaIsThePrintedNumber) {
    EXPECT_NEAR(acuteTotalAmmonia(20.0, 7.0, false), 17.0, 0.5);  // printed in whole mg/L
    EXPECT_NEAR(acuteTotalAmmonia(20.0, 7.0, true), 17.0, 0.5);
}

}  // namespace
}  // namespace engine
