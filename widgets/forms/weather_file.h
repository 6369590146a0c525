#pragma once

#include "widgets/document/document.h"

#include <QWidget>

class QLabel;

namespace widgets {

/// Takes an hourly weather file instead of the table of days, as one step of undo.
/// @return a sentence if it cannot be read; the document is then as it was.
[[nodiscard]] QString takeWeatherFile(Document& document, const std::filesystem::path& path,
                                      engine::HourStamp stamp);

/// Where the weather comes from, with buttons to paste a forecast or to choose an hourly file.
class WeatherFileRow final : public QWidget {
    Q_OBJECT
public:
    explicit WeatherFileRow(Document& document, QWidget* parent = nullptr);

private:
    void choose();
    void showFile();

    Document& m_document;
    QLabel* m_file;
};

}  // namespace widgets
