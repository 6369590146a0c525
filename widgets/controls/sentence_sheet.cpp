#include "widgets/controls/sentence_sheet.h"

#include "widgets/document/wording.h"

#include <QLabel>
#include <QTextBrowser>
#include <QTextDocument>

#include <algorithm>

namespace widgets {
namespace {

bool isAmong(const std::vector<engine::SentenceKey>& keys, engine::SentenceKey key) {
    return std::find(keys.begin(), keys.end(), key) != keys.end();
}

}  // namespace

QString htmlOf(const std::vector<engine::Sentence>& sentences, const std::vector<SheetSection>& sections,
               engine::SentenceKey without) {
    std::vector<bool> isSaid(sentences.size());
    QString html;
    for (const SheetSection& section : sections) {
        const auto& keys = section.keys;
        QString lines;
        bool isInList = false;
        const auto setInList = [&](bool isRow) {
            if (isRow != isInList) {
                lines += isRow ? QStringLiteral("<ul>") : QStringLiteral("</ul>");
                isInList = isRow;
            }
        };
        for (std::size_t i = 0; i < sentences.size(); ++i) {
            const engine::Sentence& one = sentences[i];
            const bool isMeant = keys.empty() || isAmong(keys, one.key);
            if (one.part == section.part && one.key != without && isMeant && !isSaid[i]) {
                isSaid[i] = true;
                setInList(section.isList || isAmong(section.rows, one.key));
                lines += QString(isInList ? QStringLiteral("<li>%1</li>") : QStringLiteral("<p>%1</p>"))
                             .arg(localized(one).toHtmlEscaped());
            }
        }
        if (lines.isEmpty()) {
            continue;
        }
        setInList(false);
        if (!section.title.isEmpty()) {
            html += QStringLiteral("<h4>%1</h4>").arg(section.title.toHtmlEscaped());
        }
        html += lines;
    }
    return html;
}

QLabel* sentenceLabel(const QString& name, QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setAccessibleName(name);
    return label;
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

QString localizedFirst(const std::vector<engine::Sentence>& sentences, engine::SentenceKey key) {
    const auto found = std::find_if(sentences.begin(), sentences.end(),
                                    [key](const engine::Sentence& one) { return one.key == key; });
    return found == sentences.end() ? QString() : localized(*found);
}

}  // namespace widgets
