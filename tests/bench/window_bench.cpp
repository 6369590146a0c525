// How long a user waits: from the start to the painted night, from an edit to new curves on the screen, and
// from there to attribution and end states. Offscreen, headline pond, its own number of nights.

#include "app/main_window.h"
#include "tests/bench/measure.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/night_stage.h"
#include "widgets/charts/views_page.h"
#include "widgets/forms/schedule_grid.h"
#include "widgets/forms/schedule_page.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QMouseEvent>
#include <QTest>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

namespace {

constexpr int kPatience_ms = 60000;
constexpr int kEdits = 50;

void print(const char* what, std::vector<double> times) {
    std::sort(times.begin(), times.end());
    const auto at = [&](double share) {
        return times[static_cast<std::size_t>(share * static_cast<double>(times.size() - 1))];
    };
    std::printf("%-46s median %7.1f ms, 95 %% %7.1f ms, least %7.1f ms\n", what, at(0.5), at(0.95),
                times.front());
}

/// Edits again and again, and waits each time for the curves on the screen and for the rest.
void timeEdits(app::MainWindow& window, const char* what,
               const std::function<void(engine::Pond& pond, int turn)>& change) {
    const auto& recomputation = window.recomputation();
    std::vector<double> curves, whole, drawing;
    for (int i = 0; i < kEdits; ++i) {
        QElapsedTimer clock;
        clock.start();
        window.document().edit(QStringLiteral("edit"), [&](engine::Pond& pond) { change(pond, i); });
        while (recomputation.isStale()) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 50);
        }
        QCoreApplication::processEvents();  // draws, which is queued once
        curves.push_back(static_cast<double>(clock.nsecsElapsed()) / 1e6);
        drawing.push_back(window.page().stage().night().lastReplot_ms());
        while (!recomputation.outcome()->isWhole) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 50);
        }
        whole.push_back(static_cast<double>(clock.nsecsElapsed()) / 1e6);
    }
    std::printf("An edit of %s\n", what);
    print("  to new curves on the screen", curves);
    print("  to causes and end states", whole);
    print("  of which drawing the night", drawing);
}

/// Drags the end of a run block by mouse moves, one as soon as the curves of the one before are painted: the
/// frames that a hand sees. Curves come from the central runs of all ramps.
void timeDragging(app::MainWindow& window) {
    auto& grid = window.schedule().grid();
    window.page().setView(window.page().viewNamed(QStringLiteral("Schedule")));
    window.selection().setRamp(2);
    QCoreApplication::processEvents();
    std::vector<double> frames;
    const QPointF from = grid.placeOf(2, 660);
    QTest::mousePress(&grid, Qt::LeftButton, {}, from.toPoint());
    for (int i = 1; i <= kEdits; ++i) {
        QElapsedTimer clock;
        clock.start();
        const QPointF at = grid.placeOf(2, 660 + 10 * i);
        QMouseEvent move(QEvent::MouseMove, at, grid.mapToGlobal(at), Qt::NoButton, Qt::LeftButton, {});
        QCoreApplication::sendEvent(&grid, &move);
        while (window.recomputation().isStale()) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 50);
        }
        QCoreApplication::processEvents();
        grid.repaint();
        frames.push_back(static_cast<double>(clock.nsecsElapsed()) / 1e6);
    }
    QTest::mouseRelease(&grid, Qt::LeftButton);
    std::printf("Dragging a run block (30 frames a second are 33 ms)\n");
    print("  from the mouse to the painted curves", frames);
}

/// From an edit to the members of the chosen ramp and do-nothing, and to those of all ramps.
void timeMembers(app::MainWindow& window, const char* what,
                 const std::function<void(engine::Pond& pond, int turn)>& change) {
    std::vector<double> pair, all;
    for (int i = 0; i < 5; ++i) {
        QElapsedTimer clock;
        window.document().edit(QStringLiteral("edit"), [&](engine::Pond& pond) { change(pond, i); });
        double whole = 0.0, two = 0.0;
        clock.start();
        const auto& recomputation = window.recomputation();
        while (recomputation.isStale() || !recomputation.outcome()->hasAllMembers) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 50);
            const auto now = static_cast<double>(clock.nsecsElapsed()) / 1e6;
            const auto& outcome = *recomputation.outcome();
            whole = !recomputation.isStale() && outcome.isWhole && whole == 0.0 ? now : whole;
            two = !recomputation.isStale() && outcome.comparison.ensemble && two == 0.0 ? now : two;
        }
        pair.push_back(two - whole);
        all.push_back(static_cast<double>(clock.nsecsElapsed()) / 1e6 - two);
    }
    std::printf("200 members after an edit of %s\n", what);
    print("  of the chosen ramp and do-nothing", pair);
    print("  then of all ramps", all);
}

}  // namespace

int main(int argc, char** argv) {
    QElapsedTimer sinceStart;
    sinceStart.start();
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("XDG_STATE_HOME", "/nonexistent");  // remembers nothing
    const QApplication application(argc, argv);
    app::MainWindow window;
    window.resize(1366, 768);
    window.show();
    window.open(std::string(DAWNLINE_SCENARIOS) + "/grandfathers-pond.toml");
    const auto& recomputation = window.recomputation();
    const auto painted = [&] {
        return !recomputation.isStale() && window.page().stage().night().lastReplot_ms() > 0.0;
    };
    if (!QTest::qWaitFor(painted, kPatience_ms)) {
        return 1;
    }
    std::printf("%-46s %.0f ms, %.0f MiB at most so far\n", "main() to the painted night",
                static_cast<double>(sinceStart.elapsed()), bench::peak_MiB());
    if (!QTest::qWaitFor([&] { return recomputation.outcome()->isWhole; }, kPatience_ms)) {
        return 1;
    }

    window.recomputation().setMembers(1);  // of edits only the curves and what explains them are timed
    std::printf("%zu runs of %d nights\n", recomputation.outcome()->comparison.runs.size(),
                recomputation.outcome()->comparison.days);
    timeEdits(window, "one ramp", [](engine::Pond& pond, int i) { pond.ramps[1].first_min = 20.0 + i % 20; });
    timeEdits(window, "all ramps",
              [](engine::Pond& pond, int i) { pond.aerator->freeAir_lPerMin = 40.0 + i % 10; });
    window.recomputation().setMembers(engine::kMembersOfBand);
    timeMembers(window, "all ramps",
                [](engine::Pond& pond, int i) { pond.aerator->freeAir_lPerMin = 41.0 + i; });
    timeMembers(window, "the chosen ramp", [](engine::Pond& pond, int i) {
        for (engine::Ramp& ramp : pond.ramps) {
            if (ramp.name == pond.chosenRamp) {
                ramp.dose_percent = engine::Quantity(8.0 + i);
            }
        }
    });
    timeDragging(window);
    for (int view = 0; view < window.page().viewCount(); ++view) {
        window.page().setView(view);
        QTest::qWait(50);
    }
    std::printf("%-46s %.0f MiB\n", "memory at most, all views seen", bench::peak_MiB());
    return 0;
}
