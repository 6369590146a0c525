#pragma once

#include <QString>

namespace widgets {

/// What a text was read as; `fault` is a sentence, and `value` means nothing, if it could not be.
template <class T>
struct TextReading {
    T value{};
    QString fault;
};

}  // namespace widgets
