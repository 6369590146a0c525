#pragma once

#include "engine/base/error.h"
#include "engine/pond/pond_io.h"

#include <gtest/gtest.h>

#include <ostream>
#include <string>

namespace engine::test {

/// A good pond file with one place changed, and the one fault that must be said of it.
struct BadInput {
    const char* name;
    const char* from;  ///< Text of the good file.
    const char* to;    ///< What stands there instead.
    int line;
    const char* key;
    const char* fragment;  ///< Part of the sentence.
};

inline void PrintTo(const BadInput& row, std::ostream* stream) {
    *stream << row.name;
}

inline std::string nameOf(const testing::TestParamInfo<BadInput>& info) {
    return info.param.name;
}

/// All diagnostics, one a line.
inline std::string said(const PondReading& reading) {
    std::string text;
    for (const auto& diagnostic : reading.diagnostics) {
        text += format(diagnostic) + '\n';
    }
    return text;
}

/// Expects that one fault is said and no other.
inline void expectOneFault(const PondReading& reading, int line, std::string_view key,
                           std::string_view fragment) {
    EXPECT_FALSE(reading.pond);
    ASSERT_EQ(reading.diagnostics.size(), 1U) << said(reading);
    const Diagnostic& fault = reading.diagnostics.front();
    EXPECT_EQ(fault.severity, Severity::Error);
    EXPECT_EQ(fault.file, "bad.toml");
    EXPECT_EQ(fault.line, line) << said(reading);
    EXPECT_EQ(fault.key, key) << said(reading);
    EXPECT_NE(fault.sentence.find(fragment), std::string::npos) << said(reading);
}

}  // namespace engine::test
