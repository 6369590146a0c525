// One table of what steps water for each processor that it is compiled for. Of a kernel that is not for any
// processor, the table's name is all that the rest of the program can see.
#include "engine/run/kernel.h"
#include "engine/run/runner.h"

#ifndef DAWNLINE_KERNEL
#define DAWNLINE_KERNEL kAnyKernel
#define DAWNLINE_KERNEL_NAME "any processor"
#endif

namespace engine {
namespace {

RampRun runOne(const PondModel& model, const Ramp* ramp, const RunRequest& request,
               const RunControl& control) {
    return Runner(model, ramp, request, control).go();
}

}  // namespace

// Made by the compiler, since nothing of a kernel may run before it was picked.
extern const Kernel DAWNLINE_KERNEL;
constinit const Kernel DAWNLINE_KERNEL{DAWNLINE_KERNEL_NAME, &runOne, &runPack<Lanes>, &goOn<Lanes>,
                                       &balancePack<Lanes>};

}  // namespace engine
