#include "widgets/follow_up/incident_page.h"

#include "engine/base/text.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/weather.h"
#include "engine/wording/sentence_incident.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/document/document.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"
#include "widgets/follow_up/dawn_form.h"
#include "widgets/follow_up/log_entry.h"

#include <QBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QPagedPaintDevice>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QTextBrowser>
#include <QTextDocument>

#include <cmath>

namespace widgets {
namespace {

using engine::IncidentOption;
using engine::SentenceKey;
using engine::SentencePart;

constexpr double kShown_h = 36.0;
constexpr double kLargeSentence = 1.45;  // of the window's type

QString optionText(IncidentOption option) {
    switch (option) {
        case IncidentOption::AirOff:
            return IncidentPage::tr("Bottom air off");
        case IncidentOption::AirOn:
            return IncidentPage::tr("Bottom air on");
        case IncidentOption::SurfaceAir:
            return IncidentPage::tr("Off, surface air on");
        case IncidentOption::AirAndSurfaceAir:
            return IncidentPage::tr("Both on");
    }
    return {};
}

/// What is done first is read first: a table that is taken in at a glance.
QString optionsTable(const engine::Incident& incident) {
    QString rows =
        QStringLiteral("<tr><th align='left'>%1</th><th align='right'>%2</th><th align='right'>%3</th></tr>")
            .arg(IncidentPage::tr("What is done"), IncidentPage::tr("Lowest in 24 h, mg/L"),
                 IncidentPage::tr("Above %1 mg/L to stay").arg(oxygenText(incident.line)));
    for (const engine::OptionOutcome& option : incident.options) {
        const QString again = !option.recovery_h ? IncidentPage::tr("not within 48 h")
                              : *option.recovery_h < 0.5
                                  ? IncidentPage::tr("at once")
                                  : IncidentPage::tr("after %1 h").arg(std::lround(*option.recovery_h));
        rows += QStringLiteral("<tr><td>%1</td><td align='right'>%2</td><td align='right'>%3</td></tr>")
                    .arg(optionText(option.option).toHtmlEscaped(), oxygenText(option.lowest),
                         again.toHtmlEscaped());
    }
    return QStringLiteral("<table cellspacing='0' cellpadding='4'>%1</table>").arg(rows);
}

QString reasonsHtml(const engine::Incident& incident) {
    std::vector<engine::Sentence> sentences = engine::sentencesOf(incident);
    std::erase_if(sentences, [](const engine::Sentence& one) {  // said by the table
        return one.key == SentenceKey::IncidentOption || one.key == SentenceKey::IncidentOptionNever;
    });
    return optionsTable(incident) +
           htmlOf(
               sentences,
               {{SentencePart::Incident, {}},
                {SentencePart::IncidentSteps, IncidentPage::tr("What to do, and what to write down"), true},
                {SentencePart::IncidentSigns, IncidentPage::tr("Low oxygen, or an algal toxin"), true},
                {SentencePart::Caution, IncidentPage::tr("Cautions")}},
               SentenceKey::IncidentAdvice);
}

}  // namespace

LineChart incidentChart(const engine::Incident& incident) {
    LineChart chart;
    chart.name = QStringLiteral("incident");
    const auto sentences = engine::sentencesOf(incident);
    chart.headline = localizedFirst(sentences, SentenceKey::IncidentAdvice);
    chart.detail = localizedFirst(sentences, SentenceKey::IncidentPresent);
    chart.foot = localized(sentences, SentencePart::Caution);
    chart.words = localized(sentences, SentencePart::Incident);
    chart.unit = IncidentPage::tr("oxygen in the fish water from now on, mg/L; clock time below");
    chart.to = kShown_h;
    chart.stress = incident.line;
    chart.lethal = incident.model.parameters.thresholds.lethal;
    const double now = engine::secondsOf(incident.pond, incident.at) / 3600.0;
    for (double clock = std::ceil(now / 6.0) * 6.0; clock - now <= kShown_h; clock += 6.0) {
        chart.labels.emplace_back(clock - now, clockText(clock * 3600.0));
    }
    std::size_t look = 0;
    chart.csv = "hour,option,fish_water_mg_per_l\r\n";
    for (const engine::OptionOutcome& option : incident.options) {
        LineChart::Line line;
        line.name = optionText(option.option);
        line.look = look++;
        for (std::size_t i = 0; i < option.hours.size(); ++i) {
            if (option.hours[i] <= kShown_h + 1.0) {
                line.x.push_back(option.hours[i]);
                line.y.push_back(option.fishWater[i]);
            }
            chart.csv += engine::shortest(option.hours[i]) + "," + line.name.toStdString() + "," +
                         engine::shortest(option.fishWater[i]) + "\r\n";
        }
        chart.lines.push_back(std::move(line));
    }
    return chart;
}

IncidentPage::IncidentPage(Document& document, QWidget* parent, engine::TodayOptions options)
    : AnswerPage(document, kLargeSentence, parent),
      m_options(options),
      m_form(new DawnForm(DawnForm::Extent::Short, this)),
      m_chart(new LineChartView(tr("What each choice comes to"), m_selection, this)) {
    auto* what = new QLabel(tr("Fish in distress: read oxygen and temperature at three depths, now."), this);
    what->setWordWrap(true);
    left().addWidget(what);
    left().addWidget(m_form);
    setFocusProxy(m_form);
    QPushButton* enter = addAsking(
        tr("Enter in the &Log and Judge"),
        tr("Puts the readings into the log, where they stay, and compares what can be done (Ctrl+Enter)."));
    enter->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_Return));
    connect(enter, &QPushButton::clicked, this, [this] { judge(true); });
    QPushButton* only = addAsking(tr("Judge &without Entering"), tr("As an exercise, before there is need."));
    connect(only, &QPushButton::clicked, this, [this] { judge(false); });
    m_print = addButton(tr("&Print\u2026"), tr("The answer with its lists, to take to the pond."));
    connect(m_print, &QPushButton::clicked, this, &IncidentPage::askAndPrint);
    m_print->setEnabled(false);
    left().addStretch(1);
    m_chart->setMinimumSize(300, 170);
    m_chart->hide();
    // Beside the lists, so that both are seen at once.
    right().removeWidget(&browser());
    auto* beside = new QHBoxLayout;
    beside->addWidget(&browser(), 5);
    auto* drawn = new QVBoxLayout;  // no taller than a night is read best
    drawn->addWidget(m_chart, 7);
    drawn->addStretch(3);
    beside->addLayout(drawn, 4);
    right().insertLayout(2, beside, 1);
    introduce(
        tr("Until there are readings: no feed, no handling, no chemicals; surface air on if there is any, "
           "drawing from the surface and never from the bottom."));
    documentChanged();
}

void IncidentPage::documentChanged() {
    AnswerPage::documentChanged();
    if (!document().isEmpty()) {
        m_form->setPond(document().pond());
        proposeTime();
    }
}

/// The readings are taken now.
void IncidentPage::proposeTime() {
    if (!document().isEmpty()) {
        m_form->propose(nextVisit(document().pond(), clockOf(document().pond())));
    }
}

void IncidentPage::startAnew() {
    AnswerPage::startAnew();
    m_form->startAnew();
    forgetAnswer();
}

void IncidentPage::forgetAnswer() {
    m_incident = nullptr;
    m_chart->setChart(std::nullopt);
    m_chart->hide();
    m_print->setEnabled(false);
}

void IncidentPage::judge(bool isEntered) {
    std::optional<Question> question = ask(*m_form, m_options, isEntered);
    if (!question) {
        return;
    }
    forgetAnswer();
    work(
        tr("Running on from these readings"),
        [pond = std::move(question->pond), options = question->options](const std::stop_token& stop,
                                                                        const Job::Progress& progress) {
            return std::make_shared<const engine::Incident>(
                engine::judgeIncident(pond, options, {stop, progress}));
        },
        [this, said = question->said](const std::shared_ptr<const engine::Incident>& incident) {
            show(incident);
            if (!said.isEmpty()) {
                say(said);
            }
        });
}

void IncidentPage::show(const std::shared_ptr<const engine::Incident>& incident) {
    if (!incident->isJudged) {
        say(toQString(incident->message));
        return;
    }
    m_incident = incident;
    m_print->setEnabled(true);
    showAnswer(localizedFirst(engine::sentencesOf(*incident), SentenceKey::IncidentAdvice),
               reasonsHtml(*incident));
    m_chart->show();
    m_chart->setChart(incidentChart(*incident));
    say({});
}

void IncidentPage::printTo(QPagedPaintDevice& paper) const {
    QTextDocument text;
    text.setDefaultStyleSheet(browser().document()->defaultStyleSheet());
    text.setDefaultFont(QFont(font().family(), 10));
    text.addResource(QTextDocument::ImageResource, QUrl(QStringLiteral("chart")), imageOf(m_chart->sheet()));
    text.setHtml(QStringLiteral("<h2>%1</h2>").arg(verdict().toHtmlEscaped()) + reasonsHtml(*m_incident) +
                 QStringLiteral("<p><img src='chart' width='480'></p>"));
    text.print(&paper);
}

void IncidentPage::askAndPrint() {
    QPrinter printer(QPrinter::HighResolution);
    printer.setDocName(tr("Incident"));
    QPrintDialog dialog(&printer, this);
    if (dialog.exec() == QDialog::Accepted) {
        printTo(printer);
    }
}

}  // namespace widgets
