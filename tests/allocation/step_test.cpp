// A step allocates nothing and throws nothing, not even what it would catch. In a program of its own, since
// it replaces the allocation functions and the C++ runtime's throw for everything in it.
#include "engine/base/units.h"
#include "engine/column/column.h"
#include "engine/run/balance.h"
#include "engine/run/member_run.h"
#include "tests/runnable_pond.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <cxxabi.h>
#include <dlfcn.h>
#include <new>
#include <span>
#include <stdexcept>
#include <typeinfo>
#include <vector>

namespace {

thread_local long t_allocations = 0, t_throws = 0;

void* allocated(std::size_t size, std::size_t alignment) {
    ++t_allocations;
    void* memory = nullptr;
    const std::size_t least = std::max(alignment, sizeof(void*));
    if (posix_memalign(&memory, least, size == 0 ? 1 : size) != 0) {
        throw std::bad_alloc();
    }
    return memory;
}

}  // namespace

// The other forms of new and delete call these. Not inlined, or GCC takes free for the wrong end of a new.
[[gnu::noinline]] void* operator new(std::size_t size) {
    return allocated(size, alignof(std::max_align_t));
}
[[gnu::noinline]] void* operator new(std::size_t size, std::align_val_t alignment) {
    return allocated(size, static_cast<std::size_t>(alignment));
}
[[gnu::noinline]] void operator delete(void* memory) noexcept {
    std::free(memory);
}
[[gnu::noinline]] void operator delete(void* memory, std::size_t) noexcept {
    std::free(memory);
}
[[gnu::noinline]] void operator delete(void* memory, std::align_val_t) noexcept {
    std::free(memory);
}
[[gnu::noinline]] void operator delete(void* memory, std::size_t, std::align_val_t) noexcept {
    std::free(memory);
}

namespace __cxxabiv1 {
extern "C" void __cxa_throw(void* thrown, std::type_info* type, void (*destroy)(void*)) {
    ++t_throws;
    using Throw = void (*)(void*, std::type_info*, void (*)(void*));
    const auto real = reinterpret_cast<Throw>(dlsym(RTLD_NEXT, "__cxa_throw"));
    real(thrown, type, destroy);
    std::abort();
}
}  // namespace __cxxabiv1

namespace engine::test {
namespace {

constexpr unsigned kSeed = 20260721;
constexpr int kPonds = 60;
constexpr int kSteps = 60;

/// What the steps of a column did beyond arithmetic.
struct Deeds {
    long allocations = 0;  ///< In steps that did not find the plume
    long withPlume = 0;    ///< In those that did
    long throws = 0, plumes = 0;
};

/// Steps through an hour's marks with the plume found again at each tenth step and the air going on and off.
template <class Real>
Deeds stepThrough(const PondModel& model, Column<Real>& column, Dice& dice, bool isAerated) {
    const WeatherSeries weather(model.pond, {}, -2, 4);
    const double depth = *model.pond.aerator->depth;
    Deeds deeds;
    for (int step = -2; step < kSteps; ++step) {
        const Forcing f = weather.at(10.0 * kHour + 360.0 * step);
        const bool runs = isAerated && dice.coin(0.8);
        const Aeration aeration{runs ? model.aerator.diffusers : 0, runs ? depth : 0.0, dice.coin()};
        const long plumes = column.plumeCount(), allocations = t_allocations, throws = t_throws;
        if (step % 10 == 0) {
            column.refreshPlume();
        }
        column.step(360.0, {f.shortwave, f.air, f.vapourPressure, f.wind10, f.cloud}, aeration);
        const long found = column.plumeCount() - plumes;
        deeds.throws += t_throws - throws;
        deeds.plumes += found;
        if (step >= 0) {  // the first pair takes the room that the later ones work in
            (found > 0 ? deeds.withPlume : deeds.allocations) += t_allocations - allocations;
        }
    }
    return deeds;
}

template <class Real>
MemberPack<Real> alike(const PondModel& model) {
    const WeatheredMember member{{model.parameters, model.start, 1.0, {}}, {WeatherOffset{}}};
    return packOf<Real>(std::span(&member, 1));
}

template <class Real>
void expectPureArithmetic(bool isAerated) {
    long plumes = 0, withPlume = 0;
    for (int draw = 0; draw < kPonds; ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        const PondModel model = prepareUnbalanced(runnablePond(dice), {20, 360.0});
        const MemberPack<Real> pack = alike<Real>(model);
        Column<Real> column(model.grid, pack.parameters, model.aerator, model.bottom, pack.start);
        const Deeds deeds = stepThrough(model, column, dice, isAerated);
        EXPECT_EQ(deeds.allocations, 0);
        EXPECT_EQ(deeds.throws, 0);
        plumes += deeds.plumes;
        withPlume += deeds.withPlume;
    }
    EXPECT_EQ(withPlume, 0);
    EXPECT_EQ(plumes > 0, isAerated);
}

TEST(AllocationOfAStep, CountersCount) {
    const long allocations = t_allocations, throws = t_throws;
    auto* more = new std::vector<double>(1000);
    EXPECT_GE(t_allocations - allocations, 2);
    delete more;
    EXPECT_THROW(throw std::runtime_error("seen"), std::runtime_error);
    EXPECT_GE(t_throws - throws, 1);
}

TEST(AllocationOfAStep, NoneWithoutAir) {
    expectPureArithmetic<double>(false);
}

TEST(AllocationOfAStep, NoneWithoutAirInAPack) {
    expectPureArithmetic<Lanes>(false);
}

TEST(AllocationOfAStep, NoneWithAir) {
    expectPureArithmetic<double>(true);
}

TEST(AllocationOfAStep, NoneWithAirInAPack) {
    expectPureArithmetic<Lanes>(true);
}

}  // namespace
}  // namespace engine::test
