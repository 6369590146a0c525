#include "widgets/charts/profile_sketch.h"

#include "widgets/controls/plot_style.h"
#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/wording.h"

#include <QLocale>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace widgets {

ProfileSketch::ProfileSketch(Document& document, QWidget* parent) : QWidget(parent), m_document(document) {
    setAccessibleName(tr("Sketch of the profile"));
    connect(&m_document, &Document::changed, this, [this] {
        describe();
        update();
    });
    describe();
}

void ProfileSketch::describe() {
    const auto& profile = m_document.pond().profile;
    setAccessibleDescription(profile && !profile->depth.empty()
                                 ? tr("Oxygen from %1 mg/L at the surface to %2 mg/L at the bottom, "
                                      "temperature from %3 to %4 \u00b0C.")
                                       .arg(oxygenText(profile->oxygen.front()),
                                            oxygenText(profile->oxygen.back()),
                                            QLocale().toString(profile->temperature.front(), 'f', 1),
                                            QLocale().toString(profile->temperature.back(), 'f', 1))
                                 : tr("There is no profile yet."));
}

void ProfileSketch::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const PlotStyle style = PlotStyle::of(palette(), font());
    painter.fillRect(rect(), style.paper);
    const QFontMetricsF metrics(font());
    const double head = 2.0 * metrics.height() + 8;
    const QRectF area(48, head, width() - 60.0, height() - head - 8.0);
    painter.setPen(style.quietInk);
    const auto& profile = m_document.pond().profile;
    if (!profile || profile->depth.empty() || area.width() < 20 || area.height() < 20) {
        painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap,
                         tr("There is no profile yet. Type it, or paste it."));
        return;
    }
    const double deep = std::max(profile->depth.back(), 0.1);
    const auto line = [&](const std::vector<double>& values, double low, double high, const QPen& pen) {
        QPolygonF points;
        for (std::size_t i = 0; i < values.size() && i < profile->depth.size(); ++i) {
            points << QPointF(area.left() + area.width() * (values[i] - low) / std::max(high - low, 1e-9),
                              area.top() + area.height() * profile->depth[i] / deep);
        }
        painter.setPen(pen);
        painter.drawPolyline(points);
        painter.setBrush(style.paper);
        for (const QPointF& point : points) {
            painter.drawEllipse(point, 3.0, 3.0);
        }
        painter.setBrush(Qt::NoBrush);
    };
    painter.setPen(QPen(style.hairline, 0));
    painter.drawRect(area);
    const ShownUnit metre = shownUnitOf("m", unitsOf(m_document.pond()));
    for (int i = 0; i <= 4; ++i) {
        const double depth = deep * i / 4.0, y = area.top() + area.height() * i / 4.0;
        painter.setPen(QPen(style.hairline, 0));
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y));
        painter.setPen(style.ink);
        painter.drawText(QRectF(0, y - metrics.height() / 2, area.left() - 6, metrics.height()),
                         Qt::AlignRight | Qt::AlignVCenter, QLocale().toString(metre.toShown(depth), 'f', 1));
    }
    const double most =
        std::max(6.0, std::ceil(*std::max_element(profile->oxygen.begin(), profile->oxygen.end())));
    const auto [cold, warm] = std::minmax_element(profile->temperature.begin(), profile->temperature.end());
    const double low = std::floor(*cold) - 1.0, high = std::ceil(*warm) + 1.0;
    const QPen oxygen = style.linePen(1, true), heat = style.linePen(2, false);
    line(profile->temperature, low, high, heat);
    line(profile->oxygen, 0.0, most, oxygen);
    const ShownUnit degree = shownUnitOf("degC", unitsOf(m_document.pond()));
    painter.setPen(style.textColour(1));
    painter.drawText(QPointF(area.left(), metrics.ascent() + 2),
                     tr("oxygen, 0 to %1 mg/L").arg(std::lround(most)));
    painter.setPen(style.textColour(2));
    painter.drawText(QPointF(area.left(), metrics.ascent() + metrics.height() + 2),
                     tr("temperature, %1 to %2 %3")
                         .arg(std::lround(degree.toShown(low)))
                         .arg(std::lround(degree.toShown(high)))
                         .arg(shownUnit(degree.text)));
}

}  // namespace widgets
