// What steps water is a kernel: templates on their number type, double or a Pack of members side by side
// (engine/base/lane.h), compiled at -O3 in every build and, on x86-64, once more for AVX2 and for
// AVX-512. Members are single precision, central runs double.
//
// kernel() picks the one for this processor. runRamp() and runMembers() go through it; whoever calls
// runPack() or balancePack() by name gets the one for any processor. No kernel has multiply-add, so all give
// the same bits (tests/unit/run/kernel_test.cpp).
//
// The sources are the kernel_sources of engine/CMakeLists.txt. Those for one kind are linked into one object
// that hides every name but its table's, and two tests (layering.kernels_share_nothing, and one that it would
// notice) see that nothing of it can be linked to from elsewhere. So nothing in these sources may run before
// main: no static objects that need a constructor.
//
// Any other processor has the one kernel. For arm64, with Debian's g++-aarch64-linux-gnu and with Boost and
// toml++ in an include folder of their own, each source passes
//   aarch64-linux-gnu-g++ -std=c++20 -fsyntax-only -I. -isystem /usr/include/eigen3 SOURCE
// which is not a part of the tests.
#pragma once

#include "engine/run/balance.h"
#include "engine/run/member_run.h"
#include "engine/run/run.h"

#include <algorithm>
#include <span>
#include <stop_token>
#include <vector>

namespace engine {

/// How many members march in a pack.
inline constexpr std::size_t kPack = kLanes<Lanes>;

/// How many packs so many members fill; the last may be short.
[[nodiscard]] constexpr std::size_t packsOf(std::size_t members) {
    return (members + kPack - 1) / kPack;
}

/// The members of one pack.
template <class T>
[[nodiscard]] std::span<T> membersOfPack(std::span<T> members, std::size_t pack) {
    const std::size_t first = pack * kPack;
    return members.subspan(first, std::min(kPack, members.size() - first));
}

/// What steps water, compiled for one kind of processor. All kinds give the same bits: none has multiply-add.
struct Kernel {
    const char* name = "";
    RampRun (*runRamp)(const PondModel&, const Ramp*, const RunRequest&, const RunControl&) = nullptr;
    void (*runPack)(const PondModel&, const MemberPlan&, const MemberPack<Lanes>&, std::size_t first,
                    std::size_t used, MemberTrace&, const std::stop_token&) = nullptr;
    void (*goOn)(const PondModel&, std::span<const MemberStep>, const MemberPack<Lanes>&,
                 PackRunState<Lanes>&, const std::stop_token&) = nullptr;
    void (*balancePack)(const PondModel&, const BalanceSlopes&, std::span<const ReadOxygen> read,
                        MemberPack<Lanes>&, std::span<BalanceMiss>, const std::stop_token&) = nullptr;
};

/// All kernels that this processor can run, the one for any processor first and the fastest last.
[[nodiscard]] const std::vector<const Kernel*>& usableKernels();

/// The fastest one.
[[nodiscard]] const Kernel& kernel();

}  // namespace engine
