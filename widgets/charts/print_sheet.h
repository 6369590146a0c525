#pragma once

#include "widgets/charts/chart_export.h"

class QPrinter;
class QWidget;

namespace widgets {

/// Puts a chart with its sentences on one page, as large as it goes.
void printTo(const ChartSheet& sheet, QPrinter& printer);

/// Asks for a printer and prints.
void askAndPrint(const ChartSheet& sheet, QWidget* parent);

}  // namespace widgets
