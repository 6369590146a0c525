#pragma once

#include "widgets/document/outcome.h"

#include <QAbstractTableModel>
#include <QPalette>

namespace widgets {

/// The ramps of an outcome as rows, do-nothing first: name, worst low, its night, how many ponds of 100 go
/// below the lethal line, the day from which the air runs day and night; then what only some ask for. Holds
/// no numbers of its own. The box before a name shows and hides the ramp in the views; the ramp that the
/// papers are about is marked.
class RampModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Name, Worst, Night, Lethal, Days, Stress, Dose, End, kColumns };
    static constexpr int kFirstOfMore = Stress;  ///< From here on the columns that "More" shows

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
    [[nodiscard]] static QString headHelp(int column);
    [[nodiscard]] QString chance(std::size_t row, double engine::RampEnsemble::*below) const;
    [[nodiscard]] bool isOfPapers(int row) const;

    Selection& m_selection;
    OutcomePtr m_outcome;
    std::size_t m_ofPapers = 0;  ///< 0: none
    QPalette m_palette;
};

}  // namespace widgets
