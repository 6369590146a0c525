#include "widgets/controls/plain_table.h"

#include <QHeaderView>
#include <QTableWidget>

namespace widgets {

QTableWidget* plainTable(const QStringList& heads, const QString& name, QWidget* parent) {
    auto* table = new QTableWidget(0, static_cast<int>(heads.size()), parent);
    table->setHorizontalHeaderLabels(heads);
    table->setAccessibleName(name);
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setTabKeyNavigation(false);
    table->verticalHeader()->hide();
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    return table;
}

}  // namespace widgets
