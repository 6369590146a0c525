#pragma once

#include "widgets/follow_up/log_import.h"

#include <QDialog>

class QComboBox;
class QLabel;
class QPushButton;
class QTableWidget;

namespace widgets {

class NumberBox;

/// Rows of a logger or a spreadsheet before they go into the log: which column is taken for what and in which
/// unit, what the first rows come to, and what the engine has to say about all of them.
class ImportDialog final : public QDialog {
    Q_OBJECT
public:
    /// @param source  Of the text, for the title.
    ImportDialog(Document& document, const std::string& text, const QString& source,
                 QWidget* parent = nullptr);

    /// The readings as matched. @pre isGood()
    [[nodiscard]] const std::vector<engine::Reading>& readings() const { return m_read.readings; }
    [[nodiscard]] bool isGood() const;
    [[nodiscard]] QString said() const;
    [[nodiscard]] QComboBox* matchBox(int column) const;

private:
    void makeColumns();
    void readAgain();
    void showRows();
    [[nodiscard]] QString remark(const engine::Diagnostic& one) const;

    Document& m_document;
    ImportText m_import;
    ImportReading m_read;
    QTableWidget *m_columns, *m_rows;
    NumberBox* m_depth;
    QComboBox* m_order;
    QLabel* m_said;
    QPushButton* m_take;
};

}  // namespace widgets
