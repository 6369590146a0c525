#include "widgets/forms/first_pond_dialog.h"

#include "engine/pond/local_time.h"
#include "engine/pond/pond_check.h"
#include "widgets/controls/line_entry.h"
#include "widgets/controls/number_box.h"
#include "widgets/document/key_rules.h"
#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"

#include <QBoxLayout>
#include <QComboBox>
#include <QCoreApplication>
#include <QDate>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>

namespace widgets {
namespace {

/// The words of the engine's questions.
QString said(const char* text) {
    return QCoreApplication::translate("FirstQuestions", text);
}

}  // namespace

FirstPondDialog::FirstPondDialog(QWidget* parent) : QDialog(parent), m_fault(new QLabel(this)) {
    setWindowTitle(tr("A first pond"));
    setObjectName(QStringLiteral("firstPond"));
    resize(720, 640);
    m_start.name = tr("A new pond").toStdString();
    m_start.firstDay =
        *engine::parseDate(QDate::currentDate().addDays(1).toString(Qt::ISODate).toStdString());
    auto* column = new QVBoxLayout(this);
    auto* intro = new QLabel(tr("Questions that an owner can answer. What is not known exactly gets a "
                                "wide band; every number can be changed "
                                "afterwards. A unit may be typed behind a number: 2.5 ac, 12 ft, 80 F."),
                             this);
    intro->setWordWrap(true);
    column->addWidget(intro);
    auto* area = new QScrollArea(this);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setFocusPolicy(Qt::NoFocus);
    auto* sheet = new QWidget(area);
    m_grid = new QGridLayout(sheet);
    m_grid->setColumnStretch(1, 1);
    area->setWidget(sheet);
    column->addWidget(area, 1);
    for (const engine::FirstQuestion& question : engine::firstQuestions()) {
        ask(question);
    }

    m_fault->setWordWrap(true);
    m_fault->setTextFormat(Qt::PlainText);
    column->addWidget(m_fault);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    buttons->button(QDialogButtonBox::Ok)->setText(tr("Make the Pond"));
    connect(buttons, &QDialogButtonBox::accepted, this, &FirstPondDialog::take);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
}

void FirstPondDialog::ask(const engine::FirstQuestion& question) {
    ++m_count;
    const int row = m_grid->rowCount();
    auto* number = new QLabel(QString::number(m_count), this);
    number->setAlignment(Qt::AlignTop | Qt::AlignRight);
    m_grid->addWidget(number, row, 0);
    const QString asked = said(question.question);
    const QString help = *question.help != '\0' ? said(question.help) : QString();
    auto* words = new QLabel(help.isEmpty() ? asked : asked + u'\n' + help, this);
    words->setWordWrap(true);
    m_grid->addWidget(words, row, 1);
    auto* box = new QHBoxLayout;
    for (const engine::FirstField& field : question.fields) {
        QWidget* widget = fieldFor(field);
        m_asked.push_back({&field, widget});
        if (words->buddy() == nullptr) {
            words->setBuddy(widget);
        }
        if (widget->accessibleDescription().isEmpty()) {
            widget->setAccessibleDescription(asked + u' ' + help);
        }
        box->addWidget(widget, 1);
        if (const QString unit = widget->property("unit").toString(); !unit.isEmpty()) {
            box->addWidget(new QLabel(unit, this));
        }
    }
    m_grid->addLayout(box, row, 2);
}

QWidget* FirstPondDialog::fieldFor(const engine::FirstField& field) {
    if (field.isNumber()) {
        return numberFor(field);
    }
    QWidget* widget = nullptr;
    if (field.choose != nullptr) {
        auto* box = new QComboBox(this);
        for (const char* text : field.texts) {
            box->addItem(said(text));
        }
        box->setCurrentIndex(field.chosen(m_start));
        box->setFocusPolicy(Qt::StrongFocus);
        widget = box;
    } else if (std::string_view(field.name) == "name") {
        widget = new QLineEdit(toQString(m_start.name), this);
    } else {
        auto* day = new LineEntry(LineEntry::Kind::Text, this);
        day->setValue(engine::formatDate(m_start.firstDay));
        widget = day;
    }
    widget->setAccessibleName(said(field.label));
    return widget;
}

QWidget* FirstPondDialog::numberFor(const engine::FirstField& field) {
    const engine::NumberRule rule = keyRule(field.key);
    const bool isOpen = field.maybe != nullptr;
    auto* box =
        new NumberBox(rule, 1.0, isOpen ? NumberBox::Empty::Allowed : NumberBox::Empty::Refused, this);
    const engine::UnitSystem units = unitsOf({});
    box->setUnits(units);
    if (!isOpen) {
        box->setValue(m_start.*field.number);
    }
    const QString name = said(field.label);
    const QString unit = shownUnit(shownUnitOf(rule.unit, units).text);
    box->setAccessibleName(unit.isEmpty() ? name : name + QStringLiteral(", ") + unit);
    box->setToolTip(box->accessibleName());
    box->setProperty("unit", unit.startsWith(QLatin1String("degrees")) ? QStringLiteral("\u00b0") : unit);
    return box;
}

engine::FirstAnswers FirstPondDialog::answers() const {
    engine::FirstAnswers answers = m_start;
    for (const Asked& asked : m_asked) {
        if (const auto* box = qobject_cast<const NumberBox*>(asked.widget)) {
            if (asked.field->number != nullptr) {
                answers.*asked.field->number = *box->value();
            } else {
                answers.*asked.field->maybe = box->value();
            }
        } else if (const auto* choice = qobject_cast<const QComboBox*>(asked.widget)) {
            asked.field->choose(answers, choice->currentIndex());
        } else if (const auto* day = qobject_cast<const LineEntry*>(asked.widget)) {
            static_cast<void>(engine::takeAnswer(answers, *asked.field, day->value(), unitsOf({})));
        } else if (const auto* text = qobject_cast<const QLineEdit*>(asked.widget)) {
            answers.name = text->text().trimmed().toStdString();
        }
    }
    return answers;
}

void FirstPondDialog::take() {
    for (const Asked& asked : m_asked) {
        auto* box = qobject_cast<NumberBox*>(asked.widget);
        if (box != nullptr && !box->entry().commit()) {
            box->setFocus();
            m_fault->setText(box->accessibleName() + QStringLiteral(": ") + box->entry().fault());
            return;
        }
        auto* day = qobject_cast<LineEntry*>(asked.widget);
        if (day != nullptr && day->entry().commit()) {
            engine::FirstAnswers tried = m_start;
            const std::string fault = engine::takeAnswer(tried, *asked.field, day->value(), unitsOf({}));
            if (!fault.empty()) {
                day->setFocus();
                m_fault->setText(toQString(fault));
                return;
            }
        }
    }
    m_pond = engine::pondFrom(answers());
    QStringList sentences;
    for (const engine::Diagnostic& fault : engine::checkPond(m_pond)) {
        if (fault.severity == engine::Severity::Error) {
            sentences << toQString(fault.sentence);
        }
    }
    m_fault->setText(sentences.join(u' '));
    if (sentences.isEmpty()) {
        accept();
    }
}

}  // namespace widgets
