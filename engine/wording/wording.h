#pragma once

#include "engine/wording/sentence.h"

#include <functional>
#include <string>
#include <string_view>

namespace engine {

/// The English of a sentence with {names} for its values, which a translation may put in another order.
[[nodiscard]] std::string_view englishTemplate(SentenceKey key);

/// The English of a term, such as "sport fish" for "sport"; the term itself if it has none.
[[nodiscard]] std::string_view englishTerm(std::string_view term);

/// The English heading of a part.
[[nodiscard]] std::string_view englishHeading(SentencePart part);

/// A value as it is shown, without its unit, which stands in the template. Oxygen, depths and hours have
/// one decimal, minutes and percent none; "under 1" and "under 0.1" stand for what would round to nothing.
[[nodiscard]] std::string shownValue(const SentenceValue& value);

/// A template with its values filled in. @throws InternalError if a value is missing.
/// @param shown  Words one value; a translation hands in its own.
/// @param units  US: depths and temperatures stand in feet and degF, with the template's m and degC in
/// brackets
///               behind, since one that is taken for the other hurts.
[[nodiscard]] std::string filled(std::string_view pattern, const std::vector<SentenceValue>& values,
                                 const std::function<std::string(const SentenceValue&)>& shown,
                                 UnitSystem units = UnitSystem::Metric);

[[nodiscard]] std::string english(const Sentence& sentence);

/// All sentences as lines under their headings, for a terminal.
[[nodiscard]] std::string englishText(const std::vector<Sentence>& sentences);

}  // namespace engine
