#include "widgets/forms/aerator_form.h"

#include "engine/intake/usual_ramp.h"
#include "engine/water/priors.h"
#include "widgets/document/key_rules.h"

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace widgets {

AeratorForm::AeratorForm(Document& document, QWidget* parent) : FieldForm(document, parent) {
    const auto allowed = NumberBox::Empty::Allowed;
    const auto refused = NumberBox::Empty::Refused;
    addNumber(
        {tr("Air each, %1"), tr("Change the air of the diffusers"),
         tr("Free air of one open diffuser, at 20 °C and 1 atm. Usual: 30 to 60 L/min (common practice, no "
            "source).")},
        aeratorRule("free_air_l_per_min"), 5.0, refused,
        [](auto& pond) -> auto& { return pond.aerator->freeAir_lPerMin; });
    addNumber(
        {tr("Diffusers"), tr("Change the number of diffusers"),
         tr("How many there are. Usual: 2 to 5 a hectare at 2.5 m and deeper (common practice, no source).")},
        aeratorRule("diffusers"), 1.0, refused, [](auto& pond) -> auto& { return pond.aerator->diffusers; });
    addNumber(
        {tr("Depth, %1"), tr("Change the depth of the diffusers"),
         tr("Where the diffusers hang. Usual: 0.3 to 0.5 m above a soft bottom (common practice, no "
            "source).")},
        aeratorRule("depth_m"), 0.1, refused, [](auto& pond) -> auto& { return pond.aerator->depth; });
    addNumber(
        {tr("Bubbles, %1"), tr("Change the bubble size"),
         tr("Diameter of the bubbles. Usual: 1.5 to 5 mm (common practice, no source).")},
        aeratorRule("bubble_mm"), 0.5, allowed, [](auto& pond) -> auto& { return pond.aerator->bubble_mm; })
        ->setTakenIfEmpty(engine::kBubble_mm.value);
    addNumber(
        {tr("Power, %1"), tr("Change the power"),
         tr("What the compressor draws; only the energy is worked out from it. Usual: 0.45 to 0.9 kW a "
            "hectare (common practice, no source).")},
        aeratorRule("power_kw"), 0.1, allowed, [](auto& pond) -> auto& { return pond.aerator->power_kW; })
        ->setPlaceholder(tr("not known"));
    addNumber(
        {tr("Net share"), tr("Change the net share"),
         tr("Share of the plume's flow that is not drawn in again at once. Usual: 0.4 to 0.7 (judgement).")},
        aeratorRule("net_share"), 0.05, allowed,
        [](auto& pond) -> auto& { return pond.aerator->nonRecirculatedShare; })
        ->setTakenIfEmpty(engine::kNonRecirculatedShare.value);

    QVBoxLayout* empty = addEmptyPage(tr("There is no aerator in this pond yet; ramps need one."));
    m_add = new QPushButton(tr("Add an Aerator"), this);
    m_add->setToolTip(
        tr("One diffuser of 45 L/min, 0.4 m above the deepest point; can be changed afterwards."));
    m_add->setAccessibleDescription(m_add->toolTip());
    empty->addWidget(m_add, 0, Qt::AlignLeading);
    auto* fault = new QLabel(this);
    fault->setWordWrap(true);
    fault->setTextFormat(Qt::PlainText);
    empty->addWidget(fault);
    connect(m_add, &QPushButton::clicked, this, [this, fault] {
        QStringList sentences;
        for (const engine::Diagnostic& one : this->document().edit(
                 tr("Add an aerator"),
                 [](engine::Pond& pond) { pond.aerator = engine::usualAerator(pond.basin); })) {
            sentences += sentenceOf(one);
        }
        fault->setText(sentences.join(u' '));
    });
    connect(&document, &Document::changed, this,
            [this, &document] { m_add->setEnabled(!document.isEmpty()); });
    m_add->setEnabled(!document.isEmpty());
    refresh();
}

}  // namespace widgets
