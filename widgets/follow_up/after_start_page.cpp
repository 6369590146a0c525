#include "widgets/follow_up/after_start_page.h"

#include "widgets/follow_up/incident_page.h"
#include "widgets/follow_up/log_page.h"
#include "widgets/follow_up/review_page.h"
#include "widgets/follow_up/today_page.h"

namespace widgets {

AfterStartPage::AfterStartPage(Document& document, QWidget* parent)
    : QStackedWidget(parent),
      m_today(new TodayPage(document, this)),
      m_log(new LogPage(document, this)),
      m_incident(new IncidentPage(document, this)),
      m_review(new ReviewPage(document, this)) {
    for (QWidget* page : {static_cast<QWidget*>(m_today), static_cast<QWidget*>(m_log),
                          static_cast<QWidget*>(m_incident), static_cast<QWidget*>(m_review)}) {
        addWidget(page);
    }
}

QString AfterStartPage::name(Page page) {
    switch (page) {
        case Today:
            return tr("Today");
        case Log:
            return tr("Log");
        case Incident:
            return tr("Incident");
        case Review:
            break;
    }
    return tr("Sixty days");
}

void AfterStartPage::setPage(Page page) {
    setCurrentIndex(page);
}

const ChartView* AfterStartPage::chart() const {
    const LineChartView* chart = currentIndex() == Incident ? &m_incident->chart()
                                 : currentIndex() == Review ? &m_review->chart()
                                                            : nullptr;
    return chart != nullptr && chart->chart() ? chart : nullptr;
}

}  // namespace widgets
