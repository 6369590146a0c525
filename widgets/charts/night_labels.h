#pragma once

class QCPAxisRect;
class QCPPainter;

namespace widgets {

struct NightScene;
struct PlotStyle;

/// Paints what stands over the curves of a night: names at their ends, lows in words, readings, sunset and
/// sunrise, and the names of bands and levels, each where it hides the least.
void paintNightLabels(QCPPainter& painter, const QCPAxisRect& rect, const NightScene& scene,
                      const PlotStyle& style);

/// Room that the names at the ends of the lines take [px].
[[nodiscard]] double nightNameWidth(const NightScene& scene, const PlotStyle& style);

}  // namespace widgets
