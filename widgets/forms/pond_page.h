#pragma once

#include "widgets/document/outcome.h"

#include <QWidget>

#include <vector>

class QLabel;
class QListWidget;
class QStackedWidget;

namespace widgets {

class Document;
class FieldForm;
class SheetEditor;

/// Everything of the pond file but its ramps: sections at the left, their fields and tables beside them, and
/// below the help of the field that has the focus.
class PondPage final : public QWidget {
    Q_OBJECT
public:
    explicit PondPage(Document& document, QWidget* parent = nullptr);

    /// Takes what is typed and not taken yet. @return false if a text cannot be taken; it has the focus then.
    bool commit();
    /// The bands of the inputs come from the pond as it was computed.
    void setOutcome(const OutcomePtr& outcome);

    [[nodiscard]] int sectionCount() const;
    void setSection(int index);
    [[nodiscard]] QString sectionName(int index) const;
    [[nodiscard]] const std::vector<SheetEditor*>& sheets() const { return m_sheets; }

private:
    struct Parts;
    void addSection(const QString& name, const Parts& parts);
    void add(QWidget* form);
    void showHelp(const QString& label, const QString& help);

    Document& m_document;
    QListWidget* m_list;
    QStackedWidget* m_stack;
    QLabel* m_help;
    std::vector<FieldForm*> m_forms;
    std::vector<SheetEditor*> m_sheets;
};

}  // namespace widgets
