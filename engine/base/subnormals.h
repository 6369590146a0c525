#pragma once

#include "engine/base/lane.h"

namespace engine {

/// While it lives, this thread takes numbers too small to be normal (in single precision below 1e-38) for
/// zero, where Real is a pack of floats and the processor an x86-64: what decays comes there within weeks,
/// and each operation on such a number takes as long as a hundred others. Elsewhere nothing happens; what
/// differs is far below rounding.
template <class Real>
class WithoutSubnormals {
public:
#if defined(__x86_64__)
    WithoutSubnormals() {
        if constexpr (kIsSingle<Real>) {
            __builtin_ia32_ldmxcsr(m_before | kFlushToZero | kSubnormalsAreZero);
        }
    }
    ~WithoutSubnormals() {
        if constexpr (kIsSingle<Real>) {
            __builtin_ia32_ldmxcsr(m_before);
        }
    }

private:
    static constexpr unsigned kFlushToZero = 0x8000U, kSubnormalsAreZero = 0x0040U;  // Bits of MXCSR
    unsigned m_before = __builtin_ia32_stmxcsr();

public:
#else
    WithoutSubnormals() {}
    ~WithoutSubnormals() {}
#endif
    WithoutSubnormals(const WithoutSubnormals&) = delete;
    WithoutSubnormals& operator=(const WithoutSubnormals&) = delete;
};

}  // namespace engine
