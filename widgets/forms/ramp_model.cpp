#include "widgets/forms/ramp_model.h"

#include "engine/advice/frozen_run.h"
#include "engine/ensemble/chances.h"
#include "engine/run/air_days.h"
#include "engine/run/shares.h"
#include "widgets/controls/plain_text.h"
#include "widgets/controls/plot_style.h"
#include "widgets/document/selection.h"
#include "widgets/document/wording.h"

#include <QApplication>
#include <QPainter>
#include <QPixmap>

#include <cmath>

namespace widgets {
namespace {

constexpr QSize kSample{26, 14};  // [px] of a line, so that its dashes show

QPixmap lineSample(const QPen& pen, double pixelRatio) {
    QPixmap sample(kSample * pixelRatio);
    sample.setDevicePixelRatio(pixelRatio);
    sample.fill(Qt::transparent);
    QPainter painter(&sample);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(pen);
    painter.drawLine(QPointF(0, kSample.height() / 2.0), QPointF(kSample.width(), kSample.height() / 2.0));
    return sample;
}

}  // namespace

RampModel::RampModel(Selection& selection, QObject* parent)
    : QAbstractTableModel(parent), m_selection(selection) {
    connect(&m_selection, &Selection::changed, this, [this] {
        if (rowCount() > 0) {
            emit dataChanged(index(0, Name), index(rowCount() - 1, Name), {Qt::CheckStateRole});
        }
    });
}

void RampModel::setOutcome(const OutcomePtr& outcome) {
    const bool isSameSize =
        m_outcome != nullptr && m_outcome->comparison.runs.size() == outcome->comparison.runs.size();
    if (isSameSize) {  // keeps the selection
        m_outcome = outcome;
        m_ofPapers = engine::plannedRamp(outcome->comparison);
        emit dataChanged(index(0, 0), index(rowCount() - 1, kColumns - 1));
        return;
    }
    beginResetModel();
    m_outcome = outcome;
    m_ofPapers = engine::plannedRamp(outcome->comparison);
    endResetModel();
}

void RampModel::setPalette(const QPalette& palette) {
    m_palette = palette;
    if (rowCount() > 0) {
        emit dataChanged(index(0, 0), index(rowCount() - 1, kColumns - 1));
    }
}

int RampModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || m_outcome == nullptr ? 0 : static_cast<int>(m_outcome->comparison.runs.size());
}

int RampModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : kColumns;
}

bool RampModel::isOfPapers(int row) const {
    return row > 0 && static_cast<std::size_t>(row) == m_ofPapers;
}

/// What is still to come has dots; what was stopped has nothing.
QString RampModel::chance(std::size_t row, double engine::RampEnsemble::*below) const {
    const engine::RampEnsemble* members = engine::membersOf(m_outcome->comparison, row);
    if (members == nullptr) {
        return m_outcome->hasAllMembers || m_outcome->isGivenUp ? QString() : tr("\u2026");
    }
    const double share = 100.0 * (members->*below);
    return share > 0.0 && share < 0.5 ? tr("<1") : QString::number(std::lround(share));
}

QString RampModel::text(std::size_t row, int column) const {
    const engine::RampRun& run = m_outcome->comparison.runs[row];
    if (column == Name) {
        return rampText(run.name, row);
    }
    if (!isDrawn(run)) {
        return column == Worst ? tr("failed") : QString();
    }
    switch (column) {
        case Worst:
            return oxygenText(run.worst().lowest);
        case Night:
            return QString::number(run.worst().day);
        case Lethal:
            return chance(row, &engine::RampEnsemble::chanceBelowLethal);
        case Stress:
            return chance(row, &engine::RampEnsemble::chanceBelowStress);
        case Days: {
            const auto day = engine::firstSustainedDay(run);
            return row == 0 ? QString() : day ? QString::number(*day) : tr("later");
        }
        case Dose: {
            if (row == 0 || !m_outcome->comparison.model.bottom.exists()) {
                return {};
            }
            const auto largest = engine::largestDosePercent(m_outcome->comparison.model, run);
            return QString::number(std::lround(largest.value_or(0.0)));
        }
        case End:
            return run.endState                                 ? oxygenText(*run.endState)
                   : m_outcome->isWhole || m_outcome->isGivenUp ? QString()
                                                                : tr("\u2026");
        default:
            return {};
    }
}

QString RampModel::help(std::size_t row, int column) const {
    const engine::RampRun& run = m_outcome->comparison.runs[row];
    if (!isDrawn(run)) {
        return QString::fromStdString(run.message);
    }
    switch (column) {
        case Name:
            return isOfPapers(static_cast<int>(row))
                       ? tr("%1. The papers are about this ramp.").arg(rampText(run.name, row))
                       : rampText(run.name, row);
        case Worst:
        case Night:
            return tr("The lowest oxygen in the fish water is %1 mg/L, in night %2 at %3.")
                .arg(oxygenText(run.worst().lowest))
                .arg(run.worst().day)
                .arg(clockText(run.worst().lowestTime));
        default:
            return headHelp(column);
    }
}

QString RampModel::headHelp(int column) {
    switch (column) {
        case Name:
            return tr("The ramps. The box shows and hides a line; the heavy one is that of the papers.");
        case Worst:
            return tr("The lowest oxygen in the fish water of all nights, in mg/L.");
        case Night:
            return tr("The night in which that is.");
        case Lethal:
            return tr("Of 100 ponds like this one, how many go below the lethal line at some time.");
        case Days:
            return tr(
                "The day from which the air is the same every day; \u201clater\u201d: not within the days "
                "computed.");
        case Stress:
            return tr("Of 100 ponds like this one, how many go below the stress line at some time.");
        case Dose:
            return tr("The largest share of the bottom water that is lifted in a day, in percent.");
        case End:
            return tr(
                "Where the dawn low settles when the last schedule is held for 30 more usual days, in "
                "mg/L.");
        default:
            return {};
    }
}

QVariant RampModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || m_outcome == nullptr || index.row() >= rowCount()) {
        return {};
    }
    const auto row = static_cast<std::size_t>(index.row());
    switch (role) {
        case Qt::DisplayRole:
            return text(row, index.column());
        case Qt::AccessibleTextRole:  // the heavy type is not heard
            return index.column() == Name && isOfPapers(index.row())
                       ? tr("%1, for the papers").arg(text(row, Name))
                       : text(row, index.column());
        case Qt::ToolTipRole:
            return plainTip(help(row, index.column()));
        case Qt::DecorationRole:
            return index.column() == Name
                       ? QVariant(lineSample(
                             PlotStyle::of(m_palette, {}).linePen(lookOf(m_outcome->comparison, row), false),
                             2.0))
                       : QVariant();
        case Qt::FontRole: {
            QFont font = QApplication::font();
            font.setBold(true);
            return isOfPapers(index.row()) ? QVariant(font) : QVariant();
        }
        case Qt::CheckStateRole:
            return index.column() == Name
                       ? QVariant(m_selection.isHidden(m_outcome->comparison.runs[row].name) ? Qt::Unchecked
                                                                                             : Qt::Checked)
                       : QVariant();
        case Qt::TextAlignmentRole:
            return index.column() == Name ? QVariant(Qt::AlignLeft | Qt::AlignVCenter)
                                          : QVariant(Qt::AlignRight | Qt::AlignVCenter);
        default:
            return {};
    }
}

bool RampModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::CheckStateRole || index.column() != Name || index.row() >= rowCount()) {
        return false;
    }
    m_selection.setHidden(m_outcome->comparison.runs[static_cast<std::size_t>(index.row())].name,
                          value.toInt() == Qt::Unchecked);
    return true;
}

Qt::ItemFlags RampModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags flags = QAbstractTableModel::flags(index);
    return index.isValid() && index.column() == Name ? flags | Qt::ItemIsUserCheckable : flags;
}

QVariant RampModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::TextAlignmentRole) {
        return section == Name ? QVariant(Qt::AlignLeft | Qt::AlignBottom)
                               : QVariant(Qt::AlignRight | Qt::AlignBottom);
    }
    if (role == Qt::FontRole && section != Name) {
        QFont small = QApplication::font();
        small.setPointSizeF(small.pointSizeF() * 0.85);
        return small;
    }
    if (role == Qt::ToolTipRole) {
        return plainTip(headHelp(section));
    }
    if (role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
        case Name:
            return tr("Ramp");
        case Worst:
            return tr("worst");
        case Night:
            return tr("night");
        case Lethal:
            return tr("lethal,\nof 100");
        case Days:
            return tr("steady,\nday");
        case Stress:
            return tr("stress,\nof 100");
        case Dose:
            return tr("dose\n%/day");
        case End:
            return tr("settles");
        default:
            return {};
    }
}

}  // namespace widgets
