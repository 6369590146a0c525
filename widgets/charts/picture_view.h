#pragma once

#include "widgets/charts/chart_view.h"
#include "widgets/charts/picture.h"

namespace widgets {

/// A view of `viewKinds()` on the screen.
class PictureView final : public ChartView {
    Q_OBJECT
public:
    PictureView(const ViewKind& kind, Selection& selection, QWidget* parent = nullptr);

    [[nodiscard]] QString headline() const override { return m_picture.headline; }
    [[nodiscard]] QString detail() const override { return m_picture.detail; }
    [[nodiscard]] QString readAt(double time) const override;
    [[nodiscard]] ChartSheet sheet() const override;
    [[nodiscard]] const char* id() const { return m_kind.id; }

protected:
    [[nodiscard]] QString refresh() override;
    void draw(QCustomPlot& plot, const PlotStyle& style) override;
    [[nodiscard]] std::optional<double> timeAt(const QPointF& place) const override;
    [[nodiscard]] std::optional<Selection::Span> shownSpan() const override;
    [[nodiscard]] QString readOut(const QPointF& place) const override;
    void clicked(const QPointF& place) override;

private:
    ViewKind m_kind;
    Picture m_picture;
};

}  // namespace widgets
