#pragma once

#include "engine/base/error.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

inline constexpr double kLargestPrice = 1e9;

/// One line of a price list.
struct Price {
    std::string item;
    std::string unit;              ///< "each", "a day"; may be empty
    std::optional<double> amount;  ///< Nothing: a blank to fill in
    bool operator==(const Price&) const = default;
};

/// Whose papers these are. What is not given stays blank on paper.
struct Consultant {
    std::string business, name, phone, email, licence;
    std::vector<std::string> address;  ///< Its lines
    std::string logo;                  ///< Picture file; a relative name is looked for beside the profile
    bool usUnits = false;              ///< US units first, SI beside them; else the other way round
    bool letter = false;               ///< US Letter; else A4
    std::string currency;              ///< In front of the amounts, as it is
    std::vector<Price> prices;
    std::vector<std::string> exclusions;  ///< What the price leaves out
    bool operator==(const Consultant&) const = default;
};

struct ConsultantReading {
    std::optional<Consultant> consultant;  ///< If and only if no diagnostic is an error
    Diagnostics diagnostics;
};

/// Reads a profile: TOML with the keys business, name, phone, email, licence, address, logo, units ("si" or
/// "us"), page ("a4" or "letter"), currency, exclusions and tables [[price]] of item, unit and amount;
/// one of unit "kWh" is the price of power.
/// Unknown keys are errors that name the nearest known one.
[[nodiscard]] ConsultantReading readConsultant(const std::filesystem::path& path);
/// The same from text. @param path  Where it would lie
[[nodiscard]] ConsultantReading readConsultantText(std::string_view text, const std::filesystem::path& path);

/// The text of a profile. Reading it gives an equal consultant; what is blank is left out.
/// @param folder  In which the profile will lie: a logo below it is named relative to it.
[[nodiscard]] std::string writeConsultant(const Consultant& consultant, const std::filesystem::path& folder);

}  // namespace engine
