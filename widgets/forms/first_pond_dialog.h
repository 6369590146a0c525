#pragma once

#include "engine/intake/first_questions.h"

#include <QDialog>

#include <vector>

class QGridLayout;
class QLabel;

namespace widgets {

/// The first questions about a pond, all on one sheet, from which a pond is made that can be computed at
/// once.
class FirstPondDialog final : public QDialog {
    Q_OBJECT
public:
    explicit FirstPondDialog(QWidget* parent = nullptr);

    /// @pre The dialog was accepted: the answers pass the checks of pond files.
    [[nodiscard]] const engine::Pond& pond() const { return m_pond; }

private:
    void ask(const engine::FirstQuestion& question);
    QWidget* fieldFor(const engine::FirstField& field);
    QWidget* numberFor(const engine::FirstField& field);
    [[nodiscard]] engine::FirstAnswers answers() const;
    void take();

    struct Asked {
        const engine::FirstField* field;
        QWidget* widget;
    };
    QGridLayout* m_grid = nullptr;
    QLabel* m_fault;
    int m_count = 0;
    engine::FirstAnswers m_start;
    std::vector<Asked> m_asked;
    engine::Pond m_pond;
};

}  // namespace widgets
