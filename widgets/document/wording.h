#pragma once

#include "engine/wording/sentence.h"

#include <QString>

#include <vector>

namespace widgets {

/// A sentence of the engine for the window; the engine's English is the text to be translated (context
/// "Sentence"; terms "Term"). Numbers with the locale's decimal sign.
[[nodiscard]] QString localized(const engine::Sentence& sentence);

/// All sentences of one part, one after the other.
[[nodiscard]] QString localized(const std::vector<engine::Sentence>& sentences, engine::SentencePart part);

/// The same of some keys.
[[nodiscard]] QString localized(const std::vector<engine::Sentence>& sentences,
                                const std::vector<engine::SentenceKey>& keys);

/// Oxygen with one decimal, in the user's locale [mg/L].
[[nodiscard]] QString oxygenText(double oxygen);
/// Clock time of a moment of the run.
[[nodiscard]] QString clockText(double time);
/// Do-nothing or the ramp's own name.
[[nodiscard]] QString rampText(const std::string& name, std::size_t index);

}  // namespace widgets
