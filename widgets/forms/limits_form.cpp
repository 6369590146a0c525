#include "widgets/forms/limits_form.h"

#include "engine/base/text.h"
#include "engine/pond/pond_words.h"
#include "engine/water/parameters.h"
#include "widgets/document/key_rules.h"

#include <QComboBox>

namespace widgets {
namespace {

using engine::Pond;

QString groupText(engine::SpeciesGroup group) {
    using engine::SpeciesGroup;
    switch (group) {
        case SpeciesGroup::Sport:
            return LimitsForm::tr("sport fish");
        case SpeciesGroup::Catfish:
            return LimitsForm::tr("catfish");
        case SpeciesGroup::Carp:
            return LimitsForm::tr("carp");
        case SpeciesGroup::Koi:
            return LimitsForm::tr("koi");
        case SpeciesGroup::Trout:
            return LimitsForm::tr("trout");
        case SpeciesGroup::Percid:
            return LimitsForm::tr("perch, pike");
    }
    return {};
}

/// What is taken where the pond gives no number of its own.
engine::OxygenThresholds thresholdsWithoutNumbers(Pond pond) {
    pond.limits.stress.reset();
    pond.limits.lethal.reset();
    pond.limits.fishWater_percent.reset();
    pond.limits.fishMax.reset();
    return engine::thresholdsOf(pond, engine::startProfile(pond));
}

double toOneDecimal(double value) {
    return engine::toNumber(engine::fixed(value, 1)).value_or(value);
}

}  // namespace

LimitsForm::LimitsForm(Document& document, QWidget* parent) : FieldForm(document, parent) {
    m_group = addChoice(
        {tr("Fish"), tr("Change the species group"),
         tr("Decides the stress and the lethal line where they are not given. By itself the group "
            "of the heaviest fish in the pond.")},
        [this](const Pond& pond) {
            const auto& group = pond.limits.speciesGroup;
            return group ? m_group->findData(static_cast<int>(*group)) : 0;
        },
        [this](Pond& pond, int index) {
            const QVariant group = m_group->itemData(index);
            pond.limits.speciesGroup = group.isValid()
                                           ? std::optional(static_cast<engine::SpeciesGroup>(group.toInt()))
                                           : std::nullopt;
        });
    m_group->addItem({});
    for (const auto& word : engine::kSpeciesGroupWords) {
        m_group->addItem(groupText(word.value), static_cast<int>(word.value));
    }
    const auto allowed = NumberBox::Empty::Allowed;
    m_stress = addNumber(
        {tr("Stress line, mg/L"), tr("Change the stress line"),
         tr("Oxygen below which the fish are under stress. Empty: by the fish, 3 to 6 mg/L, one "
            "more in warm water, and never above 80 % of saturation.")},
        limitsRule("stress_mg_per_l"), 0.5, allowed, [](auto& pond) -> auto& { return pond.limits.stress; });
    m_lethal = addNumber(
        {tr("Lethal line, mg/L"), tr("Change the lethal line"),
         tr("Oxygen that kills the fish if it lasts. Empty: by the fish, 1 to 3 mg/L.")},
        limitsRule("lethal_mg_per_l"), 0.5, allowed, [](auto& pond) -> auto& { return pond.limits.lethal; });
    m_fishWater = addNumber(
        {tr("Fish water, %"), tr("Change the share of the fish water"),
         tr("The best share of the pond's water, into which the fish can crowd; its oxygen is "
            "what is compared with the lines. Usual: 20 % (judgement).")},
        limitsRule("fish_water_percent"), 5.0, allowed,
        [](auto& pond) -> auto& { return pond.limits.fishWater_percent; });
    m_warmest = addNumber(
        {tr("Warmest, %1"), tr("Change the warmest water for fish"),
         tr("Water above this is no fish water. Empty: 20 °C for trout, no end for others.")},
        limitsRule("fish_max_c"), 1.0, allowed, [](auto& pond) -> auto& { return pond.limits.fishMax; });
    addEmptyPage(tr("No pond is open."));
    refresh();
}

void LimitsForm::refreshRows() {
    const engine::OxygenThresholds thresholds = thresholdsWithoutNumbers(pond());
    constexpr double kNoEnd = 1e6;  // what the engine takes where there is none is far above it
    m_stress->setTakenIfEmpty(toOneDecimal(thresholds.stress));
    m_lethal->setTakenIfEmpty(toOneDecimal(thresholds.lethal));
    m_fishWater->setTakenIfEmpty(toOneDecimal(100.0 * thresholds.fishShare));
    if (thresholds.fishMax < kNoEnd) {
        m_warmest->setTakenIfEmpty(thresholds.fishMax);
    } else {
        m_warmest->setPlaceholder(tr("no limit (automatic)"));
    }
    Pond byItself = pond();
    byItself.limits.speciesGroup.reset();
    m_group->setItemText(0, tr("By weight: %1").arg(groupText(thresholdsWithoutNumbers(byItself).group)));
}

}  // namespace widgets
