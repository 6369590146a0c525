#include "widgets/follow_up/log_model.h"

#include "engine/pond/local_time.h"
#include "engine/ramps/log.h"
#include "engine/water/water.h"
#include "widgets/controls/plain_text.h"
#include "widgets/document/document.h"
#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"
#include "widgets/follow_up/event_form.h"

#include <QFont>

#include <algorithm>
#include <map>

namespace widgets {
namespace {

bool isSameReading(engine::Reading a, const engine::Reading& b) {
    a.line = b.line;
    return a == b;
}

QString seenText(const engine::Reading& reading) {
    QStringList parts;
    if (reading.smell) {
        parts << (reading.smell == engine::Smell::None    ? LogModel::tr("no smell")
                  : reading.smell == engine::Smell::Faint ? LogModel::tr("faint smell")
                                                          : LogModel::tr("strong smell"));
    }
    if (reading.fish) {
        parts << (reading.fish == engine::FishBehaviour::Normal    ? LogModel::tr("fish as usual")
                  : reading.fish == engine::FishBehaviour::OffFeed ? LogModel::tr("fish off their feed")
                                                                   : LogModel::tr("fish piping"));
    }
    return parts.join(QStringLiteral(", "));
}

QString faultText(engine::SensorFault fault) {
    switch (fault) {
        case engine::SensorFault::None:
            return {};
        case engine::SensorFault::Stuck:
            return LogModel::tr("flagged: sensor stuck");
        case engine::SensorFault::Drifting:
            return LogModel::tr("flagged: sensor drifts");
        case engine::SensorFault::StepDrop:
            return LogModel::tr("flagged: drop in one step");
        case engine::SensorFault::OutOfWater:
            return LogModel::tr("flagged: out of the water");
        case engine::SensorFault::Disagrees:
            return LogModel::tr("flagged: two values");
    }
    return {};
}

QString withPhoto(const std::string& note, const std::string& meter, const std::string& photo) {
    QStringList parts;
    if (!note.empty()) {
        parts << toQString(note);
    }
    if (!meter.empty()) {
        parts << LogModel::tr("meter %1").arg(toQString(meter));
    }
    if (!photo.empty()) {
        parts << LogModel::tr("photo %1").arg(toQString(photo));
    }
    return parts.join(QStringLiteral(", "));
}

}  // namespace

std::vector<LogLine> logLines(const engine::Pond& pond) {
    std::vector<LogLine> lines;
    const auto add = [&lines](LogLine::Source source, const auto& entries) {
        for (std::size_t i = 0; i < entries.size(); ++i) {
            if (entries[i].at) {
                lines.push_back({source, i, *entries[i].at, false, engine::SensorFault::None});
            }
        }
    };
    add(LogLine::Source::Reading, pond.readings);
    add(LogLine::Source::FileRow, pond.fileReadings);
    add(LogLine::Source::Event, pond.events);
    std::stable_sort(lines.begin(), lines.end(),
                     [](const LogLine& a, const LogLine& b) { return a.at < b.at; });
    std::multimap<engine::LocalTime, std::size_t> byTime;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        byTime.emplace(lines[i].at, i);
    }
    // What is in force is given as copies, each of which has its line.
    const std::vector<engine::Reading> readings = engine::readingsInForce(pond);
    const auto faults = engine::sensorFaults(readings, engine::airPressure(*pond.place.elevation));
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const auto [from, to] = byTime.equal_range(*readings[i].at);
        for (auto at = from; at != to; ++at) {
            LogLine& line = lines[at->second];
            const bool isFile = line.source == LogLine::Source::FileRow;
            if (line.source != LogLine::Source::Event && !line.isInForce &&
                isSameReading(isFile ? pond.fileReadings[line.index] : pond.readings[line.index],
                              readings[i])) {
                line.isInForce = true;
                line.fault = faults[i];
                break;
            }
        }
    }
    for (const engine::Event& event : engine::eventsInForce(pond)) {
        const auto [from, to] = byTime.equal_range(*event.at);
        for (auto at = from; at != to; ++at) {
            LogLine& line = lines[at->second];
            if (line.source == LogLine::Source::Event && !line.isInForce &&
                pond.events[line.index] == event) {
                line.isInForce = true;
                break;
            }
        }
    }
    return lines;
}

LogModel::LogModel(Document& document, QObject* parent) : QAbstractTableModel(parent), m_document(document) {
    connect(&m_document, &Document::changed, this, [this](Document::Parts parts) {
        if (parts.testFlag(Document::Others)) {
            reload();
        }
    });
    reload();
}

void LogModel::reload() {
    std::vector<LogLine> lines = m_document.isEmpty() ? std::vector<LogLine>() : logLines(m_document.pond());
    if (lines == m_lines) {  // the units, perhaps; who reads the table keeps the place
        if (!lines.empty()) {
            emit dataChanged(index(0, 0), index(rowCount() - 1, Columns - 1));
        }
        emit headerDataChanged(Qt::Horizontal, 0, Columns - 1);
        return;
    }
    beginResetModel();
    m_lines = std::move(lines);
    endResetModel();
}

int LogModel::rowOfLast(LogLine::Source source) const {
    int last = -1;
    for (int row = 0; row < rowCount(); ++row) {
        if (line(row).source == source && (last < 0 || line(row).index > line(last).index)) {
            last = row;
        }
    }
    return last;
}

int LogModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

int LogModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : Columns;
}

const engine::Reading* LogModel::reading(int row) const {
    const LogLine& one = line(row);
    const engine::Pond& pond = m_document.pond();
    return one.source == LogLine::Source::Reading   ? &pond.readings[one.index]
           : one.source == LogLine::Source::FileRow ? &pond.fileReadings[one.index]
                                                    : nullptr;
}

const engine::Event* LogModel::logEvent(int row) const {
    const LogLine& one = line(row);
    return one.source == LogLine::Source::Event ? &m_document.pond().events[one.index] : nullptr;
}

QString LogModel::textOf(const engine::Reading& reading, int column) const {
    const engine::UnitSystem system = unitsOf(m_document.pond());
    const auto number = [system](const engine::MaybeQuantity& value, const char* unit) {
        return value ? QLocale().toString(shownUnitOf(unit, system).toShown(value->value), 'f', 1)
                     : QString();
    };
    switch (column) {
        case What:
            return tr("Reading");
        case Depth:
            return number(reading.depth, "m");
        case Temperature:
            return number(reading.temperature, "degC");
        case Oxygen:
            return number(reading.oxygen, "mg/L");
        case Secchi:
            return number(reading.secchi, "m");
        case Seen:
            return seenText(reading);
        case Note:
            return withPhoto(reading.note, reading.meter, reading.photo);
        default:
            return {};
    }
}

QString LogModel::textOf(const engine::Event& event, int column) const {
    if (column == What) {
        return kindText(event.kind);
    }
    if (column != Note) {
        return {};
    }
    const engine::UnitSystem system = unitsOf(m_document.pond());
    QStringList parts;
    const auto number = [&](const engine::MaybeQuantity& value, const char* unit, const QString& text) {
        if (value) {
            const ShownUnit of = shownUnitOf(unit, system);
            parts << text.arg(numberText(shownNumber(value->value, of), QLocale()),
                              QString::fromUtf8(of.text));
        }
    };
    for (const std::string& text : {event.ramp, event.what}) {
        if (!text.empty()) {
            parts << toQString(text);
        }
    }
    number(event.minutes, "min", QStringLiteral("%1 %2"));
    if (event.until) {
        parts << tr("until %1").arg(toQString(engine::formatLocalTime(*event.until)));
    }
    if (event.area_percent) {
        parts << tr("%1 % of the area").arg(numberText(event.area_percent->value, QLocale()));
    }
    number(event.amount_kg, "kg", QStringLiteral("%1 %2"));
    number(event.rain_mm, "mm", QStringLiteral("%1 %2"));
    if (event.cost) {
        parts << tr("cost %1").arg(numberText(event.cost->value, QLocale()));
    }
    const QString rest = withPhoto(event.note, {}, event.photo);
    if (!rest.isEmpty()) {
        parts << rest;
    }
    return parts.join(QStringLiteral(", "));
}

QString LogModel::stateText(int row) const {
    const LogLine& one = line(row);
    if (!one.isInForce) {
        return tr("corrected later");
    }
    const engine::Reading* read = reading(row);
    QStringList parts;
    if (read != nullptr ? read->corrects.has_value() : logEvent(row)->corrects.has_value()) {
        parts << tr("correction");
    }
    if (one.fault != engine::SensorFault::None) {
        parts << faultText(one.fault);
    }
    return parts.join(QStringLiteral(", "));
}

QString LogModel::text(int row, int column) const {
    if (column == At) {
        return toQString(engine::formatLocalTime(line(row).at));
    }
    if (column == State) {
        return stateText(row);
    }
    const engine::Reading* read = reading(row);
    return read != nullptr ? textOf(*read, column) : textOf(*logEvent(row), column);
}

QVariant LogModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) {
        return {};
    }
    const LogLine& one = line(index.row());
    switch (role) {
        case Qt::DisplayRole:
            return text(index.row(), index.column());
        case Qt::ToolTipRole:
            return index.column() == Note || index.column() == State
                       ? plainTip(text(index.row(), index.column()))
                       : QVariant();
        case Qt::TextAlignmentRole:
            return static_cast<int>(
                (index.column() >= Depth && index.column() <= Secchi ? Qt::AlignRight : Qt::AlignLeft) |
                Qt::AlignVCenter);
        case Qt::FontRole: {
            QFont font;
            font.setStrikeOut(!one.isInForce && index.column() != State);
            font.setBold(one.fault != engine::SensorFault::None && index.column() == State);
            return font;
        }
        default:
            return {};
    }
}

QVariant LogModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role != Qt::DisplayRole || orientation != Qt::Horizontal) {
        return QAbstractTableModel::headerData(section, orientation, role);
    }
    const engine::UnitSystem system =
        m_document.isEmpty() ? engine::UnitSystem::Metric : unitsOf(m_document.pond());
    const auto unit = [system](const char* of) { return shownUnit(shownUnitOf(of, system).text); };
    switch (section) {
        case At:
            return tr("When");
        case What:
            return tr("What");
        case Depth:
            return tr("Depth, %1").arg(unit("m"));
        case Temperature:
            return tr("Temp., %1").arg(unit("degC"));
        case Oxygen:
            return tr("Oxygen, mg/L");
        case Secchi:
            return tr("Secchi, %1").arg(unit("m"));
        case Seen:
            return tr("Smell and fish");
        case State:
            return tr("State");
        case Note:
            return tr("Details");
        default:
            return {};
    }
}

}  // namespace widgets
