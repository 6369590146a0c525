#pragma once

#include "widgets/outcome.h"

#include <QAbstractTableModel>
#include <QPalette>

namespace widgets {

/// The ramps of an outcome as rows, do-nothing first: name, worst low, its night, largest dose, end state.
/// Holds no numbers of its own.
class RampModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Name, Worst, Night, Dose, End, kColumns };

    explicit RampModel(QObject* parent = nullptr);

    void setOutcome(const OutcomePtr& outcome);
    void setPalette(const QPalette& palette);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] QString text(std::size_t row, int column) const;
    [[nodiscard]] QString help(std::size_t row, int column) const;

    OutcomePtr m_outcome;
    QPalette m_palette;
};

}  // namespace widgets
