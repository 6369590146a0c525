#include "widgets/forms/first_pond_dialog.h"

#include "engine/pond/local_time.h"
#include "engine/pond/pond_check.h"
#include "widgets/controls/line_entry.h"
#include "widgets/controls/number_box.h"
#include "widgets/document/key_rules.h"
#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"

#include <QBoxLayout>
#include <QComboBox>
#include <QDate>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>

namespace widgets {

FirstPondDialog::FirstPondDialog(QWidget* parent) : QDialog(parent), m_fault(new QLabel(this)) {
    setWindowTitle(tr("A first pond"));
    setObjectName(QStringLiteral("firstPond"));
    resize(720, 640);
    auto* column = new QVBoxLayout(this);
    auto* intro = new QLabel(tr("Twelve questions that an owner can answer. What is not known exactly gets a "
                                "wide band; every number can be changed "
                                "afterwards. A unit may be typed behind a number: 2.5 ac, 12 ft, 80 F."),
                             this);
    intro->setWordWrap(true);
    column->addWidget(intro);
    auto* area = new QScrollArea(this);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setFocusPolicy(Qt::NoFocus);
    auto* sheet = new QWidget(area);
    m_grid = new QGridLayout(sheet);
    m_grid->setColumnStretch(1, 1);
    area->setWidget(sheet);
    column->addWidget(area, 1);

    askAboutPlace(*sheet);
    askAboutWater();
    askAboutFish();

    m_fault->setWordWrap(true);
    m_fault->setTextFormat(Qt::PlainText);
    column->addWidget(m_fault);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    buttons->button(QDialogButtonBox::Ok)->setText(tr("Make the Pond"));
    connect(buttons, &QDialogButtonBox::accepted, this, &FirstPondDialog::take);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
}

/// What it is called, where it lies, when the air starts, how large and deep it is.
void FirstPondDialog::askAboutPlace(QWidget& sheet) {
    m_name = new QLineEdit(tr("A new pond"), &sheet);
    m_name->setAccessibleName(tr("Name of the pond"));
    ask(tr("What is the pond called?"), tr("As it stands on every paper."), {m_name});
    m_latitude = number("place.latitude_deg", 40.0, tr("Latitude"));
    m_longitude = number("place.longitude_deg", -90.0, tr("Longitude"));
    m_elevation = number("place.elevation_m", 150.0, tr("Elevation"));
    ask(tr("Where does it lie: latitude, longitude, elevation?"),
        tr("From a map; west and south are negative."), {m_latitude, m_longitude, m_elevation});
    m_firstDay = new LineEntry(LineEntry::Kind::Date, &sheet);
    m_firstDay->setAccessibleName(tr("First day"));
    m_firstDay->setValue(QDate::currentDate().addDays(1).toString(Qt::ISODate).toStdString());
    ask(tr("When shall the air start?"), tr("As 2026-06-14."), {m_firstDay});
    m_area = number("basin.area_m2", 5000.0, tr("Area"));
    ask(tr("How large is it?"), tr("From an aerial picture, good to a tenth."), {m_area});
    m_depth = number("basin.max_depth_m", 3.0, tr("Deepest point"));
    ask(tr("How deep is it at its deepest?"), tr("A weighted line from a boat."), {m_depth});
}

/// Bottom, clearness and plants.
void FirstPondDialog::askAboutWater() {
    m_age = number("bottom.age_years", 20.0, tr("Age"));
    ask(tr("How many years ago was it dug, or last dredged?"), tr("Old ponds owe more oxygen."), {m_age});
    m_muck = choice({tr("firm bottom"), tr("ankle-deep muck"), tr("knee-deep muck"), tr("knee-deep or more")},
                    1, tr("Muck"));
    m_smell = choice({tr("no smell"), tr("a faint smell"), tr("a strong smell")}, 1, tr("Smell of the muck"));
    ask(tr("How is the bottom, and does it smell of rotten eggs?"),
        tr("Push a pole into it at a few places."), {m_muck, m_smell});
    m_colour = choice({tr("clear, one sees the bottom"), tr("tinted, one sees a hand at an arm's length"),
                       tr("green soup")},
                      1, tr("Colour of the water"));
    ask(tr("How clear is the water?"), tr("It stands for the algae, which make and take most of the oxygen."),
        {m_colour});
    m_weeds = choice({tr("none"), tr("along the edge"), tr("about half"), tr("nearly everywhere")}, 0,
                     tr("Water plants"));
    ask(tr("How much of it is under water plants?"), {}, {m_weeds});
}

/// The fish and their feed, and the weather.
void FirstPondDialog::askAboutFish() {
    m_fish = choice(
        {tr("bass and bluegill"), tr("catfish"), tr("carp"), tr("koi"), tr("trout"), tr("perch, pike")}, 0,
        tr("Fish"));
    m_stock = choice({tr("few"), tr("as usual"), tr("many")}, 1, tr("How many fish"));
    ask(tr("Which fish matter, and are there many?"), tr("They decide the stress line."), {m_fish, m_stock});
    m_feed = number("feed.kg_per_d", 0.0, tr("Feed a day"));
    ask(tr("How much feed do they get in a day?"), tr("0 if none."), {m_feed});
    m_cold = number("weather.day.air_min_c", 18.0, tr("Coldest of a day"));
    m_warm = number("weather.day.air_max_c", 28.0, tr("Warmest of a day"));
    m_sky = choice({tr("sunny"), tr("mixed"), tr("dull")}, 1, tr("Sky"));
    m_wind = choice({tr("calm"), tr("light wind"), tr("windy")}, 1, tr("Wind"));
    ask(tr("What weather is forecast for the week?"),
        tr("Coldest and warmest of an ordinary day, sky and wind."), {m_cold, m_warm, m_sky, m_wind});
}

void FirstPondDialog::ask(const QString& question, const QString& help, const QList<QWidget*>& fields) {
    ++m_count;
    const int row = m_grid->rowCount();
    auto* number = new QLabel(QString::number(m_count), this);
    number->setAlignment(Qt::AlignTop | Qt::AlignRight);
    m_grid->addWidget(number, row, 0);
    auto* words = new QLabel(help.isEmpty() ? question : question + u'\n' + help, this);
    words->setWordWrap(true);
    words->setBuddy(fields.front());
    m_grid->addWidget(words, row, 1);
    auto* box = new QHBoxLayout;
    for (QWidget* field : fields) {
        if (field->accessibleDescription().isEmpty()) {
            field->setAccessibleDescription(question + u' ' + help);
        }
        box->addWidget(field, 1);
        if (const QString unit = field->property("unit").toString(); !unit.isEmpty()) {
            box->addWidget(new QLabel(unit, this));
        }
    }
    m_grid->addLayout(box, row, 2);
}

NumberBox* FirstPondDialog::number(const char* key, double value, const QString& name) {
    const engine::NumberRule rule = keyRule(key);
    auto* box = new NumberBox(rule, 1.0, NumberBox::Empty::Refused, this);
    const engine::UnitSystem units = unitsOf({});
    box->setUnits(units);
    box->setValue(value);
    const QString unit = shownUnit(shownUnitOf(rule.unit, units).text);
    box->setAccessibleName(unit.isEmpty() ? name : name + QStringLiteral(", ") + unit);
    box->setToolTip(box->accessibleName());
    box->setProperty("unit", unit == QLatin1String("degrees") ? QStringLiteral("\u00b0") : unit);
    return box;
}

QComboBox* FirstPondDialog::choice(const QStringList& texts, int index, const QString& name) {
    auto* box = new QComboBox(this);
    box->addItems(texts);
    box->setCurrentIndex(index);
    box->setFocusPolicy(Qt::StrongFocus);
    box->setAccessibleName(name);
    return box;
}

FirstAnswers FirstPondDialog::answers() const {
    FirstAnswers answers;
    answers.name = m_name->text().trimmed().toStdString();
    answers.latitude_deg = *m_latitude->value();
    answers.longitude_deg = *m_longitude->value();
    answers.elevation = *m_elevation->value();
    answers.firstDay = engine::parseDate(m_firstDay->value()).value_or(engine::Date{});
    answers.area = *m_area->value();
    answers.maxDepth = *m_depth->value();
    answers.age_years = *m_age->value();
    answers.muck = static_cast<FirstAnswers::Muck>(m_muck->currentIndex());
    answers.smell = static_cast<engine::Smell>(m_smell->currentIndex());
    answers.colour = static_cast<FirstAnswers::Colour>(m_colour->currentIndex());
    answers.weeds = static_cast<FirstAnswers::Weeds>(m_weeds->currentIndex());
    answers.fish = static_cast<engine::SpeciesGroup>(m_fish->currentIndex());
    answers.stock = static_cast<FirstAnswers::Stock>(m_stock->currentIndex());
    answers.feed_kgPerDay = *m_feed->value();
    answers.airMin = *m_cold->value();
    answers.airMax = *m_warm->value();
    answers.sky = static_cast<FirstAnswers::Sky>(m_sky->currentIndex());
    answers.wind = static_cast<FirstAnswers::Wind>(m_wind->currentIndex());
    return answers;
}

void FirstPondDialog::take() {
    for (NumberBox* box : findChildren<NumberBox*>()) {
        if (!box->entry().commit()) {
            box->setFocus();
            m_fault->setText(box->accessibleName() + QStringLiteral(": ") + box->entry().fault());
            return;
        }
    }
    if (!m_firstDay->entry().commit()) {
        m_firstDay->setFocus();
        m_fault->setText(m_firstDay->entry().fault());
        return;
    }
    m_pond = pondFrom(answers());
    QStringList sentences;
    for (const engine::Diagnostic& fault : engine::checkPond(m_pond)) {
        if (fault.severity == engine::Severity::Error) {
            sentences << toQString(fault.sentence);
        }
    }
    m_fault->setText(sentences.join(u' '));
    if (sentences.isEmpty()) {
        accept();
    }
}

}  // namespace widgets
