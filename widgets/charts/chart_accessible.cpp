#include "widgets/charts/chart_accessible.h"

#include "widgets/charts/chart_table.h"
#include "widgets/charts/chart_view.h"

#include <QAccessible>
#include <QAccessibleWidget>

namespace widgets {
namespace {

/// A chart whose last child is the table of its numbers.
class ChartAccessible final : public QAccessibleWidget {
public:
    explicit ChartAccessible(ChartView& chart)
        : QAccessibleWidget(&chart, QAccessible::Chart),
          m_table(QAccessible::registerAccessibleInterface(new ChartTable(chart))) {}

    [[nodiscard]] int childCount() const override { return QAccessibleWidget::childCount() + 1; }
    [[nodiscard]] QAccessibleInterface* child(int index) const override {
        return index == childCount() - 1 ? QAccessible::accessibleInterface(m_table)
                                         : QAccessibleWidget::child(index);
    }
    [[nodiscard]] int indexOfChild(const QAccessibleInterface* child) const override {
        return child == QAccessible::accessibleInterface(m_table) ? childCount() - 1
                                                                  : QAccessibleWidget::indexOfChild(child);
    }

protected:
    ~ChartAccessible() override { QAccessible::deleteAccessibleInterface(m_table); }

private:
    QAccessible::Id m_table;
};

QAccessibleInterface* chartInterface(const QString& /*className*/, QObject* object) {
    auto* chart = qobject_cast<ChartView*>(object);
    return chart == nullptr ? nullptr : new ChartAccessible(*chart);
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
