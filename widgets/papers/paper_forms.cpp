// Sheets that are mostly filled in by hand: commissioning, incident, maintenance.
#include "widgets/papers/paper_parts.h"
#include "widgets/papers/papers.h"

#include <QCoreApplication>

#include <array>

namespace widgets {
namespace {

using enum Say;

constexpr std::array kCommissioning{
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("Commissioning",
                                   "The day of the first run. Planned start: {startDate}, ramp \"{ramp}\".")},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Commissioning", "This morning\u2019s profile")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("Commissioning", "Date|Time|Meter and calibration|Read by")},
    TemplateLine{Insert, "profile"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("Commissioning",
                          "The plan was made for the profile of {profileDate}. If that is more than seven "
                          "days old, or the weather has changed, make it anew with this profile first."),
        "profileDate"},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Commissioning", "Go or postpone")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP("Commissioning", "Dawn reading at 0.5 m (1.6 ft) is {go} mg/L or more.")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Commissioning", "No egg smell at the surface.")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Commissioning", "None of these is at hand: {holdWeather}.")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP(
                     "Commissioning",
                     "No algaecide or herbicide within the last 14 days, or 21 after a heavy treatment.")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP("Commissioning",
                                   "Someone reads at dawn on each of the next ten days; stand-in named.")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP("Commissioning", "Permits and consents are there; consent paper signed.")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("Commissioning", "Go / postponed to|Why|Decided by")},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Commissioning", "The system")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP("Commissioning",
                                   "Electrical work done and certified by a licensed electrician; every "
                                   "circuit on a ground-fault or residual-current device, tested today.")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Commissioning",
                                         "No mains voltage in the water. If a device trips, the water counts "
                                         "as unsafe until it is inspected.")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Commissioning",
                                         "Cabinet ventilated and above flood level; check valve in; air line "
                                         "cool enough to touch where people reach it.")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Commissioning", "No leak in lines and fittings; valves balanced.")},
    TemplateLine{Insert, "system"},
    TemplateLine{Break, ""},  // filled in by the water, hours after the page before
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Commissioning", "First run")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("Commissioning", "On at|Off at|Minutes|Boil seen, across")},
    TemplateLine{Text, QT_TRANSLATE_NOOP("Commissioning", "Smell, colour, fish:")},
    TemplateLine{Lines, "6"},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("Commissioning",
                                           "Handed over: schedule, log, manual, warranty, care "
                                           "card|Owner={client}|Consultant={consultant}")},
    TemplateLine{Insert, "cautions"},
};

// Steps 1 to 10 of the trade's emergency practice; the sources that were read are named in the proposal.
constexpr std::array kIncident{
    TemplateLine{BoxTitle,
                 QT_TRANSLATE_NOOP("Incident",
                                   "Fish at the top, or a reading under {back} mg/L: work down this sheet")},
    TemplateLine{BoxText, QT_TRANSLATE_NOOP("Incident",
                                            "Write the time beside everything. No one goes on the water "
                                            "alone or in the dark; life jackets on.")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("Incident", "Date|Time noticed|By|Call first={phone}")},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("Incident", "1. Read at three depths")},
    TemplateLine{Insert, "readings"},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("Incident", "2. Bottom air: off or on?")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Incident",
                                         "Top more than 2 \u00b0C (3.6 \u00b0F) warmer than the bottom: the "
                                         "pond is still in layers. **Bottom air off.**")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Incident",
                                         "Less than 1 \u00b0C (1.8 \u00b0F): the pond is mixed, the debt is "
                                         "out already. **Keep the air on.**")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP(
                     "Incident",
                     "Between the two: do not start it. If it runs, leave it on and read again in an hour.")},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("Incident", "3. Air at the surface")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP("Incident",
                                   "Splash or paddle aerator, or a pump with its intake at the surface, in "
                                   "one corner near the fish. Never pump from the bottom.")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Incident", "Let well-aired fresh water in, if there is any.")},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("Incident", "4. What not to do")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP("Incident", "Do not feed, do not net or move fish, put no chemicals in.")},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("Incident", "5. Calls")},
    TemplateLine{Fields,
                 QT_TRANSLATE_NOOP("Incident", "Owner={clientPhone}|Insurer|Fishery agency|Vet or lab")},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("Incident", "6. Evidence")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP("Incident",
                                   "Photographs with the time. Water samples from top and bottom. Dying fish "
                                   "on ice for the lab. Note who held each sample and when.")},
    TemplateLine{Insert, "signs"},
    TemplateLine{Insert, "count"},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Incident", "Dead fish taken out: their decay uses oxygen.")},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("Incident", "7. Until it is over")},
    TemplateLine{
        Tick,
        QT_TRANSLATE_NOOP(
            "Incident",
            "Read every two hours until two dawns stand above {hold} mg/L. Take up the start-up again "
            "after five to seven days at the soonest, at a quarter of the dose, with a new schedule."),
        "starts"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("Incident",
                                   "Read every two hours until two dawns stand above {hold} mg/L. Then "
                                   "what the letter says holds again."),
                 "!starts"},
    TemplateLine{Insert, "later"},
    TemplateLine{Insert, "cautions"},
};

constexpr std::array kMaintenance{
    TemplateLine{Text, QT_TRANSLATE_NOOP("Maintenance",
                                         "Keep this card in the cabinet. Where the maker\u2019s manual says "
                                         "otherwise, the manual holds.")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("Maintenance",
                                           "Compressor|Serial number|Installed on|Service phone={phone}")},
    TemplateLine{Insert, "service"},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Maintenance", "Seasons and stops")},
    TemplateLine{
        Bullet, QT_TRANSLATE_NOOP("Maintenance",
                                  "**After a stop** of more than three warm days, treat it as a new start "
                                  "with small doses; after two weeks, the whole ramp. Call for a schedule.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP(
            "Maintenance",
            "**Summer, once started up:** the hours from midnight to sunrise are the critical ones.")},
    TemplateLine{Bullet,
                 QT_TRANSLATE_NOOP(
                     "Maintenance",
                     "**Winter:** hang diffusers at a third to half of the depth, so that warm bottom water "
                     "stays for the fish. Start before the oxygen is low, never late under snow.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP(
                             "Maintenance",
                             "**Thin ice:** signs around the open water and at every access, a look at least "
                             "every seven days, permits and notices as the place asks. Open water moves.")},
    TemplateLine{Bullet,
                 QT_TRANSLATE_NOOP(
                     "Maintenance",
                     "**Electricity:** test each ground-fault or residual-current device monthly. If "
                     "one trips, no one goes in or near the water until a licensed electrician has looked.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP(
                             "Maintenance",
                             "**Closed pits and sumps** may hold gas that kills. Never climb in alone.")},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Maintenance", "Service record")},
    TemplateLine{Insert, "record"},
    TemplateLine{Insert, "cautions"},
};

}  // namespace

Paper commissioningSheet(const PaperRun& run) {
    const auto tr = [](const char* text) { return QCoreApplication::translate("Commissioning", text); };
    const PaperValues values = valuesOf(run);
    PaperInserts inserts = cautionInsert(run);
    inserts[QStringLiteral("profile")] = [&](PaperFlow& flow) {
        PaperTable table = blankTable(
            {tr("Depth, %1").arg(run.units.depthHead()), tr("Oxygen then, mg/L"), tr("Oxygen now, mg/L"),
             tr("Then, %1").arg(run.units.temperatureHead()), tr("Now"), tr("Smell")},
            {1.3, 1.2, 1.2, 1.3, 1, 1}, 0);
        table.rowHeight = 16.0 * kPoint;
        const engine::PondModel& model = run.comparison().model;
        for (std::size_t i = 0; i < model.profile.depth.size() && !model.profileIsGuess; ++i) {
            table.rows.push_back(
                {run.units.depthCell(model.profile.depth[i]), fixedText(model.profile.oxygen[i], 1),
                 QString(), run.units.temperatureCell(model.profile.temperature[i]), QString(), QString()});
        }
        if (table.rows.empty()) {
            table.rows.assign(6, QStringList(6));
        }
        flow.table(table);
    };
    inserts[QStringLiteral("system")] = [&](PaperFlow& flow) {
        PaperTable table =
            blankTable({tr("System"), tr("As designed"), tr("As found today")}, {1.4, 1.5, 1.5}, 0);
        table.rowHeight = 16.0 * kPoint;
        table.rows = {{tr("Diffusers"), values.value(QStringLiteral("diffusers")), QString()},
                      {tr("Depth of the deepest"), values.value(QStringLiteral("diffuserDepth")), QString()},
                      {tr("Free air, each diffuser"), values.value(QStringLiteral("air")), QString()},
                      {tr("Pressure at the compressor"), QString(), QString()},
                      {tr("Power, kW"), values.value(QStringLiteral("power")), QString()}};
        flow.table(table);
    };
    return paperOf(run, QStringLiteral("commissioning"), tr("Commissioning sheet"), "Commissioning",
                   kCommissioning, inserts);
}

Paper incidentSheet(const PaperRun& run) {
    const auto tr = [](const char* text) { return QCoreApplication::translate("Incident", text); };
    PaperInserts inserts = cautionInsert(run);
    const QStringList heads{tr("Time"), tr("Oxygen top"), tr("mid"), tr("bottom"), tr("Temperature top"),
                            tr("mid"),  tr("bottom"),     tr("By")};
    inserts[QStringLiteral("readings")] = [&, heads](PaperFlow& flow) {
        flow.table(blankTable(heads, {1, 1, 1, 1, 1.2, 1, 1, 1}, 2));
    };
    inserts[QStringLiteral("later")] = [&, heads](PaperFlow& flow) {
        flow.table(blankTable(heads, {1, 1, 1, 1, 1.2, 1, 1, 1}, 8));
    };
    inserts[QStringLiteral("count")] = [&](PaperFlow& flow) {
        flow.table(blankTable({tr("Species"), tr("Size"), tr("Dead, counted"), tr("Dying"), tr("Where")},
                              {1.5, 1, 1, 1, 1.5}, 4));
    };
    inserts[QStringLiteral("signs")] = [&](PaperFlow& flow) {
        PaperTable table;
        table.columns = {{tr("Tick what you see"), 1, false},
                         {tr("Low oxygen"), 1.6, false},
                         {tr("More likely an algal toxin"), 1.6, false}};
        table.rows = {{tr("Which fish first"), tr("large ones"), tr("small ones")},
                      {tr("When"), tr("night and early morning"), tr("bright daylight")},
                      {tr("Oxygen"), tr("under 2, mostly under 1 mg/L"), tr("high")},
                      {tr("pH"), tr("6 to 7.5"), tr("9.5 or more")},
                      {tr("Water"), tr("brown, grey or black; dying algae"), tr("green, blooming")}};
        flow.table(table);
    };
    return paperOf(run, QStringLiteral("incident"), tr("Incident sheet"), "Incident", kIncident, inserts);
}

Paper maintenanceCard(const PaperRun& run) {
    const auto tr = [](const char* text) { return QCoreApplication::translate("Maintenance", text); };
    PaperInserts inserts = cautionInsert(run);
    inserts[QStringLiteral("service")] = [&](PaperFlow& flow) {
        PaperTable table;
        table.columns = {{tr("When"), 1, false}, {tr("What"), 3, false}};
        table.rows = {
            {tr("weekly"), tr("Look at each boil: size and place as on the first day. Listen to the "
                              "compressor. Cabinet vents clear.")},
            {tr("monthly"),
             tr("Test the ground-fault or residual-current device. Read the pressure. Air filter.")},
            {tr("quarterly"), tr("Valves and fittings for leaks; balance the diffusers. Pressure risen: "
                                 "clean the membranes.")},
            {tr("yearly"), tr("Vanes or diaphragm, check valve, filter. Lift and clean the diffusers. "
                              "Restart by schedule.")},
            {tr("at once"), tr("A boil that has gone, a rise of pressure, a hot cabinet, a tripped device: "
                               "air lost is mixing lost.")}};
        flow.table(table);
    };
    inserts[QStringLiteral("record")] = [&](PaperFlow& flow) {
        flow.table(blankTable({tr("Date"), tr("Hours run"), tr("Pressure"), tr("Done"), tr("By")},
                              {1, 1, 1, 3, 1}, 8));
    };
    return paperOf(run, QStringLiteral("maintenance-card"), tr("Maintenance card"), "Maintenance",
                   kMaintenance, inserts);
}

}  // namespace widgets
