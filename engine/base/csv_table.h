#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace engine {

/// A field of a CSV file, quoted where RFC 4180 asks for it.
[[nodiscard]] std::string csvField(std::string_view text);

/// Lines of one table, all with as many fields as its header.
class CsvWriter {
public:
    explicit CsvWriter(std::string_view header);

    CsvWriter& text(std::string_view field) { return put(csvField(field)); }
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
    int m_columns = 0;
    int m_fields = 0;
};

}  // namespace engine
