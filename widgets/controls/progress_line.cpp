#include "widgets/controls/progress_line.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>

#include <cmath>

namespace widgets {
namespace {

constexpr int kAfter_ms = 300;
constexpr int kWhole = 1000;

}  // namespace

ProgressLine::ProgressLine(QWidget* parent)
    : QWidget(parent), m_what(new QLabel(this)), m_bar(new QProgressBar(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(14, 2, 10, 2);
    m_bar->setRange(0, kWhole);
    m_bar->setTextVisible(false);
    m_bar->setFixedHeight(8);
    m_bar->setMaximumWidth(260);
    m_bar->setAccessibleName(tr("How far it is"));
    auto* stop = new QPushButton(tr("Stop"), this);
    stop->setAccessibleDescription(tr("Stops what is being computed; what is there stays."));
    stop->setAutoDefault(false);
    m_what->setTextFormat(Qt::PlainText);
    row->addWidget(m_what);
    row->addWidget(m_bar, 1);
    row->addWidget(stop);
    row->addStretch(1);
    m_delay.setSingleShot(true);
    m_delay.setInterval(kAfter_ms);
    connect(&m_delay, &QTimer::timeout, this, &QWidget::show);
    connect(stop, &QPushButton::clicked, this, [this] {
        finish();
        emit stopped();
    });
    // Its place stays, so that what stands above does not jump when it comes and goes.
    QSizePolicy policy = sizePolicy();
    policy.setRetainSizeWhenHidden(true);
    setSizePolicy(policy);
    hide();
}

void ProgressLine::start(const QString& what) {
    m_what->setText(what);
    m_bar->setValue(0);
    if (!isVisible() && !m_delay.isActive()) {
        m_delay.start();
    }
}

void ProgressLine::set(double fraction) {
    m_bar->setValue(static_cast<int>(std::lround(kWhole * fraction)));
}

void ProgressLine::finish() {
    m_delay.stop();
    hide();
}

}  // namespace widgets
