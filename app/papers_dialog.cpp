#include "app/papers_dialog.h"

#include "engine/ramps/log.h"
#include "widgets/controls/progress_line.h"
#include "widgets/document/to_qstring.h"

#include <QComboBox>
#include <QDesktopServices>
#include <QFileDialog>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QUrl>

#include <algorithm>

namespace app {

PapersDialog::PapersDialog(const engine::Pond& pond, const std::string& ramp, const QString& folder,
                           QWidget* parent)
    : QDialog(parent),
      m_ramp(new QComboBox(this)),
      m_folder(new QLineEdit(folder, this)),
      m_said(new QLabel(this)),
      m_progress(new widgets::ProgressLine(this)),
      m_make(new QPushButton(tr("&Make"), this)),
      m_look(new QPushButton(tr("&Look at Them"), this)) {
    setWindowTitle(tr("Make the papers"));
    auto* column = new QVBoxLayout(this);
    auto* help = new QLabel(tr("Proposal, schedule, owner's sheet, the forms to sign, the calendar and the "
                               "bundle that proves them go into one folder. Where the answer is to wait, a "
                               "letter takes the place of the schedule."),
                            this);
    help->setWordWrap(true);
    column->addWidget(help);
    auto* form = new QFormLayout;
    const engine::Ramp* meant = engine::rampMeant(pond);
    m_ramp->addItem(meant == nullptr ? tr("As started or chosen")
                                     : tr("As started or chosen: %1").arg(widgets::toQString(meant->name)),
                    QString());
    for (const engine::Ramp& one : pond.ramps) {
        const QString name = widgets::toQString(one.name);
        m_ramp->addItem(name, name);
    }
    m_ramp->setCurrentIndex(std::max(m_ramp->findData(widgets::toQString(ramp)), 0));
    form->addRow(tr("&Ramp"), m_ramp);
    auto* row = new QHBoxLayout;
    auto* choose = new QPushButton(tr("&Choose\u2026"), this);
    choose->setAutoDefault(false);
    row->addWidget(m_folder, 1);
    row->addWidget(choose);
    auto* label = new QLabel(tr("&Folder"), this);
    label->setBuddy(m_folder);
    m_folder->setAccessibleName(tr("Folder"));
    m_folder->setMinimumWidth(m_folder->fontMetrics().averageCharWidth() * 48);
    form->addRow(label, row);
    column->addLayout(form);
    m_said->setWordWrap(true);
    m_said->setTextFormat(Qt::PlainText);
    m_said->setAccessibleName(tr("How it went"));
    column->addWidget(m_said);
    column->addWidget(m_progress);
    auto* buttons = new QHBoxLayout;
    auto* close = new QPushButton(tr("Close"), this);
    close->setAutoDefault(false);
    m_look->setAutoDefault(false);
    m_look->hide();
    m_make->setDefault(true);
    buttons->addStretch(1);
    buttons->addWidget(m_look);
    buttons->addWidget(m_make);
    buttons->addWidget(close);
    column->addLayout(buttons);
    const auto enable = [this] { m_make->setEnabled(!m_folder->text().trimmed().isEmpty()); };
    enable();
    connect(m_folder, &QLineEdit::textChanged, this, enable);
    connect(choose, &QPushButton::clicked, this, &PapersDialog::chooseFolder);
    connect(m_make, &QPushButton::clicked, this, &PapersDialog::makeAsked);
    connect(m_look, &QPushButton::clicked, this,
            [this] { QDesktopServices::openUrl(QUrl::fromLocalFile(m_folder->text())); });
    connect(close, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_progress, &widgets::ProgressLine::stopped, this, &PapersDialog::stopAsked);
    connect(this, &QDialog::rejected, this, &PapersDialog::stopAsked);
}

std::string PapersDialog::ramp() const {
    return m_ramp->currentData().toString().toStdString();
}

QString PapersDialog::folder() const {
    return m_folder->text().trimmed();
}

void PapersDialog::chooseFolder() {
    const QString chosen =
        QFileDialog::getExistingDirectory(this, tr("The folder of the papers"), m_folder->text());
    if (!chosen.isEmpty()) {
        m_folder->setText(chosen);
    }
}

void PapersDialog::begin() {
    m_said->clear();
    m_look->hide();
    m_make->setEnabled(false);
    m_progress->start(tr("Computing the run of the papers"));
}

void PapersDialog::setProgress(double fraction) {
    m_progress->set(fraction);
}

void PapersDialog::end(const QString& sentence, bool isMade) {
    m_progress->finish();
    m_said->setText(sentence);
    m_make->setEnabled(true);
    m_look->setVisible(isMade);
}

}  // namespace app
