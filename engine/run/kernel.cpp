#include "engine/run/kernel.h"

namespace engine {

// Made by kernel_table.cpp, which is compiled once for each (engine/CMakeLists.txt).
extern const Kernel kAnyKernel;
#ifdef DAWNLINE_HAS_AVX2_KERNEL
extern const Kernel kAvx2Kernel;
#endif

const std::vector<const Kernel*>& usableKernels() {
    static const std::vector<const Kernel*> all = [] {
        std::vector<const Kernel*> usable{&kAnyKernel};
#ifdef DAWNLINE_HAS_AVX2_KERNEL
        if (__builtin_cpu_supports("avx2") != 0) {
            usable.push_back(&kAvx2Kernel);
        }
#endif
        return usable;
    }();
    return all;
}

const Kernel& kernel() {
    return *usableKernels().back();
}

}  // namespace engine
