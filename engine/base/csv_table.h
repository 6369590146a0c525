#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace engine {

/// A field of a CSV file, quoted where RFC 4180 asks for it.
[[nodiscard]] std::string csvField(std::string_view text);

/// A text of the user as a field. One that begins with = + - @ or a tab gets an apostrophe before it, which
/// spreadsheets take for "this is text": they would compute it otherwise (OWASP, CSV injection).
[[nodiscard]] std::string csvText(std::string_view text);

/// The text that csvText() made a cell of, the cell's own quotes taken off already.
[[nodiscard]] std::string_view ofCsvText(std::string_view cell);

/// Lines of one table, all with as many fields as its header.
class CsvWriter {
public:
    explicit CsvWriter(std::string_view header);

    CsvWriter& text(std::string_view field) { return put(csvText(field)); }
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
