#pragma once

#include <QStringList>

class QTableWidget;
class QWidget;

namespace widgets {

/// A table to look at and not to type in, which Tab leaves again. @param name  For screen readers.
[[nodiscard]] QTableWidget* plainTable(const QStringList& heads, const QString& name, QWidget* parent);

}  // namespace widgets
