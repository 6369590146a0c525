#include "engine/base/text_file.h"
#include "engine/pond/pond_check.h"
#include "engine/pond/pond_keys.h"
#include "engine/pond/pond_words.h"

#include <algorithm>
#include <set>

namespace engine {
namespace {

constexpr std::size_t kLongestName = 60;

/// Letter case, spaces at the ends, and the kind of gap between the words make no other name.
bool isDoNothing(std::string_view name) {
    while (name.starts_with(' ')) {
        name.remove_prefix(1);
    }
    while (name.ends_with(' ')) {
        name.remove_suffix(1);
    }
    std::string plain;
    for (const char c : name) {
        plain += c == ' ' || c == '_' ? '-' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return plain == "do-nothing";
}

void checkNames(const Pond& pond, const PondFaults& faults) {
    std::set<std::string_view> seen;
    bool isEachRead = !faults.isUnread("ramp");
    for (std::size_t i = 0; i < pond.ramps.size(); ++i) {
        const std::string path = itemPath("ramp", i) + ".name";
        const std::string& name = pond.ramps[i].name;
        isEachRead = isEachRead && !faults.isUnread(path);
        const bool hasControl = std::any_of(name.begin(), name.end(), [](char c) {
            return static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
        });
        if (hasControl) {
            faults.add(path, "The name " + shownText(name) +
                                 " must not hold line breaks or other control characters.");
        }
        if (countCharacters(name) > kLongestName) {
            faults.add(path, "The name has " + std::to_string(countCharacters(name)) +
                                 " characters, but may have at most " + std::to_string(kLongestName) + ".");
        }
        if (isDoNothing(name)) {
            faults.add(path, "The name " + shownText(name) +
                                 " is kept for the pond without the new aerator, which stands "
                                 "beside every ramp by itself.");
        }
        if (!name.empty() && !seen.insert(name).second) {
            faults.add(path, "There is already a ramp of the name " + shownText(name) + ".");
        }
    }
    if (isEachRead && !pond.chosenRamp.empty() && !seen.contains(pond.chosenRamp)) {
        faults.add("chosen_ramp", "There is no ramp of the name " + shownText(pond.chosenRamp) + ".");
    }
    if (pond.chosenRamp.empty() && faults.isWritten("chosen_ramp")) {
        faults.add("chosen_ramp", "The text must not be empty.");
    }
}

enum class Role { Foreign, Optional, Required };

void checkRole(const std::string& path, RampKind kind, bool isThere, Role role, const PondFaults& faults) {
    const std::string kindText(wordOf(kind));
    if (role == Role::Foreign && (isThere || faults.isWritten(path))) {
        faults.add(path, "This key does not belong to a ramp of the kind \"" + kindText + "\".");
    } else if (role == Role::Required && !isThere) {
        faults.add(path, (faults.isWritten(path) ? "The list must not be empty" : "This key is missing") +
                             std::string("; a ramp of the kind \"") + kindText + "\" needs it.");
    }
}

/// Which keys belong to which kind.
void checkKind(const Ramp& ramp, const std::string& path, const PondFaults& faults) {
    const RampKind kind = ramp.kind;
    const bool isDoubling = kind == RampKind::Doubling;
    const bool isLinear = kind == RampKind::Linear;
    const bool isCapped = kind == RampKind::Capped;
    const auto role = [](bool belongs, bool isNeeded) {
        return !belongs ? Role::Foreign : isNeeded ? Role::Required : Role::Optional;
    };
    const auto check = [&](const char* key, bool isThere, Role itsRole) {
        checkRole(path + key, kind, isThere, itsRole, faults);
    };
    check(".first_min", ramp.first_min.has_value(), role(isDoubling || isLinear, true));
    check(".factor", ramp.factor.has_value(), role(isDoubling, false));
    check(".add_min_per_d", ramp.add_minPerDay.has_value(), role(isLinear, true));
    check(".dose_percent", ramp.dose_percent.has_value(), role(isCapped, true));
    check(".hold", ramp.hold, role(isCapped, false));
    check(".minutes", !ramp.minutes.empty(), role(kind == RampKind::Table, true));
}

/// A capped day's run ends when its dose is reached, which pulses cannot know of each other.
void checkPulses(const Ramp& ramp, const std::string& path, const PondFaults& faults) {
    const auto several = [](double pulses) { return pulses > 1.0; };
    if (ramp.kind == RampKind::Capped && ramp.pulses &&
        std::any_of(ramp.pulses->values.begin(), ramp.pulses->values.end(), several)) {
        faults.add(path + ".pulses",
                   "A capped ramp has one run a day, which ends when the day's dose is reached, so that it "
                   "cannot have pulses.");
    }
}

void checkAboveBottom(const std::string& path, double depth, double deepest, const PondFaults& faults) {
    if (depth >= deepest && depth <= 60.0) {
        faults.add(path, "The diffuser depth is " + shownNumber(depth) +
                             " m, but must be above the bottom, which is at " + shownNumber(deepest) + " m.");
    }
}

void checkByDay(const Pond& pond, std::size_t index, std::optional<double> deepest,
                const PondFaults& faults) {
    const Ramp& ramp = pond.ramps[index];
    const auto each = [&](const char* key, const std::optional<ByDay>& days, auto check) {
        const std::string path = itemPath("ramp", index) + key;
        for (std::size_t i = 0; days && i < days->values.size(); ++i) {
            check(days->isList ? itemPath(path, i) : path, days->values[i]);
        }
    };
    if (deepest) {
        each(".depth_m", ramp.depth,
             [&](const std::string& path, double depth) { checkAboveBottom(path, depth, *deepest, faults); });
    }
    if (pond.aerator && pond.aerator->diffusers) {
        const double installed = *pond.aerator->diffusers;
        each(".diffusers", ramp.diffusers, [&](const std::string& path, double open) {
            if (open > installed && open <= 100.0) {
                faults.add(path, "The ramp opens " + shownNumber(open) + " diffusers, but the aerator has " +
                                     shownNumber(installed) + ".");
            }
        });
    }
}

}  // namespace

void checkRamps(const Pond& pond, const PondFaults& faults) {
    const bool isBasinRead = !faults.isUnread("basin.max_depth_m") && !faults.isUnread("basin.contour");
    const auto deepest = isBasinRead ? deepestPoint(pond.basin) : std::nullopt;
    if (!pond.ramps.empty() && !pond.aerator && !faults.isUnread("aerator")) {
        faults.add("aerator", "The table [aerator] is missing; the ramps need it.");
    }
    if (pond.aerator && pond.aerator->depth && deepest) {
        checkAboveBottom("aerator.depth_m", *pond.aerator->depth, *deepest, faults);
    }
    checkNames(pond, faults);
    if (pond.ramps.size() > kMostRamps) {
        faults.add("ramp", "The file has " + std::to_string(pond.ramps.size()) +
                               " ramps, but may have at most " + std::to_string(kMostRamps) + ".");
    }
    for (std::size_t i = 0; i < pond.ramps.size(); ++i) {
        if (!faults.isUnread(itemPath("ramp", i) + ".kind")) {
            checkKind(pond.ramps[i], itemPath("ramp", i), faults);
            checkPulses(pond.ramps[i], itemPath("ramp", i), faults);
        }
        checkByDay(pond, i, deepest, faults);
    }
}

}  // namespace engine
