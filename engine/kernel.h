#pragma once

#include "engine/member_run.h"
#include "engine/run.h"

#include <span>
#include <stop_token>
#include <vector>

namespace engine {

/// How many members march in a pack.
using Lanes = Pack<4>;

/// What steps water, compiled for one kind of processor. All kinds give the same bits: none has multiply-add.
struct Kernel {
    const char* name = "";
    RampRun (*runRamp)(const PondModel&, const Ramp*, const RunRequest&, const RunControl&) = nullptr;
    void (*runPack)(const PondModel&, const MemberPlan&, const MemberPack<Lanes>&, std::size_t first,
                    std::size_t used, MemberTrace&, const std::stop_token&) = nullptr;
    void (*goOn)(const PondModel&, std::span<const MemberStep>, const MemberPack<Lanes>&,
                 PackOnItsWay<Lanes>&, const std::stop_token&) = nullptr;
    void (*balancePack)(const PondModel&, const BalanceSlopes&, std::span<const double> dawn,
                        MemberPack<Lanes>&, const std::stop_token&) = nullptr;
};

/// All kernels that this processor can run, the one for any processor first and the fastest last.
[[nodiscard]] const std::vector<const Kernel*>& usableKernels();

/// The fastest one.
[[nodiscard]] const Kernel& kernel();

}  // namespace engine
