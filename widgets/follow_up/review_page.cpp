#include "widgets/follow_up/review_page.h"

#include "engine/follow_up/readings_beside.h"
#include "engine/follow_up/today.h"
#include "engine/output/review_io.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/weather.h"
#include "engine/wording/sentence_review.h"
#include "widgets/controls/line_entry.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/document/document.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QBoxLayout>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTextBrowser>

#include <algorithm>

namespace widgets {
namespace {

using engine::SentenceKey;
using engine::SentencePart;

constexpr std::size_t kMostLabels = 9;
constexpr double kLargeSentence = 1.45;  // of the window's type

void addBand(LineChart::Line& line, int day, const engine::Band& band) {
    line.x.push_back(day);
    line.y.push_back(band.p50);
    line.low.push_back(band.p05);
    line.high.push_back(band.p95);
}

}  // namespace

LineChart reviewChart(const engine::Review& review, ReviewedWater water) {
    const bool isDawn = water == ReviewedWater::DawnAbove;
    LineChart chart;
    chart.name = isDawn ? QStringLiteral("sixty-days-dawn") : QStringLiteral("sixty-days-bottom");
    const auto sentences = engine::sentencesOf(review);
    chart.headline = localizedFirst(sentences, SentenceKey::ReviewVerdict);
    chart.detail = localizedFirst(sentences, SentenceKey::ReviewTitle);
    chart.foot = localized(sentences, SentencePart::Caution);
    chart.words = localized(sentences, SentencePart::Review);
    chart.unit = isDawn ? ReviewPage::tr("oxygen at dawn in the upper water, mg/L; circles are readings")
                        : ReviewPage::tr("oxygen at dawn at the bottom, mg/L; circles are readings");
    LineChart::Line with{ReviewPage::tr("with the aerator"), {}, {}, {}, {}, 1, true};
    LineChart::Line without{ReviewPage::tr("without it"), {}, {}, {}, {}, 0, false};
    for (const engine::ReviewRow& row : review.rows) {
        addBand(with, row.day, isDawn ? row.dawnWith : row.bottomWith);
        addBand(without, row.day, isDawn ? row.dawnWithout : row.bottomWithout);
        if (const auto& reading = isDawn ? row.dawn : row.bottom) {
            chart.dots.push_back({static_cast<double>(row.day), *reading, engine::kOxygenMeterError});
        }
    }
    if (!review.rows.empty()) {
        chart.from = review.rows.front().day;
        chart.to = std::max(review.rows.back().day, review.rows.front().day + 1);
        const std::size_t step =
            std::max<std::size_t>(1, (review.rows.size() + kMostLabels - 1) / kMostLabels);
        for (std::size_t i = 0; i < review.rows.size(); i += step) {
            chart.labels.emplace_back(
                review.rows[i].day,
                toQString(engine::formatDate(engine::dateOfDay(review.fit.known, review.rows[i].day)))
                    .mid(5));
        }
    }
    if (review.startDay >= chart.from && review.startDay <= chart.to) {
        chart.marks.push_back({static_cast<double>(review.startDay), ReviewPage::tr("start")});
    }
    for (const engine::ReviewTreatment& one : review.treatments) {
        if (one.day >= chart.from && one.day <= chart.to) {
            chart.marks.push_back({static_cast<double>(one.day),
                                   toQString(one.event.what.empty() ? one.event.kind : one.event.what)});
        }
    }
    if (isDawn) {
        chart.stress = review.fit.model.parameters.thresholds.stress;
        chart.lethal = review.fit.model.parameters.thresholds.lethal;
    }
    chart.lines = {std::move(without), std::move(with)};
    chart.csv = engine::reviewCsv(review);
    return chart;
}

engine::FitOptions ReviewPage::usual() {
    engine::FitOptions options;
    options.members = engine::TodayOptions{}.members;
    return options;
}

ReviewPage::ReviewPage(Document& document, QWidget* parent, engine::FitOptions options)
    : AnswerPage(document, kLargeSentence, parent),
      m_options(options),
      m_until(new LineEntry(LineEntry::Kind::Text, this)),
      m_water(new QComboBox(this)),
      m_chart(new LineChartView(tr("With the aerator and without it"), m_selection, this)) {
    auto* what =
        new QLabel(tr("What has changed since the aerator was started, beside what the pond would have "
                      "done without it under the weather that came."),
                   this);
    what->setWordWrap(true);
    left().addWidget(what);
    auto* until = new QLabel(tr("&Up to (empty: the last entry)"), this);
    until->setBuddy(m_until);
    m_until->setAccessibleName(tr("Up to"));
    m_until->setToolTip(tr("Date and time, as 2026-08-14 06:00. Nothing later is used."));
    m_until->setAccessibleDescription(m_until->toolTip());
    left().addWidget(until);
    left().addWidget(m_until);
    QPushButton* look =
        addAsking(tr("&Look Back"),
                  tr("Fits the pond to its readings and runs it with the aerator and without (Ctrl+Enter)."));
    look->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_Return));
    connect(look, &QPushButton::clicked, this, &ReviewPage::look);
    setFocusProxy(look);
    QPushButton* note =
        addAsking(tr("&Note the Start"),
                  tr("Holds the lows that were computed before the start against the dawns that "
                     "were read, and writes how far off they were into your list of starts, which "
                     "proposals quote."));
    connect(note, &QPushButton::clicked, this, &ReviewPage::note);
    auto* shownLabel = new QLabel(tr("&Shown"), this);
    shownLabel->setBuddy(m_water);
    m_water->addItems({tr("the upper water at dawn"), tr("the bottom at dawn")});
    m_water->setAccessibleName(tr("Shown"));
    connect(m_water, &QComboBox::currentIndexChanged, this, &ReviewPage::showChart);
    left().addWidget(shownLabel);
    left().addWidget(m_water);
    left().addStretch(1);
    m_chart->setMinimumHeight(200);
    m_chart->hide();
    right().insertWidget(2, m_chart, 3);
    right().setStretchFactor(&browser(), 2);
    introduce(
        tr("Needs the start as an event of the log, dawn readings before and after it, and the weather that "
           "came. Some minutes of work for sixty days."));
}

void ReviewPage::look() {
    if (document().isEmpty() || isRunning() || !m_until->entry().commit()) {
        return;
    }
    engine::FitOptions options = m_options;
    if (!m_until->value().empty()) {
        options.until = engine::parseLocalTime(m_until->value());
        if (!options.until) {
            say(tr("\u201c%1\u201d is not a date and time; write 2026-08-14 06:00.")
                    .arg(toQString(m_until->value())));
            return;
        }
    }
    forgetAnswer();
    work(
        tr("Running the pond with the aerator and without it"),
        [pond = document().pond(), options](const std::stop_token& stop, const Job::Progress& progress) {
            return std::make_shared<const engine::Review>(
                engine::reviewPond(pond, options, {stop, progress}));
        },
        [this](const std::shared_ptr<const engine::Review>& review) { show(review); });
}

void ReviewPage::note() {
    if (document().isEmpty() || isRunning() || m_ledger.empty()) {
        return;
    }
    forgetAnswer();
    work(
        tr("Running the pond as it was known before the start"),
        [pond = document().pond(), file = m_ledger](const std::stop_token& stop,
                                                    const Job::Progress& progress) {
            Noted out{engine::checkStart(pond, {stop, progress}), {}};
            if (out.check.isChecked() && !stop.stop_requested()) {
                out.noted = engine::noteStart(file, out.check);
            }
            return out;
        },
        [this](const Noted& noted) { showNoted(noted); });
}

void ReviewPage::showNoted(const Noted& noted) {
    const engine::NotedStart& start = noted.noted;
    if (!noted.check.isChecked() || !start.ledger || start.notSaved) {
        say(toQString(!noted.check.isChecked() ? noted.check.message
                      : start.notSaved         ? *start.notSaved
                                               : engine::format(start.diagnostics.front())));
        return;
    }
    const auto sentences = engine::sentencesOf(noted.check, static_cast<int>(start.ledger->starts.size()),
                                               start.ledger->meanDistance());
    showAnswer(localizedFirst(sentences, SentenceKey::StartChecked),
               htmlOf(sentences, {{SentencePart::Review, {}}}, SentenceKey::StartChecked));
    say(tr("Noted in %1.").arg(toQString(m_ledger.string())));
}

void ReviewPage::startAnew() {
    AnswerPage::startAnew();
    m_until->entry().reset();
    m_until->setValue({});
    forgetAnswer();
}

void ReviewPage::forgetAnswer() {
    m_review = nullptr;
    m_chart->setChart(std::nullopt);
    m_chart->hide();
}

void ReviewPage::show(const std::shared_ptr<const engine::Review>& review) {
    if (!review->isDone) {
        say(toQString(review->message));
        return;
    }
    m_review = review;
    const auto sentences = engine::sentencesOf(*review);
    showAnswer(localizedFirst(sentences, SentenceKey::ReviewVerdict),
               htmlOf(sentences,
                      {{SentencePart::Review, {}},
                       {SentencePart::Treatments, tr("What was put in, and what it may cost"), true},
                       {SentencePart::Assumption, tr("What it rests on")},
                       {SentencePart::Caution, tr("Cautions")}},
                      SentenceKey::ReviewVerdict));
    m_chart->show();
    showChart();
    say({});
}

void ReviewPage::showChart() {
    if (m_review != nullptr) {
        m_chart->setChart(reviewChart(*m_review, static_cast<ReviewedWater>(m_water->currentIndex())));
    }
}

}  // namespace widgets
