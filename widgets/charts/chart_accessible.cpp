#include "widgets/charts/chart_accessible.h"

#include "widgets/charts/chart_view.h"

#include <QAccessible>
#include <QAccessibleWidget>

namespace widgets {
namespace {

QAccessibleInterface* chartInterface(const QString& /*className*/, QObject* object) {
    auto* chart = qobject_cast<ChartView*>(object);
    return chart == nullptr ? nullptr : new QAccessibleWidget(chart, QAccessible::Chart);
}

}  // namespace

void installChartAccessibility() {
    static const bool isInstalled = [] {
        QAccessible::installFactory(&chartInterface);
        return true;
    }();
    static_cast<void>(isInstalled);
}

}  // namespace widgets
