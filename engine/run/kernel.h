#pragma once

#include "engine/run/member_run.h"
#include "engine/run/run.h"

#include <algorithm>
#include <span>
#include <stop_token>
#include <vector>

namespace engine {

/// How many members march in a pack.
using Lanes = Pack<4>;
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
    void (*balancePack)(const PondModel&, const BalanceSlopes&, std::span<const double> dawn,
                        MemberPack<Lanes>&, const std::stop_token&) = nullptr;
};

/// All kernels that this processor can run, the one for any processor first and the fastest last.
[[nodiscard]] const std::vector<const Kernel*>& usableKernels();

/// The fastest one.
[[nodiscard]] const Kernel& kernel();

}  // namespace engine
