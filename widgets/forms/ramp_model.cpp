#include "widgets/forms/ramp_model.h"

#include "engine/ensemble/chances.h"
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
        emit dataChanged(index(0, 0), index(rowCount() - 1, kColumns - 1));
        return;
    }
    beginResetModel();
    m_outcome = outcome;
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
        case Dose: {
            if (row == 0 || !m_outcome->comparison.model.bottom.exists()) {
                return {};
            }
            const auto largest = engine::largestDosePercent(m_outcome->comparison.model, run);
            return QString::number(std::lround(largest.value_or(0.0)));
        }
        case Chance: {
            const engine::RampEnsemble* members = engine::membersOf(m_outcome->comparison, row);
            return members == nullptr ? m_outcome->hasAllMembers ? QString() : tr("\u2026")
                                      : QString::number(std::lround(100.0 * members->chanceBelowStress));
        }
        case End:
            return run.endState ? oxygenText(*run.endState) : m_outcome->isWhole ? QString() : tr("\u2026");
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
            return rampText(run.name, row);
        case Worst:
        case Night:
            return tr("The lowest oxygen in the fish water is %1 mg/L, in night %2 at %3.")
                .arg(oxygenText(run.worst().lowest))
                .arg(run.worst().day)
                .arg(clockText(run.worst().lowestTime));
        case Chance:
            return tr(
                "Of a hundred ponds like this one, so many go below the stress line at some time of the "
                "run.");
        case Dose:
            return tr("The largest share of the bottom water that is lifted in a day.");
        default:
            return m_outcome->isWhole ? tr("Where the dawn low settles when the last schedule is held for 30 "
                                           "more usual days.")
                                      : tr("Being computed.");
    }
}

QVariant RampModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || m_outcome == nullptr || index.row() >= rowCount()) {
        return {};
    }
    const auto row = static_cast<std::size_t>(index.row());
    switch (role) {
        case Qt::DisplayRole:
        case Qt::AccessibleTextRole:
            return text(row, index.column());
        case Qt::ToolTipRole:
            return plainTip(help(row, index.column()));
        case Qt::DecorationRole:
            return index.column() == Name
                       ? QVariant(lineSample(
                             PlotStyle::of(m_palette, {}).linePen(lookOf(m_outcome->comparison, row), false),
                             2.0))
                       : QVariant();
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
    if (role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
        case Name:
            return tr("The ramps");
        case Worst:
            return tr("worst\nmg/L");
        case Night:
            return tr("in\nnight");
        case Chance:
            return tr("chance\n%");
        case Dose:
            return tr("dose\n%/day");
        case End:
            return tr("settles\nmg/L");
        default:
            return {};
    }
}

}  // namespace widgets
