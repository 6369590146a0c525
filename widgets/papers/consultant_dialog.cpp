#include "widgets/papers/consultant_dialog.h"

#include "engine/base/durable.h"
#include "widgets/controls/plain_text.h"
#include "widgets/document/number_text.h"
#include "widgets/document/to_qstring.h"
#include "widgets/papers/paper_parts.h"

#include <QBoxLayout>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFormLayout>
#include <QHeaderView>
#include <QImageReader>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableWidget>

#include <array>

namespace widgets {
namespace {

constexpr engine::NumberRule kPriceRule{0.0, engine::kLargestPrice};

void describe(QWidget& field, const QString& name, const QString& help) {
    field.setAccessibleName(name);
    field.setAccessibleDescription(help);
    field.setToolTip(plainTip(help));
}

std::string textOf(const QLineEdit* edit) {
    return edit->text().trimmed().toStdString();
}

std::vector<std::string> linesOf(const QPlainTextEdit* edit) {
    std::vector<std::string> lines;
    for (const QString& line : edit->toPlainText().split(u'\n')) {
        if (!line.trimmed().isEmpty()) {
            lines.push_back(line.trimmed().toStdString());
        }
    }
    return lines;
}

}  // namespace

ConsultantDialog::ConsultantDialog(const engine::Consultant& consultant, std::filesystem::path path,
                                   QWidget* parent)
    : QDialog(parent), m_path(std::move(path)), m_fault(new QLabel(this)) {
    setWindowTitle(tr("Your business details"));
    setObjectName(QStringLiteral("consultant"));
    auto* column = new QVBoxLayout(this);
    auto* intro = new QLabel(tr("Set once, for the papers of all ponds. What is left empty stays a blank to "
                                "fill in by hand."),
                             this);
    intro->setWordWrap(true);
    column->addWidget(intro);
    auto* halves = new QHBoxLayout;
    halves->setSpacing(24);
    column->addLayout(halves);
    auto* who = new QFormLayout;
    auto* how = new QFormLayout;
    for (QFormLayout* form : {who, how}) {
        form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
        form->setLabelAlignment(Qt::AlignRight);
        form->setVerticalSpacing(6);
        form->setHorizontalSpacing(8);
        auto* half = new QVBoxLayout;
        half->addLayout(form);
        half->addStretch(1);
        halves->addLayout(half, 1);
    }
    m_business = addLine(*who, tr("&Business"), consultant.business, tr("At the head of every paper."));
    m_name = addLine(*who, tr("&Name"), consultant.name, tr("Of the consultant, who signs."));
    m_licence =
        addLine(*who, tr("&Licence"), consultant.licence, tr("Its kind and number, if there is one."));
    m_address = addLines(*who, tr("&Address"), consultant.address, tr("As on an envelope, line by line."), 4);
    m_phone = addLine(*who, tr("&Phone"), consultant.phone,
                      tr("Whom the owner calls at dawn. It stands on the schedule and the incident sheet."));
    m_email = addLine(*who, tr("&Email"), consultant.email, tr("At the head of every paper."));
    addLogo(*who, consultant.logo);
    m_units = addChoice(*how, tr("&Units"), {tr("SI first"), tr("US first")}, consultant.usUnits,
                        tr("Which come first; the other system stands beside them. A pond that says its own "
                           "units keeps them."));
    m_page = addChoice(*how, tr("Pa&ge"), {tr("A4"), tr("US Letter")}, consultant.letter,
                       tr("The size of every paper."));
    m_currency = addLine(*how, tr("Cu&rrency"), consultant.currency,
                         tr("At the head of the prices, as it is: USD, EUR, a sign."));
    addPrices(*how, consultant.prices);
    m_exclusions = addLines(*how, tr("Not in the pr&ice"), consultant.exclusions,
                            tr("What the price leaves out, such as permits, line by line."), 3);

    m_fault->setWordWrap(true);
    m_fault->setTextFormat(Qt::PlainText);
    m_fault->setAccessibleName(tr("What is not taken"));
    m_fault->hide();
    column->addWidget(m_fault);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Save | QDialogButtonBox::Cancel, this);
    connect(buttons, &QDialogButtonBox::accepted, this, &ConsultantDialog::save);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    resize(900, sizeHint().height());
    if (const auto fault = logoFault(consultant)) {  // the picture was moved since
        say(toQString(*fault), m_logo);
    }
}

QLineEdit* ConsultantDialog::addLine(QFormLayout& form, const QString& label, const std::string& text,
                                     const QString& help) {
    auto* edit = new QLineEdit(toQString(text), this);
    edit->setCursorPosition(0);
    describe(*edit, QString(label).remove(u'&'), help);
    form.addRow(label, edit);
    return edit;
}

QPlainTextEdit* ConsultantDialog::addLines(QFormLayout& form, const QString& label,
                                           const std::vector<std::string>& texts, const QString& help,
                                           int height) {
    QStringList lines;
    for (const std::string& text : texts) {
        lines << toQString(text);
    }
    auto* edit = new QPlainTextEdit(lines.join(u'\n'), this);
    edit->setTabChangesFocus(true);
    edit->setFixedHeight(height * edit->fontMetrics().lineSpacing() + 12);
    describe(*edit, QString(label).remove(u'&'), help);
    form.addRow(label, edit);
    return edit;
}

QComboBox* ConsultantDialog::addChoice(QFormLayout& form, const QString& label, const QStringList& choices,
                                       bool isSecond, const QString& help) {
    auto* box = new QComboBox(this);
    box->addItems(choices);
    box->setCurrentIndex(isSecond ? 1 : 0);
    box->setFocusPolicy(Qt::StrongFocus);
    describe(*box, QString(label).remove(u'&'), help);
    form.addRow(label, box);
    return box;
}

void ConsultantDialog::addLogo(QFormLayout& form, const std::string& logo) {
    m_logo = new QLineEdit(toQString(logo), this);
    m_logo->setCursorPosition(0);
    auto* label = new QLabel(tr("L&ogo"), this);
    label->setBuddy(m_logo);
    describe(*m_logo, tr("Logo"),
             tr("A picture file. A name without a folder is looked for beside the profile, %1.")
                 .arg(toQString(m_path.string())));
    auto* choose = new QPushButton(tr("&Choose\u2026"), this);
    choose->setAutoDefault(false);
    choose->setAccessibleDescription(tr("Chooses the picture of the logo."));
    connect(choose, &QPushButton::clicked, this, &ConsultantDialog::chooseLogo);
    auto* row = new QHBoxLayout;
    row->setSpacing(6);
    row->addWidget(m_logo, 1);
    row->addWidget(choose);
    form.addRow(label, row);
}

void ConsultantDialog::addPrices(QFormLayout& form, const std::vector<engine::Price>& prices) {
    m_prices = new QTableWidget(0, 3, this);
    const QString help =
        tr("A line of the price list each; the last row takes what is added, and a row that "
           "is emptied goes. Without an amount there is a blank to fill in.");
    describe(*m_prices, tr("Prices"), help);
    m_prices->setHorizontalHeaderLabels({tr("Item"), tr("Unit"), tr("Amount")});
    m_prices->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    m_prices->verticalHeader()->hide();
    m_prices->verticalHeader()->setDefaultSectionSize(m_prices->fontMetrics().height() + 8);
    m_prices->setTabKeyNavigation(false);
    for (const int column : {1, 2}) {
        m_prices->setColumnWidth(column, 9 * m_prices->fontMetrics().averageCharWidth());
    }
    m_prices->setFixedHeight(5 * (m_prices->fontMetrics().height() + 8));
    for (const engine::Price& price : prices) {
        const int row = m_prices->rowCount();
        m_prices->insertRow(row);
        m_prices->setItem(row, 0, new QTableWidgetItem(toQString(price.item)));
        m_prices->setItem(row, 1, new QTableWidgetItem(toQString(price.unit)));
        m_prices->setItem(
            row, 2, new QTableWidgetItem(price.amount ? numberText(*price.amount, locale()) : QString()));
    }
    growPrices();
    connect(m_prices, &QTableWidget::cellChanged, this, &ConsultantDialog::growPrices);
    auto* label = new QLabel(tr("Price&s"), this);
    label->setBuddy(m_prices);
    form.addRow(label, m_prices);
}

void ConsultantDialog::growPrices() {
    const int rows = m_prices->rowCount();
    bool isLastEmpty = rows > 0;
    for (int column = 0; isLastEmpty && column < m_prices->columnCount(); ++column) {
        const QTableWidgetItem* cell = m_prices->item(rows - 1, column);
        isLastEmpty = cell == nullptr || cell->text().trimmed().isEmpty();
    }
    if (!isLastEmpty || rows == 0) {
        m_prices->insertRow(rows);
    }
}

void ConsultantDialog::chooseLogo() {
    QStringList patterns;
    for (const QByteArray& format : QImageReader::supportedImageFormats()) {
        patterns << QStringLiteral("*.") + QString::fromLatin1(format);
    }
    const QString name = QFileDialog::getOpenFileName(
        this, tr("The picture of the logo"), {},
        tr("Pictures (%1)").arg(patterns.join(u' ')) + QStringLiteral(";;") + tr("All files (*)"));
    if (!name.isEmpty()) {
        m_logo->setText(name);
    }
}

bool ConsultantDialog::readPrices(std::vector<engine::Price>& prices) {
    for (int row = 0; row < m_prices->rowCount(); ++row) {
        std::array<QString, 3> cells;
        for (int column = 0; column < m_prices->columnCount(); ++column) {
            if (const QTableWidgetItem* cell = m_prices->item(row, column)) {
                cells[static_cast<std::size_t>(column)] = cell->text().trimmed();
            }
        }
        const auto& [item, unit, amount] = cells;
        if (item.isEmpty() && unit.isEmpty() && amount.isEmpty()) {
            continue;
        }
        const auto refuse = [&](int column, const QString& sentence) {
            m_prices->setCurrentCell(row, column);
            say(tr("Prices, row %1: %2").arg(QString::number(row + 1), sentence), m_prices);
            return false;
        };
        if (item.isEmpty()) {
            return refuse(0, tr("A price needs its item."));
        }
        engine::Price price{item.toStdString(), unit.toStdString(), std::nullopt};
        if (!amount.isEmpty()) {
            const TextReading<double> number = readNumber(amount, kPriceRule, locale());
            if (!number.fault.isEmpty()) {
                return refuse(2, number.fault);
            }
            price.amount = number.value;
        }
        prices.push_back(std::move(price));
    }
    return true;
}

std::optional<engine::Consultant> ConsultantDialog::typed() {
    engine::Consultant who;
    who.business = textOf(m_business);
    who.name = textOf(m_name);
    who.licence = textOf(m_licence);
    who.address = linesOf(m_address);
    who.phone = textOf(m_phone);
    who.email = textOf(m_email);
    who.logo = textOf(m_logo);
    who.usUnits = m_units->currentIndex() == 1;
    who.letter = m_page->currentIndex() == 1;
    who.currency = textOf(m_currency);
    who.exclusions = linesOf(m_exclusions);
    if (!who.logo.empty()) {
        who.logo = (m_path.parent_path() / who.logo).string();
    }
    if (const auto fault = logoFault(who)) {
        say(toQString(*fault), m_logo);
        return std::nullopt;
    }
    if (!readPrices(who.prices)) {
        return std::nullopt;
    }
    return who;
}

void ConsultantDialog::say(const QString& sentence, QWidget* field) {
    m_fault->setText(sentence);
    m_fault->show();
    field->setFocus();
}

void ConsultantDialog::save() {
    const std::optional<engine::Consultant> who = typed();
    if (!who) {
        return;
    }
    std::error_code ignored;  // what comes of it, saving says
    std::filesystem::create_directories(m_path.parent_path(), ignored);
    if (const auto fault = engine::saveDurably(m_path, engine::writeConsultant(*who, m_path.parent_path()))) {
        say(toQString(*fault), m_business);
        return;
    }
    accept();
}

}  // namespace widgets
