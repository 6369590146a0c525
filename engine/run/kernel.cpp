#include "engine/run/kernel.h"

namespace engine {

// Made by kernel_table.cpp, which is compiled once for each (engine/CMakeLists.txt).
extern const Kernel kAnyKernel;
#ifdef DAWNLINE_HAS_VECTOR_KERNELS
extern const Kernel kAvx2Kernel;
extern const Kernel kAvx512Kernel;
#endif

const std::vector<const Kernel*>& usableKernels() {
    static const std::vector<const Kernel*> all = [] {
        std::vector<const Kernel*> usable{&kAnyKernel};
#ifdef DAWNLINE_HAS_VECTOR_KERNELS
        if (__builtin_cpu_supports("avx2") != 0) {
            usable.push_back(&kAvx2Kernel);
            if (__builtin_cpu_supports("avx512f") != 0 && __builtin_cpu_supports("avx512dq") != 0 &&
                __builtin_cpu_supports("avx512bw") != 0 && __builtin_cpu_supports("avx512vl") != 0) {
                usable.push_back(&kAvx512Kernel);
            }
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
