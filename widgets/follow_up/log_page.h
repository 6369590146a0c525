#pragma once

#include "engine/pond/pond.h"
#include "widgets/document/document.h"

#include <QWidget>

#include <string>
#include <vector>

class QLabel;
class QPushButton;
class QTabWidget;
class QTableView;

namespace widgets {

class DawnForm;
class EventForm;
class LogHeadLine;
class LogModel;

/// The log of a pond: its entries, forms for new ones, rows from loggers and spreadsheets, and the head of
/// its chain. Entries are added and never changed; a correction is an entry of its own.
class LogPage final : public QWidget {
    Q_OBJECT
public:
    explicit LogPage(Document& document, QWidget* parent = nullptr);

    [[nodiscard]] LogModel& model() const { return *m_model; }
    [[nodiscard]] QTableView& table() const { return *m_table; }
    /// What came of the last entry.
    [[nodiscard]] QString said() const;
    [[nodiscard]] QString head() const;
    void addReading();
    void addEvent();
    /// Shows the matching of these rows and takes them if that is accepted.
    void offer(const std::string& text, const QString& source);

private:
    QWidget* entryForms();
    QWidget* buttonsOfTable();
    void documentChanged(Document::Parts parts);
    void proposeTimes();
    void showEvent(QShowEvent* event) override;
    void correct();
    void import();
    void paste();
    bool append(const std::vector<engine::Reading>& readings, const std::vector<engine::Event>& events);
    void say(const QString& sentence);
    bool eventFilter(QObject* watched, QEvent* event) override;

    Document& m_document;
    LogModel* m_model;
    QTableView* m_table;
    DawnForm* m_reading;
    EventForm* m_event;
    QTabWidget* m_forms;
    QLabel *m_said, *m_flags;
    LogHeadLine* m_head;
    QPushButton* m_correct = nullptr;
};

}  // namespace widgets
