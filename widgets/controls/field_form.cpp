#include "widgets/controls/field_form.h"

#include "engine/pond/pond_source.h"
#include "widgets/controls/plain_text.h"
#include "widgets/document/key_rules.h"
#include "widgets/document/number_text.h"
#include "widgets/document/to_qstring.h"

#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace widgets {

void putNumber(engine::MaybeQuantity& quantity, const std::optional<double>& value) {
    if (!value || !quantity) {
        quantity = value ? engine::MaybeQuantity(engine::Quantity(*value)) : std::nullopt;
        return;
    }
    quantity->value = *value;
    if ((quantity->low && *value < *quantity->low) || (quantity->high && *value > *quantity->high)) {
        quantity->low.reset();
        quantity->high.reset();
    }
}

std::optional<double> numberOf(const engine::MaybeQuantity& quantity) {
    return quantity ? std::optional(quantity->value) : std::nullopt;
}

FieldForm::FieldForm(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_fields(new QWidget(this)),
      m_layout(new QGridLayout(m_fields)) {
    auto* pages = new QVBoxLayout(this);
    pages->setContentsMargins(10, 6, 10, 10);
    pages->addWidget(m_fields);
    pages->addStretch();
    m_layout->setContentsMargins(0, 0, 0, 0);
    m_layout->setColumnStretch(1, 1);
    m_layout->setHorizontalSpacing(10);
    m_layout->setVerticalSpacing(4);
    connect(&m_document, &Document::changed, this, [this] { refresh(); });
    connect(qApp, &QApplication::focusChanged, this, [this](const QWidget*, const QWidget* now) {
        for (const auto& row : m_rows) {
            if (now != nullptr && (row->field == now || row->field->isAncestorOf(now))) {
                emit helpAsked(row->field->accessibleName(), row->words.help);
            }
        }
    });
}

FieldForm::~FieldForm() {
    for (const auto& row : m_rows) {  // a field that loses the focus on its way out has no form any more
        if (row->entry != nullptr) {
            row->entry->disconnect(this);
        }
    }
}

bool FieldForm::commit() {
    for (const auto& row : m_rows) {
        if (row->entry != nullptr && !row->entry->commit()) {
            row->field->setFocus();
            return false;
        }
    }
    return true;
}

void FieldForm::setBands(const std::map<std::string, Band>& bands) {
    m_bands = bands;
    if (hasSubject()) {
        refresh();
    }
}

NumberBox* FieldForm::addQuantity(const Words& words, const char* key, double step, NumberBox::Empty empty,
                                  Find find) {
    const engine::NumberRule rule = keyRule(key);
    const auto read = [find](const engine::Pond& pond) {
        // Only read: the place is found in a pond that may be changed, so that one function serves both.
        const engine::MaybeQuantity* found = find(const_cast<engine::Pond&>(pond));
        return found == nullptr ? engine::MaybeQuantity() : *found;
    };
    NumberBox* box = addEntry(
        new NumberBox(rule, step, empty, this), words,
        [read](const engine::Pond& pond) { return numberOf(read(pond)); },
        [find](engine::Pond& pond, const std::optional<double>& value) {
            if (engine::MaybeQuantity* found = find(pond)) {
                putNumber(*found, value);
            }
        });
    Row& row = *m_rows.back();
    row.unit = rule.unit;
    showLabel(row);
    auto* button = new ConfidenceButton(rule, row.field->accessibleName(), m_fields);
    row.confidence = button;
    m_layout->addWidget(button, m_layout->rowCount() - 2, 2, Qt::AlignLeading);
    const std::string name = std::string(key).substr(std::string(key).rfind('.') + 1);
    row.refresh = [refresh = row.refresh, this, button, read, name] {
        refresh();
        const auto band = m_bands.find(name);
        button->show(read(pond()), band == m_bands.end() ? std::nullopt : std::optional(band->second),
                     unitsOf(pond()));
    };
    connect(button, &ConfidenceButton::edited, this, [this, &row, find](const engine::Quantity& quantity) {
        edit(row, [&](engine::Pond& changed) {
            if (engine::MaybeQuantity* found = find(changed)) {
                *found = quantity;
            }
        });
    });
    return box;
}

void FieldForm::showLabel(Row& row) {
    if (!row.words.label.contains(QStringLiteral("%1"))) {
        return;
    }
    const QString unit = shownUnit(shownUnitOf(row.unit, unitsOf(pond())).text);
    const QString text = row.words.label.arg(unit);
    if (row.label != nullptr && row.label->text() != text) {
        row.label->setText(text);
        row.field->setAccessibleName(text);
        if (auto* edit = row.field->findChild<QLineEdit*>()) {
            edit->setAccessibleName(text);
        }
    }
}

void FieldForm::forget() {
    for (const auto& row : m_rows) {
        if (row->entry != nullptr) {
            row->entry->reset();
        }
        showFault(*row, {});
    }
}

void FieldForm::refresh() {
    const bool isThere = hasSubject();
    if (!isThere) {
        forget();  // before the fields go, since a field that loses the focus takes what is typed
    }
    m_fields->setVisible(isThere);
    if (m_emptyPage != nullptr) {
        m_emptyPage->setVisible(!isThere);
    }
    if (!isThere) {
        return;
    }
    for (const auto& row : m_rows) {
        showLabel(*row);
        row->refresh();
        if (row->entry == nullptr) {
            showFault(*row, {});
        }
    }
    refreshRows();
}

QString FieldForm::sentenceOf(const engine::Diagnostic& fault) const {
    QString sentence = toQString(fault.sentence);
    const auto& ramps = pond().ramps;
    for (std::size_t i = 0; i < ramps.size(); ++i) {
        const bool isOwn = ownRamp() == static_cast<int>(i);
        const std::string path = engine::itemPath("ramp", i) + '.';
        if (!isOwn && fault.key.starts_with(path) && fault.key != path + "name") {
            return tr("Ramp “%1”: %2").arg(toQString(ramps[i].name), sentence);
        }
    }
    return sentence;
}

QVBoxLayout* FieldForm::addEmptyPage(const QString& sentence) {
    m_emptyPage = new QWidget(this);
    auto* layout = new QVBoxLayout(m_emptyPage);
    layout->setContentsMargins(0, 0, 0, 0);
    auto* label = new QLabel(sentence, m_emptyPage);
    label->setWordWrap(true);
    layout->addWidget(label);
    static_cast<QVBoxLayout*>(this->layout())->insertWidget(0, m_emptyPage);
    return layout;
}

void FieldForm::addHeading(const QString& text) {
    auto* heading = new QLabel(text, m_fields);
    QFont font = heading->font();
    font.setBold(true);
    heading->setFont(font);
    heading->setContentsMargins(0, m_rows.empty() ? 0 : 10, 0, 2);
    m_layout->addWidget(heading, m_layout->rowCount(), 0, 1, 2);
}

FieldForm::Row& FieldForm::addRow(QWidget* field, const Words& words) {
    Row& row = *m_rows.emplace_back(std::make_unique<Row>());
    row.field = field;
    row.words = words;
    // A plain tooltip is one long line; as rich text it wraps.
    field->setToolTip(plainTip(words.help));
    field->setAccessibleName(words.label);
    field->setAccessibleDescription(words.help);
    if (auto* edit = field->findChild<QLineEdit*>()) {  // of a spin box, and a screen reader may land on it
        edit->setAccessibleName(words.label);
    }
    // A grid: QFormLayout of Qt 6.4 gives rows no height where a hidden row stands above a wrapped text.
    const int at = m_layout->rowCount();
    if (qobject_cast<QCheckBox*>(field) != nullptr) {
        m_layout->addWidget(field, at, 0, 1, 2);
    } else {
        row.label = new QLabel(words.label, m_fields);
        row.label->setToolTip(field->toolTip());
        row.label->setBuddy(field);
        m_layout->addWidget(row.label, at, 0);
        m_layout->addWidget(field, at, 1);
        // As wide as the widest, hidden ones too, so that the fields stay where they are.
        m_layout->setColumnMinimumWidth(
            0, std::max(m_layout->columnMinimumWidth(0), row.label->sizeHint().width()));
    }
    row.fault = new QLabel(m_fields);
    row.fault->setWordWrap(true);
    row.fault->setTextFormat(Qt::PlainText);
    row.fault->setContentsMargins(0, 0, 0, 4);
    row.fault->hide();
    m_layout->addWidget(row.fault, at + 1, 0, 1, 3);
    return row;
}

void FieldForm::watch(Row& row) {
    connect(row.entry, &Entry::faultChanged, this, [this, &row] { showFault(row, row.entry->fault()); });
}

void FieldForm::showFault(Row& row, const QString& sentence) {
    if (row.fault->text() == sentence) {
        return;
    }
    row.fault->setText(sentence);
    row.fault->setVisible(!sentence.isEmpty() && !row.field->isHidden());
    row.field->setAccessibleDescription(sentence.isEmpty() ? row.words.help
                                                           : sentence + u' ' + row.words.help);
}

void FieldForm::setUnit(const QWidget* field, const char* unit) {
    for (const auto& row : m_rows) {
        if (row->field == field) {
            row->unit = unit;
            showLabel(*row);
        }
    }
}

void FieldForm::setRowVisible(const QWidget* field, bool isVisible) {
    for (const auto& row : m_rows) {
        if (row->field == field) {
            if (!isVisible && row->entry != nullptr) {
                row->entry->reset();
            }
            row->field->setVisible(isVisible);
            if (row->confidence != nullptr) {
                row->confidence->setVisible(isVisible);
            }
            row->fault->setVisible(isVisible && !row->fault->text().isEmpty());
            if (row->label != nullptr) {
                row->label->setVisible(isVisible);
            }
        }
    }
}

void FieldForm::edit(Row& row, const Change& change) {
    const QString name =
        row.words.step.contains(QStringLiteral("%1")) ? row.words.step.arg(subjectName()) : row.words.step;
    QString mergeKey;
    if (row.entry != nullptr) {
        mergeKey = QStringLiteral("%1/%2").arg(reinterpret_cast<quintptr>(row.field)).arg(row.entry->burst());
    }
    QStringList sentences;
    for (const engine::Diagnostic& fault : m_document.edit(name, change, mergeKey)) {
        sentences += sentenceOf(fault);
    }
    if (sentences.isEmpty()) {
        return;
    }
    if (row.entry != nullptr) {
        row.entry->refuse(sentences.join(u' '));
    } else {
        row.refresh();
        showFault(row, sentences.join(u' '));
    }
}

QCheckBox* FieldForm::addCheck(const Words& words, std::function<bool(const engine::Pond&)> read,
                               std::function<void(engine::Pond&, bool)> write) {
    auto* box = new QCheckBox(words.label, m_fields);
    Row& row = addRow(box, words);
    row.refresh = [this, box, read = std::move(read)] { box->setChecked(read(pond())); };
    connect(box, &QCheckBox::clicked, this, [this, &row, write = std::move(write)](bool isChecked) {
        edit(row, [&](engine::Pond& changed) { write(changed, isChecked); });
    });
    return box;
}

QComboBox* FieldForm::addChoice(const Words& words, std::function<int(const engine::Pond&)> read,
                                std::function<void(engine::Pond&, int)> write) {
    auto* box = new QComboBox(m_fields);
    box->setFocusPolicy(Qt::StrongFocus);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(8);
    Row& row = addRow(box, words);
    row.refresh = [this, box, read = std::move(read)] { box->setCurrentIndex(read(pond())); };
    connect(box, &QComboBox::activated, this, [this, &row, write = std::move(write)](int index) {
        edit(row, [&](engine::Pond& changed) { write(changed, index); });
    });
    return box;
}

}  // namespace widgets
