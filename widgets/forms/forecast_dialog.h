#pragma once

#include "engine/intake/pasted_weather.h"
#include "widgets/document/document.h"

#include <QDialog>

class QLabel;
class QPlainTextEdit;
class QPushButton;
class QTableWidget;

namespace widgets {

class LineEntry;

/// A forecast as it was copied from a web page or a spreadsheet, before it goes into the pond: the text, the
/// days that the engine takes from it, and what it says of them.
class ForecastDialog final : public QDialog {
    Q_OBJECT
public:
    /// Begins with the clipboard's text if that holds a forecast.
    explicit ForecastDialog(Document& document, QWidget* parent = nullptr);

    [[nodiscard]] QString said() const;

private:
    void readAgain();
    void showDays();
    void take();

    Document& m_document;
    engine::PastedWeather m_read;
    QPlainTextEdit* m_text;
    LineEntry* m_firstDay;
    QTableWidget* m_days;
    QLabel* m_said;
    QPushButton* m_take;
};

}  // namespace widgets
