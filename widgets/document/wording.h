// Sentences come from the engine as keys with numbers. localized() hands the engine's own English to
// translate() (contexts "Sentence" and "Term"), so that the window and the command line say the same. A depth
// or temperature whose template has " m" or " degC" behind it is said in US units first where the pond, the
// papers or the locale ask for them.
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

/// The same text with each "mg/L" kept on the line of its number.
[[nodiscard]] QString unbroken(QString text);

/// Oxygen with one decimal, in the user's locale [mg/L].
[[nodiscard]] QString oxygenText(double oxygen);
/// Clock time of a moment of the run.
[[nodiscard]] QString clockText(double time);
/// Do-nothing or the ramp's own name.
[[nodiscard]] QString rampText(const std::string& name, std::size_t index);

}  // namespace widgets
