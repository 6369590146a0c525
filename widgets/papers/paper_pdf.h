#pragma once

#include "widgets/papers/paper.h"

#include <string>

class QPagedPaintDevice;

namespace widgets {

/// Dots an inch of every device that papers are painted on.
inline constexpr int kPaperDots = 96;

/// A paper as PDF: text that can be searched, title, language and outline; the same bytes for the same paper.
[[nodiscard]] std::string pdfOf(const Paper& paper, const PaperImprint& imprint, const PaperFormat& format);

/// Paints papers one after the other on a device whose resolution is kPaperDots.
void printPapers(const std::vector<Paper>& papers, const PaperImprint& imprint, const PaperFormat& format,
                 QPagedPaintDevice& device);

}  // namespace widgets
