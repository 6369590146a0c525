#pragma once

#include "widgets/document/outcome.h"

#include <QAbstractTableModel>
#include <QPalette>

namespace widgets {

/// The ramps of an outcome as rows, do-nothing first: name, worst low, its night, largest dose, end state.
/// Holds no numbers of its own. The box before a name shows and hides the ramp in the views.
class RampModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Name, Worst, Night, Chance, Dose, End, kColumns };

    /// @param selection  Knows which ramps are hidden; must outlive the model.
    explicit RampModel(Selection& selection, QObject* parent = nullptr);

    void setOutcome(const OutcomePtr& outcome);
    void setPalette(const QPalette& palette);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] QString text(std::size_t row, int column) const;
    [[nodiscard]] QString help(std::size_t row, int column) const;

    Selection& m_selection;
    OutcomePtr m_outcome;
    QPalette m_palette;
};

}  // namespace widgets
