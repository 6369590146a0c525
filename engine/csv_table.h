#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace engine {

/// Lines of one table to be written (design 6): RFC 4180, UTF-8, CRLF, decimal point, header first, numbers
/// as the shortest text that reads back, an empty field for a number that does not exist. All rows have as
/// many fields as the header.
class CsvWriter {
public:
    explicit CsvWriter(std::string_view header);

    CsvWriter& text(std::string_view field);
    CsvWriter& number(double value);
    template <class T>
    CsvWriter& number(const std::optional<T>& value) {
        return value ? number(static_cast<double>(*value)) : nothing();
    }
    CsvWriter& nothing() { return put({}); }

    void end();
    [[nodiscard]] std::string take() { return std::move(m_text); }

private:
    CsvWriter& put(std::string_view field);

    std::string m_text;
    int m_columns = 1;
    int m_fields = 0;
};

/// A field of a CSV file, quoted where RFC 4180 asks for it.
[[nodiscard]] std::string csvField(std::string_view text);

}  // namespace engine
