#pragma once

#include "engine/output/consultant.h"

#include <QDialog>

#include <filesystem>
#include <optional>

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QTableWidget;

namespace widgets {

/// The business details: every field of a consultant's profile, kept in its file once accepted. What stood
/// in the file before is kept as `NAME.bak`.
class ConsultantDialog final : public QDialog {
    Q_OBJECT
public:
    /// @param path  Of the profile; its folder is made if need be.
    ConsultantDialog(const engine::Consultant& consultant, std::filesystem::path path,
                     QWidget* parent = nullptr);

private:
    QLineEdit* addLine(QFormLayout& form, const QString& label, const std::string& text, const QString& help);
    QPlainTextEdit* addLines(QFormLayout& form, const QString& label, const std::vector<std::string>& texts,
                             const QString& help, int height);
    QComboBox* addChoice(QFormLayout& form, const QString& label, const QStringList& choices, bool isSecond,
                         const QString& help);
    void addLogo(QFormLayout& form, const std::string& logo);
    void addPrices(QFormLayout& form, const std::vector<engine::Price>& prices);
    void chooseLogo();
    /// Keeps an empty row below the last price.
    void growPrices();
    /// What is typed, or nothing and a sentence why not.
    std::optional<engine::Consultant> typed();
    bool readPrices(std::vector<engine::Price>& prices);
    void say(const QString& sentence, QWidget* field);
    void save();

    std::filesystem::path m_path;
    QLineEdit *m_business, *m_name, *m_licence, *m_phone, *m_email, *m_logo = nullptr, *m_currency;
    QPlainTextEdit *m_address, *m_exclusions;
    QComboBox *m_units, *m_page;
    QTableWidget* m_prices = nullptr;
    QLabel* m_fault;
};

}  // namespace widgets
