#include "engine/base/text_file.h"

#include "engine/base/text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <system_error>

namespace engine {
namespace {

std::string sizeSentence(std::uintmax_t limit_bytes) {
    return "The file is larger than " + std::to_string(limit_bytes >> 20) +
           " MiB, the most that is read of such a file.";
}

/// Length of the valid UTF-8 sequence at the front of `text` (not empty), or 0.
std::size_t sequenceLength(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const auto follows = [&](std::size_t i, unsigned low, unsigned high) {
        return i < text.size() && byte(i) >= low && byte(i) <= high;
    };
    const unsigned first = byte(0);
    if (first < 0x80) {
        return 1;
    }
    if (first >= 0xC2 && first <= 0xDF) {
        return follows(1, 0x80, 0xBF) ? 2 : 0;
    }
    if (first >= 0xE0 && first <= 0xEF) {
        const unsigned low = first == 0xE0 ? 0xA0 : 0x80;
        const unsigned high = first == 0xED ? 0x9F : 0xBF;
        return follows(1, low, high) && follows(2, 0x80, 0xBF) ? 3 : 0;
    }
    if (first >= 0xF0 && first <= 0xF4) {
        const unsigned low = first == 0xF0 ? 0x90 : 0x80;
        const unsigned high = first == 0xF4 ? 0x8F : 0xBF;
        return follows(1, low, high) && follows(2, 0x80, 0xBF) && follows(3, 0x80, 0xBF) ? 4 : 0;
    }
    return 0;
}

std::string hexByte(unsigned char byte) {
    constexpr std::string_view kDigits = "0123456789ABCDEF";
    return {kDigits[byte / 16U], kDigits[byte % 16U]};
}

/// The code point of a valid sequence.
char32_t codePoint(std::string_view sequence) {
    const auto first = static_cast<unsigned char>(sequence[0]);
    if (sequence.size() == 1) {
        return first;
    }
    char32_t code = first & (0xFFU >> (sequence.size() + 1));
    for (const char c : sequence.substr(1)) {
        code = code << 6U | (static_cast<unsigned char>(c) & 0x3FU);
    }
    return code;
}

bool isUnfit(char32_t code) {
    return code < 0x20 || (code >= 0x7F && code <= 0x9F) || code == 0x061C || code == 0x200E ||
           code == 0x200F || (code >= 0x2028 && code <= 0x202E) || (code >= 0x2066 && code <= 0x206F);
}

/// The character at the front of a text (not empty), or its first byte, written out where it must be.
struct Shown {
    std::string text;
    std::size_t length = 1;  ///< [bytes] of what it stands for
};

Shown shownFront(std::string_view text) {
    const std::size_t length = sequenceLength(text);
    const auto byte = static_cast<unsigned char>(text[0]);
    const char32_t code = length == 0 ? byte : codePoint(text.substr(0, length));
    if (length > 0 && !isUnfit(code)) {
        return {std::string(text.substr(0, length)), length};
    }
    if (length > 1) {
        return {"\\u" + hexByte(static_cast<unsigned char>(code >> 8U)) +
                    hexByte(static_cast<unsigned char>(code & 0xFFU)),
                length};
    }
    return {byte == '\n' ? "\\n" : byte == '\t' ? "\\t" : "\\x" + hexByte(byte), 1};
}

std::string shown(std::string_view text, bool keepsLines) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        if (keepsLines && text[at] == '\n') {
            out += text[at++];
            continue;
        }
        const Shown front = shownFront(text.substr(at));
        out += front.text;
        at += front.length;
    }
    return out;
}

}  // namespace

FileText readWholeFile(const std::filesystem::path& path, std::uintmax_t limit_bytes) {
    std::error_code fault;
    const auto status = std::filesystem::status(path, fault);
    switch (status.type()) {
        case std::filesystem::file_type::regular:
            break;
        case std::filesystem::file_type::not_found:
            return {std::nullopt, "There is no such file."};
        case std::filesystem::file_type::directory:
            return {std::nullopt, "This is a directory, not a file."};
        case std::filesystem::file_type::none:
        case std::filesystem::file_type::unknown:
            return {std::nullopt, "The file cannot be looked at (" + fault.message() + ")."};
        default:
            return {std::nullopt, "This is not a regular file."};
    }
    const auto size_bytes = std::filesystem::file_size(path, fault);
    if (fault) {
        return {std::nullopt, "The file cannot be looked at (" + fault.message() + ")."};
    }
    if (size_bytes > limit_bytes) {
        return {std::nullopt, sizeSentence(limit_bytes)};
    }
    std::ifstream stream(path, std::ios::binary);
    if (!stream) {
        return {std::nullopt, "The file cannot be opened for reading."};
    }
    // One byte more than there should be: files that say they are empty, as some system files do, or
    // that grow meanwhile are still held to the limit.
    std::string text;
    text.reserve(static_cast<std::size_t>(size_bytes));  // growing would take half as much again
    std::array<char, 1 << 16> block{};
    while (stream.read(block.data(), block.size()) || stream.gcount() > 0) {
        text.append(block.data(), static_cast<std::size_t>(stream.gcount()));
        if (text.size() > limit_bytes) {
            return {std::nullopt, sizeSentence(limit_bytes)};
        }
    }
    if (stream.bad()) {
        return {std::nullopt, "The file cannot be read to its end."};
    }
    return {std::move(text), ""};
}

std::optional<TextFault> findTextFault(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size()) {
        const char c = text[at];
        const std::size_t length = c == '\0' ? 0 : sequenceLength(text.substr(at));
        if (length == 0) {
            const auto before = text.substr(0, at);
            const int line = 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'));
            const std::string byte = hexByte(static_cast<unsigned char>(c));
            return TextFault{
                line, "This is not a text in UTF-8: the byte " + byte + " (hexadecimal) cannot stand here."};
        }
        at += length;
    }
    return std::nullopt;
}

std::size_t countCharacters(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string forTerminal(std::string_view text) {
    return shown(text, true);
}

std::string onOneLine(std::string_view text) {
    return shown(text, false);
}

std::string shownText(std::string_view text) {
    constexpr std::size_t kMost = 40;
    std::string out = "\"";
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); ++count) {
        if (count == kMost) {
            return out + "...\"";
        }
        const Shown front = shownFront(text.substr(at));
        out += front.text;
        at += front.length;
    }
    return out + '"';
}

std::string shownPath(const std::filesystem::path& path) {
    const std::string text = path.string();
    return text.find('"') == std::string::npos ? '"' + onOneLine(text) + '"' : shownText(text);
}

std::string shownNumber(double value) {
    if (std::isnan(value)) {
        return "not a number (nan)";
    }
    if (std::isinf(value)) {
        return value > 0.0 ? "infinite" : "minus infinite";
    }
    return shortest(value);
}

}  // namespace engine
