#pragma once

#include "engine/pond/pond.h"

#include <QDialog>
#include <QString>

#include <string>

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace widgets {
class ProgressLine;
}  // namespace widgets

namespace app {

/// Asks for which ramp papers are made and into which folder, and shows how far they are. Makes nothing
/// itself.
class PapersDialog final : public QDialog {
    Q_OBJECT
public:
    /// @param ramp    Picked; empty: the one that was started or chosen.
    /// @param folder  Proposed.
    PapersDialog(const engine::Pond& pond, const std::string& ramp, const QString& folder,
                 QWidget* parent = nullptr);

    [[nodiscard]] std::string ramp() const;
    [[nodiscard]] QString folder() const;

    void begin();
    void setProgress(double fraction);
    /// The papers are made, or are not. @param isMade  The folder can be looked at.
    void end(const QString& sentence, bool isMade);

signals:
    void makeAsked();
    void stopAsked();

private:
    void chooseFolder();

    QComboBox* m_ramp;
    QLineEdit* m_folder;
    QLabel* m_said;
    widgets::ProgressLine* m_progress;
    QPushButton *m_make, *m_look;
};

}  // namespace app
