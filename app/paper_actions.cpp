#include "app/paper_actions.h"

#include "app/papers_dialog.h"
#include "engine/base/files.h"
#include "engine/output/bundle.h"
#include "engine/ramps/log.h"
#include "widgets/controls/notice.h"
#include "widgets/document/document.h"
#include "widgets/document/recomputation.h"
#include "widgets/document/to_qstring.h"
#include "widgets/papers/consultant_dialog.h"
#include "widgets/papers/paper_pdf.h"
#include "widgets/papers/papers.h"

#include <QAction>
#include <QFileDialog>
#include <QMenu>
#include <QPointer>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrinter>

#include <algorithm>

namespace app {
namespace {

/// The papers of a run with the starts so far; a ledger that cannot be read was said in withRun().
widgets::PaperRun papersOf(const std::shared_ptr<const engine::FrozenRun>& run,
                           const engine::Consultant& consultant) {
    return widgets::paperRun(run, consultant, ledgerBeside().ledger.value_or(engine::StartLedger()));
}

/// A printer with the page of the consultant's papers and the resolution that they are laid out for.
void setUp(QPrinter& printer, const engine::Consultant& consultant) {
    printer.setResolution(widgets::kPaperDots);
    printer.setPageSize(QPageSize(consultant.letter ? QPageSize::Letter : QPageSize::A4));
    printer.setFullPage(true);
    printer.setPageMargins(QMarginsF(0, 0, 0, 0));
}

}  // namespace

PaperActions::PaperActions(widgets::Document& document, const widgets::Recomputation& recomputation,
                           widgets::Notice& notice, QMenu& menu, QWidget& window)
    : QObject(&window),
      m_document(document),
      m_recomputation(recomputation),
      m_notice(notice),
      m_window(window),
      m_ramps(menu.addMenu(tr("Ra&mp for the Papers"))) {
    m_ramps->setObjectName(QStringLiteral("paper-ramps"));
    m_actions << m_ramps->menuAction();
    connect(m_ramps, &QMenu::aboutToShow, this, &PaperActions::fillRamps);
    connect(&m_document, &widgets::Document::replaced, this, [this] { m_ramp.clear(); });
    m_actions << menu.addAction(tr("Print Pre&view of the Papers\u2026"), this, &PaperActions::preview);
    m_actions << menu.addAction(tr("&Print the Papers\u2026"), QKeySequence::Print, this,
                                &PaperActions::printOut);
    m_actions << menu.addAction(tr("Ma&ke the Papers\u2026"), this, &PaperActions::make);
    menu.addAction(tr("Your &Business Details\u2026"), this, &PaperActions::askWhose);
    connect(&m_job, &widgets::Job::failed, &m_notice, &widgets::Notice::say);
}

void PaperActions::withRun(Deliver deliver) {
    m_notice.say(tr("The run of the papers is being computed."));
    withRun(
        [this, deliver = std::move(deliver)](const auto& run, const engine::Consultant& consultant) {
            m_notice.clear();
            deliver(run, consultant);
        },
        [this](const QString& sentence) { m_notice.say(sentence); });
}

void PaperActions::withRun(Deliver deliver, Say say) {
    const engine::ConsultantReading reading = consultantOf({});
    if (!reading.consultant) {
        say(widgets::toQString(engine::format(reading.diagnostics.front())));
        return;
    }
    if (const engine::StartLedgerReading starts = ledgerBeside(); !starts.ledger) {
        say(widgets::toQString(engine::format(starts.diagnostics.front())));
        return;
    }
    const engine::Pond& pond = m_document.pond();
    PaperOptions options;
    const bool isThere = std::any_of(pond.ramps.begin(), pond.ramps.end(),
                                     [this](const engine::Ramp& ramp) { return ramp.name == m_ramp; });
    options.ramp = isThere ? m_ramp : std::string();
    m_job.start(
        [options, pond = m_document.pond(), path = m_document.path(), outcome = m_recomputation.outcome()](
            const std::stop_token& stop, const widgets::Job::Progress& progress) {
            return runForPapers(pond, path, options, {stop, progress},
                                outcome == nullptr ? nullptr : &outcome->comparison);
        },
        [consultant = *reading.consultant, deliver = std::move(deliver), say](const PaperRunReading& run) {
            if (run.run == nullptr) {
                say(widgets::toQString(run.fault));
                return;
            }
            deliver(run.run, consultant);
        });
}

void PaperActions::print(const std::shared_ptr<const engine::FrozenRun>& run,
                         const engine::Consultant& consultant, QPrinter& printer) {
    const widgets::PaperRun papers = papersOf(run, consultant);
    widgets::printPapers(widgets::allPapers(papers), widgets::imprintOf(papers), papers.format, printer);
}

void PaperActions::preview() {
    withRun([this](const auto& run, const engine::Consultant& consultant) {
        QPrinter printer(QPrinter::ScreenResolution);
        setUp(printer, consultant);
        QPrintPreviewDialog dialog(&printer, &m_window);
        dialog.setWindowTitle(
            tr("Preview of the papers of the ramp %1").arg(widgets::toQString(run->stamp.ramp)));
        connect(&dialog, &QPrintPreviewDialog::paintRequested, this,
                [&](QPrinter* device) { print(run, consultant, *device); });
        dialog.exec();
    });
}

void PaperActions::printOut() {
    withRun([this](const auto& run, const engine::Consultant& consultant) {
        QPrinter printer(QPrinter::ScreenResolution);
        setUp(printer, consultant);
        QPrintDialog dialog(&printer, &m_window);
        if (dialog.exec() == QDialog::Accepted) {
            setUp(printer, consultant);  // the dialog may have chosen another resolution
            print(run, consultant, printer);
        }
    });
}

void PaperActions::make() {
    auto* dialog = new PapersDialog(m_document.pond(), m_ramp,
                                    widgets::toQString(m_document.path().parent_path().string()), &m_window);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &PapersDialog::makeAsked, this, [this, dialog] { makeIn(*dialog); });
    connect(dialog, &PapersDialog::stopAsked, this, [this] { m_job.cancel(); });
    connect(&m_job, &widgets::Job::progressed, dialog, &PapersDialog::setProgress);
    connect(&m_job, &widgets::Job::failed, dialog,
            [dialog](const QString& sentence) { dialog->end(sentence, false); });
    dialog->open();
}

void PaperActions::makeIn(PapersDialog& dialog) {
    m_ramp = dialog.ramp();
    dialog.begin();
    const QPointer<PapersDialog> shown(&dialog);
    withRun(
        [shown, folder = dialog.folder()](const auto& run, const engine::Consultant& consultant) {
            if (shown == nullptr) {
                return;  // closed meanwhile, which stops it
            }
            const auto files = widgets::paperFiles(papersOf(run, consultant));
            auto fault = engine::bundleFault(files);
            if (!fault) {
                fault = engine::writeFiles(folder.toStdString(), files);
            }
            shown->end(fault ? tr("%1 Nothing was written.").arg(widgets::toQString(*fault))
                             : tr("The papers of the ramp %1 and the bundle are in %2.")
                                   .arg(widgets::toQString(run->stamp.ramp), folder),
                       !fault);
        },
        [shown](const QString& sentence) {
            if (shown != nullptr) {
                shown->end(sentence, false);
            }
        });
}

void PaperActions::fillRamps() {
    m_ramps->clear();
    const auto add = [this](const QString& text, const std::string& ramp) {
        QAction* action = m_ramps->addAction(QString(text).replace(QLatin1Char('&'), QLatin1String("&&")),
                                             this, [this, ramp] { m_ramp = ramp; });
        action->setCheckable(true);
        action->setChecked(m_ramp == ramp);
    };
    const engine::Pond& pond = m_document.pond();
    const engine::Ramp* meant = engine::rampMeant(pond);
    add(meant != nullptr ? tr("As Started or Chosen: %1").arg(widgets::toQString(meant->name))
                         : tr("As Started or Chosen"),
        {});
    m_ramps->addSeparator();
    for (const engine::Ramp& ramp : pond.ramps) {
        add(widgets::toQString(ramp.name), ramp.name);
    }
}

void PaperActions::askWhose() {
    const engine::ConsultantReading reading = standardConsultant();
    if (!reading.consultant) {  // not to be written over: somebody typed it
        m_notice.say(widgets::toQString(engine::format(reading.diagnostics.front())));
        return;
    }
    const std::filesystem::path path = standardProfile();
    widgets::ConsultantDialog dialog(*reading.consultant, path, &m_window);
    if (dialog.exec() == QDialog::Accepted) {
        m_notice.say(tr("Your business details are kept in %1.").arg(widgets::toQString(path.string())));
    }
}

}  // namespace app
