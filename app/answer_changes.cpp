#include "app/answer_changes.h"

#include "engine/output/given_answer.h"
#include "engine/wording/sentence_changes.h"
#include "widgets/controls/notice.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/document/document.h"
#include "widgets/document/to_qstring.h"

#include <QDialog>
#include <QDialogButtonBox>
#include <QTextBrowser>
#include <QVBoxLayout>

#include <chrono>

namespace app {
namespace {

/// Sentences of the changes, or a fault.
struct Changes {
    std::vector<engine::Sentence> sentences;
    std::string fault;
};

Changes changesSince(const std::filesystem::path& bundle, const engine::Pond& pond,
                     const std::filesystem::path& path, const engine::RunControl& control) {
    const engine::OpenedAnswer before = engine::openAnswer(bundle);
    if (!before.answer) {
        return {{}, before.faults.front()};
    }
    const auto again = engine::answerAgain(
        pond, path, *before.answer, DAWNLINE_VERSION,
        std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()), control);
    if (const auto* none = std::get_if<engine::NoAnswer>(&again)) {
        return {{}, none->sentence};
    }
    return {engine::sentencesOf(engine::changeOf(*before.answer, std::get<engine::GivenAnswer>(again)), pond),
            {}};
}

void show(const QString& name, const Changes& changes, QWidget& window) {
    auto* dialog = new QDialog(&window);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setWindowTitle(AnswerChanges::tr("What has changed since %1").arg(name));
    dialog->resize(640, 420);
    auto* column = new QVBoxLayout(dialog);
    QTextBrowser* text = widgets::sentenceBrowser(dialog->windowTitle(), dialog);
    text->setHtml(widgets::htmlOf(changes.sentences, {{engine::SentencePart::Advice, {}}}));
    column->addWidget(text);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, dialog);
    QObject::connect(buttons, &QDialogButtonBox::rejected, dialog, &QDialog::reject);
    column->addWidget(buttons);
    dialog->show();
}

}  // namespace

AnswerChanges::AnswerChanges(const widgets::Document& document, widgets::Notice& notice, QWidget& window)
    : QObject(&window), m_document(document), m_notice(notice), m_window(window) {
    connect(&m_job, &widgets::Job::failed, &m_notice, &widgets::Notice::say);
}

void AnswerChanges::since(const std::filesystem::path& bundle) {
    m_notice.say(tr("The answer is being worked out anew, as it was asked for the bundle."));
    m_job.start(
        [bundle, pond = m_document.pond(), path = m_document.path()](const std::stop_token& stop,
                                                                     const widgets::Job::Progress& progress) {
            return changesSince(bundle, pond, path, {stop, progress});
        },
        [this, name = widgets::toQString(bundle.filename().string())](const Changes& changes) {
            if (!changes.fault.empty()) {
                m_notice.say(widgets::toQString(changes.fault));
                return;
            }
            m_notice.clear();
            show(name, changes, m_window);
        });
}

}  // namespace app
