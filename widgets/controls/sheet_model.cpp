#include "widgets/controls/sheet_model.h"

#include "engine/pond/local_time.h"
#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"

#include <QDate>
#include <QRegularExpression>

#include <algorithm>

namespace widgets {
namespace {

/// A date as people write it: ISO, day.month.year, or the locale's own.
std::optional<engine::Date> readDate(const QString& text) {
    if (const auto date = engine::parseDate(text.toStdString())) {
        return date;
    }
    for (const QDate& day : {QDate::fromString(text, QStringLiteral("d.M.yyyy")),
                             QLocale().toDate(text, QLocale::ShortFormat)}) {
        if (day.isValid()) {
            return engine::Date(std::chrono::year(day.year()),
                                std::chrono::month(static_cast<unsigned>(day.month())),
                                std::chrono::day(static_cast<unsigned>(day.day())));
        }
    }
    return std::nullopt;
}

bool isEmpty(const SheetRow& row) {
    return std::all_of(row.begin(), row.end(), [](const SheetCell& cell) { return cell.isEmpty(); });
}

}  // namespace

std::vector<QStringList> pastedCells(const QString& text) {
    QStringList lines = QString(text).remove(QLatin1Char('\r')).split(QLatin1Char('\n'));
    while (!lines.isEmpty() && lines.back().trimmed().isEmpty()) {
        lines.removeLast();
    }
    const auto has = [&](QChar c) {
        return std::any_of(lines.begin(), lines.end(), [c](const QString& line) { return line.contains(c); });
    };
    const QChar separator = has(QLatin1Char('\t'))  ? QLatin1Char('\t')
                            : has(QLatin1Char(';')) ? QLatin1Char(';')
                                                    : QLatin1Char(',');
    std::vector<QStringList> rows;
    for (QString line : lines) {
        if (line.startsWith(QChar(0xfeff))) {  // a spreadsheet's byte order mark
            line.remove(0, 1);
        }
        QStringList cells = line.split(separator);
        for (QString& cell : cells) {
            cell = cell.trimmed();
            if (cell.size() >= 2 && cell.startsWith(QLatin1Char('"')) && cell.endsWith(QLatin1Char('"'))) {
                cell = cell.mid(1, cell.size() - 2);
            }
        }
        rows.push_back(cells);
    }
    return rows;
}

SheetModel::SheetModel(Document& document, SheetSpec spec, QObject* parent)
    : QAbstractTableModel(parent), m_document(document), m_spec(std::move(spec)) {
    connect(&m_document, &Document::changed, this, &SheetModel::reload);
    reload();
}

void SheetModel::reload() {
    if (m_isTaking) {
        return;
    }
    SheetRows rows = m_document.isEmpty() ? SheetRows() : m_spec.read(m_document.pond());
    if (rows == m_taken && !m_rows.empty()) {
        if (rowCount() > 0) {  // units may have changed
            emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
            emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
        }
        return;
    }
    beginResetModel();
    m_rows = m_taken = std::move(rows);
    endResetModel();
    emit said({});
}

int SheetModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || m_document.isEmpty()
               ? 0
               : static_cast<int>(m_rows.size()) + (m_spec.canGrow ? 1 : 0);
}

int SheetModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_spec.columns.size());
}

QString SheetModel::text(const SheetCell& cell, const SheetColumn& column) const {
    if (column.kind != SheetColumn::Kind::Number) {
        return toQString(cell.text);
    }
    const ShownUnit unit = shownUnitOf(column.rule.unit, unitsOf(m_document.pond()));
    return cell.number ? numberText(shownNumber(*cell.number, unit), QLocale()) : QString();
}

QVariant SheetModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) {
        return {};
    }
    const SheetColumn& column = m_spec.columns[static_cast<std::size_t>(index.column())];
    const bool isThere = index.row() < static_cast<int>(m_rows.size());
    switch (role) {
        case Qt::DisplayRole:
        case Qt::EditRole:
            return isThere ? text(m_rows[static_cast<std::size_t>(index.row())]
                                        [static_cast<std::size_t>(index.column())],
                                  column)
                           : QString();
        case Qt::AccessibleTextRole:
            return headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString() + u' ' +
                   data(index, Qt::DisplayRole).toString();
        case Qt::TextAlignmentRole:
            return column.kind == SheetColumn::Kind::Number ? QVariant(Qt::AlignRight | Qt::AlignVCenter)
                                                            : QVariant(Qt::AlignLeft | Qt::AlignVCenter);
        case Qt::ToolTipRole:
            return column.help;
        default:
            return {};
    }
}

QVariant SheetModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) {
        return role == Qt::DisplayRole ? section < static_cast<int>(m_rows.size())
                                             ? QVariant(section + 1)
                                             : QVariant(QStringLiteral("+"))
                                       : QVariant();
    }
    const SheetColumn& column = m_spec.columns[static_cast<std::size_t>(section)];
    if (role == Qt::ToolTipRole) {
        return column.help;
    }
    if (role != Qt::DisplayRole) {
        return {};
    }
    const QString unit = shownUnit(shownUnitOf(column.rule.unit, unitsOf(m_document.pond())).text);
    return column.name.contains(QStringLiteral("%1")) ? column.name.arg(unit) : column.name;
}

Qt::ItemFlags SheetModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags flags = QAbstractTableModel::flags(index);
    return index.isValid() && !m_spec.columns[static_cast<std::size_t>(index.column())].isReadOnly
               ? flags | Qt::ItemIsEditable
               : flags;
}

/// @return a sentence if the text cannot be read.
QString SheetModel::read(const QString& typed, const SheetColumn& column, SheetCell& cell) const {
    const QString text = typed.trimmed();
    cell = {};
    if (text.isEmpty()) {
        return {};
    }
    switch (column.kind) {
        case SheetColumn::Kind::Number: {
            const auto reading = readQuantity(text, column.rule, unitsOf(m_document.pond()), QLocale());
            cell.number = reading.value;
            return reading.fault;
        }
        case SheetColumn::Kind::Date:
            if (const auto date = readDate(text)) {
                cell.text = engine::formatDate(*date);
                return {};
            }
            return tr("Write the date like 2026-06-14, not “%1”.").arg(text);
        case SheetColumn::Kind::Time:
            if (const auto time = engine::parseLocalTime(text.toStdString())) {
                cell.text = engine::formatLocalTime(*time);
                return {};
            }
            return tr("“%1” is not a date and time; write 2026-06-14 05:40.").arg(text);
        case SheetColumn::Kind::Text:
            cell.text = text.toStdString();
            return {};
    }
    return {};
}

bool SheetModel::take(SheetRows rows) {
    rows.erase(std::remove_if(rows.begin(), rows.end(), isEmpty), rows.end());
    for (std::size_t row = 0; row < rows.size(); ++row) {
        for (std::size_t column = 0; column < m_spec.columns.size(); ++column) {
            const SheetColumn& about = m_spec.columns[column];
            if (about.isNeeded && !about.isReadOnly && rows[row][column].isEmpty()) {
                emit said(tr("Row %1 is not taken yet: %2 is missing.")
                              .arg(row + 1)
                              .arg(headerData(static_cast<int>(column), Qt::Horizontal, Qt::DisplayRole)
                                       .toString()));
                return false;
            }
        }
    }
    m_isTaking = true;
    const engine::Diagnostics faults =
        m_document.edit(m_spec.step, [&](engine::Pond& pond) { m_spec.write(pond, rows); });
    m_isTaking = false;
    QStringList sentences;
    for (const engine::Diagnostic& fault : faults) {
        sentences << toQString(fault.sentence);
    }
    if (!sentences.isEmpty()) {
        emit said(sentences.join(u' '));
        return false;
    }
    SheetRows taken = m_spec.read(m_document.pond());
    m_taken = taken;
    if (taken.size() == m_rows.size()) {  // not anew, so that the cell that is typed in stays where it is
        m_rows = std::move(taken);
        emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    } else {
        beginResetModel();
        m_rows = std::move(taken);
        endResetModel();
    }
    emit said({});
    return true;
}

bool SheetModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !index.isValid() || m_document.isEmpty()) {
        return false;
    }
    SheetCell cell;
    const QString fault =
        read(value.toString(), m_spec.columns[static_cast<std::size_t>(index.column())], cell);
    if (!fault.isEmpty()) {
        emit said(fault);
        return false;
    }
    if (index.row() >= static_cast<int>(m_rows.size())) {
        if (cell.isEmpty()) {
            return false;
        }
        beginInsertRows({}, rowCount(), rowCount());
        m_rows.emplace_back(m_spec.columns.size());
        endInsertRows();
    }
    SheetCell& place =
        m_rows[static_cast<std::size_t>(index.row())][static_cast<std::size_t>(index.column())];
    if (place == cell) {
        return true;
    }
    place = cell;
    emit dataChanged(index, index);
    take(m_rows);
    return true;
}

bool SheetModel::paste(const QString& pasted, int row, int column) {
    const std::vector<QStringList> cells = pastedCells(pasted);
    SheetRows rows = m_rows;
    QStringList faults;
    std::size_t at = static_cast<std::size_t>(std::max(row, 0));
    for (std::size_t i = 0; i < cells.size(); ++i) {
        SheetRow line(m_spec.columns.size());
        if (at < rows.size()) {
            line = rows[at];
        }
        QStringList lineFaults;
        int readable = 0;
        for (int j = 0; j < cells[i].size() && column + j < columnCount(); ++j) {
            const auto to = static_cast<std::size_t>(column + j);
            const SheetColumn& about = m_spec.columns[to];
            if (about.isReadOnly) {
                continue;
            }
            const QString fault = read(cells[i][j], about, line[to]);
            if (!fault.isEmpty()) {
                lineFaults << tr("Row %1, column %2: %3").arg(i + 1).arg(j + 1).arg(fault);
            } else {
                readable += line[to].isEmpty() || about.kind == SheetColumn::Kind::Text ? 0 : 1;
            }
        }
        if (i == 0 && readable == 0 && !lineFaults.isEmpty()) {
            continue;  // a header
        }
        faults << lineFaults;
        if (at >= rows.size()) {
            if (!m_spec.canGrow) {
                faults << tr("Row %1 is beyond the end of the table.").arg(i + 1);
                break;
            }
            rows.push_back(line);
        } else {
            rows[at] = line;
        }
        ++at;
    }
    constexpr int kMostShown = 3;
    if (!faults.isEmpty()) {
        const auto more = faults.size() - kMostShown;
        QString sentence =
            tr("Nothing was pasted. %1").arg(QStringList(faults.mid(0, kMostShown)).join(u' '));
        emit said(more > 0 ? sentence + u' ' + tr("And %1 more.").arg(more) : sentence);
        return false;
    }
    return take(rows);
}

QString SheetModel::copied(const QModelIndexList& cells) const {
    QModelIndexList sorted = cells;
    std::sort(sorted.begin(), sorted.end());
    QString text;
    for (qsizetype i = 0; i < sorted.size(); ++i) {
        if (i > 0) {
            text += sorted[i].row() == sorted[i - 1].row() ? u'\t' : u'\n';
        }
        text += data(sorted[i], Qt::DisplayRole).toString();
    }
    return text;
}

void SheetModel::takeAway(std::vector<int> rows) {
    std::sort(rows.rbegin(), rows.rend());
    SheetRows left = m_rows;
    for (const int row : rows) {
        if (row < static_cast<int>(left.size())) {
            left.erase(left.begin() + row);
        }
    }
    take(left);
}

}  // namespace widgets
