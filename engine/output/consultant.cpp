#include "engine/output/consultant.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/toml_node.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace engine {
namespace {

constexpr std::uintmax_t kLargest_bytes = std::uintmax_t{1} << 20;
constexpr std::array<std::string_view, 12> kKeys{"business", "name",     "phone",      "email",
                                                 "licence",  "address",  "logo",       "units",
                                                 "page",     "currency", "exclusions", "price"};
constexpr std::array<std::string_view, 3> kPriceKeys{"item", "unit", "amount"};

/// Reads values out of a profile's tables and says what is wrong with them.
class ProfileReader {
public:
    ProfileReader(std::string file, Diagnostics& faults) : m_file(std::move(file)), m_faults(faults) {}

    void fault(int line, const std::string& key, std::string sentence) {
        m_faults.push_back({Severity::Error, m_file, line, key, std::move(sentence)});
    }
    template <class Known>
    void refuseUnknown(const TomlNode& table, const Known& known) {
        for (const TomlNode& item : table.items) {
            if (std::find(known.begin(), known.end(), item.key) == known.end()) {
                const std::string near = nearest(item.key, known);
                fault(item.line, item.key,
                      near.empty() ? std::string("The key is not known.")
                                   : "The key is not known; the nearest is \"" + near + "\".");
            }
        }
    }
    void text(const TomlNode& table, std::string_view key, std::string& out) {
        if (const TomlNode* node = table.find(key)) {
            if (node->kind == TomlKind::Text) {
                out = node->text;
            } else {
                wrong(*node, key, "a text");
            }
        }
    }
    void texts(const TomlNode& table, std::string_view key, std::vector<std::string>& out) {
        const TomlNode* node = table.find(key);
        if (node == nullptr) {
            return;
        }
        if (node->kind == TomlKind::Text) {
            out = {node->text};
            return;
        }
        for (const TomlNode& item : node->items) {
            if (node->kind != TomlKind::List || item.kind != TomlKind::Text) {
                wrong(item, key, "a text or a list of texts");
                return;
            }
            out.push_back(item.text);
        }
        if (node->kind != TomlKind::List) {
            wrong(*node, key, "a text or a list of texts");
        }
    }
    /// Whether a key with one of two words has the second.
    void choice(const TomlNode& table, std::string_view key, std::string_view first, std::string_view second,
                bool& out) {
        if (const TomlNode* node = table.find(key)) {
            if (node->kind == TomlKind::Text && (node->text == first || node->text == second)) {
                out = node->text == second;
            } else {
                wrong(*node, key,
                      std::string("\"").append(first).append("\" or \"").append(second).append("\""));
            }
        }
    }
    void prices(const TomlNode& root, std::vector<Price>& out) {
        const TomlNode* list = root.find("price");
        if (list == nullptr) {
            return;
        }
        for (const TomlNode& item : list->items) {
            if (list->kind != TomlKind::List || item.kind != TomlKind::Table) {
                break;
            }
            refuseUnknown(item, kPriceKeys);
            Price price;
            text(item, "item", price.item);
            text(item, "unit", price.unit);
            if (price.item.empty()) {
                fault(item.line, "price.item", "A price needs its item.");
            }
            if (const TomlNode* amount = item.find("amount")) {
                const bool isNumber = amount->kind == TomlKind::Whole || amount->kind == TomlKind::Real;
                if (isNumber && amount->number >= 0.0 && amount->number <= kLargestPrice) {
                    price.amount = amount->number;
                } else {
                    wrong(*amount, "price.amount", "a number from 0 to 1000000000");
                }
            }
            out.push_back(std::move(price));
        }
        if (out.size() != list->items.size()) {
            wrong(*list, "price", "tables [[price]]");
        }
    }

private:
    void wrong(const TomlNode& node, std::string_view key, const std::string& wanted) {
        fault(node.line, std::string(key), "Wanted is " + wanted + ", not " + describe(node) + '.');
    }

    std::string m_file;
    Diagnostics& m_faults;
};

std::string textList(const std::vector<std::string>& texts) {
    std::string out;
    for (const std::string& text : texts) {
        out += (out.empty() ? "" : ", ") + tomlText(text);
    }
    return '[' + out + ']';
}

/// A logo that lies below the folder, by its way from there; any other as it is.
std::string logoFrom(const std::filesystem::path& folder, const std::string& logo) {
    const std::filesystem::path way = std::filesystem::path(logo).lexically_relative(folder);
    return way.empty() || *way.begin() == ".." ? logo : way.string();
}

}  // namespace

ConsultantReading readConsultant(const std::filesystem::path& path) {
    const FileText file = readWholeFile(path, kLargest_bytes);
    return file.text ? readConsultantText(*file.text, path)
                     : ConsultantReading{std::nullopt, {{Severity::Error, path.string(), 0, "", file.fault}}};
}

ConsultantReading readConsultantText(std::string_view text, const std::filesystem::path& path) {
    ConsultantReading reading;
    ProfileReader reader(path.string(), reading.diagnostics);
    if (const auto fault = findTextFault(text)) {
        reader.fault(fault->line, "", fault->sentence);
        return reading;
    }
    const TomlParse parse = parseToml(text);
    if (!parse.root) {
        reader.fault(parse.line, "", parse.fault);
        return reading;
    }
    const TomlNode& root = *parse.root;
    Consultant consultant;
    reader.refuseUnknown(root, kKeys);
    reader.text(root, "business", consultant.business);
    reader.text(root, "name", consultant.name);
    reader.text(root, "phone", consultant.phone);
    reader.text(root, "email", consultant.email);
    reader.text(root, "licence", consultant.licence);
    reader.texts(root, "address", consultant.address);
    reader.text(root, "logo", consultant.logo);
    reader.choice(root, "units", "si", "us", consultant.usUnits);
    reader.choice(root, "page", "a4", "letter", consultant.letter);
    reader.text(root, "currency", consultant.currency);
    reader.texts(root, "exclusions", consultant.exclusions);
    reader.prices(root, consultant.prices);
    if (!consultant.logo.empty()) {
        consultant.logo = (path.parent_path() / consultant.logo).string();
    }
    if (!hasErrors(reading.diagnostics)) {
        reading.consultant = std::move(consultant);
    }
    return reading;
}

std::string writeConsultant(const Consultant& consultant, const std::filesystem::path& folder) {
    std::string out;
    const auto line = [&out](std::string_view key, const std::string& value) {
        out.append(key).append(" = ").append(value) += '\n';
    };
    const auto text = [&line](std::string_view key, const std::string& value) {
        if (!value.empty()) {
            line(key, tomlText(value));
        }
    };
    text("business", consultant.business);
    text("name", consultant.name);
    text("licence", consultant.licence);
    if (!consultant.address.empty()) {
        line("address", textList(consultant.address));
    }
    text("phone", consultant.phone);
    text("email", consultant.email);
    text("logo", logoFrom(folder, consultant.logo));
    text("units", consultant.usUnits ? "us" : "si");
    text("page", consultant.letter ? "letter" : "a4");
    text("currency", consultant.currency);
    if (!consultant.exclusions.empty()) {
        line("exclusions", textList(consultant.exclusions));
    }
    for (const Price& price : consultant.prices) {
        out += "\n[[price]]\n";
        text("item", price.item);
        text("unit", price.unit);
        if (price.amount) {
            line("amount", shortest(*price.amount));
        }
    }
    return out;
}

}  // namespace engine
