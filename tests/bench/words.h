#pragma once

#include <cstdarg>
#include <cstdio>
#include <string>

namespace bench {

/// As printf, into a text; the compiler checks the form.
[[gnu::format(printf, 1, 2)]] inline std::string words(const char* form, ...) {
    char text[512];
    std::va_list values;
    va_start(values, form);
    std::vsnprintf(text, sizeof text, form, values);
    va_end(values);
    return text;
}

}  // namespace bench
