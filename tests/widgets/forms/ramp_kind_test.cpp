#include "engine/intake/usual_ramp.h"

#include "engine/pond/pond_check.h"
#include "engine/pond/pond_words.h"
#include "tests/random_pond.h"
#include "tests/runnable_pond.h"

#include <gtest/gtest.h>

#include <vector>

namespace widgets {
namespace {

using engine::changeKind;
using engine::RampKind;

TEST(RampKindTest, AnyKindBecomesAnyOtherAndStaysValid) {
    for (unsigned seed = 1; seed <= 100; ++seed) {
        SCOPED_TRACE(seed);
        engine::test::Dice dice(seed);
        const engine::Pond drawn = engine::test::runnablePond(dice);
        ASSERT_FALSE(engine::hasErrors(engine::checkPond(drawn)));
        for (const engine::Ramp& ramp : drawn.ramps) {
            for (const auto& word : engine::kRampKindWords) {
                engine::Pond pond = drawn;
                auto& changed = pond.ramps[static_cast<std::size_t>(&ramp - drawn.ramps.data())];
                changeKind(changed, word.value);
                EXPECT_EQ(changed.kind, word.value);
                for (const engine::Diagnostic& fault : engine::checkPond(pond)) {
                    EXPECT_EQ(fault.severity, engine::Severity::Warning)
                        << word.text << ": " << engine::format(fault);
                }
                if (word.value == ramp.kind) {
                    EXPECT_TRUE(changed == ramp);
                }
            }
        }
    }
}

TEST(RampKindTest, ATableStartsFromTheRuleOfTheRampBefore) {
    engine::Ramp ramp;
    ramp.kind = RampKind::Doubling;
    ramp.first_min = engine::Quantity(20.0);
    changeKind(ramp, RampKind::Table);
    EXPECT_EQ(ramp.minutes, (std::vector<double>{20, 40, 80, 160, 320, 640, 1280, 1440}));
    engine::Ramp capped;
    capped.kind = RampKind::Capped;
    capped.dose_percent = engine::Quantity(5.0);
    changeKind(capped, RampKind::Table);
    EXPECT_EQ(capped.minutes, (std::vector<double>{30, 60, 120, 240, 480, 960, 1440}));
}

}  // namespace
}  // namespace widgets
