#include "engine/water/priors.h"

#include "engine/water/constants_start.h"

#include <array>

namespace engine {
namespace {

constexpr std::string_view kTrade = "the trade's table for unknown ponds; common practice, no source";

constexpr std::array<ClassPriors, 3> kClasses{{
    {{0.4, 0.15, 0.9, kTrade}, {0.3, 0.0, 1.0, kTrade}, {60, 20, 150, kTrade}, {0.05, 0.0, 0.15, kTrade}},
    {{1.2, 0.5, 2.5, kTrade}, {4.0, 1.0, 10.0, kTrade}, {200, 80, 450, kTrade}, {0.25, 0.1, 0.5, kTrade}},
    {{2.5, 1.2, 5.0, kTrade}, {10.0, 4.0, 30.0, kTrade}, {350, 150, 900, kTrade}, {0.6, 0.3, 1.2, kTrade}},
}};

constexpr Prior kSulfideWithoutSmell{0.05, 0.01, 0.2,
                                     "of fast debt, bottom water that does not smell; judgement"};
constexpr Prior kSulfideUnknown{0.2, 0.03, 0.6, "of fast debt, where nobody has smelled it; judgement"};
constexpr Prior kSulfideFaint{0.2, 0.05, 0.6, "of fast debt, bottom water that smells a little; judgement"};
constexpr Prior kSulfideStrong{0.5, 0.2, 0.9,
                               "of fast debt, bottom water that smells of rotten eggs; judgement"};

}  // namespace

const Prior& sulfideOfFastDebt(const Bottom& bottom) {
    if (!bottom.smell) {
        return kSulfideUnknown;
    }
    return *bottom.smell == Smell::None    ? kSulfideWithoutSmell
           : *bottom.smell == Smell::Faint ? kSulfideFaint
                                           : kSulfideStrong;
}

PondClass pondClass(const Bottom& bottom) {
    const double age = bottom.age_years ? bottom.age_years->value : kUnknownAge_years.value;
    const double muck =
        bottom.muck ? bottom.muck->value : (age < kCleanBelow_years.value ? 0.0 : kUnknownMuck.value);
    if (age >= kMuckyFrom_years.value || muck >= kMuckyMuck.value || bottom.smell == Smell::Strong) {
        return PondClass::Mucky;
    }
    return age < kCleanBelow_years.value && muck < kCleanMuck.value ? PondClass::Clean : PondClass::Average;
}

const ClassPriors& classPriors(PondClass kind) {
    return kClasses[static_cast<std::size_t>(kind)];
}

}  // namespace engine
