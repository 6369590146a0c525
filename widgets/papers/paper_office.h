#pragma once

#include "widgets/papers/paper.h"

#include <string>

namespace widgets {

/// A paper as an OpenDocument text, to be edited in an office: the words, tables and figures of the paper
/// with the imprint at its end, on pages of the same size and margins; the same run gives the same bytes.
/// Where they break is the word processor's, so that what holds a signature with its text on the PDF is not
/// kept here.
[[nodiscard]] std::string odtOf(const Paper& paper, const PaperImprint& imprint, const PaperFormat& format);

}  // namespace widgets
