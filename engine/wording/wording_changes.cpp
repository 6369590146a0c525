#include "engine/wording/wording_list.h"

#include <array>

namespace engine {
namespace {

using enum SentenceKey;

constexpr std::array kTemplates{
    Template{ChangeTitle, "The answer of {before} and that of {now}, by the pond's own clock."},
    Template{ChangeField, "{what}: before {before}, now {now}."},
    Template{ChangeNone, "Nothing in the answer has changed."},
    Template{ChangePapers, "The papers of the earlier answer are void. Make new ones, and tell the owner."},
    Template{ChangeInput, "Not the same as then: {what}."},
    Template{ChangeNoInput, "Program, pond, weather, climate and readings are the same as then."},
};

constexpr std::array kTermWords{
    TermWord{"input-program", "the version of the program"},
    TermWord{"input-draws", "how many ponds and nights are computed"},
    TermWord{"input-ramp", "the ramp that is judged"},
    TermWord{"input-pond", "the pond file"},
    TermWord{"input-weather", "the weather's file"},
    TermWord{"input-readings", "the readings' file"},
    TermWord{"input-climate", "the climate's file"},
    TermWord{"nothing", "none"},
    TermWord{"kind-start", "start"},
    TermWord{"kind-start_with_surface_air", "start with surface air at night"},
    TermWord{"kind-wait_until", "wait"},
    TermWord{"kind-no_ramp_needed", "no ramp needed"},
    TermWord{"kind-no_gain", "do not start, nothing is gained"},
    TermWord{"field-kind", "The answer"},
    TermWord{"field-ramp", "Ramp"},
    TermWord{"field-first_day", "First day"},
    TermWord{"field-days_to_sustained", "Days until the air runs the same each day"},
    TermWord{"field-worst_mg_per_l", "Lowest oxygen, mg/L"},
    TermWord{"field-worst_night", "Night of the lowest oxygen"},
    TermWord{"field-lethal_chance_percent", "Of 100 ponds below the lethal line with the ramp"},
    TermWord{"field-lethal_chance_alone_percent", "Of 100 ponds below the lethal line left alone"},
    TermWord{"field-stress_chance_percent", "Of 100 ponds below the stress line with the ramp"},
    TermWord{"field-stress_chance_alone_percent", "Of 100 ponds below the stress line left alone"},
    TermWord{"field-end_state_mg_per_l", "Dawn low in the end, mg/L"},
    TermWord{"field-end_state_alone_mg_per_l", "Dawn low in the end left alone, mg/L"},
    TermWord{"field-surface_air_kw", "Surface air, kW"},
    TermWord{"field-surface_air_from", "Surface air from"},
    TermWord{"field-surface_air_until", "Surface air until"},
    TermWord{"field-wait_from", "Wait until the time from"},
    TermWord{"field-wait_until", "Wait until the time to"},
    TermWord{"field-hold_days", "Hold days"},
    TermWord{"field-provisional", "Provisional"},
};

}  // namespace

std::span<const Template> templatesOfChanges() {
    return kTemplates;
}

std::span<const TermWord> termsOfChanges() {
    return kTermWords;
}

}  // namespace engine
