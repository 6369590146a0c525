#pragma once

#include "engine/wording/sentence.h"

#include <QString>

#include <vector>

class QLabel;
class QTextBrowser;
class QWidget;

namespace widgets {

/// A part of what the engine says, under its title.
struct SheetSection {
    engine::SentencePart part;
    QString title;
    bool isList = false;  ///< One line a sentence
    std::vector<engine::SentenceKey> keys =
        {};  ///< Only these of the part; empty: what no section before took
    /// Of which there is one a day, a schedule or a ramp: a line each, between what else the part says.
    std::vector<engine::SentenceKey> rows = {};
};

/// The sentences as rich text in the order of the sections.
/// @param without  A sentence that is said elsewhere.
[[nodiscard]] QString htmlOf(const std::vector<engine::Sentence>& sentences,
                             const std::vector<SheetSection>& sections,
                             engine::SentenceKey without = engine::SentenceKey::Count);

/// A label for whole sentences as they are, which can be copied.
[[nodiscard]] QLabel* sentenceLabel(const QString& name, QWidget* parent);

/// A place for that text, reached and left by Tab.
[[nodiscard]] QTextBrowser* sentenceBrowser(const QString& name, QWidget* parent);

/// The first sentence of a key, localized; empty if there is none.
[[nodiscard]] QString localizedFirst(const std::vector<engine::Sentence>& sentences, engine::SentenceKey key);

}  // namespace widgets
