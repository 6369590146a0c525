#pragma once

#include "widgets/controls/confidence_button.h"
#include "widgets/controls/entry.h"
#include "widgets/controls/number_box.h"
#include "widgets/controls/number_list_edit.h"
#include "widgets/document/document.h"
#include "widgets/document/pond_units.h"

#include <QWidget>

#include <functional>
#include <map>
#include <memory>
#include <vector>

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLabel;
class QVBoxLayout;

namespace widgets {

/// A column of fields over the document. Each edit is one named step of undo; one that the document
/// refuses is said in words under its field, where what was typed stays until it is corrected or Escape
/// brings the document's value back.
class FieldForm : public QWidget {
    Q_OBJECT
public:
    ~FieldForm() override;
    /// Takes what is typed and not taken yet. Ask before saving, and before anything else that should see it.
    /// @return false if a text cannot be taken; its field then has the focus.
    bool commit();
    /// What the model takes of each number, by its key; shown beside those that are given and those that are
    /// not.
    void setBands(const std::map<std::string, Band>& bands);

signals:
    /// Another field has the focus: its label and its help.
    void helpAsked(const QString& label, const QString& help);

protected:
    /// The texts of a field.
    struct Words {
        QString label;  ///< With the unit, such as "First day, min"; %1 is the unit in which it is shown.
        QString step;   ///< What undo says; %1 is the subject's name.
        QString help;   ///< What it means and its usual range.
    };
    struct Row {
        QWidget* field = nullptr;
        QLabel* label = nullptr;  ///< None for check boxes.
        QLabel* fault = nullptr;
        Entry* entry = nullptr;  ///< None for check boxes and lists.
        Words words;
        const char* unit = "";  ///< Of the pond file, where the label has a place for it
        ConfidenceButton* confidence = nullptr;
        std::function<void()> refresh;
    };
    using Change = std::function<void(engine::Pond&)>;

    FieldForm(Document& document, QWidget* parent);

    /// Is there anything to edit? Otherwise the empty page is shown instead of the fields.
    [[nodiscard]] virtual bool hasSubject() const = 0;
    /// What stands for %1 in the names of steps.
    [[nodiscard]] virtual QString subjectName() const { return {}; }
    /// Called after each change of the document and of the subject.
    void refresh();
    /// What else the subject decides: which rows are visible, what is taken where a field is empty.
    virtual void refreshRows() {}
    /// The sentence for a fault that the document found; names the ramp if it lies in another one.
    [[nodiscard]] QString sentenceOf(const engine::Diagnostic& fault) const;
    /// Ramps whose faults need no name.
    [[nodiscard]] virtual int ownRamp() const { return -1; }

    /// What is said where there is nothing to edit; more may be added below.
    QVBoxLayout* addEmptyPage(const QString& sentence);
    void addHeading(const QString& text);
    /// A field that takes its text through an Entry. `read` takes the pond, `write` the pond and a value.
    template <class Box>
    Box* addEntry(Box* box, const Words& words, std::function<typename Box::Value(const engine::Pond&)> read,
                  std::function<void(engine::Pond&, const typename Box::Value&)> write);
    /// A number of the pond. `where` gives its place in a pond, `const` or not.
    template <class Where>
    NumberBox* addNumber(const Words& words, const engine::NumberRule& rule, double step,
                         NumberBox::Empty empty, Where where);
    using Find = std::function<engine::MaybeQuantity*(engine::Pond&)>;
    /// The same with a button that shows how sure the number is. `find` gives its place, or null while the
    /// pond has none, as of a spring that is not there.
    NumberBox* addQuantity(const Words& words, const char* key, double step, NumberBox::Empty empty,
                           Find find);
    QCheckBox* addCheck(const Words& words, std::function<bool(const engine::Pond&)> read,
                        std::function<void(engine::Pond&, bool)> write);
    /// A list to choose from. `read` gives the index; `write` gets one.
    QComboBox* addChoice(const Words& words, std::function<int(const engine::Pond&)> read,
                         std::function<void(engine::Pond&, int)> write);

    /// The unit that stands for %1 in the label of a field.
    void setUnit(const QWidget* field, const char* unit);
    void setRowVisible(const QWidget* field, bool isVisible);  ///< A hidden row forgets what is typed.
    void forget();  ///< Forgets what is typed, as when another subject is shown.
    [[nodiscard]] const engine::Pond& pond() const { return m_document.pond(); }
    [[nodiscard]] Document& document() const { return m_document; }

private:
    void edit(Row& row, const Change& change);
    Row& addRow(QWidget* field, const Words& words);
    void watch(Row& row);
    void showFault(Row& row, const QString& sentence);
    void showLabel(Row& row);

    Document& m_document;
    QWidget* m_fields;
    QWidget* m_emptyPage = nullptr;
    QGridLayout* m_layout;
    std::vector<std::unique_ptr<Row>> m_rows;
    std::map<std::string, Band> m_bands;
};

/// Puts a number into a quantity, which keeps how sure it is and where it comes from. A spread that the
/// number leaves is dropped.
void putNumber(engine::MaybeQuantity& quantity, const std::optional<double>& value);
[[nodiscard]] std::optional<double> numberOf(const engine::MaybeQuantity& quantity);

template <class Box>
Box* FieldForm::addEntry(Box* box, const Words& words,
                         std::function<typename Box::Value(const engine::Pond&)> read,
                         std::function<void(engine::Pond&, const typename Box::Value&)> write) {
    Row& row = addRow(box, words);
    row.entry = &box->entry();
    row.refresh = [this, box, read = std::move(read)] {
        if constexpr (requires { box->setUnits(engine::UnitSystem::Metric); }) {
            box->setUnits(unitsOf(pond()));
        }
        box->setValue(read(pond()));
    };
    watch(row);
    connect(row.entry, &Entry::committed, this, [this, &row, box, write = std::move(write)] {
        edit(row, [&write, value = box->value()](engine::Pond& changed) { write(changed, value); });
    });
    return box;
}

template <class Where>
NumberBox* FieldForm::addNumber(const Words& words, const engine::NumberRule& rule, double step,
                                NumberBox::Empty empty, Where where) {
    NumberBox* box = addEntry(
        new NumberBox(rule, step, empty, this), words,
        [where](const engine::Pond& pond) { return numberOf(where(pond)); },
        [where](engine::Pond& pond, const std::optional<double>& value) { putNumber(where(pond), value); });
    m_rows.back()->unit = rule.unit;
    showLabel(*m_rows.back());
    return box;
}

}  // namespace widgets
