#include "widgets/sentence_sheet.h"

#include "widgets/wording.h"

#include <QTextBrowser>
#include <QTextDocument>

#include <algorithm>

namespace widgets {

QString htmlOf(const std::vector<engine::Sentence>& sentences, const std::vector<SheetSection>& sections,
               engine::SentenceKey without) {
    std::vector<bool> isSaid(sentences.size());
    QString html;
    for (const SheetSection& section : sections) {
        const auto& keys = section.keys;
        QString lines;
        for (std::size_t i = 0; i < sentences.size(); ++i) {
            const engine::Sentence& one = sentences[i];
            const bool isMeant = keys.empty() || std::find(keys.begin(), keys.end(), one.key) != keys.end();
            if (one.part == section.part && one.key != without && isMeant && !isSaid[i]) {
                isSaid[i] = true;
                lines += QString(section.isList ? QStringLiteral("<li>%1</li>") : QStringLiteral("<p>%1</p>"))
                             .arg(worded(one).toHtmlEscaped());
            }
        }
        if (lines.isEmpty()) {
            continue;
        }
        if (!section.title.isEmpty()) {
            html += QStringLiteral("<h4>%1</h4>").arg(section.title.toHtmlEscaped());
        }
        html += section.isList ? QStringLiteral("<ul>%1</ul>").arg(lines) : lines;
    }
    return html;
}

QTextBrowser* sentenceBrowser(const QString& name, QWidget* parent) {
    auto* browser = new QTextBrowser(parent);
    browser->setAccessibleName(name);
    browser->setTabChangesFocus(true);
    browser->setFrameShape(QFrame::NoFrame);
    browser->viewport()->setAutoFillBackground(false);  // paper, as all about it
    browser->document()->setDocumentMargin(6);
    browser->document()->setDefaultStyleSheet(
        QStringLiteral("p { margin: 0 0 5px 0 } ul { margin: 0 0 5px -22px } h4 { margin: 10px 0 4px 0 }"));
    return browser;
}

QString wordedFirst(const std::vector<engine::Sentence>& sentences, engine::SentenceKey key) {
    const auto found = std::find_if(sentences.begin(), sentences.end(),
                                    [key](const engine::Sentence& one) { return one.key == key; });
    return found == sentences.end() ? QString() : worded(*found);
}

}  // namespace widgets
