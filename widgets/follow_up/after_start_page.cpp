#include "widgets/follow_up/after_start_page.h"

#include "widgets/follow_up/incident_page.h"
#include "widgets/follow_up/log_page.h"
#include "widgets/follow_up/review_page.h"
#include "widgets/follow_up/today_page.h"

#include <QBoxLayout>
#include <QStackedWidget>
#include <QTabBar>

namespace widgets {

AfterStartPage::AfterStartPage(Document& document, QWidget* parent)
    : QWidget(parent),
      m_tabs(new QTabBar(this)),
      m_stack(new QStackedWidget(this)),
      m_today(new TodayPage(document, m_stack)),
      m_log(new LogPage(document, m_stack)),
      m_incident(new IncidentPage(document, m_stack)),
      m_review(new ReviewPage(document, m_stack)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    m_tabs->setAccessibleName(tr("After the start"));
    m_tabs->setDrawBase(false);
    m_tabs->setExpanding(false);
    const auto add = [this](const QString& name, QWidget* page) {
        m_tabs->addTab(name);
        m_stack->addWidget(page);
    };
    add(tr("Today"), m_today);
    add(tr("Log"), m_log);
    add(tr("Incident"), m_incident);
    add(tr("Sixty days"), m_review);
    column->addWidget(m_tabs);
    column->addWidget(m_stack, 1);
    connect(m_tabs, &QTabBar::currentChanged, m_stack, &QStackedWidget::setCurrentIndex);
}

void AfterStartPage::setPage(Page page) {
    m_tabs->setCurrentIndex(page);
    m_stack->currentWidget()->setFocus();
}

const ChartView* AfterStartPage::chart() const {
    const LineChartView* chart = m_tabs->currentIndex() == Incident ? &m_incident->chart()
                                 : m_tabs->currentIndex() == Review ? &m_review->chart()
                                                                    : nullptr;
    return chart != nullptr && chart->chart() ? chart : nullptr;
}

}  // namespace widgets
