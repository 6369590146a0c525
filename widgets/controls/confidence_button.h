#pragma once

#include "engine/pond/pond_keys.h"

#include <QToolButton>

#include <optional>

namespace widgets {

/// Between which values a number is believed to lie: its 5 and 95 % points.
struct Band {
    double low = 0.0, high = 0.0;
};

/// Beside a number of the pond file: how sure it is, in one word, and its band. Pressed, it asks for both.
class ConfidenceButton final : public QToolButton {
    Q_OBJECT
public:
    ConfidenceButton(const engine::NumberRule& rule, const QString& name, QWidget* parent);

    /// @param band  What the model takes, where that is known.
    void show(const engine::MaybeQuantity& quantity, const std::optional<Band>& band,
              engine::UnitSystem system);

signals:
    void edited(const engine::Quantity& quantity);

private:
    void ask();

    engine::NumberRule m_rule;
    QString m_name;
    engine::MaybeQuantity m_quantity;
    engine::UnitSystem m_units = engine::UnitSystem::Metric;
};

}  // namespace widgets
