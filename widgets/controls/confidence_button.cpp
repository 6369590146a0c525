#include "widgets/controls/confidence_button.h"

#include "widgets/controls/number_box.h"
#include "widgets/controls/plain_text.h"
#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"

#include <QComboBox>
#include <QDialog>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>

namespace widgets {
namespace {

using engine::Confidence;

QString sureText(const engine::Quantity& quantity) {
    switch (quantity.confidence.value_or(Confidence::Measured)) {
        case Confidence::Measured:
            return ConfidenceButton::tr("measured");
        case Confidence::Estimated:
            return ConfidenceButton::tr("estimated");
        case Confidence::Guessed:
            return ConfidenceButton::tr("guessed");
    }
    return {};
}

/// Three digits say enough of how far something may be off.
QString rough(double value) {
    return QLocale().toString(value, 'g', 3);
}

/// What is wrong with the ends of a band; empty if nothing is. Reads both boxes.
QString faultOf(NumberBox& low, NumberBox& high, double value) {
    const bool isRead = low.entry().commit() && high.entry().commit();
    if (!isRead) {
        return low.entry().fault() + high.entry().fault();
    }
    if (low.value().has_value() != high.value().has_value()) {
        return ConfidenceButton::tr("A band needs both ends, or neither.");
    }
    if (low.value() && (*low.value() > value || *high.value() < value)) {
        return ConfidenceButton::tr("The value must lie within its band.");
    }
    return {};
}

}  // namespace

ConfidenceButton::ConfidenceButton(const engine::NumberRule& rule, const QString& name, QWidget* parent)
    : QToolButton(parent), m_rule(rule), m_name(name) {
    setAutoRaise(true);
    setFocusPolicy(Qt::StrongFocus);
    setToolButtonStyle(Qt::ToolButtonTextOnly);
    connect(this, &QToolButton::clicked, this, &ConfidenceButton::ask);
}

void ConfidenceButton::show(const engine::MaybeQuantity& quantity, const std::optional<Band>& band,
                            engine::UnitSystem system) {
    m_quantity = quantity;
    m_units = system;
    const ShownUnit unit = shownUnitOf(m_rule.unit, system);
    std::optional<Band> shownBand = band;
    if (quantity && quantity->low && quantity->high) {
        shownBand = Band{*quantity->low, *quantity->high};
    }
    QString text = quantity ? sureText(*quantity) : tr("not given");
    if (shownBand) {
        text += tr(", %1 to %2")
                    .arg(rough(shownNumber(shownBand->low, unit)), rough(shownNumber(shownBand->high, unit)));
    }
    setText(text);
    setEnabled(quantity.has_value());
    QString help =
        quantity
            ? tr("How sure %1 is. Nine of ten ponds like this one are taken within the band.").arg(m_name)
            : tr("%1 is not given; the model takes a usual value with a wide band.").arg(m_name);
    if (quantity && !quantity->source.empty()) {
        help += u' ' + tr("Source: %1").arg(widgets::toQString(quantity->source));
    }
    setToolTip(plainTip(help));
    setAccessibleName(tr("How sure: %1").arg(m_name));
    setAccessibleDescription(text + QStringLiteral(". ") + help);
}

void ConfidenceButton::ask() {
    QDialog dialog(this);
    dialog.setWindowTitle(tr("How sure is it"));
    dialog.setObjectName(QStringLiteral("sureness"));
    auto* form = new QFormLayout(&dialog);
    auto* intro = new QLabel(
        tr("%1. Leave both ends of the band empty to take what is usual for a measured, an estimated "
           "or a guessed number.")
            .arg(m_name),
        &dialog);
    intro->setWordWrap(true);
    form->addRow(intro);
    auto* confidence = new QComboBox(&dialog);
    confidence->addItems({tr("measured"), tr("estimated"), tr("guessed")});
    confidence->setCurrentIndex(static_cast<int>(m_quantity->confidence.value_or(Confidence::Measured)));
    form->addRow(tr("&It is"), confidence);
    const QString unit = shownUnit(shownUnitOf(m_rule.unit, m_units).text);
    const auto end = [&](const QString& label, const std::optional<double>& value) {
        auto* box =
            new NumberBox({m_rule.low, m_rule.high, m_rule.unit}, 1.0, NumberBox::Empty::Allowed, &dialog);
        box->setUnits(m_units);
        box->setValue(value);
        form->addRow(label, box);
        return box;
    };
    NumberBox* low =
        end(unit.isEmpty() ? tr("&Low end, 5 %") : tr("&Low end, 5 %, %1").arg(unit), m_quantity->low);
    NumberBox* high =
        end(unit.isEmpty() ? tr("&High end, 95 %") : tr("&High end, 95 %, %1").arg(unit), m_quantity->high);
    auto* source = new QLineEdit(widgets::toQString(m_quantity->source), &dialog);
    form->addRow(tr("&Where it comes from"), source);
    auto* fault = new QLabel(&dialog);
    fault->setWordWrap(true);
    fault->setTextFormat(Qt::PlainText);
    form->addRow(fault);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, &dialog);
    form->addRow(buttons);
    connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    connect(buttons, &QDialogButtonBox::accepted, &dialog, [&] {
        const QString said = faultOf(*low, *high, m_quantity->value);
        fault->setText(said);
        if (said.isEmpty()) {
            dialog.accept();
        }
    });
    if (dialog.exec() == QDialog::Accepted) {
        engine::Quantity edited = *m_quantity;
        const auto chosen = static_cast<Confidence>(confidence->currentIndex());
        edited.confidence =
            chosen == Confidence::Measured && !m_quantity->confidence ? std::nullopt : std::optional(chosen);
        edited.low = low->value();
        edited.high = high->value();
        edited.source = source->text().trimmed().toStdString();
        emit this->edited(edited);
    }
}

}  // namespace widgets
