#pragma once

#include "engine/follow_up/sensor_faults.h"
#include "engine/pond/pond.h"

#include <QAbstractTableModel>

#include <optional>
#include <vector>

namespace widgets {

class Document;

/// One entry of the log as it stands.
struct LogLine {
    enum class Source { Reading, Event, FileRow };
    Source source{};
    std::size_t index = 0;  ///< In the pond's list of that source
    engine::LocalTime at{};
    bool isInForce = true;  ///< False: a later entry stands for it
    engine::SensorFault fault = engine::SensorFault::None;
    bool operator==(const LogLine&) const = default;
};

/// Every entry in the order of time, those that later ones correct and those of flagged sensors among them.
[[nodiscard]] std::vector<LogLine> logLines(const engine::Pond& pond);

/// The log as a table to look at; entries come in by the document alone and are never changed.
class LogModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { At, What, Depth, Temperature, Oxygen, Secchi, Seen, State, Note, Columns };

    explicit LogModel(Document& document, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

    [[nodiscard]] const LogLine& line(int row) const { return m_lines[static_cast<std::size_t>(row)]; }
    /// Null for an event.
    [[nodiscard]] const engine::Reading* reading(int row) const;
    /// Null for a reading.
    [[nodiscard]] const engine::Event* logEvent(int row) const;
    /// Of the entry that came in last, rows of files left out; -1 if there is none.
    [[nodiscard]] int rowOfLast(LogLine::Source source) const;

private:
    void reload();
    [[nodiscard]] QString text(int row, int column) const;
    [[nodiscard]] QString textOf(const engine::Reading& reading, int column) const;
    [[nodiscard]] QString textOf(const engine::Event& event, int column) const;
    [[nodiscard]] QString stateText(int row) const;

    Document& m_document;
    std::vector<LogLine> m_lines;
};

}  // namespace widgets
